"""What is read quickly is the record that is read with care, and all that takes care is left to that."""

import random
from collections.abc import Iterator

import pytest

from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Ref
from paddock_tui.records.reading import read_record
from paddock_tui.records.session import Session
from paddock_tui.records.untroubled import untroubled
from paddock_tui.store.everyday import everyday, in_blocks
from tests.examples import one_in
from tests.sample import FILES, bike, data_of

_TEXTS = {ref: path.read_text(encoding="utf-8") for ref, path in FILES.items()}

_BESIDE = (
    "unheard_of = 1",
    'was = ["an-id"]',
    "[conflict.air]\nours = 1\ntheirs = 2",
    "[checks.UPPER]\nstatus = 'ok'",
    '[checks."ok"]\nstatus = "ok"',
    "[laps]\n0 = 61.5",
    "[setup.unheard_of]\na = 1",
    "[setup.controls]\ntraction = 99",
    '[setup.controls]\nabs = "no such word"',
    '[work.1]\nwhat = ["oil"]',
    "[feel.deeper]\na = 1",
)
"""What may be added to a record: some is none of its, some is refused, some is as it should be."""

_VALUES = ("[1]", "[[1]]", "true", "1", "-1", "1e9", '"900 bar"', '"x"', "2026-05-16", "10:00:00", '""')


def _bike_of(ref: Ref) -> Bike | None:
    return bike(data_of(ref)["bike"]) if ref.kind in ("session", "profile") else None


def _held_to(kind: str, text: str, of: Bike | None) -> bool:
    """Hold what is read quickly of a text to what is read of it with care; gives whether it was."""
    data, blocks = everyday(text), in_blocks(text)
    assert repr(blocks) == repr(data)
    if data is None or blocks is None:
        return False
    found, with_care = untroubled(kind, blocks, of), read_record(kind, data, of)
    if found is None:
        return False
    assert found == with_care.possible
    assert repr(found) == repr(with_care.record)
    assert (with_care.troubles, with_care.unknown, with_care.impossible) == ((), (), ())
    return True


@pytest.mark.parametrize("kind", sorted(CLASSES))
def test_records_of_the_sample_are_read_quickly_as_they_are_with_care(kind: str) -> None:
    for ref in (one for one in FILES if one.kind == kind):
        assert _held_to(kind, _TEXTS[ref], _bike_of(ref)), ref
        # What was made of the tables of one is given again.
        assert _held_to(kind, _TEXTS[ref], _bike_of(ref)), ref


def _changed(text: str, by: random.Random) -> Iterator[str]:
    """Give a text with one of its values changed each, with a line twice or gone, and with more in it."""
    lines = text.split("\n")
    for at, line in enumerate(lines):
        key, equals, _ = line.partition(" = ")
        if equals:
            yield "\n".join((*lines[:at], f"{key} = {by.choice(_VALUES)}", *lines[at + 1 :]))
        if by.random() < 0.1:
            yield "\n".join((*lines[:at], *lines[at + 1 :]))
            yield "\n".join((*lines[:at], line, *lines[at:]))
    for more in _BESIDE:
        yield f"{text}\n{more}\n"
        yield f"{more}\n{text}"


def test_a_record_with_anything_in_it_is_left_to_care_or_read_the_same() -> None:
    by = random.Random(41)
    quickly = left = 0
    for ref in list(FILES)[:: one_in(4)]:
        for text in _changed(_TEXTS[ref], by):
            if _held_to(ref.kind, text, _bike_of(ref)):
                quickly += 1
            else:
                left += 1

    assert min(quickly, left) > 100


def test_what_is_made_of_a_table_is_made_once() -> None:
    one, other = (
        untroubled("session", in_blocks(f'number = {number}\n[checks.a]\nstatus = "ok"\n') or {})
        for number in (1, 2)
    )

    assert one != other
    assert one.checks["a"] is other.checks["a"]  # type: ignore[union-attr]


def test_of_a_kind_of_value_the_same_is_not_another_kind() -> None:
    """1, 1.0 and true are one key of a table."""
    for value in ("1", "true", "1.0", "0", "-0.0", "0.0"):
        for key in ("number", "filled_to_brim", "planned_laps", "ice", "confidence"):
            _held_to("session", f"{key} = {value}\n", None)


def test_what_stands_alike_in_several_records_is_held_once() -> None:
    text = _TEXTS[Ref("session", "2026-05-16-1-otter")]
    found = []
    for one in (text, f'{text}\n[work.9]\nwhat = "oil"\n'):
        read = in_blocks(one)
        assert read is not None
        found.append(untroubled("session", read, bike("otter")))
        assert found[-1] == read_record("session", everyday(one) or {}, bike("otter")).possible
    first, second = found
    assert isinstance(first, Session)
    assert isinstance(second, Session)
    assert first.counted
    assert first.counted is second.counted
    assert first.work != second.work
