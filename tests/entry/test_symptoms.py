"""Symptoms picked by letters, or by a digit from a list."""

from paddock_tui.entry.symptoms import SHORT, candidates, numbered, picked
from paddock_tui.records.session_parts import SYMPTOMS
from tests.every import every


@every(
    ("typed", "symptom"),
    [
        ("ch", "chatters"),
        ("wa", "wallows"),
        ("d", None),
        ("ha", None),
        ("ha2", "harsh on a series"),
        ("harsh on a", "harsh on a series"),
        ("3", SHORT[2]),
        ("0", None),
        ("ha9", None),
        ("zz", None),
        ("wobble", "bars wobble"),
    ],
)
def test_letters_that_fit_one_alone_pick_it_and_a_digit_picks_from_the_list(
    typed: str, symptom: str | None
) -> None:
    assert picked(typed) == symptom


def test_every_symptom_is_picked_by_at_most_four_letters_and_a_digit() -> None:
    for symptom in SYMPTOMS:
        ways = [symptom[:count] for count in range(2, 5)]
        found = [picked(way) or _by_digit(way, symptom) for way in ways]
        assert symptom in found, symptom


def test_the_short_list_has_one_digit_each() -> None:
    assert len(SHORT) == 9
    assert set(SHORT) <= set(SYMPTOMS)
    assert numbered(SHORT).startswith("1 dives  2 chatters")


def _by_digit(letters: str, symptom: str) -> str | None:
    found = candidates(letters)
    return picked(f"{letters}{found.index(symptom) + 1}") if symptom in found[:9] else None
