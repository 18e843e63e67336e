"""Paths are spelled with dots and read back the same, whatever the keys are."""

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.paths import GARAGE, Ref, parse, spell
from tests.every import every


@given(st.lists(st.text(max_size=12), min_size=1, max_size=5))
def test_a_spelled_path_is_read_back_the_same(keys: list[str]) -> None:
    assert parse(spell(tuple(keys))) == tuple(keys)


@given(st.text(max_size=40))
def test_any_text_is_a_path_or_none(text: str) -> None:
    found = parse(text)
    assert found is None or parse(spell(found)) == found


SPELLED = [
    (("setup", "controls", "traction"), "setup.controls.traction"),
    (("flags", "red and yellow"), 'flags."red and yellow"'),
    (("a.b", "c"), '"a.b".c'),
    (('say "so"',), '"say \\"so\\""'),
    (("back\\slash",), '"back\\\\slash"'),
    (("",), '""'),
    (("läufe",), '"läufe"'),
]


@every(("path", "text"), SPELLED)
def test_odd_keys_are_quoted(path: tuple[str, ...], text: str) -> None:
    assert spell(path) == text
    assert parse(text) == path


@every("text", ["", ".", "a.", ".a", "a..b", '"open', 'a"b"', '"a"b', " . "])
def test_what_is_no_path_is_none(text: str) -> None:
    assert parse(text) is None


def test_a_record_is_named_by_kind_and_id() -> None:
    assert str(Ref("bike", "otter")) == "bike/otter"
    assert str(GARAGE) == "garage"
