"""What the tab key offers."""

from paddock_tui.entry import complete, completed
from paddock_tui.records.paths import Ref
from tests.entry.contexts import MAGPIE, PROFILE, context
from tests.every import every


@every(
    ("text", "expected"),
    [
        ("whee", ["wheelie"]),
        ("t4 whee", ["t4 wheelie"]),
        ("mode wa", ["mode wading"]),
        ("mode ", ["mode homing", "mode soaring", "mode wading", "mode wild"]),
        ("sh both", ["sh both ways"]),
        ("sh both w", ["sh both ways"]),
        ("la armed", ["la armed", "la armed 2"]),
        ("tyres magpie-w", ["tyres magpie-wet"]),
        ("th g", ["th gentle"]),
        ("damping motor-set preset s", ["damping motor-set preset smooth track"]),
        ("mode zz", []),
        ("note wheel", []),
        ("note brake wheel", []),
        ('note "brake" whee', ['note "brake" wheelie']),
        ("zzz", []),
    ],
)
def test_the_last_word_is_completed_as_a_value_or_as_a_call(text: str, expected: list[str]) -> None:
    assert list(complete(text, context(MAGPIE))) == expected


def test_calls_and_names_are_offered_where_a_piece_begins() -> None:
    found = complete("t4 fro", context(MAGPIE))

    assert "t4 front-rebound" in found
    assert "t4 front-abs" in found
    assert all(line.startswith("t4 fro") for line in found)


@every(
    ("ref", "text", "expected"),
    [
        (MAGPIE, "fro", "front-"),
        (MAGPIE, "whee", "wheelie "),
        (MAGPIE, "mode s", "mode soaring "),
        (MAGPIE, "sh u", "sh up only "),
        (MAGPIE, "la a", "la armed"),
        (MAGPIE, "front-reb", "front-rebound "),
        (MAGPIE, "zzz", "zzz"),
        (PROFILE, "basel", "baseline "),
    ],
)
def test_a_line_goes_on_as_far_as_all_completions_agree(ref: Ref, text: str, expected: str) -> None:
    assert completed(text, context(ref)) == expected
