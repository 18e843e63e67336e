"""Pages in a rectangle of cells: committed looks at four sizes, and what holds for any page at any size."""

from pathlib import Path

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.pages import bench, ledger, limits
from paddock_tui.pages.layout import Editor, Prompt, View, layout, text_of
from paddock_tui.pages.layout.findings import block_height
from paddock_tui.pages.layout.header import verdict_forms
from paddock_tui.pages.review import SHORT_CAUTION
from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.text import width
from tests.every import every
from tests.examples import examples

LOOKS = Path(__file__).parent / "looks"
VERDICT = "CARE 2 (1 to answer) · 5 not assessed · 4 to do"
HINTS = ("e entry", "w why", "r review", "? help")
SIZES = [(40, 20), (60, 20), (80, 24), (120, 40)]


def field(label: str, value: str = "", quiet: str = "", **more: object) -> Row:
    return attrs.evolve(Row(label, value, quiet, path=("setup", label)), **more)  # type: ignore[arg-type]


def finding(severity: str, words: str) -> Row:
    return Row(words, kind="finding", severity=severity)


PAGE = Page(
    "session 3 · Sat 16 May 10:40 · north loop · the blue one",
    (
        Section(
            "set-up of this session",
            (
                field("riding mode", "open", aside="leaves everything but ABS free"),
                field("traction", "3", "of 0-10", bar=Bar(0.3, steps=11)),
                field("wheelie", "off", "of 1-6", bar=Bar(None)),
                field("front ABS", "2", "of 1-4", shut="fixed by the riding mode", bar=Bar(0.5)),
                field(
                    "engine braking",
                    "3",
                    "of 1-5",
                    bar=Bar(None, ("holds", "frees"), two_ended=True),
                    aside="which end brakes least? not known",
                ),
                field("steering damper", "8 clicks", "of 20", bar=Bar(0.4, ("light", "firm"), True)),
                field("launch", known=False),
            ),
        ),
        Section(
            "suspension, by hand",
            (
                field(
                    "front preload",
                    "6.5 turns",
                    "of 15",
                    aside="counted 12 May on the stand, both legs the same",
                ),
                field("front rebound", "10 clicks", "of 24", aside="assumed"),
                field("rear tyre pressure, hot", "2,10 bar", trouble="a decimal comma: write 2.10 bar"),
            ),
            note="counted from closed",
        ),
        Section("notes", (Row("the rear steps out over the ripples before turn 4", kind="text", key="1"),)),
        Section("also", (Row("tyres", "the second set", kind="link"), Row("older", kind="heading"))),
    ),
    VERDICT,
    (
        finding("serious", "Little traction help for a damp track: 3 of 0-10."),
        finding("note", "Rear pressure was read six minutes after parking: warm, not hot."),
        finding("note", "Two things changed at once: neither can be told from the other."),
    ),
)
PLAIN = {"last": "traction 4 -> 3, u undoes", "hints": HINTS}


def view(size: tuple[int, int], cursor: int = 1, **more: object) -> View:
    return attrs.evolve(View(*size, cursor=cursor), **{**PLAIN, **more})  # type: ignore[arg-type]


VIEWS = {
    **{f"page-{wide}x{high}": view((wide, high)) for wide, high in SIZES},
    "cut-40x20": view((40, 20), 7),
    "cut-80x24": view((80, 24), 9),
    "editor-40x20": view((40, 20), 9, editor=Editor("2,10 ba", 4, "a decimal comma: write 2.10 bar")),
    "editor-80x24": view((80, 24), 1, editor=Editor("33", 2, "33 is not one of 0-10")),
    "plain-40x20": view((40, 20), 8, plain=True),
    "low-40x8": view((40, 8), 8),
    "question-40x20": view(
        (40, 20), 1, prompt=Prompt("entry", Editor("t3 hot 2.1", 10), ("traction 4 -> 3",))
    ),
}


def drawn(name: str) -> str:
    wide = VIEWS[name].width
    return "".join(
        f"{line}{' ' * (wide - width(line))}|\n" for line in layout(PAGE, VIEWS[name]).text().split("\n")
    )


@every("name", VIEWS)
def test_a_page_looks_as_committed(name: str) -> None:
    assert drawn(name) == (LOOKS / f"{name}.txt").read_text(encoding="utf-8")


def test_the_verdict_is_cut_from_the_right_and_its_word_never() -> None:
    assert verdict_forms(VERDICT) == [
        VERDICT,
        "CARE 2 (1 to answer) · 5 not assessed",
        "CARE 2 (1 to answer)",
        "CARE 2",
        "CARE",
    ]
    assert verdict_forms("NO FINDINGS") == ["NO FINDINGS"]
    assert verdict_forms("NO FINDINGS · ridden") == ["NO FINDINGS · ridden", "ridden"]
    assert verdict_forms("CARE 2 · ridden; went out CARE 3")[-3:] == [
        "CARE 2 · ridden",
        "CARE · ridden",
        "ridden",
    ]
    assert verdict_forms("NOT YET 3 missing: the surface · 2 to do")[-1] == "NOT YET 3"
    assert verdict_forms("not assessed: no session")[-1] == "not assessed"


@every("wide", range(4, 90))
def test_the_verdicts_word_stands_at_every_width(wide: int) -> None:
    assert "CARE" in text_of(layout(PAGE, view((wide, 24))).lines[0])


def test_a_finding_that_goes_changes_only_the_lines_of_the_findings() -> None:
    before = layout(PAGE, view((80, 24)))
    after = layout(attrs.evolve(PAGE, findings=()), view((80, 24)))

    changed = [at for at in range(24) if before.lines[at] != after.lines[at]]

    assert changed
    assert min(changed) >= 24 - 1 - block_height(24)


def test_a_value_that_changes_changes_its_own_line_only() -> None:
    rows = list(PAGE.sections[0].rows)
    rows[1] = attrs.evolve(rows[1], value="10", bar=Bar(1.0, steps=11))
    other = attrs.evolve(
        PAGE, sections=(attrs.evolve(PAGE.sections[0], rows=tuple(rows)), *PAGE.sections[1:])
    )
    before, after = layout(PAGE, view((80, 24))), layout(other, view((80, 24)))

    assert [before.owners[at] for at in range(24) if before.lines[at] != after.lines[at]] == [1]


@every("size", SIZES)
def test_under_the_cursor_nothing_stays_cut(size: tuple[int, int]) -> None:
    for cursor, row in enumerate(PAGE.rows()):
        laid = layout(PAGE, view(size, cursor))
        mine = [text_of(line) for line, owner in zip(laid.lines, laid.owners, strict=True) if owner == cursor]
        said = "".join(mine).replace(" ", "")
        for words in (row.label, row.value, row.aside, row.shut, row.trouble):
            assert words.replace(" ", "") in said, (row.label, words)


def test_findings_that_do_not_fit_are_counted_and_the_key_named() -> None:
    many = attrs.evolve(PAGE, findings=PAGE.findings * 4)

    assert "── findings ── 8 more, r shows them ──" in layout(many, view((80, 24))).text()


def test_a_page_that_keeps_no_room_for_findings_says_its_caution_below() -> None:
    page = attrs.evolve(PAGE, judged=False, caution="Nothing found is not a promise.")

    lines = layout(page, view((80, 24))).text().split("\n")

    assert lines[-2].strip() == "Nothing found is not a promise."
    assert "findings" not in "".join(lines)


LONG = "Nothing found is not a promise; " * 6 + "come in."


@pytest.mark.parametrize(("wide", "said"), [(100, LONG), (40, "Short and whole.")])
def test_a_caution_is_shown_whole_or_in_its_short_form_and_never_cut(wide: int, said: str) -> None:
    page = attrs.evolve(PAGE, judged=False, caution=LONG, caution_short="Short and whole.")

    shown = " ".join(layout(page, view((wide, 20))).text().split())

    assert said in shown
    last = " ".join(layout(page, view((wide, 20), len(page.rows()) - 1)).text().split())
    assert LONG in last


@every("caution", [SHORT_CAUTION, bench.CAUTION_SHORT, ledger.CAUTION_SHORT, limits.CAUTION_SHORT])
def test_a_short_caution_has_room_on_the_narrowest_screen(caution: str) -> None:
    assert 10 < width(caution) <= 38


def test_the_caret_is_a_span_of_its_own() -> None:
    laid = layout(PAGE, VIEWS["editor-40x20"])

    assert [text for line in laid.lines for text, style in line if style == "caret"] == [" "]


def test_a_long_text_is_shown_around_its_caret() -> None:
    editor = Editor("abcdefghij" * 20, 100)
    laid = layout(PAGE, view((40, 20), 1, editor=editor))
    line = laid.lines[laid.owners.index(1)]

    assert [text for text, style in line if style == "caret"] == ["a"]
    assert [text[0] + text[-1] for text, style in line if style == "edit"] == ["…j", "b…"]


words = st.text(max_size=12) | st.sampled_from(
    ["", "宽" * 30, "é" * 40, "a\u0301" * 9, "\x1b[2J", "long " * 20]
)
bars = st.builds(Bar, st.none() | st.floats(0, 1), st.tuples(words, words), st.booleans(), st.integers(0, 20))
kinds = st.sampled_from(["field", "text", "finding", "link", "heading"])
rows_ = st.builds(
    Row,
    words,
    words,
    words,
    words,
    st.none() | bars,
    kinds,
    shut=words,
    trouble=words,
    severity=words,
    known=st.booleans(),
    key=words,
)
sections = st.builds(Section, words, st.lists(rows_, max_size=6).map(tuple), words)
pages = st.builds(
    Page,
    words,
    st.lists(sections, max_size=4).map(tuple),
    words | st.just(VERDICT),
    st.lists(rows_, max_size=5).map(tuple),
    words,
    st.booleans(),
)
editors = st.builds(Editor, words, st.integers(0, 12), words)


@examples(60)
@given(pages, st.integers(1, 200), st.integers(1, 60), st.integers(0, 23), st.integers(-3, 90), st.data())
def test_any_page_at_any_size_fits_and_shows_its_cursor(
    page: Page, wide: int, high: int, cursor: int, top: int, data: st.DataObject
) -> None:
    laid = layout(
        page,
        View(
            wide,
            high,
            cursor,
            top,
            data.draw(st.none() | editors),
            data.draw(st.none() | st.builds(Prompt, words, editors, st.tuples(words))),
            data.draw(words),
            tuple(data.draw(st.lists(words, max_size=3))),
            plain=data.draw(st.booleans()),
        ),
    )

    assert len(laid.lines) == len(laid.owners) == high
    assert all(width(text_of(line)) <= wide for line in laid.lines)
    assert "\x1b" not in laid.text()
    if cursor < len(page.rows()) and high >= 4:
        assert cursor in laid.owners


@examples(25)
@given(pages, st.integers(1, 100), st.integers(1, 40), words)
def test_a_plain_terminal_is_sent_ascii_alone(page: Page, wide: int, high: int, last: str) -> None:
    assert layout(page, View(wide, high, last=last, plain=True)).text().isascii()


@every(
    ("columns", "last", "clock", "begins"),
    [
        (80, "", "out 13:20 in 25 min · kit on in 15 min", "out 13:20 in 25 min · kit on in 15 min  "),
        (40, "", "out 13:20 in 25 min · kit on in 15 min", "out 13:20 in 25 min  "),
        (20, "", "out 13:20 in 25 min · kit on in 15 min", " "),
        (80, "traction 3 -> 4, u undoes", "out 13:20 in 25 min", "traction 3 -> 4, u undoes"),
    ],
)
def test_the_clock_stands_in_the_last_line_while_nothing_else_is_said_and_takes_half_of_it_at_most(
    columns: int, last: str, clock: str, begins: str
) -> None:
    page = attrs.evolve(PAGE, clock=clock)
    drawn = layout(page, View(columns, 20, 0, last=last, hints=("? help",))).lines[-1]

    assert text_of(drawn).startswith(begins)
    assert text_of(drawn).endswith("? help")


HOLD = attrs.evolve(
    finding("hold", "The front brake lever is not firm."),
    more=(("why", "it will not stop the bike"), ("do", "Find out why; bleed it; then feel it hot.")),
    path=("setup", "traction"),
)
HELD = attrs.evolve(
    PAGE,
    verdict="HOLD 1 · 5 not assessed",
    findings=(HOLD, *PAGE.findings),
    clock="HOLD: stay in",
    answer="NO: The front brake lever is not firm.",
)


@every("size", [(80, 24), (40, 20), (120, 40)])
@every("plain", [False, True])
def test_a_hold_looks_like_nothing_else_without_colour_too(size: tuple[int, int], plain: bool) -> None:
    laid = layout(HELD, View(*size, 1, plain=plain))
    lines = laid.text().split("\n")
    block, heavy = ("#", "=") if plain else ("█", "━")

    assert lines[0].startswith(block)
    assert lines[0].endswith(block)
    assert width(lines[0]) == size[0]
    assert ("DO NOT GO OUT" in lines[0]) or ("STAY IN" in lines[0])
    assert [style for text, style in laid.lines[0] if text.strip(f"{block} ")] == ["verdict-hold"]
    assert lines[1].strip() == "NO: The front brake lever is not firm."
    assert lines[2].startswith(heavy * 2)
    assert lines[-1].startswith("HOLD: stay in")
    assert [line for line in lines if line.startswith(f">{block}traction")]
    hold = next(at for at, line in enumerate(lines) if line.startswith(f" {block}hold"))
    assert "do" in lines[hold + 1]
    assert "Find out why" in lines[hold + 1]


def test_a_hold_of_a_session_that_was_ridden_is_no_bar() -> None:
    ridden = attrs.evolve(HELD, verdict="HOLD 1 · ridden · 5 not assessed")

    assert layout(ridden, View(80, 24, 1)).text().startswith("session 3")


def test_a_finding_takes_one_line_until_it_is_under_the_cursor() -> None:
    row = attrs.evolve(HOLD, severity="serious", range="to answer")
    page = Page("", (Section("findings", (row, attrs.evolve(row, key="2"))),), judged=False)
    lines = layout(page, View(80, 24, 1)).text().split("\n")

    assert lines[2] == " ▌serious  The front brake lever is not firm." + " " * 26 + "to answer"
    assert [line[:18].rstrip() for line in lines[3:6]] == [
        ">▌serious  The fro",
        " ▌         why   i",
        " ▌         do    F",
    ]
    assert not lines[6].strip()


def test_numbers_end_in_one_column_and_their_units_begin_in_one() -> None:
    rows = (field("fork height", "5 mm"), field("front start", "2.15 bar"), field("track", "wet"))
    lines = layout(Page("", (Section("", rows),), judged=False), View(80, 24, None)).text().split("\n")

    assert [line.split("  ", 2)[-1].strip() for line in lines[2:5]] == ["5 mm", "2.15 bar", "wet"]
    assert lines[2].index(" mm") == lines[3].index(" bar")
    assert lines[4].index("wet") == lines[3].index("2.15")
