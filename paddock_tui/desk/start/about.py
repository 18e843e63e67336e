"""Which records a start is about: those chosen in it, else those that the files leave no doubt of."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.desk.lookup import glance, glances, order
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles

KINDS = ("rider", "bike", "tyres", "venue", "day", "session")
Chosen = Mapping[str, Ref | None]


@attrs.frozen
class StartRecords:
    """The records that a start is about; None: not there yet, or not chosen."""

    rider: Ref | None = None
    bike: Ref | None = None
    tyres: Ref | None = None
    venue: Ref | None = None
    day: Ref | None = None
    session: Ref | None = None


def started(files: GarageFiles, now: dt.datetime, chosen: Chosen) -> StartRecords:
    """Return what a start is about. Only the files tell it, so that a start cut short goes on where it was.

    The next session that was not ridden names the others; without one it is the only record of its kind,
    and of days the first to come. What was `chosen` in this run goes before; None there: a new one.
    """
    session = _of("session", chosen, _coming(files, now, chosen))
    named = files.data(session) if session is not None else {}
    day = _of("day", chosen, _named(files, "day", named) or _next_day(files, now))
    held = files.data(day) if day is not None else {}
    found = {
        kind: _of(kind, chosen, _named(files, kind, named) or _only(files, kind))
        for kind in ("rider", "bike", "tyres")
    }
    venue = _of("venue", chosen, _named(files, "venue", held) or _only(files, "venue"))
    return StartRecords(found["rider"], found["bike"], found["tyres"], venue, day, session)


def listed(files: GarageFiles, kind: str) -> list[Ref]:
    """List the records of a kind that are not retired."""
    return [ref for ref in files.listing(kind) if "retired" not in files.data(ref)]


def last_session(files: GarageFiles, bike: Ref | None) -> Ref | None:
    """Return the newest session, of a bike where one is named; None where there is none."""
    seen = [one for one in glances(files) if bike is None or files.data(one.ref).get("bike") == bike.id]
    return max(seen, key=order).ref if seen else None


def _of(kind: str, chosen: Chosen, otherwise: Ref | None) -> Ref | None:
    return chosen.get(kind, otherwise)


def _coming(files: GarageFiles, now: dt.datetime, chosen: Chosen) -> Ref | None:
    """Return the first session to come that was not ridden and is of the day and the bike chosen."""
    coming = [one for one in glances(files, now.year) if not one.ridden and one.date >= now.date()]
    for one in sorted(coming, key=order):
        data = files.data(one.ref)
        if all(
            kind not in chosen or data.get(kind) == getattr(chosen[kind], "id", None)
            for kind in ("day", "bike")
        ):
            return one.ref
    return None


def _named(files: GarageFiles, kind: str, data: Mapping[str, object]) -> Ref | None:
    name = data.get(kind)
    ref = Ref(kind, name) if isinstance(name, str) else None
    return ref if ref is not None and files.path_of(ref) is not None else None


def _only(files: GarageFiles, kind: str) -> Ref | None:
    refs = listed(files, kind)
    return refs[0] if len(refs) == 1 else None


def _next_day(files: GarageFiles, now: dt.datetime) -> Ref | None:
    dated = [(files.data(ref).get("date"), ref) for ref in listed(files, "day")]
    coming = [(date, ref.id, ref) for date, ref in dated if isinstance(date, dt.date) and date >= now.date()]
    return min(coming, key=lambda one: one[:2])[2] if coming else None


def is_ridden(files: GarageFiles, session: Ref) -> bool:
    """Return whether a session was ridden."""
    seen = glance(session, files.data(session))
    return seen is not None and seen.ridden
