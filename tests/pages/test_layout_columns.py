"""What stands in columns and where a line closes: parts of rows, bars, and when beside the answer."""

import attrs

from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.layout.pen import Pen
from paddock_tui.pages.layout.table import in_columns
from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.records.paths import Ref

WHEN = ("out 13:20 in 40 min", "out 13:20", "13:20")


def lines(page: Page, wide: int, cursor: int | None = None) -> list[str]:
    return [line.rstrip() for line in layout(page, View(wide, 24, cursor)).text().split("\n")]


def opened(label: str, value: str) -> Row:
    return Row(label, value, aside="ridden", kind="link", ref=Ref("session", label))


def test_like_parts_of_rows_stand_below_each_other_where_there_is_room() -> None:
    rows = (opened("a", "9:20 · wet · ines"), opened("b", "10:40 · drying · jo"), opened("c", "alone"))
    said = [row.value for row in in_columns(rows, Pen(80))]

    assert said == ["9:20  · wet    · ines", "10:40 · drying · jo  ", "alone"]
    assert in_columns(rows, Pen(40)) == rows
    assert in_columns(rows[2:], Pen(80)) == rows[2:]
    drawn = lines(Page("heading", (Section("title", rows),)), 80)
    assert drawn[2].index("ridden") == drawn[3].index("ridden")


def test_on_a_narrow_screen_a_bar_stands_behind_a_short_value_and_the_rest_under_the_cursor() -> None:
    bar = Bar(0.3)
    rows = (
        Row("traction control", "3", "range 0-10", "s8 p5", bar, path=("a",)),
        Row("wheelie control", "not known", "0-5", bar=attrs.evolve(bar, at=None), known=False, path=("b",)),
        Row("throttle", "trimmed by hand", bar=bar, path=("c",)),
    )
    page = Page("heading", (Section("title", rows),))
    away, there = lines(page, 40), lines(page, 40, 0)

    assert [line.split()[:4] for line in away[2:4]] == [
        ["least", "most"],
        ["traction", "control", "3", "···█········"],
    ]
    assert not any("range" in line for line in away)
    assert there[4:6] == ["    range 0-10", "    s8 p5"]
    assert there[3].endswith(away[3].split()[-1])
    at = [line.index("·") for line in away[3:] if "·" in line]
    assert at[0] == away[2].index("least")
    assert "trimmed by hand" in "".join(away)


def test_when_closes_the_line_of_the_answer_and_the_answer_is_whole() -> None:
    page = Page(
        "heading",
        (Section("title", (Row("a", "1"),)),),
        "CARE 1 · 2 missing · 4 not assessed · 3 to do",
        answer="First, 1 to answer: traction control low for a wet track, 3 of 0-10.",
        answer_mid="First, 1 to answer: traction control low",
        answer_short="Traction control low in the wet",
        when=WHEN,
    )

    said = {wide: lines(page, wide)[1] for wide in (120, 80, 60, 40, 34)}
    assert said[120].split("  ")[1] == page.answer
    assert said[120].endswith(WHEN[0])
    assert said[80] == f"  {page.answer_mid}{WHEN[0]:>38}"
    assert (said[60].endswith(WHEN[1]), page.answer_mid in said[60]) == (True, True)
    assert said[40] == f"  {page.answer_short}  {WHEN[2]}"
    # The answer whole comes before the time, which stands on the next line then.
    assert said[34] == f"  {page.answer_short}"
    assert lines(page, 34)[2].endswith(f" {WHEN[2]} ──")
    assert lines(page, 80)[2].endswith(" 4 not assessed · 3 to do ──")
    assert lines(page, 80)[0].endswith("CARE 1 · 2 missing")


def test_where_no_line_answers_the_first_rule_says_when() -> None:
    page = Page(
        "heading", (Section("title", (Row("a", "1"),), "a note"),), "CARE 1 · 4 not assessed", when=WHEN
    )

    assert lines(page, 80)[1].endswith(f" {WHEN[0]} · 4 not assessed ──")
    assert lines(page, 40)[1].endswith(f" {WHEN[2]} ──")
