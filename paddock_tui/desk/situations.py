"""The situation of a session or a profile: its records, found by following references."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple, TypeVar

import attrs

from paddock_tui.desk.histories import Histories
from paddock_tui.desk.lookup import of_date, without_a_place
from paddock_tui.facts import (
    Situation,
    registered,  # noqa: F401 - what is assembled can be judged
)
from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.situation import Dangling, Disputed, Impossible, NotUnderstood
from paddock_tui.facts.unplaced import lacking, may_concern
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.disputes import disputes
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import value_at
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import GARAGE, Path, Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles, Loaded

R = TypeVar("R", bound=Record)

_FOLLOWED: dict[str, tuple[tuple[str, Path, str], ...]] = {
    "session": (
        ("bike", ("bike",), "bike"),
        ("rider", ("rider",), "rider"),
        ("day", ("day",), "day"),
        ("tyres", ("tyres",), "tyres"),
        ("source", ("copied_from",), "session"),
    ),
    "profile": (("bike", ("bike",), "bike"), ("rider", ("rider",), "rider")),
}
"""Which references of a session and of a profile are followed: the role, where it stands, the kind."""


@attrs.frozen
class Assembled:
    """A situation, and what could not be read on the way; `lost` are whole files that cannot be read."""

    situation: Situation
    problems: tuple[InputError, ...] = ()
    notes: tuple[InputError, ...] = ()
    lost: tuple[Ref, ...] = ()


def assemble(
    files: GarageFiles,
    ref: Ref,
    now: dt.datetime,
    going_out: bool = False,
    histories: Histories | None = None,
) -> Assembled:
    """Follow the references of a session or a profile; what is not there or lost is not known.

    `histories` remembers what went before from one call to the next.
    """
    loaded: dict[str, Loaded] = {}
    dangling: list[Dangling] = []
    _take(files, ref.kind, ref, loaded)
    _take(files, "garage", GARAGE, loaded)
    for role, path, kind in _FOLLOWED.get(ref.kind, ()):
        _follow(files, ref.kind, role, path, kind, loaded, dangling)
    _follow(files, "day", "venue", ("venue",), "venue", loaded, dangling)
    records = {role: one.possible for role, one in loaded.items() if one.possible is not None}
    session = _as(records.get("session"), Session)
    lists, checklists = _checklists(files) if session is not None else _NO_LISTS
    of_day = _before(files, ref, session)
    situation = Situation(
        garage=files.garage(),
        session=session,
        profile=_as(records.get("profile"), Profile),
        bike=_as(records.get("bike"), Bike),
        rider=_as(records.get("rider"), Rider),
        day=_as(records.get("day"), RidingDay),
        venue=_as(records.get("venue"), Venue),
        tyres=_as(records.get("tyres"), TyreSet),
        source=_as(records.get("source"), Session),
        earlier=tuple(one.session for one in of_day if session and one.session.bike == session.bike),
        rider_today=of_day,
        checklists=checklists,
        dangling=tuple(dangling),
        disputed=tuple(
            Disputed(role, one.ref, found) for role, one in loaded.items() for found in disputes(one.data)
        ),
        not_understood=tuple(_not_understood((*loaded.values(), *lists))),
        impossible=tuple(_impossible(loaded)),
        refs={role: one.ref for role, one in loaded.items()},
        now=now,
        going_out=going_out,
    )
    known = histories or Histories()
    history = known.of(files, ref, situation)
    situation = attrs.evolve(
        situation,
        history=history,
        rider_elsewhere=known.elsewhere(files, ref, situation),
        unplaced=tuple(_unplaced(files, ref, session)),
        not_understood=(*situation.not_understood, *_unread_before(files, session, of_day, history)),
    )
    return Assembled(
        situation,
        tuple(trouble for one in (*loaded.values(), *lists) for trouble in one.troubles),
        tuple(trouble for one in (*loaded.values(), *lists) for trouble in one.unknown),
        tuple(one.ref for one in (*loaded.values(), *lists) if one.record is None),
    )


def _take(files: GarageFiles, role: str, ref: Ref, loaded: dict[str, Loaded]) -> bool:
    found = files.read(ref)
    if found is not None:
        loaded[role] = found
    return found is not None


def _follow(
    files: GarageFiles,
    holder: str,
    role: str,
    path: Path,
    kind: str,
    loaded: dict[str, Loaded],
    dangling: list[Dangling],
) -> None:
    record = loaded[holder].record if holder in loaded else None
    named = value_at(record, path) if record is not None else None
    if isinstance(named, str) and not _take(files, role, Ref(kind, named), loaded):
        dangling.append(Dangling(holder, path, kind, named))


def _unread_before(
    files: GarageFiles, session: Session | None, of_day: tuple[PastSession, ...], history: History
) -> Iterator[NotUnderstood]:
    """Name what cannot be read in the outings of the day and in the last one of the bike."""
    rests_on = {one.id for one in (*of_day, *history.past[-1:])} if session is not None else set()
    earlier = (files.read(Ref("session", one)) for one in sorted(rests_on))
    yield from _not_understood(one for one in earlier if one is not None)


def _not_understood(read: Iterable[Loaded]) -> Iterator[NotUnderstood]:
    """Name what this program cannot read in records that the verdict rests on: a newer one may know it."""
    for one in read:
        if one.record is None:
            yield NotUnderstood(one.ref)
        for found in (*one.troubles, *one.unknown):
            if found.path:
                yield NotUnderstood(one.ref, found.path)


def _impossible(loaded: Mapping[str, Loaded]) -> Iterator[Impossible]:
    for role, one in loaded.items():
        if one.record is not None:
            yield from (Impossible(role, path, one.record) for path in one.impossible)


class _Lists(NamedTuple):
    """Checklists as they were read, and by their ids."""

    read: tuple[Loaded, ...]
    by_id: Mapping[str, Checklist]


_NO_LISTS = _Lists((), {})
_last_lists = [_NO_LISTS]


def _checklists(files: GarageFiles) -> _Lists:
    """Read every checklist: what "to fix" means stands there, also for a list that is retired.

    While all of them stand they are the same table, by which others know that nothing in it changed.
    """
    every = (files.read(ref) for ref in files.listing("checklist"))
    read, last = tuple(one for one in every if one is not None), _last_lists[0]
    if len(read) != len(last.read) or any(one is not its for one, its in zip(read, last.read, strict=True)):
        lists = {one.ref.id: one.record for one in read if isinstance(one.record, Checklist)}
        last = _last_lists[0] = _Lists(read, lists)
    return last


def _before(files: GarageFiles, ref: Ref, session: Session | None) -> tuple[PastSession, ...]:
    """Return this rider's sessions of the day before this one, on any bike, oldest first."""
    if session is None or session.date is None:
        return ()
    of_day = [one for _, one in of_date(files, session.date)]
    # Without a number it comes after all others of its day, as in the walk through what is open.
    if session.number is None:
        of_day = [one for one in of_day if one != ref]
    here = of_day.index(ref) if ref in of_day else len(of_day) if session.number is None else 0
    found: list[PastSession] = []
    for one in of_day[:here]:
        row = files.rows.of(one)
        if session.rider is not None and row is not None and row.rider != session.rider:
            # Of a day of many most are others', which need not be read for that.
            continue
        loaded = files.read(one)
        record = _as(loaded.possible if loaded else None, Session)
        if record is not None and record.rider == session.rider:
            found.append(PastSession(one.id, record))
    return tuple(found)


def _unplaced(files: GarageFiles, ref: Ref, session: Session | None) -> Iterator[PastSession]:
    """List the sessions that the record does not place, and that may have been before this one."""
    for one in without_a_place(files) if session is not None else ():
        loaded = files.read(one) if one != ref and "retired" not in files.data(one) else None
        record = _as(loaded.possible if loaded else None, Session)
        if session is not None and record is not None and lacking(record) and may_concern(record, session):
            yield PastSession(one.id, record)


def _as(record: Record | None, wanted: type[R]) -> R | None:
    return record if isinstance(record, wanted) else None
