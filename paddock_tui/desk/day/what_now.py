"""The one next thing to do at this moment of the day: one function for every place that names it."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

import attrs

from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules import HOLD, RULES, Finding, Review, Where

BACK = "say that you are back"
BEGIN = "begin: rider, bike, tyres, day"
FIX = "fix the hold first"
WHEN = "say when it goes on, restart 14:40"
AGAIN = "read the dash again before the restart"


@attrs.frozen
class NextThing:
    """What to do next, the action that leads there, when it is due, and the row where it is entered."""

    what: str
    action: str
    due: dt.datetime | None = None
    where: Where | None = None

    def words(self, key: str) -> str:
        """Say it with the key that leads there."""
        return f"{self.what}, due {self.due:%H:%M}: {key}" if self.due is not None else f"{self.what}: {key}"


def next_thing(session: Mapping[str, Any] | None, judged: Review) -> NextThing | None:
    """Return the next thing for the current session and its review; None where nothing is to be done.

    `session` is its plain data, None where there is no session. On track the next thing is to be back; before
    that a hold comes first, then what is late, then the first of the to-do's, in the order of the clock.
    """
    if session is None:
        return NextThing(BEGIN, "guide")
    if "went_out" in session and "parked" not in session:
        return _stopped(session, judged) or NextThing(BACK, "in")
    if any(one.severity == HOLD and RULES[one.rule].todo is None for one in judged.findings):
        return NextThing(FIX, "review")
    late = not_done(judged)
    if late:
        todo = RULES[late[0].rule].todo
        what = (todo.what if todo is not None else "") or late[0].message.rstrip(".")
        return NextThing(f"late: {what}", _leads(late[0].where), None, late[0].where)
    if not judged.to_do:
        return None
    first = judged.to_do[0]
    return NextThing(first.what, _leads(first.where), first.due, first.where)


def _stopped(session: Mapping[str, Any], judged: Review) -> NextThing | None:
    """Return what a stop on the way asks: when it goes on, then to get ready again; None without one."""
    found = next((one for one in judged.findings if one.rule == "goes-on-after-a-stop"), None)
    if found is None:
        return None
    at = found.where.path if found.where is not None else ()
    events = session.get(at[0]) if at else None
    known = isinstance(events, Mapping) and any("restart" in one for one in events.values())
    return NextThing(AGAIN, "dash") if known else NextThing(WHEN, "entry")


def not_done(judged: Review) -> list[Finding]:
    """List the findings that say what is not done: what is due earliest first, of one minute the worst."""
    found = [one for one in judged.findings if RULES[one.rule].todo is not None and one.accepted is None]
    return sorted(found, key=_due)


def _due(one: Finding) -> tuple[int, int, int, str, str]:
    return -minutes_before(one), -one.severity, RULES[one.rule].rank, one.rule, one.subject


def minutes_before(finding: Finding) -> int:
    """Return how many minutes before going out a thing is due."""
    todo = RULES[finding.rule].todo
    return todo.minutes if todo is not None else 0


def _leads(where: Where | None) -> str:
    return _action(where.ref, where.path) if where is not None else "review"


def _action(ref: Ref, path: Path) -> str:
    """Return the action that leads to the page of a value."""
    if "checks" in path:
        return "checklist"
    if ref.kind == "session":
        return {"dash": "dash", "setup": "setup"}.get(path[0] if path else "", "session")
    return "day" if ref.kind == "day" else "review"
