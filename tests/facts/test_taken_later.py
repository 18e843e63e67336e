"""Of a fold that is carried each tyre is taken up when it is asked for: it reads as all taken up at once."""

import datetime as dt
from collections import ChainMap
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.facts.begun import NotCarried
from paddock_tui.facts.carried_states import StateReader, StateWriter
from paddock_tui.matters.fold import Folded
from paddock_tui.matters.seen import AirInTyre, ColdReading, Seen, with_more
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import PressureReading

NOON = dt.datetime(2026, 6, 20, 12)
HELD = Ref("session", "a")
SAID = Session(pressures={"cold": PressureReading(gauge="the red one of Ann")})

TYRES = st.dictionaries(
    st.tuples(st.sampled_from("abcdef"), st.sampled_from(("front", "rear"))),
    st.floats(100, 300).map(lambda kpa: air(kpa)),
    max_size=8,
)


def air(kpa: float) -> AirInTyre:
    cold = ColdReading(kpa, 20.0, "the red one of Ann", NOON, "a", AirObserved())
    return AirInTyre(cold, lost=(NOON,))


def taken(tyres: Mapping[tuple[str, str], AirInTyre], record: Record | None = SAID) -> Folded:
    writer = StateWriter([(HELD, SAID)])
    written = writer.write(Folded(seen=Seen(tyres=tyres)))
    assert "Ann" not in str(written)
    folded = StateReader(writer.words, lambda _: record, lambda _: None).take(written)
    assert isinstance(folded, Folded)
    return folded


@given(TYRES)
def test_what_is_taken_later_is_what_was_written(tyres: dict[tuple[str, str], AirInTyre]) -> None:
    seen = taken(tyres).seen
    assert seen.tyres == tyres
    assert (list(seen.tyres), len(seen.tyres)) == (list(tyres), len(tyres))
    assert all(seen.tyre(*key) == held for key, held in tyres.items())
    assert seen.tyre("z", "front") == AirInTyre()


@given(TYRES, st.lists(TYRES, max_size=4))
def test_more_goes_over_what_is_taken_later(
    tyres: dict[tuple[str, str], AirInTyre], steps: list[dict[tuple[str, str], AirInTyre]]
) -> None:
    plain: Mapping[tuple[str, str], AirInTyre] = tyres
    over = taken(tyres).seen.tyres
    for more in steps:
        earlier, was = over, dict(over)
        plain, over = with_more(plain, more), with_more(over, more)
        assert isinstance(over, ChainMap)
        assert len(over.maps) == 2
        assert (dict(over), list(over), len(over)) == (plain, list(plain), len(plain))
        assert dict(earlier) == was


def test_a_tyre_is_made_when_it_is_asked_for_and_once(monkeypatch: pytest.MonkeyPatch) -> None:
    seen, made = taken({("a", "front"): air(200.0), ("b", "rear"): air(210.0)}).seen, list[object]()
    make = StateReader._of_class

    def counted(reader: StateReader, value: list[object]) -> object:
        made.append(value[1])
        return make(reader, value)

    monkeypatch.setattr(StateReader, "_of_class", counted)
    assert ("b", "rear") in seen.tyres
    assert made == []
    first = seen.tyre("b", "rear")
    assert first == air(210.0)
    assert made.count("matters.seen:AirInTyre") == 1
    assert seen.tyre("b", "rear") is first
    assert made.count("matters.seen:AirInTyre") == 1


def test_words_that_are_gone_are_found_at_once() -> None:
    with pytest.raises(NotCarried):
        taken({("a", "front"): air(200.0)}, record=None)
