"""Outings of a bike's last day that lack what orders them are found without a look at the days before."""

import datetime as dt
import random

from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.unplaced import without_order
from paddock_tui.records.session import Session
from tests.counted_calls import calls_of

FIRST = dt.date(2024, 3, 1)


def _outing(name: int, date: dt.date | None, number: int | None, start: dt.time | None) -> PastSession:
    return PastSession(str(name), Session(date=date, number=number, start=start, ridden_laps=5))


def _plainly(history: History, here: Session) -> set[tuple[str, str]]:
    """Go through all of a history for it."""
    last = next((one.date for one in reversed(history.ridden) if one.date is not None), None)
    found = set()
    for date in {last, here.date} - {None}:
        on_it = [one.session for one in history.past if one.date == date]
        numbers = [one.number for one in on_it] + ([here.number] if here.date == date else [])
        for one in (each for each in history.past if each.date == date):
            number = one.session.number
            if number is None and len(numbers) > 1:
                found.add((one.id, "number"))
            elif number is not None and one.session.start is None and numbers.count(number) > 1:
                found.add((one.id, "start"))
    return found


def test_they_are_those_of_the_last_day_and_of_this_one() -> None:
    draw = random.Random(7)
    some = 0
    for _ in range(200):
        days = sorted(FIRST + dt.timedelta(days=draw.randrange(4)) for _ in range(draw.randrange(1, 12)))
        dates = [date if draw.random() < 0.9 else None for date in days]
        past = tuple(
            _outing(at, date, draw.choice((None, 1, 2)), draw.choice((None, dt.time(10))))
            for at, date in enumerate(dates)
        )
        here = Session(date=days[-1] + dt.timedelta(days=draw.randrange(2)), number=draw.choice((None, 1)))
        history = History(past)
        found = {(one.id, key) for one, key in without_order(history, here)}
        assert found == _plainly(history, here)
        some += bool(found)
    assert some > 50


def test_the_days_before_are_not_gone_through() -> None:
    here = Session(date=FIRST + dt.timedelta(days=500), number=1)

    def calls(days: int) -> int:
        dates = (FIRST + dt.timedelta(days=500 - days + at) for at in range(days))
        history = History(tuple(_outing(at, date, None, None) for at, date in enumerate(dates)))
        assert len(history.ridden) == days
        return calls_of(lambda: list(without_order(history, here)))

    assert calls(400) == calls(4)
