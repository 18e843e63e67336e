"""What is counted as sessions come is the same as counted at once, also where a line goes on otherwise."""

import datetime as dt
from decimal import Decimal
from itertools import starmap

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.facts.past import History, Lineage, PastSession
from paddock_tui.facts.service import distance_covered, engine_hours, hours_ridden
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, CounterStart
from paddock_tui.records.session import Session, is_ridden

KM = st.none() | st.integers(1, 9)
OUTING = st.tuples(st.sampled_from(("a", "b", None)), st.booleans(), st.integers(0, 9), KM)
OUTINGS = st.lists(OUTING, max_size=9)
Outing = tuple[str | None, bool, int, int | None]
START = dt.date(2026, 5, 4)
BIKE = Bike(
    start=CounterStart(on=START, hours=Quantity(Decimal(10), "h"), kilometres=Quantity(Decimal(1000), "km"))
)


def past(place: int, outing: Outing) -> PastSession:
    """Make a session of a tyre set, ridden or not, so many days into the month, with kilometres or none."""
    tyres, ridden, days, km = outing
    session = Session(
        date=dt.date(2026, 5, 1 + days),
        tyres=tyres,
        parked=dt.time(10, 0) if ridden else None,
        went_out=dt.time(9, 41) if ridden else None,
        distance=Quantity(Decimal(km), "km") if km is not None else None,
    )
    return PastSession(f"s{place}", session)


def assert_counted(history: History) -> None:
    """Check what is counted along a history with what its sessions add up to."""
    for tyres in (("a",), ("b", "a"), ()):
        on_them = [one for one in history.past if is_ridden(one.session) and one.session.tyres in tyres]
        assert list(history.ridden_on(tyres)) == on_them
    since = [one for one in history.past if one.session.date is not None and one.session.date > START]
    ridden = [one for one in since if is_ridden(one.session)]
    hours = 10.0
    for one in since:
        hours += hours_ridden(one.session)
    known = [one.km for one in ridden if one.km is not None]
    assert engine_hours(BIKE, history) is not None
    assert abs((engine_hours(BIKE, history) or 0.0) - hours) < 1e-9
    assert distance_covered(BIKE, history) == (1000.0 + sum(known), len(ridden) - len(known))


@given(OUTINGS, OUTINGS, st.integers(0, 9))
def test_a_line_that_goes_on_otherwise_counts_as_if_it_had_always_been_so(
    first: list[Outing], then: list[Outing], at: int
) -> None:
    before = tuple(starmap(past, enumerate(first)))
    line = Lineage()
    for end in (len(before) // 2, len(before)):
        assert_counted(History(before[:end]).on_line(line))

    kept = before[: min(at, len(before))]
    other = line.branch(len(kept))
    after = (*kept, *starmap(past, enumerate(then, len(kept))))

    assert_counted(History(after).on_line(other))
    assert_counted(History(before).on_line(line))
