"""After a day: who rode what, what the next session would find, what is left to do, what was learnt."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import NamedTuple

import attrs

from paddock_tui.advice.ledger import TO_COME, LedgerEntry, judged_changes
from paddock_tui.desk.day.checklist import answering
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike, of_date
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.desk.sessions.profiles import saving_as
from paddock_tui.entry.numbering import next_number
from paddock_tui.facts.situation import Situation
from paddock_tui.limits import Limits
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import ROAD_HOME
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING, Change, Edit, Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import value_at
from paddock_tui.records.ids import id_of
from paddock_tui.records.packing import PACKING, BikeToDo
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.rules import Finding, review
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.heads import heads

TODOS = "todos"
"""The table of a bike that holds what is left to do."""

_OF_THE_ROAD = (
    "road-home-at-track-pressure",
    "little-tread-for-the-road",
    "tyre-not-for-the-road",
    "abs-off-on-the-road",
    "traction-off-on-the-road",
    "track-mode-on-the-road",
    "rider-spent",
)
"""The rules that judge a ride home."""


class RodeThere(NamedTuple):
    """A rider and a bike that were ridden on a day, with their sessions in order."""

    rider: str
    bike: str
    sessions: tuple[Ref, ...]

    @property
    def last(self) -> Ref:
        """The last session that was ridden."""
        return self.sessions[-1]


class LearntChange(NamedTuple):
    """One change of the day: whether it is still on the bike, and its entry in the ledger."""

    kept: bool
    entry: LedgerEntry


def day_over(desk: LooksAt, wanted: Ref | None = None) -> Ref | None:
    """Return the day that is wanted, else the latest one up to today that was ridden; None without one."""
    if wanted is not None:
        return wanted
    today = desk.now().date()
    dated = [(head.get("date"), ref) for ref, head in heads(desk.files, "day")]
    past = [(date, ref) for date, ref in dated if type(date) is dt.date and date <= today]
    for date, ref in sorted(past, reverse=True):
        if desk.files.data(ref).get("date") != date:
            continue
        for _, session in of_date(desk.files, date):
            row = desk.files.rows.of(session)
            named = desk.files.data(session).get("day")
            if row is not None and row.ridden and isinstance(named, str):
                return Ref("day", named)
    return None


def who_rode(desk: LooksAt, ref: Ref, day: RidingDay) -> tuple[RodeThere, ...]:
    """List who rode on a day, each rider and bike with their ridden sessions in order."""
    found: dict[tuple[str, str], list[Ref]] = {}
    for _, session in of_date(desk.files, day.date) if day.date is not None else ():
        data, row = desk.files.data(session), desk.files.rows.of(session)
        if data.get("day") == ref.id and row is not None and row.ridden:
            found.setdefault((str(data.get("rider", "")), str(data.get("bike", ""))), []).append(session)
    return tuple(RodeThere(*pair, tuple(sessions)) for pair, sessions in found.items())


def next_finds(desk: LooksAt, last: Ref) -> Situation | None:
    """Return what the session after a day's last one would find, as if it were made now."""
    subject, step = next_session(desk.files, last, desk.now())
    if isinstance(step, InputError):
        return None
    return desk.as_if_made(subject, step)


def road_findings(desk: LooksAt, last: Ref) -> tuple[Finding, ...]:
    """Judge the bike as its last session left it for a ride home by road."""
    situation = desk.assembled(last).situation
    session = situation.session
    if session is None:
        return ()
    home = attrs.evolve(
        session, kind="road", went_out=None, parked=None, laps={}, pressures={}, ridden_laps=None
    )
    found = review(attrs.evolve(situation, session=home)).findings
    return tuple(one for one in found if one.rule in _OF_THE_ROAD)


def goes_by_road(day: RidingDay, rode: RodeThere) -> bool | None:
    """Return whether a bike goes home on its wheels; None where nobody said."""
    entry = day.entry_of(rode.rider, rode.bike)
    travel = entry.travel or day.travel
    return None if travel is None else travel == "road"


def road_step(desk: LooksAt, rode: RodeThere, item: str, status: str | None) -> Step | str:
    """Make the step that answers one step of the way home; the reason where nothing can hold it."""
    text = ROAD_HOME[item]
    return answering(desk.files, rode.last, item, status, desk.now(), in_day=True, text=text)


def learnt_on(desk: LooksAt, ref: Ref, rode: RodeThere) -> tuple[LearntChange, ...]:
    """List the changes of a day with what became of them, oldest first."""
    loaded = desk.files.read(Ref("bike", rode.bike))
    bike = loaded.record if loaded is not None and isinstance(loaded.record, Bike) else None
    last = desk.files.read(rode.last)
    held = last.record if last is not None and isinstance(last.record, Session) else Session()
    history, limits = desk.history_of(Ref("bike", rode.bike)), Limits(desk.files.garage().limits)
    rows = ((one, desk.files.rows.of(one)) for _, one in reversed(of_bike(desk.files, rode.bike)))
    theirs = (one.id for one, row in rows if row is not None and (row.day, row.rider) == (ref.id, rode.rider))
    of_day = (one for name in theirs if (one := history.of(name)) is not None)
    found = list(judged_changes(history, of_day, rode.bike, bike, limits))
    found.sort(key=lambda one: one.session.session.number or 0)
    return tuple(
        LearntChange(_kept(held, one), one) for one in found if one.changes and one.verdict != TO_COME
    )


def _kept(held: Session, entry: LedgerEntry) -> bool:
    return all(value_at(held, one.path) == one.new for one in entry.changes)


def profile_of_day(
    desk: LooksAt, day: RidingDay, rode: RodeThere, note: str
) -> tuple[Ref, Step | InputError]:
    """Make the step that saves what the day ended with as a profile, with what was learnt as its note."""
    date = day.date or desk.now().date()
    lead = "-".join(filter(None, (rode.bike, rode.rider, f"{date}")))
    names = (lead, *(f"{lead}-{number}" for number in range(2, 100)))
    new_id = next(name for name in names if desk.files.path_of(Ref("profile", name)) is None)
    name = ", ".join(filter(None, (rode.rider, day.venue or "", f"{date}")))
    return Ref("profile", new_id), saving_as(desk.files, rode.last, new_id, name, note)


def profile_from(files: GarageFiles, rode: RodeThere) -> Ref | None:
    """Return a profile that was saved from one of the day's sessions already."""
    own = {one.id for one in rode.sessions}
    for ref in files.listing("profile"):
        data = files.data(ref)
        if data.get("taken_from") in own and "retired" not in data:
            return ref
    return None


def open_todos(bike: Bike) -> Iterator[tuple[str, BikeToDo]]:
    """Give what is left to do to a bike, in the order of its numbers."""
    for number in sorted(bike.todos, key=int):
        if bike.todos[number].done is None:
            yield number, bike.todos[number]


def dated(text: str, otherwise: dt.date | None) -> tuple[str, dt.date | None]:
    """Part what is to be done from the date behind it; without a date it is to be done by another one."""
    what, _, last = text.strip().rpartition(" ")
    try:
        return what.strip(), dt.date.fromisoformat(last)
    except ValueError:
        return text.strip(), otherwise


def noting_todo(files: GarageFiles, bike: Ref, what: str, since: dt.date, by: dt.date | None) -> Step:
    """Make the step that notes what is left to do to a bike, with the day before which it has to be done."""
    entry: dict[str, Value] = {"what": what, "since": since}
    if by is not None:
        entry["by"] = by
    edit = Edit((TODOS, str(next_number(files.data(bike), TODOS))), MISSING, entry)
    return Step(f"to do: {what}", (Change(bike, (edit,)),))


def noting_missing(files: GarageFiles, day: Ref, text: str) -> Step | str:
    """Make the step that notes what was missing on a day although no packing list asks for it."""
    item = id_of(text)
    if not item:
        return "what was missing, e.g. zip ties"
    held = files.data(day).get(PACKING)
    if isinstance(held, Mapping) and item in held:
        return f"{item} is noted already: its own row says how it served"
    edit = Edit((PACKING, item), MISSING, {"was": "missing"})
    return Step(f"missing: {text}", (Change(day, (edit,)),))


def done_todo(files: GarageFiles, bike: Ref, number: str, on: dt.date | None) -> Step | str:
    """Make the step that says that something is done; None opens it again."""
    held = files.data(bike).get(TODOS)
    entry = held.get(number) if isinstance(held, Mapping) else None
    old = entry.get("done", MISSING) if isinstance(entry, Mapping) else MISSING
    if not isinstance(entry, Mapping):
        return "there is no such thing to do: it was taken away meanwhile"
    if (old is MISSING) == (on is None):
        return "it stands so already: 1 is done, backspace opens it again"
    edit = Edit((TODOS, number, "done"), old, MISSING if on is None else on)
    return Step(f"{'done' if on else 'open'}: {entry.get('what', number)}", (Change(bike, (edit,)),))
