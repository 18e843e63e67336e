"""Answers beside the rows of a tyre set, a bike or a day, about the session that is looked at."""

import attrs

from paddock_tui.advice.about import ENDS, About, tyre_of
from paddock_tui.advice.beside_records import beside_bike, beside_day, beside_tyres
from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.desk import Desk
from paddock_tui.desk.situations import Assembled
from paddock_tui.facts import Situation
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.tyres import TyreSet


def beside_record(
    desk: Desk, ref: Ref, subject: Ref | None, assembled: Assembled | None
) -> dict[Path, BesideRow]:
    """Return the answers for the rows of a record; nothing for kinds that have none."""
    loaded = desk.files.read(ref)
    record = loaded.record if loaded is not None else None
    if isinstance(record, TyreSet):
        return beside_tyres(_with_sets(desk, desk.about(subject, assembled), record), ref.id, record)
    if isinstance(record, RidingDay):
        return beside_day(desk.about(subject, assembled), record)
    if isinstance(record, Bike):
        return beside_bike(_of_bike(desk, ref, record, desk.about(subject, assembled)))
    return {}


def _with_sets(desk: Desk, about: About, tyres: TyreSet) -> About:
    """Add the sets that the tyres of a set go on from: their start values count."""
    known = about.history.tyre_sets
    added: dict[str, TyreSet] = {}
    wanted = [tyre_of(tyres, end).continues for end in ENDS]
    while wanted:
        name = wanted.pop()
        if name is None or name in known or name in added:
            continue
        loaded = desk.files.read(Ref("tyres", name))
        if loaded is not None and isinstance(loaded.record, TyreSet):
            added[name] = loaded.record
            wanted += [tyre_of(loaded.record, end).continues for end in ENDS]
    return attrs.evolve(about, history=about.history.with_sets(added)) if added else about


def _of_bike(desk: Desk, ref: Ref, bike: Bike, about: About) -> About:
    """Return what is looked at where it is of this bike; else the bike with all its sessions, by today."""
    if about.situation.refs.get("bike") == ref and about.situation.session is not None:
        return about
    alone = Situation(bike=bike, refs={"bike": ref}, now=desk.now())
    return About(alone, desk.history_of(ref), about.units)
