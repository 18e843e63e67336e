"""Incidents as matters: how they are found in an outing, and what is missing of their answer."""

from collections.abc import Iterator

from paddock_tui.matters.core import Opened, Outing, numbered
from paddock_tui.matters.order import is_early
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Incident, Symptom

EARLY = "early"
"""Missing of an answer that is dated before what it stands beside: one that is not."""

WORDS = {
    "found": "what was found",
    "done": "what was done",
    "by": "by whom",
    "test": "how it was tried",
}


def incidents(outing: Outing, *what: str) -> Iterator[tuple[str, Incident]]:
    """List the incidents of these words, by number."""
    return ((number, one) for number, one in numbered(outing.session.incidents) if one.what in what)


def symptoms(outing: Outing, *what: str) -> Iterator[tuple[str, Symptom]]:
    """List the symptoms of these words, by number."""
    return ((number, one) for number, one in numbered(outing.session.symptoms) if one.what in what)


def part_missing(one: Incident | Symptom, session: Session, *, tested: bool = False) -> tuple[str, ...]:
    """Return what is missing of the answer about a part; in one line under mended it is whole.

    What was found alone is whole where nothing had to be done: an overflow, dew, the fuel reserve.
    """
    wanted = ("found", "done", "by", *(("test",) if tested else ()))
    missing = tuple(key for key in wanted if not (getattr(one, key) or "").strip())
    if isinstance(one, Incident) and (one.mended or "").strip():
        missing = ()
    return (EARLY,) if not missing and is_early(one, session) else missing


def what_is_missing(one: Opened) -> str:
    """Say what is missing of an answer that was begun."""
    if EARLY in one.missing or (len(one.missing) in (0, 3, 4) and "found" in one.missing):
        return ""
    return f" Not written yet: {', '.join(WORDS[key] for key in one.missing)}." if one.missing else ""
