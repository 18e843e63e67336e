"""What the rider of a session or profile comes from: the last ridden session, else what somebody chooses."""

import bisect
from collections.abc import Sequence

from paddock_tui.advice.briefing import CameFrom
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.lookup import Order, by_bike, glance, of_rider, order
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.store.garage import GarageFiles


def came_from(files: GarageFiles, subject: Ref, of: Ref | None = None) -> CameFrom | None:
    """Return what this rider comes from: `of`, else what they rode last before, else a profile of theirs.

    None where the garage holds nothing of theirs.
    """
    chosen = of or usual(files, subject)
    return None if chosen is None else _made(files, chosen, files.data(subject).get("bike"))


def usual(files: GarageFiles, subject: Ref) -> Ref | None:
    """Return what this rider comes from unless something else is chosen; None: nothing of theirs is here."""
    rider = _of(files, subject, "rider")
    return next((ref for ref in comes_from(files, subject) if _of(files, ref, "rider") == rider), None)


def comes_from(files: GarageFiles, subject: Ref) -> tuple[Ref, ...]:
    """List what a briefing may start from, the likeliest first.

    The last session that this rider rode before; their profiles, the baseline first; then of every other
    bike the last ridden session, and every other profile of the garage.
    """
    rider = files.data(subject).get("rider")
    own = _last(files, subject, of_rider(files, rider)) if isinstance(rider, str) and rider else None
    profiles = [
        ref
        for ref in files.listing("profile")
        if ref != subject and _of(files, ref, "retired") is None and bike_of(files, ref) is not None
    ]
    profiles.sort(
        key=lambda ref: (_of(files, ref, "rider") != rider, _of(files, ref, "baseline") is not True)
    )
    theirs = [ref for ref in profiles if isinstance(rider, str) and _of(files, ref, "rider") == rider]
    other = _last_of_bikes(files, subject, _of(files, subject, "bike") or "")
    return tuple(dict.fromkeys([*([own] if own is not None else []), *theirs, *other, *profiles]))


def called(files: GarageFiles, ref: Ref) -> str:
    """Name what somebody comes from: the session with its day, or the profile."""
    seen = glance(ref, files.data(ref)) if ref.kind == "session" else None
    return f"profile {ref.id}" if seen is None else f"session {seen.number} of {seen.date.isoformat()}"


def _last_of_bikes(files: GarageFiles, subject: Ref, but: object) -> list[Ref]:
    """List the last ridden session of every bike but one, in the order in which they were ridden first."""
    found: list[tuple[Order, Ref]] = []
    for bike, placed in by_bike(files).items():
        last = _last(files, subject, placed) if bike != but else None
        if last is not None:
            found.append((next(one for one, ref in placed if _is_ridden(files, ref)), last))
    return [ref for _, ref in sorted(found)]


def _last(files: GarageFiles, subject: Ref, placed: Sequence[tuple[Order, Ref]]) -> Ref | None:
    """Return the last of some sessions that was ridden before a session, or at all before a profile."""
    here = glance(subject, files.data(subject)) if subject.kind == "session" else None
    end = len(placed) if here is None else bisect.bisect_left(placed, order(here), key=lambda one: one[0])
    # Looked for from there back: there may be thousands before.
    back = (placed[at][1] for at in range(end - 1, -1, -1))
    return next((ref for ref in back if ref != subject and _is_ridden(files, ref)), None)


def _is_ridden(files: GarageFiles, ref: Ref) -> bool:
    row = files.rows.of(ref)
    return row is not None and row.ridden


def _of(files: GarageFiles, ref: Ref, key: str) -> object:
    return files.data(ref).get(key)


def _made(files: GarageFiles, ref: Ref, bike: object) -> CameFrom | None:
    loaded, on = files.read(ref), bike_of(files, ref)
    record = loaded.record if loaded is not None else None
    if on is None or not isinstance(record, Session | Profile):
        return None
    return CameFrom(on.name or record.bike or "", on, record.setup, record.bike == bike, called(files, ref))
