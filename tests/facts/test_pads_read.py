"""What was read of pads is told as if every session were gone through, however long ago they were ridden."""

import datetime as dt
from decimal import Decimal
from itertools import starmap

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.wear import WearReading, since_renewed
from paddock_tui.facts.brakes import pads_since_start
from paddock_tui.facts.past import History, Lineage, PastSession
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, BikeEnd, CounterStart
from paddock_tui.records.session import Session, is_ridden
from tests.examples import examples

FIRST = dt.date(2026, 5, 1)
SHOWN = 6
"""So many last readings are shown together, of whatever pads."""

TENTHS = st.sampled_from((None, 40, 40, 39, 39, 38, 45))
OUTING = st.tuples(st.integers(0, 2), st.booleans(), TENTHS, st.booleans())
OUTINGS = st.lists(OUTING, max_size=30)
STARTS = st.none() | st.integers(0, 12)
Outing = tuple[int, bool, int | None, bool]


def mm(tenths: int) -> Quantity:
    return Quantity(Decimal(tenths) / 10, "mm")


def sessions(outings: list[Outing]) -> tuple[PastSession, ...]:
    """Make sessions: some days on, ridden or not, with what was measured in tenths, at one end or at both."""
    day, dated = 0, []
    for days, *outing in outings:
        day += days
        dated.append((FIRST + dt.timedelta(days=day), *outing))
    return tuple(starmap(_past, enumerate(dated)))


def _past(place: int, outing: tuple[dt.date, bool, int | None, bool]) -> PastSession:
    date, ridden, tenths, both = outing
    read = mm(tenths) if tenths is not None else None
    laps = 5 if ridden else None
    held = Session(date=date, ridden_laps=laps, front_pads=read, rear_pads=read if both else None)
    return PastSession(f"s{place}", held)


def told(bike: Bike, history: History) -> tuple[tuple[WearReading, ...], int]:
    """Return what is told of the front pads."""
    read, ridden = pads_since_start(bike, "front", history)
    return tuple(WearReading(float(sessions), mm) for sessions, mm in read), ridden


def plain(bike: Bike, past: tuple[PastSession, ...]) -> tuple[tuple[WearReading, ...], int]:
    """Return every reading of the front pads, and how often the bike was ridden since the start."""
    start, on = bike.front.pads_start, bike.start.on
    found = [WearReading(0.0, start.to("mm"))] if start is not None else []
    ridden = 0
    for one in past:
        if one.date is None or (on is not None and one.date <= on):
            continue
        ridden += is_ridden(one.session)
        if one.session.front_pads is not None:
            found.append(WearReading(float(ridden), one.session.front_pads.to("mm")))
    return tuple(found), ridden


@examples(150)
@given(OUTINGS, OUTINGS, STARTS, st.booleans())
def test_readings_are_those_of_every_session_since_the_start(
    first: list[Outing], then: list[Outing], start: int | None, measured: bool
) -> None:
    on = FIRST + dt.timedelta(days=start) if start is not None else None
    bike = Bike(start=CounterStart(on=on), front=BikeEnd(pads_start=mm(50) if measured else None))
    past = sessions([*first, *then])
    line = Lineage()
    for length in (len(first), len(past)):
        history = History(past[:length]).on_line(line)

        found, ridden = told(bike, history)

        every, counted = plain(bike, past[:length])
        assert ridden == counted
        assert since_renewed(found) == since_renewed(every)
        assert found[-SHOWN:] == every[-SHOWN:]


def test_what_was_read_after_the_start_before_anybody_rode_counts() -> None:
    bike = Bike(start=CounterStart(on=FIRST + dt.timedelta(days=1)))
    past = sessions([(0, True, 40, False), (1, True, None, False), (1, False, 40, False)])

    assert told(bike, History(past)) == ((WearReading(0.0, 4.0),), 0)


def test_a_session_without_a_date_counts_for_nobody() -> None:
    held = Session(ridden_laps=5, front_pads=mm(31))
    history = History((*sessions([(0, True, 40, False)]), PastSession("undated", held)))

    for on in (None, FIRST - dt.timedelta(days=1)):
        bike = Bike(start=CounterStart(on=on))
        assert told(bike, history) == ((WearReading(1.0, 4.0),), 1)


def test_of_pads_that_were_renewed_long_ago_little_is_kept() -> None:
    worn = [(1, True, 40 - tenths, True) for tenths in range(20)]
    past = sessions([*worn, *worn, (1, True, 40, True)])

    found, ridden = told(Bike(), History(past))

    assert ridden == len(past) == 41
    assert len(found) == SHOWN
    assert found[-1] == WearReading(41.0, 4.0)
