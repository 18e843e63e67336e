"""What is open for this session: the fold of everything that was written down before and in it."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping

import attrs

from paddock_tui.calc.outside_pressure import AirObserved
from paddock_tui.facts.begun import FoldBegun, FoldToKeep, RestsOn
from paddock_tui.facts.checklist_items import entry_of
from paddock_tui.facts.checklists import Checked
from paddock_tui.facts.core import fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.outings import Outings
from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.matters import Matter, MatterHistory, Outing, Present, matters
from paddock_tui.matters.fold import Folded, GivenAnswers
from paddock_tui.matters.severity import HOLD
from paddock_tui.matters.walked import Keeper
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.garage import Garage
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.tyres import TyreSet
from paddock_tui.text import printable


@fact("what is still open")
def open_matters(
    session: Session,
    history: History,
    rider_today: tuple[PastSession, ...],
    rider_elsewhere: tuple[PastSession, ...],
    unplaced: tuple[PastSession, ...],
    records: Mapping[str, Record],
    refs: Mapping[str, Ref],
    checklists: Mapping[str, Checklist],
    checked: Checked,
    source: Session | None,
    air_observed: AirObserved,
    limits: Limits,
    garage: Garage,
) -> tuple[Matter, ...]:
    """Return what was written down about this bike, rider or tyre and is not answered yet, worst first."""
    here = PastSession(
        refs["session"].id if "session" in refs else "", session, entry=entry_of(session, records)
    )
    not_told = [one.id for one in unplaced]
    others = (*rider_elsewhere, *rider_today)
    elsewhere = [one for one in others if history.of(one.id) is None and one.id not in not_told]
    make = Outings(history, records, checklists, source, air_observed, limits)
    begun = _begun(history, make, elsewhere)
    stop = history.line.stop
    keeper = Keeper[Folded](stop.up_to) if stop is not None and stop.wants(make.who or "") else None
    by_then = tuple(one for one in elsewhere if stop is not None and _is_by(one, stop.up_to))
    if begun is not None:
        elsewhere = [one for one in elsewhere if not _is_by(one, begun.begins.up_to)]
    outings = (*map(make.outing, elsewhere), make.here(here))
    now = _present(here, outings[-1], records, checklists, checked, limits, garage.before.on)
    untold = tuple(make.untold(one, session) for one in unplaced)
    answers = _answers(history, records, refs)
    days = make.by_day(begun.at if begun is not None else 0)
    begins = begun.begins if begun is not None else None
    found = matters(MatterHistory(outings, answers, days, untold, begins, keeper), now)
    if stop is not None and keeper is not None and keeper.state is not None:
        rests_on = _rests_on(make, by_then, stop.up_to)
        stop.folds[make.who or ""] = FoldToKeep(rests_on, by_then, keeper.state)
    return found


def _begun(history: History, make: Outings, elsewhere: list[PastSession]) -> FoldBegun | None:
    """Return where the fold goes on from an earlier one; None where all outings are gone through."""
    begun = history.line.begun_by(len(history.past))
    if begun is None:
        return None
    return begun.folded(make.who or "", lambda up_to: _rests_on(make, elsewhere, up_to))


def _rests_on(make: Outings, elsewhere: Iterable[PastSession], up_to: dt.date) -> RestsOn:
    return RestsOn(
        tuple((one.id, one.seal) for one in elsewhere if _is_by(one, up_to)),
        make.fall_items,
        tuple(
            sorted(
                (f"{rule}.{name}", str(value))
                for rule, names in make.limits.overrides.items()
                for name, value in names.items()
            )
        ),
    )


def _is_by(one: PastSession, day: dt.date) -> bool:
    return (one.date or dt.date.min) <= day


FEW = 2
"""So many are said one by one; more from before anybody was asked count in one finding."""


@fact("what is open from before anybody was asked")
def from_before(
    session: Session, history: History, open_matters: tuple[Matter, ...], garage: Garage
) -> tuple[Matter, ...]:
    """Return what was written down in a garage before it was ever said of an outing what it did, worst first.

    What holds is never among them, nor are a few; once they were gone through together there are none.
    """
    if is_ridden(session) or session.date is None or garage.before.on is not None:
        return ()
    asked = _FIRST_ASKED.of(history)
    first = session.date if asked is None or asked.date is None else min(asked.date, session.date)
    old = (one for one in open_matters if one.severity < HOLD and one.since is not None)
    found = tuple(one for one in old if one.since is not None and one.since < first)
    return found if len(found) > FEW else ()


def _was_asked(session: Session) -> bool:
    """Return whether anybody said on return what the bike did or what happened, or a verdict was kept."""
    return session.did is not None or session.happened is not None or session.out.verdict is not None


def _asked_first(so_far: PastSession | None, one: PastSession) -> PastSession | None:
    return one if so_far is None and _was_asked(one.session) else so_far


_FIRST_ASKED: Along[PastSession | None] = Along("first-asked", None, _asked_first)


def _present(
    here: PastSession,
    outing: Outing,
    records: Mapping[str, Record],
    checklists: Mapping[str, Checklist],
    checked: Checked,
    limits: Limits,
    before: dt.date | None,
) -> Present:
    rider, day, bike = records.get("rider"), records.get("day"), records.get("bike")
    return Present(
        here.id,
        here.session,
        group=(rider.group or "") if isinstance(rider, Rider) else "",
        column=COLUMN.get(here.session.surface or "", ""),
        tyres=outing.tyres,
        fitted=outing.fitted,
        bike=bike if isinstance(bike, Bike) else None,
        day=day if isinstance(day, RidingDay) else None,
        inspected_after=(day.inspection_after_fall or "") if isinstance(day, RidingDay) else "",
        checklists=checklists,
        fall_list=_fall_list(checked),
        torques=_torques(bike) if isinstance(bike, Bike) else "",
        before=before,
        limits=limits,
    )


def _answers(
    history: History, records: Mapping[str, Record], refs: Mapping[str, Ref]
) -> Mapping[tuple[str, str], GivenAnswers]:
    found: dict[tuple[str, str], GivenAnswers] = {}
    for role in ("bike", "rider", "tyres"):
        record = records.get(role)
        if role in refs and isinstance(record, Bike | Rider | TyreSet):
            found[role, refs[role].id] = record.answers
    return _AnswersOf(found, history.tyre_sets)


@attrs.frozen(eq=False)
class _AnswersOf(Mapping[tuple[str, str], GivenAnswers]):
    """The answers of the records in play, and those of each tyre set, which is read when it is asked for."""

    in_play: Mapping[tuple[str, str], GivenAnswers]
    tyre_sets: Mapping[str, TyreSet]

    def __getitem__(self, key: tuple[str, str]) -> GivenAnswers:
        kind, name = key
        return self.in_play[key] if key in self.in_play or kind != "tyres" else self.tyre_sets[name].answers

    def __iter__(self) -> Iterator[tuple[str, str]]:
        return iter({**self.in_play, **{("tyres", name): None for name in self.tyre_sets}})

    def __len__(self) -> int:
        return sum(1 for _ in self)


def _fall_list(checked: Checked) -> str:
    """Say how the list for after a fall stands; it is gone from the page once it is gone through."""
    still = sum(len(one.open) + len(one.to_fix) for one in checked.lists if one.stage == "after a fall")
    return f"{still} of the list not ok" if still else "no item of the list open"


def _torques(bike: Bike) -> str:
    """Quote the torques that the bike's file holds, with where they come from."""
    known = [
        f"{label_of(name)} {one.torque}" + (f" ({one.source})" if one.source else "")
        for name, one in sorted(bike.fasteners.items())
        if one.torque is not None
    ]
    return printable(f" ({'; '.join(known)})") if known else ""
