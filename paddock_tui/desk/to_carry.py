"""What was learnt along a bike's bygone sessions, put together for a later run and written for it.

What is written holds no words that somebody typed: it says where they are written.
"""

import contextlib
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.desk.carried import STAMP, Fold, TakenUp
from paddock_tui.facts.begun import NEAR, FoldToKeep, KeptAt, NotCarried
from paddock_tui.facts.carried_states import StateWriter, mentioned
from paddock_tui.facts.past import ENDS, WALKS, History, Lineage, PastSession, tyre_of
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.carried_files import as_part, write_carried
from paddock_tui.store.columns import packed, recurring
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.listing import Stamp
from paddock_tui.store.seals import seal, seal_of


class Behind(NamedTuple):
    """A bike's sessions up to where states are kept, with what they name as far as it was read."""

    bike: Ref
    past: tuple[PastSession, ...]
    line: Lineage
    read: Mapping[Ref, object]
    tyre_sets: Mapping[str, TyreSet]
    people: Mapping[str, Rider]


class ToKeep(NamedTuple):
    """All that is written of a bike: put together at once, so that another thread may write it.

    `seal` tells the files of the sessions, `named` are the others that all of this rests on; `not_before`
    is what some sessions were copied from that is nowhere among them. `before` is what an earlier run left.
    """

    behind: Behind
    before: TakenUp | None
    record: Bike
    kept_at: KeptAt
    seal: str
    named: dict[Ref, Stamp | None]
    not_before: frozenset[str]
    folds: dict[str, FoldToKeep]


def put_together(files: GarageFiles, behind: Behind, before: TakenUp | None) -> ToKeep | None:
    """Put together what is to be written; None where not all of it is known to be as it is on disk."""
    stop, past = behind.line.stop, behind.past
    held = files.read(behind.bike)
    refs = [Ref("session", one.id) for one in past]
    sealed = seal_of(files, refs)
    names = _named_by(behind, before)
    not_before = _not_before(past, before)
    if stop is None or held is None or not isinstance(held.record, Bike) or not sealed:
        return None
    if names is None or not_before is None:
        return None
    folds = {rider: one for rider, one in stop.folds.items() if all(other.seal for other in one.elsewhere)}
    bikes = {one.session.bike for kept in folds.values() for one in kept.elsewhere}
    names |= {Ref("bike", bike) for bike in bikes if bike is not None}
    stamps = _stamps(files, names, behind, before)
    if stamps is None:
        return None
    return ToKeep(behind, before, held.record, stop, sealed, stamps, not_before, folds)


def _named_by(behind: Behind, before: TakenUp | None) -> set[Ref] | None:
    """Return what the sessions name, and what that names; None where a tyre set is not known: it is any."""
    found = {behind.bike, *(before.named if before is not None else ())}
    wanted: list[str] = []
    for one in behind.past[before.begun.count if before is not None else 0 :]:
        session = one.session
        named = (
            ("tyres", session.tyres),
            ("rider", session.rider),
            ("day", session.day),
            ("venue", one.venue),
        )
        found |= {Ref(kind, name) for kind, name in named if name is not None}
        if session.tyres is not None:
            wanted.append(session.tyres)
    if not all(name in behind.tyre_sets for name in wanted):
        return None
    followed = set(wanted)
    while wanted:
        here = behind.tyre_sets.get(wanted.pop())
        for end in ENDS:
            name = tyre_of(here, end).continues
            if name is not None and name not in followed:
                followed.add(name)
                wanted.append(name)
    return found | {Ref("tyres", name) for name in followed}


def _not_before(past: tuple[PastSession, ...], before: TakenUp | None) -> frozenset[str] | None:
    """Return what sessions were copied from that is nowhere among them; None where one is later."""
    places = {one.id: place for place, one in enumerate(past)}
    first = before.begun.count if before is not None else 0
    found = set(before.not_before if before is not None else ())
    for place, one in enumerate(past[first:], first):
        copied = one.session.copied_from
        if copied is None:
            continue
        if places.get(copied, -1) >= place:
            return None
        if copied not in places:
            found.add(copied)
    return frozenset(found)


def _stamps(
    files: GarageFiles, names: Iterable[Ref], behind: Behind, before: TakenUp | None
) -> dict[Ref, Stamp | None] | None:
    """Return the stamps of files as they were read; None where one is not as it is on disk."""
    found: dict[Ref, Stamp | None] = {}
    for ref in sorted(names, key=str):
        known = before.named if before is not None else {}
        if ref in files.staged:
            return None
        if ref in known and ref not in behind.read:
            found[ref] = known[ref]
        elif behind.read.get(ref) is None and files.path_of(ref) is None:
            found[ref] = None
        elif not seal(files, ref):
            return None
        else:
            found[ref] = files.stamp_as_read(ref)
    return found


def keep(real: Path, held: ToKeep) -> None:
    """Write what was learnt up to where states are kept."""
    parts: list[bytes] = []
    write_carried(real, f"{held.kept_at.name}-{held.behind.bike.id}", _body(held, parts), parts)


_MOST_RIDERS = 4
"""So many riders of a bike have their fold kept: those who rode it last."""


def _body(held: ToKeep, parts: list[bytes]) -> dict[str, Any]:
    """Return what is written of a bike; states go to the parts, and stand in it as their places there."""
    behind, before = held.behind, held.before
    past = behind.past
    history = History(past, behind.tyre_sets, behind.people).on_line(behind.line)
    kept = held.kept_at.states
    states = {name: kept[name] if name in kept else walk.of(history) for name, walk in list(WALKS.items())}
    own = {rider: _fold(held, one) for rider, one in held.folds.items()}
    others = before.folds if before is not None else {}
    folds = {rider: one for rider, one in {**others, **own}.items() if one is not None}
    latest = sorted(folds, key=lambda rider: int(folds[rider].kept["count"]))
    writer = StateWriter(_texts_of(held, states))
    venues = sorted({one.venue for one in past if one.venue is not None})
    places = {name: place for place, name in enumerate(venues)}
    return {
        "count": len(past),
        "up_to": held.kept_at.up_to.isoformat(),
        "seal": held.seal,
        "named": _written_named(held.named),
        "tyre_sets": [ref.id for ref in held.named if ref.kind == "tyres" and ref.id in behind.tyre_sets],
        "people": [ref.id for ref in held.named if ref.kind == "rider" and ref.id in behind.people],
        "venues": venues,
        "of_venue": packed([places.get(one.venue or "", len(venues)) for one in past]),
        "ridden": packed([one.ridden for one in past]),
        "not_before": sorted(held.not_before),
        "walks": {name: _put(parts, as_part(state)) for name, state in _written(writer, states).items()},
        "folds": {
            rider: folds[rider].kept | {"state": _put(parts, folds[rider].state)}
            for rider in latest[-_MOST_RIDERS:]
        },
        "far": before.far if before is not None and held.kept_at.name == NEAR.name else None,
        "words": writer.words,
    }


def _put(parts: list[bytes], part: bytes) -> int:
    parts.append(part)
    return len(parts) - 1


def _fold(held: ToKeep, fold: FoldToKeep) -> Fold | None:
    """Return what is written of one rider's fold; None where that cannot be written without words."""
    writer = StateWriter(_texts_of(held, fold.state))
    try:
        state = writer.write(fold.state)
    except NotCarried:
        return None
    kept = {
        "count": held.kept_at.count,
        "up_to": held.kept_at.up_to.isoformat(),
        "elsewhere": fold.rests_on.elsewhere,
        "fall_items": sorted(fold.rests_on.fall_items),
        "limits": fold.rests_on.limits,
        "words": writer.words,
    }
    return Fold(kept, as_part(state))


def _written(writer: StateWriter, states: Mapping[str, object]) -> dict[str, Any]:
    """Write states; one that cannot be written without words is left out, and walked from the beginning."""
    found = {}
    for name, state in states.items():
        with contextlib.suppress(NotCarried):
            found[name] = writer.write(state)
    return found


def _texts_of(held: ToKeep, states: object) -> Iterator[tuple[Ref, Record]]:
    """List the records in which the words of some states stand: all that these mention, and what it names."""
    behind = held.behind
    yield behind.bike, held.record
    yield from ((Ref("rider", name), one) for name, one in behind.people.items())
    elsewhere = (one for kept in held.folds.values() for one in kept.elsewhere)
    by_id = {one.id: one for one in (*elsewhere, *behind.past)}
    names = set(mentioned(states))
    for name in sorted(names & by_id.keys(), reverse=True):
        one = by_id[name]
        yield Ref("session", name), one.session
        if one.day is not None:
            yield Ref("day", one.session.day or ""), one.day
    for name in sorted(names & behind.tyre_sets.keys()):
        yield Ref("tyres", name), behind.tyre_sets[name]


def _written_named(named: Mapping[Ref, Stamp | None]) -> dict[str, Any]:
    stamps = [stamp or (0, 0, 0, 0) for stamp in named.values()]
    columns = zip(STAMP, zip(*stamps, strict=True), strict=True)
    return {
        "kind": recurring([ref.kind for ref in named]),
        "id": [ref.id for ref in named],
        "there": packed([stamp is not None for stamp in named.values()]),
        **{name: packed(column) for name, column in columns},
    }
