"""Profiles and sessions: take a profile's set-up over, or save a session's as a profile."""

from collections.abc import Mapping

from paddock_tui.desk.files.records import creating
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import edits_toward
from paddock_tui.store.garage import GarageFiles


def profiles_for(files: GarageFiles, session: Ref) -> tuple[Ref, ...]:
    """List the profiles of a session's bike, its rider's own first; retired ones are left out."""
    data = files.data(session)
    found = [
        ref
        for ref in files.listing("profile")
        if files.data(ref).get("bike") == data.get("bike") and "retired" not in files.data(ref)
    ]
    return tuple(sorted(found, key=lambda ref: (files.data(ref).get("rider") != data.get("rider"), ref.id)))


def taking(files: GarageFiles, session: Ref, profile: Ref) -> Step | InputError:
    """Make the step that gives a session the set-up of a profile: only what differs changes."""
    data, other = files.data(session), files.data(profile)
    bike, its = data.get("bike"), other.get("bike")
    if not isinstance(bike, str) or bike != its:
        return InputError(
            f"{profile.id} is for {its or 'no bike yet'}",
            f"a profile for {bike or 'the bike of this session'}",
            "take another one, or enter its bike",
        )
    held, wanted = data.get("setup", {}), other.get("setup")
    if not isinstance(held, Mapping) or not isinstance(wanted, Mapping) or not wanted:
        return InputError(
            f"{(profile if isinstance(held, Mapping) else session).id} has no set-up that can be read",
            "a profile with a set-up",
            "enter it on its set-up page first",
        )
    edits = list(edits_toward(held, wanted, ("setup",)))
    old = data.get("taken_from", MISSING)
    if old != profile.id:
        edits.append(Edit(("taken_from",), old, profile.id))
    changes = (Change(session, tuple(edits)),) if edits else ()
    return Step(f"took over profile {profile.id}", changes)


def saving_as(files: GarageFiles, session: Ref, new_id: str, name: str, note: str = "") -> Step | InputError:
    """Make the step that saves a session's set-up as a new profile, made for the session's surface."""
    data = files.data(session)
    values: dict[str, Value] = {"name": name}
    for key, wanted in (("bike", "bike"), ("rider", "rider"), ("made_for", "surface")):
        if isinstance(data.get(wanted), str):
            values[key] = data[wanted]
    values["taken_from"] = session.id
    if note:
        values["note"] = note
    setup = data.get("setup")
    if isinstance(setup, Mapping):
        values["setup"] = setup
    return creating(files, Ref("profile", new_id), values)
