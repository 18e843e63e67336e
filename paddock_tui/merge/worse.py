"""Which of two answers stands while both are disputed: the worse one, whatever their times say."""

from collections.abc import Mapping
from typing import Final

from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import Path

_ANSWERS: Final = ("to fix", None, "ok", "not applicable")
"""Answers of a checklist, the worst first; None is an item that is open."""

_HIT: Final = frozenset({"head_contact", "concussion", "moving"})
"""What is worse where it is so."""


def worse(path: Path, ours: Value | Missing, theirs: Value | Missing) -> Value | Missing:
    """Return what stands of a disputed fact; MISSING where neither does, so that it is not known.

    Of an answered item the worse answer stands. Something that happened is not made undone by a merge, and
    what answers it (cleared, inspected, found and done) is open while two laptops differ about it.
    """
    if _is_check(path):
        return min(ours, theirs, key=_rank)
    if path[0] == "incidents" and len(path) == 2 and MISSING in (ours, theirs):
        return theirs if ours is MISSING else ours
    if path[0] == "incidents" and path[-1] in _HIT and True in (ours, theirs):
        return True
    return MISSING


def _is_check(path: Path) -> bool:
    return (len(path) == 2 and path[0] == "checks") or (len(path) == 5 and path[3:4] == ("checks",))


def _rank(answer: Value | Missing) -> tuple[int, str]:
    """Return how bad an answer is, lowest worst; a text after it keeps the choice the same for both sides."""
    status = answer.get("status") if isinstance(answer, Mapping) else None
    place = _ANSWERS.index(status) if status in _ANSWERS else 1
    return place, repr(sorted(answer.items(), key=str)) if isinstance(answer, Mapping) else ""
