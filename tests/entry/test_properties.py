"""What holds for any line: it never crashes, never sets a part, and its print reads back."""

from typing import Any

from hypothesis import example, given
from hypothesis import strategies as st

from paddock_tui.entry import LONGEST, complete, completed, printed, read_line
from paddock_tui.records.edits import MISSING
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Path, Ref
from tests.entry import strategies
from tests.entry.contexts import BADGER, MAGPIE, OTTER, PROFILE, RIDER, context
from tests.entry.lines_refused import ERRORS
from tests.entry.lines_that_set import SETS
from tests.examples import examples

REFS = st.sampled_from([MAGPIE, OTTER, BADGER, PROFILE, RIDER])
BITS = sorted(
    {bit for line, _ in SETS for bit in line.split()}
    | {bit for _, line, _ in ERRORS if len(line) < 80 for bit in line.split()}
)
"""Pieces of the lines of the table, good and bad, to be put together at random."""

LINES = st.one_of(
    st.text(max_size=120),
    st.lists(st.sampled_from([*BITS, '"', "=", "-", ","]), max_size=14).map(" ".join),
    st.lists(st.sampled_from([*BITS, '"', "=", "-", ","]), max_size=8).map("".join),
)


@examples(100)
@given(text=LINES, ref=REFS)
@example(text='note "' * 100, ref=MAGPIE)
@example(text="9" * LONGEST, ref=MAGPIE)
@example(text="t" * LONGEST, ref=MAGPIE)
@example(text="a." * (LONGEST // 2), ref=MAGPIE)
@example(text='a."' * (LONGEST // 3), ref=MAGPIE)
@example(text="t4\x00\u202e\ud800", ref=MAGPIE)
def test_no_text_crashes_and_every_piece_is_a_value_of_the_record(text: str, ref: Ref) -> None:
    on = context(ref)
    line = read_line(text, on)

    assert line.text == text
    for piece in line.pieces:
        field = field_at(on.kind, piece.path, on.record, on.bike)
        assert field is not None
        assert piece.value is MISSING or not isinstance(field.shape.load(piece.value), InputError)
    spans = [(one.start, one.end) for held in (line.pieces, line.errors, line.questions) for one in held]
    assert all(0 <= start <= end <= len(text) for start, end in spans)


@examples(50)
@given(text=LINES, ref=REFS)
def test_a_line_that_is_not_clear_sets_nothing(text: str, ref: Ref) -> None:
    on = context(ref)
    line = read_line(text, on)

    assert line.clear == (not line.errors and not line.questions)
    assert bool(line.edits) == (line.clear and bool(line.pieces))


@examples(25)
@given(good=st.sampled_from([line for line, _ in SETS if "note " not in line and "aim" not in line]))
def test_one_unreadable_piece_keeps_all_others_from_being_set(good: str) -> None:
    assert read_line(good, context(MAGPIE)).clear

    assert read_line(f"{good} qqq", context(MAGPIE)).edits == {}
    assert read_line(f"qqq {good}", context(MAGPIE)).edits == {}


@examples(20)
@given(text=st.text(min_size=LONGEST + 1, max_size=LONGEST + 200), ref=REFS)
def test_a_line_that_is_too_long_is_not_read_at_all(text: str, ref: Ref) -> None:
    on = context(ref)
    line = read_line(text, on)

    assert not line.pieces
    assert len(line.errors) == 1
    assert complete(text, on) == ()


@examples(50)
@given(text=LINES, ref=REFS)
def test_what_any_clear_line_sets_is_printed_so_that_it_reads_back(text: str, ref: Ref) -> None:
    on = context(ref)
    line = read_line(text, on)

    again = read_line(printed(line.edits, on), on)
    assert again.clear
    assert again.edits == line.edits


@examples(75)
@given(data=st.data())
def test_any_edits_are_printed_so_that_they_read_back(data: st.DataObject) -> None:
    on = context(data.draw(st.sampled_from([MAGPIE, OTTER, BADGER])))
    edits: dict[Path, Any] = data.draw(strategies.edits(on))

    line = read_line(printed(edits, on), on)

    assert line.clear
    assert line.edits == edits
    assert all(type(line.edits[path]) is type(value) for path, value in edits.items())


@examples(30)
@given(text=LINES, ref=REFS)
def test_completing_never_takes_away_what_was_typed(text: str, ref: Ref) -> None:
    on = context(ref)
    for whole in complete(text, on):
        assert whole.casefold().startswith(text.casefold())
    assert completed(text, on).casefold().startswith(text.casefold())
