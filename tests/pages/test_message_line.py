"""A finding on one line: long names from the records are cut, the words around them stay."""

import pytest

from paddock_tui.pages.message_line import message_line
from paddock_tui.rules import Finding
from tests.rules.situations import Change, look, put

LONG = "very-" * 20 + "long"


def the_one(rule: str, *changes: Change) -> Finding:
    return next(one for one in look(*changes).findings if one.rule == rule)


@pytest.mark.parametrize(
    ("rule", "change", "begins", "ends"),
    [
        ("not-on-this-bike", put("session", "setup.controls." + LONG, "off"), "This bike has no ", "…."),
        (
            "dash-in-another-riding-mode",
            put("session", "dash.shown_mode", LONG),
            "The dash shows riding mode very-",
            "…, the plan is open.",
        ),
    ],
)
def test_what_is_quoted_is_cut_and_the_sentence_stays(
    rule: str, change: Change, begins: str, ends: str
) -> None:
    line = message_line(the_one(rule, change))

    assert len(line) == 78
    assert line.startswith(begins)
    assert line.endswith(ends)
