"""From a spelling to its unit: exactly as a file holds it, or as it is typed."""

import functools

from paddock_tui.quantities.spellings import SPELLINGS
from paddock_tui.quantities.table import ALIASES, AMBIGUOUS, TABLE
from paddock_tui.quantities.units import Unit

# Written with a capital M these would mean a million of something else.
_NEVER_CAPITAL_M = frozenset({"mm", "ml", "mbar", "mmHg"})

_UNWRITTEN = str.maketrans("", "", " \u00a0.*^·⋅-_")


def find(spelling: str) -> Unit | None:
    """Return the unit of an exact spelling, from the table, its aliases or beyond; None where unknown."""
    unit = TABLE.get(spelling) or TABLE.get(ALIASES.get(spelling, ""))
    return unit or _far(spelling)


def find_typed(spelling: str) -> Unit | None:
    """Return the unit of a typed spelling: as `find`, but case, spaces and joining dots do not matter."""
    if choices(spelling):
        return None
    if unit := TABLE.get(spelling) or TABLE.get(ALIASES.get(spelling, "")):
        return unit
    unit = TABLE.get(_loosely().get(_loose(spelling), ""))
    if unit and not (spelling.startswith("M") and unit.spelling in _NEVER_CAPITAL_M):
        return unit
    return _far(spelling)


def _far(spelling: str) -> Unit | None:
    # Records are written in everyday units, nearly all of them.
    from paddock_tui.quantities.far import far_unit

    return far_unit(spelling)


def known(spelling: str) -> Unit:
    """Return the unit of an exact spelling; raises ValueError where it is not known."""
    unit = find(spelling)
    if unit is None:
        raise ValueError(f"unknown unit: {spelling}")
    return unit


def choices(spelling: str) -> tuple[str, ...]:
    """Return what to write in place of a word whose size depends on the country; empty for any other."""
    return AMBIGUOUS.get(spelling.casefold(), ())


def nearest(spelling: str, dimension: str | None = None) -> str | None:
    """Return the table spelling most like this one, of a dimension if given; None where none is near."""
    # Only a mistake needs it: kept out of the way of starting up.
    from difflib import get_close_matches

    known_ = {
        loose: unit
        for loose, unit in _loosely().items()
        if dimension is None or TABLE[unit].dimension == dimension
    }
    near = get_close_matches(_loose(spelling), known_, n=1, cutoff=0.7)
    return known_[near[0]] if near else None


def _loose(spelling: str) -> str:
    return spelling.translate(_UNWRITTEN).casefold()


@functools.cache
def _loosely() -> dict[str, str]:
    """Return the table spelling for every spelling without case, spaces and joining dots."""
    loose = SPELLINGS | {_loose(alias): spelling for alias, spelling in ALIASES.items()}
    return loose | {_loose(spelling): spelling for spelling in TABLE}
