"""The next change, taken into the next session with its reason, as one step."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.advice.next_change import Proposal
from paddock_tui.desk.edits.values import setting_value
from paddock_tui.desk.lookup import Glance, order
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.tyre_targets import COLD_TARGETS
from paddock_tui.records.edits import Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.store.garage import GarageFiles


def ridden_one(files: GarageFiles, subject: Ref | None) -> Ref | None:
    """Return the session that a next change is about: this one if it was ridden, else the one it came
    from.
    """
    seen: set[Ref] = set()
    here = subject
    while here is not None and here not in seen and here.kind == "session":
        seen.add(here)
        loaded = files.read(here)
        session = loaded.record if loaded is not None else None
        if not isinstance(session, Session):
            return None
        if is_ridden(session):
            return here
        here = Ref("session", session.copied_from) if session.copied_from is not None else None
    return None


def next_of(files: GarageFiles, ridden: Ref) -> Ref | None:
    """Return the session to come that was made from this one; None where there is none yet."""
    found = []
    for ref in files.listing("session"):
        row = files.rows.of(ref)
        # Of the many that were ridden no file is read.
        if row is not None and not row.ridden and files.data(ref).get("copied_from") == ridden.id:
            found.append(Glance(ref, row.date, row.number, row.start, row.ridden))
    return max(found, key=order).ref if found else None


def taking_change(
    files: GarageFiles, ridden: Ref, proposal: Proposal, now: dt.datetime
) -> tuple[Ref, Step | InputError]:
    """Make the step that takes a proposal into the next session, which is made where there is none yet.

    'None: same again' makes the next session as this one was. The reason stands beside each value.
    """
    there = next_of(files, ridden)
    values, reasons = _values(proposal), _reasons(proposal)
    if there is None:
        made: dict[str, Value] = {"aim": proposal.aim} if proposal.aim else {}
        if values:
            setup = files.data(ridden).get("setup")
            made["setup"] = _merged(setup if isinstance(setup, Mapping) else {}, values)
            made["because"] = reasons
        ref, step = next_session(files, ridden, now, made)
        return ref, step if isinstance(step, InputError) else Step(
            f"{_label(proposal)} in {ref.id}", step.changes
        )
    unlike = _pressure_for_other_conditions(files, ridden, there, values)
    if unlike:
        return there, unlike
    edits = [edit for path, value in values.items() for edit in _edits(files, there, ("setup", *path), value)]
    if proposal.aim and "aim" not in files.data(there):
        edits += _edits(files, there, ("aim",), proposal.aim)
    for kind, named in reasons.items():
        for key, because in named.items():
            for word, text in because.items():
                edits += _edits(files, there, ("because", kind, key, word), text)
    changes = (Change(there, tuple(edits)),) if edits else ()
    return there, Step(f"{_label(proposal)} in {there.id}" if edits else "it stands so already", changes)


def _pressure_for_other_conditions(
    files: GarageFiles, ridden: Ref, there: Ref, values: Mapping[Path, Value]
) -> InputError | None:
    """Refuse a starting pressure where the session to come has another target: surface or tyres differ."""
    if not any(path in COLD_TARGETS for path in values):
        return None
    then, now = (_session(files, ref) for ref in (ridden, there))
    if then is None or now is None:
        return None
    columns = [COLUMN.get(one.surface or "") for one in (then, now)]
    what = ""
    if columns[1] is not None and columns[0] != columns[1]:
        what = f"is {now.surface}, not {then.surface}"
    elif now.tyres is not None and then.tyres != now.tyres:
        what = "is on other tyres"
    if not what:
        return None
    return InputError(
        f"{there.id} {what}: this pressure is not toward its hot target",
        "a pressure for those conditions",
        "u, then v on its starting pressure",
    )


def _session(files: GarageFiles, ref: Ref) -> Session | None:
    loaded = files.read(ref)
    record = loaded.record if loaded is not None else None
    return record if isinstance(record, Session) else None


def _label(proposal: Proposal) -> str:
    return proposal.text if proposal.move is not None else "same again"


def _values(proposal: Proposal) -> dict[Path, Value]:
    move = proposal.move
    return {put.path[1:]: put.value for put in move.puts} if move is not None else {}


def _reasons(proposal: Proposal) -> dict[str, dict[str, dict[str, str]]]:
    """Return why and what to expect for each thing that changes, as a session keeps them."""
    found: dict[str, dict[str, dict[str, str]]] = {}
    for kind, key in proposal.move.about if proposal.move is not None else ():
        because = {"why": proposal.symptom or proposal.why}
        if proposal.expect:
            because["expect"] = proposal.expect
        found.setdefault(kind, {})[key] = because
    return found


def _merged(setup: Mapping[str, Any], values: Mapping[Path, Value]) -> dict[str, Value]:
    found: dict[str, Any] = {
        key: dict(one) if isinstance(one, Mapping) else one for key, one in setup.items()
    }
    for path, value in values.items():
        if len(path) == 1:
            found[path[0]] = value
        else:
            found.setdefault(path[0], {})[path[1]] = value
    return found


def _edits(files: GarageFiles, ref: Ref, path: Path, value: Value) -> list[Edit]:
    step = setting_value(files, ref, path, value)
    return [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
