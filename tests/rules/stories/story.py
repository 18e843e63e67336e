"""A story: the outings before, the one to come, and exactly what it is judged to be."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.rules import Review
from tests.rules.situations import Change, Data, look, put, went_before

QUIET: Data = {"parked": dt.time(9, 30), "ridden_laps": 6, "did": "nothing", "happened": "nothing"}
"""An outing that was ridden and debriefed, and of which nothing is to be told."""


@attrs.frozen
class Story:
    """`before` are the outings so far, each by what differs from the usual one; `changes` the one to come.

    `found` is all that is found at caution and above. `clean` says that it is an ordinary day: nothing in it
    ought to alarm anybody.
    """

    name: str
    verdict: str
    found: frozenset[tuple[str, str, str]]
    before: tuple[Data, ...]
    changes: tuple[Change, ...]
    more: dict[str, Any] = attrs.field(factory=dict)
    clean: bool = False

    def review(self) -> Review:
        """Judge the outing to come."""
        if self.before and "history" not in self.more:
            return look(*self.changes, history=went_before(*self.before, hot_read=False), **self.more)
        return look(*self.changes, **self.more)


def clean(name: str, *changes: Change, before: tuple[Data, ...] = (QUIET, QUIET), **more: Any) -> Story:
    """Tell an ordinary day, after which nothing is found and nothing is missing."""
    return Story(name, "NO FINDINGS", frozenset(), before, changes, more, clean=True)


def story(
    name: str,
    verdict: str,
    found: set[tuple[str, str, str]],
    *changes: Change,
    before: tuple[Data, ...] = (QUIET, QUIET),
    **more: Any,
) -> Story:
    """Tell a day on which something is wrong, or not known yet."""
    return Story(name, verdict, frozenset(found), before, changes, more)


def hot(front: str = "2.40 bar", rear: str = "2.20 bar") -> Data:
    """Read hot pressures."""
    return {"pressures.hot": {"front": front, "rear": rear, "at": dt.time(9, 31)}}


def last(**values: Any) -> tuple[Data, Data]:
    """Two outings, of which the last one holds these values as well; double underscores are dots."""
    return QUIET, {**QUIET, **{key.replace("__", "."): value for key, value in values.items()}}


def group(word: str) -> Change:
    """Name the rider's group."""
    return put("rider", "group", word)


def surface(word: str) -> Change:
    """Name the surface."""
    return put("session", "surface", word)
