"""The board of a day: each rider and bike that is entered or has a session, in the order of the clock.

A review is made once a minute, and again when a record of the garage reads otherwise; never at a key.
"""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any, Literal

import attrs

from paddock_tui.desk.day.countdown import clock_of, next_start
from paddock_tui.desk.day.minute import Minute
from paddock_tui.desk.day.out_now import out_now
from paddock_tui.desk.desk import Desk
from paddock_tui.desk.lookup import glance, of_date
from paddock_tui.facts.checklists import Checked, at_hand
from paddock_tui.facts.situation import Situation
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.store.heads import days_of

BoardState = Literal["out", "stopped", "to come", "none made", "over"]
"""Out, stopped on the way, a session to come, a line of the timetable without a session, nothing more."""


@attrs.frozen
class Judged:
    """What a session's review gives the board. None of a thing: it is not asked of this session."""

    review: Review
    checklist_open: int | None
    dash_read: bool | None
    fuel_known: bool
    pressures_known: bool


@attrs.frozen
class BoardEntry:
    """One rider on one bike. `starts`: when it goes out next, or went out; `judged`: what is to come."""

    rider: str
    bike: str
    state: BoardState
    session: Ref | None = None
    day: Ref | None = None
    starts: dt.datetime | None = None
    judged: Judged | None = None


@attrs.define
class BoardMemory:
    """The reviews of a board, each kept for its minute and until the garage changes."""

    _minute: Minute = attrs.field(factory=Minute)
    _kept: dict[Ref, Judged] = attrs.field(factory=dict)
    judged: int = 0
    """How many sessions were judged in this run."""

    def begin(self, desk: Desk) -> None:
        """Forget what was judged where the garage changed since, or in another minute."""
        if self._minute.is_over(desk):
            self._kept.clear()

    def of(self, desk: Desk, session: Ref) -> Judged:
        """Return what a session's review gives the board."""
        if session not in self._kept:
            self._kept[session] = _judged(desk, session)
            self.judged += 1
        return self._kept[session]


def board_date(desk: Desk, day: Ref | None = None) -> dt.date:
    """Return the date of a day, else today where somebody rides; else that of the session in hand.

    While somebody is out over midnight it is still the day before.
    """
    named = desk.files.data(day).get("date") if day is not None else None
    if isinstance(named, dt.date):
        return named
    out = [glance(ref, desk.files.data(ref)) for ref in out_now(desk.files, desk.now())]
    over = min((one.date for one in out if one is not None), default=None)
    if over is not None:
        return over
    today, hand = desk.now().date(), desk.session_in_hand()
    if of_date(desk.files, today) or any(_days(desk, today)) or hand is None:
        return today
    seen = glance(hand, desk.files.data(hand))
    return seen.date if seen is not None else today


def board_of(desk: Desk, date: dt.date, memory: BoardMemory) -> tuple[BoardEntry, ...]:
    """Return an entry for each rider and bike of a date: who goes out next first, who is done last."""
    memory.begin(desk)
    found: dict[tuple[str, str], BoardEntry] = {}
    for day, record in _days(desk, date):
        for rider, bikes in record.entries.items():
            for bike in bikes:
                found[rider, bike] = _without_session(desk, date, rider, bike, day, record)
    sessions: dict[tuple[str, str], list[Ref]] = {}
    for _, ref in of_date(desk.files, date):
        data = desk.files.data(ref)
        sessions.setdefault((str(data.get("rider", "")), str(data.get("bike", ""))), []).append(ref)
    for (rider, bike), refs in sessions.items():
        found[rider, bike] = _entry(desk, date, rider, bike, refs, memory)
    return tuple(sorted(found.values(), key=_clock))


def _clock(one: BoardEntry) -> tuple[bool, dt.datetime, str, str]:
    return one.state == "over", one.starts or dt.datetime.max, one.rider, one.bike


def _days(desk: Desk, date: dt.date) -> Iterator[tuple[Ref, RidingDay]]:
    for _, ref in days_of(desk.files, lambda one: one == date):
        loaded = desk.files.read(ref)
        if loaded is not None and isinstance(loaded.possible, RidingDay):
            yield ref, loaded.possible


def _without_session(
    desk: Desk, date: dt.date, rider: str, bike: str, ref: Ref, day: RidingDay
) -> BoardEntry:
    starts = next_start(desk.files, day, date, rider, bike, desk.now())
    state: BoardState = "none made" if starts is not None or date >= desk.now().date() else "over"
    return BoardEntry(rider, bike, state, day=ref, starts=starts)


def _entry(
    desk: Desk, date: dt.date, rider: str, bike: str, refs: list[Ref], memory: BoardMemory
) -> BoardEntry:
    """Return the entry of sessions in their order: the one that is out, else the first to come."""
    waiting = [ref for ref in refs if not _ridden(desk, ref)]
    out = next((ref for ref in reversed(waiting) if "went_out" in desk.files.data(ref)), None)
    ref = out or (waiting[0] if waiting else refs[-1])
    data = desk.files.data(ref)
    named = data.get("day")
    day = Ref("day", named) if isinstance(named, str) else None
    if not waiting:
        loaded = desk.files.read(day) if day is not None else None
        held = loaded.possible if loaded is not None else None
        starts = None
        if isinstance(held, RidingDay):
            starts = next_start(desk.files, held, date, rider, bike, desk.now())
        return BoardEntry(rider, bike, "none made" if starts is not None else "over", ref, day, starts)
    clock = clock_of(desk.files, ref, desk.now())
    starts = clock.out if clock is not None else _starts(data, date)
    state: BoardState = "out" if out is not None else "to come"
    if clock is not None and clock.word in ("restart", "stopped"):
        state = "stopped"
    return BoardEntry(rider, bike, state, ref, day, starts, memory.of(desk, ref))


def _starts(data: Mapping[str, Any], date: dt.date) -> dt.datetime | None:
    start = data.get("start")
    return dt.datetime.combine(date, start) if isinstance(start, dt.time) else None


def _ridden(desk: Desk, ref: Ref) -> bool:
    row = desk.files.rows.of(ref)
    return row is not None and row.ridden


def _judged(desk: Desk, session: Ref) -> Judged:
    situation = desk.assembled(session).situation
    judged, facts = desk.judged(situation), desk.facts_of(situation)
    missing = {one.id for one in judged.missing}
    dash = facts.get("dash_to_read")
    return Judged(
        judged,
        _open(situation, facts.get("checked")),
        not dash if isinstance(dash, bool) else None,
        "fuel" not in missing,
        "pressures" not in missing,
    )


def _open(situation: Situation, checked: object) -> int | None:
    """Count what is open on the lists of the stage at hand; None without lists."""
    session = situation.session
    if not isinstance(checked, Checked) or session is None or not checked.lists:
        return None
    stage = at_hand(
        checked.lists, session, situation.tyres, situation.earlier, situation.source, situation.now.date()
    )
    return sum(len(one.open) for one in checked.lists if stage is not None and one.stage == stage.stage)
