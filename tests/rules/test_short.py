"""The short message of every rule: it names the danger, and no line of 40 cells cuts it."""

import pytest

from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.rules import RULES
from paddock_tui.rules.short import MOST, SHORT, short_message
from paddock_tui.text import width
from tests.every import every
from tests.rules.said import FOLDER, themes

THEMES = themes()
NAMES = ("traction", "front", "rear", "engine-braking", "front-compression-slow", "a" * 60, "横" * 30)


def test_every_rule_has_a_short_message_and_no_other_has() -> None:
    assert set(SHORT) == set(RULES)
    assert len(set(SHORT.values())) == len(SHORT)


@every("theme", THEMES)
def test_the_short_words_of_a_rule_are_those_committed_with_what_it_says(theme: str) -> None:
    said = (FOLDER / f"{theme}.txt").read_text(encoding="utf-8")
    for rule in THEMES[theme]:
        mine = said.partition(f"== {rule}: ")[2].partition("\n== ")[0]
        assert f"\nshort: {SHORT[rule]}\n" in mine


@every("rule", sorted(RULES))
def test_no_narrow_line_cuts_it(rule: str) -> None:
    for said in {short_message(rule, name) for name in NAMES}:
        assert 0 < width(said) <= MOST
        for severity in ("hold", "serious", "caution", "note"):
            row = Row(
                severity, "long " * 20, short=said, severity=severity, kind="finding", more=(("do", ""),)
            )
            below = Page("p", (Section("s", (Row("x", "1"),)),), findings=(row,))
            for page in (below, Page("p", (Section("s", (Row("x", "1"), row)),), judged=False)):
                assert any(said in line for line in layout(page, View(40, 20)).text().splitlines()), said


@pytest.mark.parametrize("more", [0, 1])
def test_the_answer_is_short_where_the_line_is(more: int) -> None:
    page = Page("p", (), answer="First, 1 to answer: " + "long " * 9, answer_short="Front tyre lost air")

    assert "  Front tyre lost air" in layout(page, View(40 + more, 20)).text()
    assert "to answer" in layout(page, View(80, 24)).text()
