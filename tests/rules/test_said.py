"""Every rule says in each of its cases what is committed: words, place, remedy and what a key would set."""

import pytest

from tests.rules.cases import CASES
from tests.rules.said import FOLDER, OF_LIMITS, text_of, themes

THEMES = themes()
RENEW = "python -m tests.rules.said writes it anew; then read what changed"


@pytest.mark.parametrize("theme", THEMES)
def test_the_rules_of_a_module_say_what_is_committed(theme: str) -> None:
    assert text_of(THEMES[theme]) == (FOLDER / f"{theme}.txt").read_text(encoding="utf-8"), RENEW


def test_no_text_is_left_of_a_module_that_is_gone() -> None:
    assert {file.stem for file in FOLDER.glob("*.txt")} == {*THEMES, OF_LIMITS.stem}


def test_every_case_that_raises_is_written_with_its_place_and_its_remedy() -> None:
    """A case that raised nothing would be left out without a word."""
    for rules in THEMES.values():
        text = text_of(rules)
        for rule in rules:
            mine = text.split(f"== {rule}: ")[1].partition("\n== ")[0]
            for at, case in enumerate(CASES[rule].raising):
                assert f"\n-- {at} {case.subject} [{case.severity}] at " in mine
