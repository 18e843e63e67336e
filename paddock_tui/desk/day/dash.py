"""Reading the dash: as planned, other than planned, or undone by something; each answer is one step."""

import datetime as dt
from collections.abc import Iterable

from paddock_tui.desk.edits.values import bike_of, clearing, login, setting_value
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import choice_shape, label_of, setting_shape
from paddock_tui.store.data import lookup, same
from paddock_tui.store.garage import GarageFiles

READ: Path = ("dash", "read")
MODE: Path = ("dash", "shown_mode")
VALUES: Path = ("dash", "values")
HAPPENINGS = ("key-off", "stall", "fuse", "battery", "red flag", "wait in the lane")
"""What the card notes at once: each may leave the dash other than it was read."""


def reading(files: GarageFiles, ref: Ref, now: dt.datetime) -> Step | str:
    """Make the step that says the dash was read now: when, by whom, and for which riding mode.

    What was said to differ stays so. Gives the reason in words where today is not the session's day, or
    where the plan does not say everything.
    """
    session = _session(files, ref)
    if session is None:
        return f"{ref} cannot be read: correct its file first"
    not_so = _wrong_day(session, now) or _not_planned(session, bike_of(files, ref))
    if not_so:
        return not_so
    answer: dict[str, Value] = {"read": _clock(now), "by": _initials(files, session)}
    if session.setup.mode is not None:
        answer["planned_mode"] = session.setup.mode
    data = files.data(ref)
    if lookup(data, ("dash",)) is MISSING:
        edits: tuple[Edit, ...] = (Edit(("dash",), MISSING, answer),)
    else:
        edits = tuple(_edits(files, ref, answer, "dash"))
        if session.setup.mode is None and session.dash.planned_mode is not None:
            edits += clearing_edits(files, ref, ("dash", "planned_mode"))
    differs = len(session.dash.values) + (session.dash.shown_mode is not None)
    rest = f", {differs} other than planned" if differs else " as planned"
    return Step(f"dash read {now:%H:%M}{rest}", (Change(ref, edits),) if edits else ())


def unread(files: GarageFiles, ref: Ref) -> Step:
    """Make the step that takes a reading back; what differed stays written."""
    kept = [("dash", key) for key in ("read", "by", "planned_mode")]
    edits = [edit for path in kept for edit in clearing_edits(files, ref, path)]
    return Step("dash: not read", (Change(ref, tuple(edits)),) if edits else ())


def showing(files: GarageFiles, ref: Ref, path: Path, text: str) -> Step | InputError:
    """Make the step that writes what the dash shows on one row; what is planned leaves nothing to write.

    Where nothing is planned yet it becomes the plan.
    """
    session, bike = _session(files, ref), bike_of(files, ref)
    if session is None or bike is None:
        return InputError(
            "no bike", "a session with a bike that can be read", "s, then enter on its bike", path=path
        )
    value = _read(session, bike, path, text)
    if isinstance(value, InputError):
        return value
    plan = planned(session, bike, path)
    if value == plan:
        return as_planned(files, ref, path)
    if plan is None:
        return setting_value(files, ref, _plan_path(path), value)
    step = setting_value(files, ref, path, value)
    return Step(f"the dash shows {_name(path)} {value}", step.changes)


def as_planned(files: GarageFiles, ref: Ref, path: Path) -> Step:
    """Make the step that takes back what the dash was said to show on one row."""
    return Step(f"{_name(path)} as planned", clearing(files, ref, path).changes)


def noting(files: GarageFiles, ref: Ref, what: str, now: dt.datetime) -> Step | str:
    """Make the step that notes now what may have changed the dash."""
    session = _session(files, ref)
    if session is None:
        return f"{ref} cannot be read: correct its file first"
    wrong_day = _wrong_day(session, now)
    if wrong_day:
        return wrong_day
    numbers = [int(key) for key in session.events if key.isdigit()]
    path = ("events", str(max(numbers, default=0) + 1))
    entry: dict[str, Value] = {"what": what, "at": _clock(now)}
    return Step(f"{what} {now:%H:%M}: read the dash again", (Change(ref, (Edit(path, MISSING, entry),)),))


def planned(session: Session, bike: Bike, path: Path) -> Setting | None:
    """Return what the dash has to show on one row: riding mode, or a control as it is in force."""
    if path == MODE:
        return session.setup.mode
    name = path[-1]
    return value_in_force(name, session.setup, bike) if name in bike.controls else None


def clearing_edits(files: GarageFiles, ref: Ref, path: Path) -> tuple[Edit, ...]:
    """Return the edits that drop one value, none where there is none."""
    old = lookup(files.data(ref), path)
    return () if old is MISSING else (Edit(path, old, MISSING),)


def _edits(files: GarageFiles, ref: Ref, answer: dict[str, Value], table: str) -> Iterable[Edit]:
    for key, value in answer.items():
        old = lookup(files.data(ref), (table, key))
        if old is MISSING or not same(old, value):
            yield Edit((table, key), old, value)


def _read(session: Session, bike: Bike, path: Path, text: str) -> Setting | InputError:
    if path == MODE:
        return choice_shape(bike, "mode", session.setup.damping).read(text)
    control = bike.controls.get(path[-1])
    if control is None:
        return InputError(f'"{text}"', "a control of this bike", path=path)
    return setting_shape(control).read(text)


def _plan_path(path: Path) -> Path:
    return ("setup", "mode") if path == MODE else ("setup", "controls", path[-1])


def _name(path: Path) -> str:
    return "riding mode" if path == MODE else label_of(path[-1])


def _wrong_day(session: Session, now: dt.datetime) -> str:
    """Say why nothing is stamped; empty on the session's own day."""
    if session.date is None or session.date == now.date():
        return ""
    return f"the session is of {session.date:%d %b}: the dash is read after the last ignition-on of that day"


def _not_planned(session: Session, bike: Bike | None) -> str:
    """Say what the plan does not tell, so that nothing can be as planned; empty where it tells all."""
    if bike is None:
        return "which bike it is, is not known"
    paths = [MODE] if bike.modes else []
    paths += [(*VALUES, name) for name in bike.controls]
    lost = [_name(path) for path in paths if planned(session, bike, path) is None]
    return f"not planned yet: {', '.join(lost)}; type what the dash shows" if lost else ""


def _initials(files: GarageFiles, session: Session) -> str:
    loaded = files.read(Ref("rider", session.rider)) if session.rider is not None else None
    rider = loaded.record if loaded is not None else None
    return (rider.initials if isinstance(rider, Rider) else None) or login()


def _session(files: GarageFiles, ref: Ref) -> Session | None:
    loaded = files.read(ref)
    return loaded.record if loaded is not None and isinstance(loaded.record, Session) else None


def _clock(now: dt.datetime) -> dt.time:
    return now.time().replace(microsecond=0)
