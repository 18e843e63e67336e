"""What is learnt along a history is the same at once and in pieces, and costs what is new."""

import datetime as dt
from collections.abc import Iterator
from decimal import Decimal
from typing import Any

import hypothesis.strategies as st
import pytest
from hypothesis import given

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.facts.checklists import _ANSWERS
from paddock_tui.facts.fuel_consumption import _FILLINGS, fuel_learnt
from paddock_tui.facts.outings import Outings
from paddock_tui.facts.past import WALKS, Along, Alongs, History, Lineage, PastSession, walk_named
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.common import Check
from paddock_tui.records.day import DayEntry
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import TyreSet
from tests.examples import examples
from tests.facts.test_outings import RECORDS, SETS

checks = st.dictionaries(
    st.sampled_from(("brakes", "chain", "axles")),
    st.sampled_from((None, "ok", "to fix", "not applicable")).map(lambda status: Check(status=status)),
)
outings: Any = st.lists(
    st.builds(
        dict,
        day=st.integers(1, 4),
        rider=st.sampled_from(("ann", "bob", None)),
        tyres=st.sampled_from(("new", "nowhere", None)),
        copied=st.integers(0, 12),
        number=st.sampled_from((1, 2, None)),
        litres=st.sampled_from((None, 4, 6, 90)),
        brim=st.sampled_from((None, True)),
        mode=st.sampled_from((None, "open", "rain")),
        laps=st.sampled_from((None, 5, 10)),
        checks=checks,
        of_day=checks,
    ),
    max_size=10,
)


def past(number: int, given: dict[str, Any]) -> PastSession:
    litres = given["litres"]
    session = Session(
        date=dt.date(2026, 5, given["day"]),
        number=given["number"],
        rider=given["rider"],
        tyres=given["tyres"],
        copied_from=f"{given['copied']}",
        fuel_added=Quantity(Decimal(litres), "l") if litres is not None else None,
        filled_to_brim=given["brim"],
        ridden_laps=given["laps"],
        setup=SetUp(mode=given["mode"]),
        checks=given["checks"],
    )
    return PastSession(f"{number}", session, lap_km=4.0, entry=DayEntry(checks=given["of_day"]))


def learnt(history: History, rider: str, tyres: TyreSet | None) -> tuple[Any, ...]:
    """Return all that is learnt along a history."""
    records = {**RECORDS, "rider": Rider(group="novice"), "session": Session(rider=rider), "tyres": tyres}
    make = Outings(history, {k: v for k, v in records.items() if v}, {}, None, AirObserved(), Limits())
    fuel = [fuel_learnt(history, "track", mode, (5.0, True)) for mode in (None, "open")]
    course = make.by_day().with_more(())
    groups = [one.group for one in course.after(0)] if course is not None else []
    return _ANSWERS.of(history), _FILLINGS.of(history), fuel, groups


@given(outings, st.lists(st.tuples(st.integers(0, 10), st.sampled_from(("ann", "bob")), st.booleans())))
@examples(30)
def test_in_pieces_and_in_any_order_it_is_as_at_once(told: list[Any], looks: list[Any]) -> None:
    sessions = tuple(past(number, one) for number, one in enumerate(told))
    line, sets = Lineage(), (TyreSet(), None)
    for length, rider, own in looks:
        if own:
            line = line.branch(length)
        history = History(sessions[:length], SETS, {}).on_line(line)
        alone = History(sessions[:length], SETS, {})
        assert learnt(history, rider, sets[own]) == learnt(alone, rider, sets[own])


@pytest.fixture
def walks() -> Iterator[None]:
    """Forget the walks that a test makes."""
    before = set(WALKS)
    yield
    for name in WALKS.keys() - before:
        del WALKS[name]


@pytest.mark.usefixtures("walks")
def test_a_walk_is_found_by_its_name_and_one_of_a_family_is_made_by_it() -> None:
    counted: Along[int] = Along("counted", 0, lambda so_far, _one: so_far + 1)
    assert walk_named("counted") is counted
    with pytest.raises(ValueError, match="two walks"):
        Along("counted", 0, lambda so_far, _one: so_far)
    longer: Alongs[int] = Alongs("longer-by", 0, lambda by: lambda so_far, _one: so_far + int(by))
    with pytest.raises(ValueError, match="two families"):
        Alongs("longer-by", 0, lambda _by: lambda so_far, _one: so_far)
    by_two = walk_named("longer-by 2")
    assert by_two is longer.of("2")
    assert by_two is not longer.of("3")
    assert [longer.of(by).of(History((PastSession("1", Session()),))) for by in "23"] == [2, 3]
    assert walk_named("nothing-such 2") is None


@pytest.mark.usefixtures("walks")
def test_only_what_is_new_is_gone_through() -> None:
    sessions = tuple(PastSession(f"{number}", Session(number=number)) for number in range(40))
    counted: Along[int] = Along("counted", 0, lambda so_far, one: so_far + (one.session.number or 0))
    line = Lineage()

    def steps(length: int, on: Lineage) -> int:
        before = counted.steps
        assert counted.of(History(sessions[:length]).on_line(on)) == sum(range(length))
        return counted.steps - before

    assert [steps(length, line) for length in (30, 30, 31, 40, 31, 33, 40)] == [30, 0, 1, 9, 0, 2, 0]
    # An edit of a session leaves what was learnt before it.
    assert steps(40, line.branch(32)) == 40 - 31
    # A history that was changed by its holder is on no line.
    assert counted.of(History(sessions[:3]).on_line(line)) == 3


class _NeverWhole(tuple[PastSession, ...]):
    """A past that nobody may go through from its beginning."""

    def __iter__(self) -> Iterator[PastSession]:
        raise AssertionError("it is gone through from its beginning")


@pytest.mark.usefixtures("walks")
def test_of_a_longer_history_only_what_is_new_is_gone_through() -> None:
    ids: Along[tuple[str, ...]] = Along("ids", (), lambda so_far, one: (*so_far, one.id))
    past, line = tuple(PastSession(str(name), Session()) for name in range(5)), Lineage()
    assert ids.of(History(past[:3]).on_line(line)) == ("0", "1", "2")

    assert ids.of(History(_NeverWhole(past)).on_line(line)) == ("0", "1", "2", "3", "4")
    assert ids.steps == 5
