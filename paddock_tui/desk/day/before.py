"""Before a day: who rides what there, what stands if they went as they are, a session to start from."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import About
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import of_bike, of_date
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.facts.situation import Situation
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.heads import days_of, heads

WET = ("damp", "wet")
"""Forecasts for which a profile made for that surface is proposed."""


@attrs.frozen
class GoesThere:
    """A rider and a bike that go to a day. `entered`: the day's record says so.

    `session` is their first of that day, made already; `source` what it would be copied from; `about` what
    stands if they went as they are; `profile` what is proposed for the surface expected; `sets` are the tyre
    sets that this bike was ridden on, and those that no bike was yet.
    """

    rider: str
    bike: str
    entered: bool
    session: Ref | None = None
    source: Ref | None = None
    about: About | None = None
    profile: Ref | None = None
    sets: tuple[Ref, ...] = ()


def day_to_come(desk: LooksAt, wanted: Ref | None = None) -> Ref | None:
    """Return the day that is wanted, else the next one from today on, else that of the session in hand."""
    if wanted is not None:
        return wanted
    today = desk.now().date()
    coming = [(date, ref.id) for date, ref in days_of(desk.files, lambda date: date >= today)]
    if coming:
        return Ref("day", min(coming)[1])
    hand = desk.session_in_hand()
    named = desk.files.data(hand).get("day") if hand is not None else None
    return Ref("day", named) if isinstance(named, str) else None


def next_day(desk: LooksAt, after: dt.date) -> dt.date | None:
    """Return the date of the next day of the garage that comes after a date; None where none is known."""
    return min((date for date, _ in days_of(desk.files, lambda date: date > after)), default=None)


def written_down(
    desk: LooksAt, ref: Ref, day: RidingDay, date: dt.date
) -> tuple[Ref | None, tuple[str, ...]]:
    """Return what the last day here that has such lines says to bring next time, and which it was."""
    earlier: list[tuple[dt.date, str, tuple[str, ...]]] = []
    for other, head in heads(desk.files, "day"):
        loaded = desk.files.read(other) if "bring" in head else None
        held = loaded.possible if loaded is not None else None
        if other == ref or not isinstance(held, RidingDay) or held.date is None or not held.bring:
            continue
        if held.venue == day.venue and held.date < date:
            earlier.append((held.date, other.id, tuple(held.bring.values())))
    if not earlier:
        return None, ()
    _, name, lines = max(earlier)
    return Ref("day", name), lines


def who_goes(desk: LooksAt, ref: Ref, day: RidingDay) -> tuple[GoesThere, ...]:
    """List who goes to a day: those entered, those with a session there, else whoever rode each bike last."""
    return tuple(_going(desk, ref, day, *pair, entered) for pair, entered in _pairs(desk, ref, day).items())


def last_of_bikes(desk: LooksAt, ref: Ref, day: RidingDay) -> tuple[Ref, ...]:
    """List the last session of each bike that goes to a day: what is said of it is looked back for."""
    placed = (of_bike(desk.files, bike) for bike in {bike for _, bike in _pairs(desk, ref, day)})
    return tuple(sessions[-1][1] for sessions in placed if sessions)


def _pairs(desk: LooksAt, ref: Ref, day: RidingDay) -> dict[tuple[str, str], bool]:
    """Return each rider and bike that go to a day, and whether they are entered."""
    pairs = {(rider, bike): True for rider, bikes in day.entries.items() for bike in bikes}
    for session in _made_for(desk, ref, day):
        data = desk.files.data(session)
        pairs.setdefault((str(data.get("rider", "")), str(data.get("bike", ""))), True)
    if not pairs:
        pairs = dict.fromkeys(_rode_last(desk), False)
    return pairs


def _made_for(desk: LooksAt, ref: Ref, day: RidingDay) -> Iterator[Ref]:
    if day.date is None:
        return
    for _, session in of_date(desk.files, day.date):
        if desk.files.data(session).get("day") == ref.id:
            yield session


def _rode_last(desk: LooksAt) -> Iterator[tuple[str, str]]:
    for bike in desk.files.listing("bike"):
        sessions = of_bike(desk.files, bike.id) if "retired" not in desk.files.data(bike) else ()
        for _, session in sessions[-1:]:
            yield str(desk.files.data(session).get("rider", "")), bike.id


def _going(desk: LooksAt, ref: Ref, day: RidingDay, rider: str, bike: str, entered: bool) -> GoesThere:
    own = [one for one in _made_for(desk, ref, day) if _is_of(desk, one, rider, bike)]
    before = [one for at, one in of_bike(desk.files, bike) if day.date is None or at[0] < day.date]
    rows = ((one, desk.files.rows.of(one)) for one in before)
    ridden = [(one, row.rider) for one, row in rows if row is not None and row.ridden]
    theirs = [one for one in ridden if one[1] == rider] or ridden
    made = GoesThere(
        rider,
        bike,
        entered,
        own[0] if own else None,
        theirs[-1][0] if theirs else None,
        profile=_profile(desk, day, rider, bike),
    )
    found = _situation(desk, ref, made)
    about = About(found, found.history, desk.units(rider or None)) if found is not None else None
    return attrs.evolve(made, about=about, sets=tuple(_sets(desk, bike)))


def _sets(desk: LooksAt, bike: str) -> Iterator[Ref]:
    refs = desk.files.listing("session")

    def used_on() -> dict[str, set[str]]:
        used: dict[str, set[str]] = {}
        rows = (desk.files.rows.of(session) for session in refs)
        for tyres, on in {(row.tyres, row.bike) for row in rows if row is not None}:
            used.setdefault(tyres, set()).add(on)
        return used

    used = desk.files.rows.derived(refs, ("bikes by tyres",), used_on)
    for ref in desk.files.listing("tyres"):
        if bike in used.get(ref.id, {bike}) and "retired" not in desk.files.data(ref):
            yield ref


def _is_of(desk: LooksAt, session: Ref, rider: str, bike: str) -> bool:
    data = desk.files.data(session)
    return (data.get("rider", ""), data.get("bike", "")) == (rider, bike)


def _situation(desk: LooksAt, ref: Ref, made: GoesThere) -> Situation | None:
    """Return the first session there as it stands, or as it would be if it were made now."""
    if made.session is not None:
        return desk.assembled(made.session).situation
    subject, step = first_session(desk, ref, made)
    if isinstance(step, InputError):
        return None
    desk.history_of(Ref("bike", made.bike))  # so that the page made again finds it collected
    return desk.as_if_made(subject, step)


def first_session(desk: LooksAt, ref: Ref, made: GoesThere) -> tuple[Ref, Step | InputError]:
    """Make the step that creates the first session of a day: the set-up of the last one, or of a profile.

    A profile is taken where one was made for the surface that is expected.
    """
    if made.source is None:
        return ref, InputError("this bike was never ridden", "a session to go on from", "g, then n makes one")
    more: dict[str, Value] = {"rider": made.rider} if made.rider else {}
    setup = desk.files.data(made.profile).get("setup") if made.profile is not None else None
    if isinstance(setup, dict) and made.profile is not None:
        more |= {"setup": setup, "taken_from": made.profile.id}
    return next_session(desk.files, made.source, desk.now(), more, on=ref)


def _profile(desk: LooksAt, day: RidingDay, rider: str, bike: str) -> Ref | None:
    """Return the profile of this rider and bike for the surface expected; None where that is not known."""
    if day.forecast not in ("dry", *WET):
        return None
    for ref in desk.files.listing("profile"):
        data = desk.files.data(ref)
        fits = (data.get("bike"), data.get("rider"), data.get("made_for")) == (bike, rider, day.forecast)
        if fits and "retired" not in data:
            return ref
    return None
