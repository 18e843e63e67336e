"""A desk over a garage for one test, its clock stopped."""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

from paddock_tui.desk import Desk, setting
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref

NEXT = Ref("session", "2026-06-20-4-magpie")
"""The next session of the sample garage."""

BEFORE = dt.datetime(2026, 6, 20, 8, 0)
"""A time at which nothing of the sample's next session is due yet."""


def at_desk(root: Path, now: dt.datetime = BEFORE) -> Desk:
    return Desk(root, lambda: now)


def typed(desk: Desk, ref: Ref, *pairs: tuple[str, str], units: Units | None = None) -> Step:
    """Give the step for what was typed; it must be readable."""
    step = setting(desk.files, ref, pairs, units)
    assert isinstance(step, Step), step
    return step


def refused(desk: Desk, ref: Ref, *pairs: tuple[str, str], units: Units | None = None) -> list[str]:
    """Give the sentences for what was typed; it must not be readable."""
    found = setting(desk.files, ref, pairs, units)
    assert isinstance(found, list), found
    return [trouble.sentence() for trouble in found]


def names(refs: Sequence[Ref]) -> list[str]:
    return [ref.id for ref in refs]


def until_found(desk: Desk) -> None:
    """Wait until what is worked out aside has ended; in any thread."""
    for running in list(desk.answers._running.values()):
        assert running.ended.wait(10)
