"""A profile to start with for somebody else: another rider on this bike, or this rider on another bike."""

import attrs

from paddock_tui.advice.about import NOTHING, About
from paddock_tui.advice.starting_point import StartingPoint, for_another_rider, starting_point
from paddock_tui.desk.files.records import creating
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.store.garage import GarageFiles


def profile_for(files: GarageFiles, about: About, other: Ref) -> tuple[Ref, Step | InputError]:
    """Make the step that creates a profile for another rider or another bike, with what can be said.

    For a rider the set-up is carried over, preload by weight and aids by group. For a bike nothing is: its
    aids start where the table of groups and surfaces has them, one step more; its suspension is its own.
    """
    loaded = files.read(other)
    record = loaded.record if loaded is not None else None
    subject = about.id_of("session") or about.id_of("profile")
    role = "session" if about.situation.session is not None else "profile"
    if isinstance(record, Rider):
        found = for_another_rider(about, record)
        setup = _changed(files.data(Ref(role, subject or "")).get("setup", {}), found)
        bike, rider = about.id_of("bike") or "", other.id
    elif isinstance(record, Bike):
        found = _on_another(about, record, other)
        setup = _changed({}, found)
        bike, rider = other.id, about.id_of("rider") or ""
    else:
        return other, InputError(
            f"{other} cannot be read", "a rider or a bike that can be read", "correct its file"
        )
    surface = about.session.surface or (about.situation.profile.made_for if about.situation.profile else None)
    name = " ".join(filter(None, (bike, rider, surface, "start")))
    ref = _free(files, id_of(name))
    values: dict[str, Value] = {"name": name}
    for key, value in (("bike", bike), ("rider", rider), ("made_for", surface)):
        if value:
            values[key] = value
    values["note"] = _note(found)
    if setup:
        values["setup"] = setup
    return ref, creating(files, ref, values)


def _on_another(about: About, bike: Bike, ref: Ref) -> StartingPoint:
    """Return the start on a bike that this rider has never ridden: nothing of the old set-up is looked at."""
    situation = about.situation
    session = attrs.evolve(situation.session or Session(), setup=SetUp(), kind=None)
    if situation.session is None and situation.profile is not None:
        session = attrs.evolve(session, surface=situation.profile.made_for)
    fresh = attrs.evolve(
        situation,
        bike=bike,
        session=session,
        profile=None,
        history=NOTHING,
        refs={**situation.refs, "bike": ref},
    )
    return starting_point(attrs.evolve(about, situation=fresh, history=NOTHING))


def _changed(setup: Value, found: StartingPoint) -> dict[str, Value]:
    made: dict[str, Value] = {}
    for key, value in setup.items() if isinstance(setup, dict) else ():
        made[key] = dict(value) if isinstance(value, dict) else value
    for put in found.puts:
        _, table, name = put.path
        held = made.setdefault(table, {})
        if isinstance(held, dict):
            held[name] = put.value
    return made


def _note(found: StartingPoint) -> str:
    """Say that it is a start, and what it does not know."""
    left = "; ".join(found.left)
    start = "a starting point, not ridden yet; measure sag before riding"
    return f"{start}; left: {left}" if left else start


def _free(files: GarageFiles, wanted: str) -> Ref:
    ref, number = Ref("profile", wanted), 2
    while files.path_of(ref) is not None:
        ref, number = Ref("profile", f"{wanted}-{number}"), number + 1
    return ref
