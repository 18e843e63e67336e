"""What is known of the outing: surface, tyres, rider, and whether it was ridden."""

from collections.abc import Mapping

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.limits import Limits
from paddock_tui.limits.next_change import LIKE_TRACK
from paddock_tui.quantities import Quantity
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.tyres import TyreSet

COLUMN = {"dry": "dry", "damp": "damp", "drying": "damp", "wet": "wet", "standing water": "wet"}
"""How the five words for the surface are judged: drying as damp, standing water as wet."""


def track_warmer_k(then: Session, now: Session) -> float | None:
    """Return by how much the track is warmer than it was then, below zero colder; None where not known.

    A word for either tells too little.
    """
    if not isinstance(now.track, Quantity) or not isinstance(then.track, Quantity):
        return None
    return now.track.to("C") - then.track.to("C")


def track_moved_k(then: Session, now: Session, limits: Limits) -> float | None:
    """Return by how much the track is warmer where that makes it unlike; None where alike or not known."""
    by = track_warmer_k(then, now)
    return by if by is not None and abs(by) > limits[LIKE_TRACK] else None


@fact("the surface", at="session:surface", show=lambda found: f"surface {found}")
def surface(session: Session) -> str | Unknown:
    """Return what the track is like."""
    return session.surface or UNKNOWN


@fact("the surface", at="session:surface")
def column(surface: str) -> str:
    """Return the surface as it is judged: dry, damp or wet."""
    return COLUMN[surface]


@fact("whether the track is wet")
def on_wet(column: str) -> bool | Absent:
    """Return True on a wet track or in standing water; absent elsewhere, so that nothing is asked for it
    there.
    """
    return True if column == "wet" else ABSENT


@fact("whether the track is damp")
def on_damp(column: str) -> bool | Absent:
    """Return True on a damp or drying track; absent elsewhere."""
    return True if column == "damp" else ABSENT


@fact("whether the track is not wet")
def out_of_the_wet(column: str) -> bool | Absent:
    """Return True on a dry, damp or drying track; absent in the wet."""
    return ABSENT if column == "wet" else True


@fact("the kind of session", at="session:kind")
def kind(session: Session) -> str | Unknown:
    """Return what kind of outing it is."""
    return session.kind or UNKNOWN


@fact("the rider's group", at="rider:group", show=lambda found: f"{found} rider")
def group(rider: Rider) -> str | Unknown:
    """Return the group the rider belongs in."""
    return rider.group or UNKNOWN


@fact("the kind of the front tyre", at="tyres:front.kind")
def front_tyre_kind(tyres: TyreSet) -> str | Unknown:
    """Return what the front tyre is made for."""
    return tyres.front.kind or UNKNOWN


@fact("the kind of the rear tyre", at="tyres:rear.kind")
def rear_tyre_kind(tyres: TyreSet) -> str | Unknown:
    """Return what the rear tyre is made for."""
    return tyres.rear.kind or UNKNOWN


@fact("whether full wets are on")
def on_full_wets(records: Mapping[str, Record]) -> bool:
    """Return whether both tyres are known to be full wets."""
    tyres = records.get("tyres")
    return isinstance(tyres, TyreSet) and tyres.front.kind == tyres.rear.kind == "wet"


@fact("whether the session is still to come")
def to_come(session: Session) -> bool | Absent:
    """Return True while the session is not ridden; absent afterwards, so that nothing is asked in
    hindsight.
    """
    return ABSENT if is_ridden(session) else True


@fact("the cold pressures", at="session:pressures.cold.front")
def cold_pressures(session: Session) -> tuple[Quantity, Quantity] | Unknown:
    """Front and rear as read cold (or on the warmers, where they are used) for this session."""
    for name in ("cold", "warmers", "leaving"):
        reading = session.pressures.get(name)
        if reading is not None and reading.front is not None and reading.rear is not None:
            return reading.front, reading.rear
    return UNKNOWN


@fact("whether this is the first outing of the day on this surface")
def first_on_this_surface(session: Session, earlier: tuple[Session, ...]) -> bool | Absent:
    """Return True for the first of the day on this surface, where conduct is said once; then absent."""
    held = COLUMN.get(session.surface or "")
    before = any(is_ridden(one) and COLUMN.get(one.surface or "") == held for one in earlier)
    return ABSENT if before else True


@fact("the surface, where it is known")
def surface_if_known(session: Session) -> str | None:
    """Return the surface; None while nobody said, for rules that judge the worse then."""
    return session.surface
