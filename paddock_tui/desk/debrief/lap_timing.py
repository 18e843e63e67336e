"""Lap timing: whether the day of a session allows it, and what is said where it does not."""

from collections.abc import Mapping
from typing import Any

from paddock_tui.records.day import FORBIDDEN
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.garage import GarageFiles

WHY, MEND = "this day forbids lap timing", "where that is wrong: t, lap timing"
"""Why laps may not be entered, and what to do where they may."""


def forbidden(files: GarageFiles, session: Mapping[str, Any]) -> bool:
    """Return whether the day of a session, given as plain data, forbids that laps are timed."""
    named = session.get("day")
    return isinstance(named, str) and files.data(Ref("day", named)).get("timing") == FORBIDDEN


def is_lap(path: Path) -> bool:
    """Return whether a value of a session is a lap time."""
    return path[:1] in (("laps",), ("best_lap",))
