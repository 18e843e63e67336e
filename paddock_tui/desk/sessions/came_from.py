"""What the rider of a session or profile comes from: the last ridden session, else a profile of theirs."""

from paddock_tui.advice.briefing import CameFrom
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.lookup import glance, glances, order
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.store.garage import GarageFiles


def came_from(files: GarageFiles, subject: Ref) -> CameFrom | None:
    """Return what this rider rode last before; None where the garage holds nothing of theirs."""
    data = files.data(subject)
    rider, bike = data.get("rider"), data.get("bike")
    if not isinstance(rider, str):
        return None
    here = glance(subject, data) if subject.kind == "session" else None
    before = sorted(
        (
            one
            for one in glances(files)
            if one.ridden
            and one.ref != subject
            and files.data(one.ref).get("rider") == rider
            and (here is None or order(one) < order(here))
        ),
        key=order,
    )
    if before:
        last = before[-1]
        where = f"session {last.number} of {last.date.isoformat()}"
        return _made(files, last.ref, bike, where)
    profiles = [
        ref
        for ref in files.listing("profile")
        if ref != subject and files.data(ref).get("rider") == rider and "retired" not in files.data(ref)
    ]
    own = sorted(profiles, key=lambda ref: files.data(ref).get("baseline") is not True)
    return _made(files, own[0], bike, f"profile {own[0].id}") if own else None


def _made(files: GarageFiles, ref: Ref, bike: object, where: str) -> CameFrom | None:
    loaded, on = files.read(ref), bike_of(files, ref)
    record = loaded.record if loaded is not None else None
    if on is None or not isinstance(record, Session | Profile):
        return None
    return CameFrom(on.name or record.bike or "", on, record.setup, record.bike == bike, where)
