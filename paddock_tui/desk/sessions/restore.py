"""Going back: one value as the check of a change, or the whole set-up of an earlier session, as one step."""

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Any

from paddock_tui.advice.ledger import LedgerEntry
from paddock_tui.desk.edits.values import setting_value
from paddock_tui.desk.lookup import glance, of_bike
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.records.differences import SetUpDifference
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.data import after, edits_toward, lookup
from paddock_tui.store.garage import GarageFiles

SETUP = "setup"
CHOOSE, TYPE = "choose another one", "p, then type it on its row"
LEAVE = "leave it as it is: j says what to change next"


def trying_back(files: GarageFiles, entry: LedgerEntry, now: dt.datetime) -> tuple[Ref, Step | InputError]:
    """Make the step that sets one change back in the next session of its bike, as the check of it.

    The session to come is changed; where the last one was ridden, the next is made. Why stands beside it.
    """
    about = Ref("session", entry.session.id)
    values = _old_values(files, entry)
    if isinstance(values, InputError):
        return about, values
    last = _last(files, entry.bike)
    if last is None:
        return about, InputError("no session of this bike", "a session to go on from", "g, then n makes one")
    why = f"re-test: check of {entry.label} in {entry.session.id}"
    said = f"re-test: {entry.label} {entry.changes[0].back}"
    seen = glance(last, files.data(last))
    if seen is not None and not seen.ridden:
        edits = [*_edits(files, last, values), *_edits(files, last, _reasons(entry.changes, why))]
        if not _edits(files, last, values):
            return last, Step("it stands so already", ())
        return last, Step(f"{said} in {last.id}", (Change(last, tuple(edits)),))
    made: Mapping[str, Any] = {SETUP: files.data(last).get(SETUP, {})}
    if all(lookup(made, path) == value for path, value in values.items() if path[0] == SETUP) and not any(
        path[0] != SETUP for path in values
    ):
        return last, Step("the last session stands so already: n makes the next one as it was", ())
    for path, value in {**values, **_reasons(entry.changes, why)}.items():
        made = after(made, Edit(path, lookup(made, path), value), lambda _: True)
    ref, step = next_session(files, last, now, made)
    return ref, step if isinstance(step, InputError) else Step(f"{said} in {ref.id}", step.changes)


def setting_back(
    files: GarageFiles, target: Ref, wanted: Ref, now: dt.datetime
) -> tuple[Ref, Step | InputError]:
    """Make the step that gives a session, or the next of a ridden one, an earlier one's whole set-up."""
    mine, theirs = files.data(target), files.data(wanted)
    if target == wanted:
        return target, InputError("its own set-up", "another session's", CHOOSE)
    if mine.get("bike") != theirs.get("bike") or not isinstance(theirs.get("bike"), str):
        return target, InputError(f"{wanted.id} is of another bike", "a session of this bike", CHOOSE)
    setup, held = theirs.get(SETUP), mine.get(SETUP, {})
    if not isinstance(setup, Mapping) or not setup or not isinstance(held, Mapping):
        return target, InputError(
            f"{wanted.id} has no set-up that can be read", "a session with a set-up", CHOOSE
        )
    label = f"restored the set-up of {wanted.id}"
    seen = glance(target, mine)
    if seen is not None and seen.ridden:
        ref, step = next_session(files, target, now, {SETUP: setup})
        return ref, step if isinstance(step, InputError) else Step(f"{label} in {ref.id}", step.changes)
    edits = tuple(edits_toward(held, setup, (SETUP,)))
    return target, Step(label, (Change(target, edits),)) if edits else Step("it stands so already", ())


def _old_values(files: GarageFiles, entry: LedgerEntry) -> dict[Path, Value] | InputError:
    """Return what each value was, as the file of the session before has it."""
    if entry.danger_back:
        return InputError(
            f"the way back: {entry.danger_back}", "a way back that no danger is known of", LEAVE
        )
    if entry.source is None or not entry.changes:
        return InputError("what it was before is not known", "a change with its session before", CHOOSE)
    data = files.data(Ref("session", entry.source.id))
    found: dict[Path, Value] = {}
    for one in entry.changes:
        old = lookup(data, one.path)
        if old is MISSING:
            return InputError(f"{one.label} was not known before", "a value to go back to", TYPE)
        if not one.listed:
            return InputError(f"{one.label} is not on this bike any more", "a value that the bike has", TYPE)
        if one.path == ("tyres",) and "retired" in files.data(Ref("tyres", str(old))):
            return InputError(f"tyre set {old} is retired", "a set that is in use", TYPE)
        found[one.path] = old
    return found


def _reasons(changes: Sequence[SetUpDifference], why: str) -> dict[Path, Value]:
    return {("because", *one.about, "why"): why for one in changes}


def _edits(files: GarageFiles, ref: Ref, values: Mapping[Path, Value]) -> list[Edit]:
    steps = [setting_value(files, ref, path, value) for path, value in values.items()]
    return [
        edit
        for step in steps
        for change in step.changes
        if isinstance(change, Change)
        for edit in change.edits
    ]


def _last(files: GarageFiles, bike: str) -> Ref | None:
    placed = of_bike(files, bike)
    return placed[-1][1] if placed else None
