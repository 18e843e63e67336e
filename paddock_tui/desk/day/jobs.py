"""The jobs before the next start: whose each is, when it is due, who did it, and who looked at it."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.desk.day.countdown import Countdown
from paddock_tui.records.crew import Job
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles

NOT_JOBS = ("dress", "feel", "change", "start", "tyre choice")
"""What the clock counts down to and is the rider's own."""


@attrs.frozen
class JobState:
    """One job; `due` is when the clock wants it, `done` whether the record or somebody says so."""

    name: str
    job: Job
    due: dt.datetime | None
    done: bool


def jobs_of(session: Session, clock: Countdown | None) -> tuple[JobState, ...]:
    """List the jobs of a session, those that the clock knows first, in its order."""
    due = {one.what: one for one in clock.items if one.what not in NOT_JOBS} if clock is not None else {}
    keys = {name.replace(" ", "-"): name for name in due}
    found = []
    for key in dict.fromkeys((*keys, *session.jobs)):
        item = due.get(keys.get(key, ""))
        job = session.jobs.get(key, Job())
        done = job.done_by is not None or (item is not None and item.done)
        found.append(JobState(key, job, item.at if item is not None else None, done))
    return tuple(found)


def signing_job(files: GarageFiles, session: Ref, name: str, by: str, now: dt.datetime) -> Step | InputError:
    """Make the step that says who did a job, or who looked at one that is done: not the same person."""
    held = lookup(files.data(session), ("jobs", name))
    job = held if isinstance(held, Mapping) else {}
    done_by = job.get("done_by")
    if done_by is None:
        at = now.time().replace(second=0, microsecond=0, tzinfo=None)
        entry: dict[str, Value] = {"done_by": by, "at": at}
        if held is MISSING:
            edits = [Edit(("jobs", name), MISSING, entry)]
        else:
            edits = [Edit(("jobs", name, key), job.get(key, MISSING), value) for key, value in entry.items()]
        return Step(f"{name} done by {by}", (Change(session, tuple(edits)),))
    if done_by == by:
        return InputError(f"{by} did it", "somebody else's initials: a second pair of eyes")
    edit = Edit(("jobs", name, "checked_by"), job.get("checked_by", MISSING), by)
    return Step(f"{name} checked by {by}", (Change(session, (edit,)),))
