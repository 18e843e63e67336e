"""The calls that a bike file gives to its controls and adjusters, and what keeps one from being used."""

import re
from collections.abc import Container

from paddock_tui.entry.builtin import LONE, VALUE_WORDS, fixed_calls
from paddock_tui.quantities.table import ALIASES, AMBIGUOUS, TABLE
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Path

_CALL = re.compile(r"[a-z]+(?:-[a-z]+)*")
_LONGEST = 20

UNIT_WORDS = frozenset(unit.casefold() for unit in (*TABLE, *ALIASES, *AMBIGUOUS))
"""The spellings of everyday units, small letters: no call may be one."""

BUILT_IN = fixed_calls()


def own_calls(bike: Bike) -> dict[Path, tuple[str, Path]]:
    """List the calls a bike file gives, by path in the set-up, each with where it stands in the file."""
    found: dict[Path, tuple[str, Path]] = {}
    for name, control in bike.controls.items():
        if control.call is not None:
            found[("setup", "controls", name)] = (control.call, ("controls", name, "call"))
    for name, adjuster in bike.adjusters.items():
        if adjuster.call is not None:
            found[("setup", "adjusters", name)] = (adjuster.call, ("adjusters", name, "call"))
    return found


def why_not(call: str, built_in: str, taken: Container[str]) -> str:
    """Say why a call of a bike file cannot be used; empty where it can.

    `built_in` is the call that this control has anyway, `taken` are the words of all others.
    """
    if len(call) > _LONGEST or not _CALL.fullmatch(call):
        return f"small letters, hyphens between them, at most {_LONGEST}"
    if call == built_in:
        return ""
    if call in UNIT_WORDS:
        return "a word that is no unit"
    if call in LONE or call in VALUE_WORDS:
        return "a word that means no value by itself"
    if call in BUILT_IN or call in taken:
        return "a word that nothing else has"
    return ""
