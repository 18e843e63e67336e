"""What is read quickly is read as tomllib reads it; all else is left to that."""

import tomllib

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.store.everyday import everyday, in_blocks
from tests.examples import examples
from tests.sample import FILES

_LINES = [
    "",
    "# a word; a = 1",
    'a = "x # y"   # said',
    "b = 1",
    "b = -0",
    "c = 1.50",
    "c = 01",
    "c = 1_000",
    "d = 2026-05-16",
    "d = 2026-02-30",
    "d = 2026-05-16T10:00:00",
    "e = 10:20:00",
    "e = 24:00:00",
    "f = true",
    'g = ["x", "y, z"]',
    "g = [1, 2.5,]",
    "g = [[1], 2]",
    "g = []",
    "h.i = 1",
    '"j" = 1',
    "j = 'x'",
    'j = "\\t"',
    'j = """',
    "k = { l = 1 }",
    "[a]",
    "[ a.b ]",
    "[a.b.c]",
    "[a . b]",
    '["a"]',
    '[a."b c # d"]',
    '[a."b.c"]',
    '[a."b\\tc"]',
    '[""]',
    "[[a]]",
    "[d]",
    "\ta = 5",
    "é = 1",
    'a = "é\u2028"',
    "a = ١",
    "a = 1\r",
]
"""Lines that records hold, some that they may, and some that no TOML does."""

_TEXTS = st.lists(st.sampled_from(_LINES), max_size=8).map("\n".join)


@examples(150)
@given(
    _TEXTS,
    st.integers(0, 40),
    st.sampled_from(["", "", '"', "=", "[", "]", "\x00", ",", "\n", "#", " ", "1"]),
)
def test_whatever_is_read_is_what_tomllib_reads(text: str, at: int, put: str) -> None:
    changed = text[:at] + put + text[at:]
    found = everyday(changed)

    try:
        expected = repr(tomllib.loads(changed))
    except tomllib.TOMLDecodeError:
        expected = repr(None)
    assert repr(found) in (expected, repr(None))
    assert repr(in_blocks(changed)) == repr(found)


def test_arrays_of_two_texts_are_two() -> None:
    one, other = everyday("a = [1]"), everyday("a = [1]")

    assert one == other == {"a": [1]}
    assert one is not None
    assert other is not None
    assert one["a"] is not other["a"]


def test_tables_that_are_the_same_are_one_block_and_otherwise_each_its_own() -> None:
    text = "[a.b]\nc = 1\n[a.d]\nc = 1\n[e]\nf = [1]\n[g]\nf = [1]"
    plain, blocks = everyday(text), in_blocks(text)

    assert plain == blocks
    assert plain is not None
    assert blocks is not None
    assert blocks["a"]["b"] is blocks["a"]["d"]
    assert plain["a"]["b"] is not plain["a"]["d"]
    assert blocks["e"]["f"] is not blocks["g"]["f"]


def test_records_are_read_quickly() -> None:
    left = [ref for ref, path in FILES.items() if everyday(path.read_text(encoding="utf-8")) is None]

    assert left == []
