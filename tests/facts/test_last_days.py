"""What was ok, or measured, on one of the last riding days: told by a walk as by reading those days."""

import datetime as dt
from decimal import Decimal
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.facts.essentials.core import PADS, TREAD, Around
from paddock_tui.facts.past import History, PastSession
from paddock_tui.quantities.quantity import Quantity
from paddock_tui.records.common import Check
from paddock_tui.records.day import DayEntry
from paddock_tui.records.session import Session

TODAY = dt.date(2026, 6, 20)
STATUSES = st.sampled_from((None, "ok", "to fix"))
THIN = Quantity(Decimal(3), "mm")
MM = st.sampled_from((None, THIN))


def checks(status: str | None) -> dict[str, Check]:
    return {"pads": Check(status=status)} if status is not None else {}


@st.composite
def earlier(draw: st.DrawFn) -> tuple[PastSession, ...]:
    """Sessions in the order of their days, of some of which the day is not known."""
    days = draw(st.lists(st.integers(0, 5), max_size=7).map(lambda found: sorted(found, reverse=True)))
    found = []
    for place, day in enumerate(days):
        session = Session(
            date=draw(st.sampled_from((TODAY - dt.timedelta(days=day),) * 5 + (None,))),
            ridden_laps=draw(st.sampled_from((None, 5))),
            front_pads=draw(MM),
            rear_pads=draw(MM),
            front_tread=draw(MM),
            rear_tread=draw(MM),
            checks=checks(draw(STATUSES)),
        )
        found.append(PastSession(f"one-{place}", session, entry=DayEntry(checks=checks(draw(STATUSES)))))
    return tuple(found)


@given(earlier(), st.integers(1, 3), st.sampled_from((TODAY, TODAY, None)))
def test_a_walk_tells_what_reading_the_days_tells(
    past: tuple[PastSession, ...], days: int, date: dt.date | None
) -> None:
    around = Around(Session(date=date), {}, {}, History(past))
    within = list(around.within(days))

    def is_ok(one: PastSession) -> bool:
        return any(
            check.status == "ok" for check in (*one.session.checks.values(), *one.entry.checks.values())
        )

    for name in ("pads", "tyres"):
        assert around.ticked_within(days, name) == (name == "pads" and any(map(is_ok, within)))
        assert around.ticked_ever(name) == (name == "pads" and any(map(is_ok, past)))
    for both in (PADS, TREAD):
        measured = (one for one in within if None not in (getattr(one.session, name) for name in both))
        assert around.measured_within(days, both) == any(True for _ in measured)
        own: dict[str, Any] = dict.fromkeys(both, THIN)
        assert Around(Session(date=date, **own), {}, {}, History(past)).measured_within(days, both)
