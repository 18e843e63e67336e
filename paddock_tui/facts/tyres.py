"""The tyres that are fitted: kinds, warmth, warmers, what was seen on them, cycles and age."""

import datetime as dt
from collections.abc import Mapping
from typing import NamedTuple

import attrs

from paddock_tui.calc.date_code import age_years
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.heat_cycles import KEPT_WARM_MIN
from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.facts.past import ENDS, End, History, tyre_of
from paddock_tui.facts.tyre_counts import TreadNow, tread_now, tyre_count
from paddock_tui.facts.tyre_state import last_look
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import COLD_TRACK, WARM_TRACK
from paddock_tui.quantities import Quantity
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.shown_words import shown
from paddock_tui.records.tyres import TyreSet

RACE_RUBBER = ("slick", "race-treaded")

_FELT_TRACK = {"cold": 10.0, "mild": 18.0, "hot": 35.0}
"""What the words for the track stand for, in C, where somebody gave a word instead of a figure."""


@fact(
    "the kinds of the tyres",
    at="tyres:front.kind",
    show=lambda found: "tyres " + ", ".join(f"{end} {kind}" for end, kind in found.items()),
)
def fitted(tyres: TyreSet) -> Mapping[End, str] | Unknown:
    """Return what each tyre is made for, those that are known."""
    found: dict[End, str] = {}
    for end in ENDS:
        kind = tyre_of(tyres, end).kind
        if kind is not None:
            found[end] = kind
    return found or UNKNOWN


@attrs.frozen
class KindHere:
    """What a tyre is made for, and at which ends it is so: the rear is told with the front where alike."""

    kind: str
    ends: str

    def __str__(self) -> str:
        return f"{self.ends} {self.kind}"


@fact("the kind of the {subject} tyre", at="tyres:{subject}.kind", per="end", show=str)
def kind_here(end: End, tyres: TyreSet) -> KindHere | Unknown | Absent:
    """Return what one tyre is made for; absent for a rear that is of the front's kind, which speaks for
    both.
    """
    front, rear = tyres.front.kind, tyres.rear.kind
    kind = front if end == "front" else rear
    if kind is None:
        return UNKNOWN
    if front == rear:
        return KindHere(kind, "front and rear") if end == "front" else ABSENT
    return KindHere(kind, end)


@fact(
    "the kinds of both tyres",
    at="tyres:front.kind",
    show=lambda found: f"tyres front {found[0]}, rear {found[1]}",
)
def both_kinds(tyres: TyreSet) -> tuple[str, str] | Unknown:
    """Return what front and rear are made for; not known while one of them is not."""
    front, rear = tyres.front.kind, tyres.rear.kind
    return UNKNOWN if front is None or rear is None else (front, rear)


@fact("race rubber")
def race_rubber(fitted: Mapping[End, str]) -> tuple[str, ...] | Absent:
    """Return which kinds of race rubber are on; absent where none is."""
    kinds = tuple(dict.fromkeys(kind for kind in fitted.values() if kind in RACE_RUBBER))
    return kinds or ABSENT


@fact("whether the track is dry")
def on_dry(column: str) -> bool | Absent:
    """Return True on a dry track, absent elsewhere."""
    return True if column == "dry" else ABSENT


def track_in_c(track: Quantity | str, limits: Limits) -> float:
    """Return a track temperature in C; a word means what it says, whatever counts as cold or warm here."""
    if isinstance(track, Quantity):
        return track.to("C")
    cold, warm = limits[COLD_TRACK], limits[WARM_TRACK]
    if track == "cold":
        return min(_FELT_TRACK[track], cold - 1.0)
    return max(_FELT_TRACK[track], warm + 1.0) if track == "hot" else min(max(_FELT_TRACK[track], cold), warm)


@fact("track temperature", at="session:track", show=lambda found: f"track {found:g} C")
def track_c(session: Session, limits: Limits) -> float | Unknown:
    """Return the temperature of the track in C; a word stands for a figure in its middle."""
    return UNKNOWN if session.track is None else track_in_c(session.track, limits)


@fact("whether tyre warmers are used", at="session:warmers", show=lambda found: f"warmers {found}")
def warmers(session: Session) -> str | Unknown:
    """Return whether tyre warmers are used before this session: none or used."""
    return session.warmers or UNKNOWN


@fact("whether tyre warmers are used", at="session:warmers", show=lambda found: f"warmers {found}")
def unwarmed(warmers: str) -> str | Absent:
    """Return the word that no warmers are used; absent where they are."""
    return ABSENT if warmers == "used" else warmers


@fact("minutes on the warmers", show=lambda found: f"{found:.0f} min on the warmers")
def soaked_min(session: Session, earlier: tuple[Session, ...]) -> float | Absent:
    """Return minutes from cold on the warmers; absent where times are missing or the tyres came in hot
    before.
    """
    off = session.warmers_off or session.went_out or session.start
    if session.warmers != "used" or session.warmers_on is None or off is None:
        return ABSENT
    if any(_came_in_hot(one, session) for one in earlier):
        return ABSENT
    minutes = _minutes(off) - _minutes(session.warmers_on)
    return minutes if minutes >= 0 else ABSENT


@fact("minutes off the warmers", show=lambda found: f"{found:.0f} min off the warmers")
def off_warmers_min(session: Session) -> float | Absent:
    """Return minutes from the warmers to the track, once both times stand there."""
    if session.warmers != "used" or session.warmers_off is None or session.went_out is None:
        return ABSENT
    minutes = _minutes(session.went_out) - _minutes(session.warmers_off)
    return minutes if minutes >= 0 else ABSENT


@fact("what the warmers are set to", show=lambda found: f"warmers at {found:g} C")
def warmers_c(session: Session) -> float | Absent:
    """Return what the warmers are set to in C; absent where none are used or nobody said."""
    if session.warmers == "none" or session.warmers_at is None:
        return ABSENT
    return session.warmers_at.to("C")


@attrs.frozen
class TyreSeen:
    """What was last seen on one tyre, and in which session."""

    end: End
    looks: tuple[str, ...]
    when: str

    def __str__(self) -> str:
        return f"{self.end} tyre {', '.join(map(shown, self.looks))} ({self.when})"


@fact("the last look at the {subject} tyre", at="session:look.{subject}", per="end", show=str)
def last_seen(end: End, session: Session, history: History, tyres: TyreSet) -> TyreSeen | Absent:
    """Return what was last seen on a tyre since it was fitted, in a set before too; absent where nobody
    looked.
    """
    fitted_on = tyre_of(tyres, end).fitted
    own = session.look.get(end)
    if own is not None and own.seen:
        return TyreSeen(end, own.seen, "this session")
    if session.tyres is None:
        return ABSENT
    found = last_look(history, session.tyres, end)
    on = found.past.date if found is not None else None
    if found is None or (fitted_on is not None and on is not None and on < fitted_on):
        return ABSENT
    return TyreSeen(end, found.looks, f"session {found.past.id}")


@fact("whether the {subject} tyre is scrubbed in", per="end")
def unscrubbed(end: End, session: Session, history: History, tyres: TyreSet) -> bool | Absent:
    """Return True for a tyre with its shiny skin on that nobody has ridden yet; absent otherwise."""
    if tyre_of(tyres, end).scrubbed is not False:
        return ABSENT
    ridden = any(one.tyres == session.tyres for one in history.ridden)
    return ABSENT if ridden else True


@fact("heat cycles of the {subject} tyre", per="end", show=lambda found: f"{found} heat cycles")
def tyre_cycles(end: End, session: Session, history: History, tyres: TyreSet) -> int | Absent:
    """Return the heat cycles before this session: what the file starts with, and the sessions on this
    bike since.

    A tyre that another set began with is followed to there. Sessions on other bikes are not seen.
    """
    if session.tyres is None:
        return ABSENT
    found = tyre_count(history, session.tyres, end, tyres)
    if found.cycles_before is None and not found.sessions:
        return ABSENT
    return found.all_cycles


@fact("the rider's limit of heat cycles", show=lambda found: f"own limit {found}")
def cycles_limit(rider: Rider) -> int | Absent:
    """After how many heat cycles this rider takes a tyre off; absent where the rider sets none."""
    return rider.limits.heat_cycles or ABSENT


@fact("the age of the {subject} tyre", per="end", show=lambda found: f"{found:.1f} years old")
def tyre_age(end: End, session: Session, tyres: TyreSet) -> float | Absent:
    """Return the age in years on the session's day by the date code; absent where it cannot be read."""
    code = tyre_of(tyres, end).date_code
    if code is None or session.date is None:
        return ABSENT
    try:
        return age_years(code, session.date)
    except Inconsistent:
        return ABSENT


def _came_in_hot(before: Session, session: Session) -> bool:
    if before.tyres != session.tyres or before.parked is None or session.warmers_on is None:
        return False
    return 0 <= _minutes(session.warmers_on) - _minutes(before.parked) <= KEPT_WARM_MIN


def _minutes(at: dt.time) -> float:
    return at.hour * 60.0 + at.minute + at.second / 60.0


class WornTread(NamedTuple):
    """The least tread of a tyre that is at or under what it counts as worn at."""

    least: TreadNow
    worn_at: Quantity

    def __str__(self) -> str:
        return f"{self.least}, worn at {self.worn_at}"


@fact("tread at its limit, {subject}", per="end", show=str)
def worn_tread(end: End, session: Session, tyres: TyreSet, history: History) -> WornTread | Absent:
    """Return the least tread, as last measured, where it is at the tyre's own limit."""
    worn_at, found = tyre_of(tyres, end).worn_at, tread_now(session, tyres, history, end)
    if worn_at is None or found is None or found.depth.to("mm") > worn_at.to("mm"):
        return ABSENT
    return WornTread(found, worn_at)
