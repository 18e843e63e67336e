"""The short table holds together, and spellings lead to one unit."""

import pytest

from paddock_tui.quantities.lookup import find, find_typed, known, nearest
from paddock_tui.quantities.table import ALIASES, AMBIGUOUS, TABLE
from tests.every import every


def squeezed(spelling: str) -> str:
    return "".join(char for char in spelling.casefold() if char not in " .*^·")


def test_every_alias_stands_for_a_table_unit_and_is_none_itself() -> None:
    assert set(ALIASES.values()) <= set(TABLE)
    assert not set(ALIASES) & set(TABLE)


def test_an_ambiguous_word_is_no_unit_and_names_units() -> None:
    assert not set(AMBIGUOUS) & (set(TABLE) | set(ALIASES))
    assert {word for words in AMBIGUOUS.values() for word in words} <= set(TABLE)
    assert [None] * len(AMBIGUOUS) == [find(word) for word in AMBIGUOUS]
    assert [None] * len(AMBIGUOUS) == [find_typed(word.upper()) for word in AMBIGUOUS]


def test_no_two_units_are_spelt_alike_but_for_case_and_spaces() -> None:
    meanings: dict[str, set[str]] = {}
    for spelling, unit in [*ALIASES.items(), *((unit, unit) for unit in TABLE)]:
        meanings.setdefault(squeezed(spelling), set()).add(unit)

    assert [units for units in meanings.values() if len(units) > 1] == []


@every("spelling", [*TABLE, *ALIASES])
def test_typed_and_exact_lookup_agree_on_exact_spellings(spelling: str) -> None:
    assert find(spelling) is find_typed(spelling)
    assert find(spelling) is TABLE[ALIASES.get(spelling, spelling)]


def test_nearest() -> None:
    assert nearest("baar") == "bar"
    assert nearest("PSII") == "psi"
    assert nearest("xyzzy") is None


def test_an_unknown_unit_is_named() -> None:
    with pytest.raises(ValueError, match="unknown unit: baar"):
        known("baar")
