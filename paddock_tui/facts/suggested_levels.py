"""The level of each aid to start at, for this rider, surface and rear tyre: one for row, rule and package."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from paddock_tui.calc.levels import HelpScale, Level
from paddock_tui.calc.starting_levels import (
    Aid,
    RiderGroup,
    TyreState,
    starting_help,
    street_help,
    surface_by_track,
)
from paddock_tui.facts.core import ABSENT, fact
from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.rear_tyre import poor_rear
from paddock_tui.facts.starting_words import level_surface, level_tyre
from paddock_tui.facts.tyres import track_in_c
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import COLD_TRACK
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.tyres import TyreSet

ROAD = "road"
"""The kind of session in which every aid starts with the road's figures, whoever rides."""


def new_here(rider: str | None, venue: str | None, history: History) -> str:
    """Say what is new to a rider, the bike or the venue; empty where neither is, or nobody knows."""
    if rider is None:
        return ""

    def ridden() -> Iterator[PastSession]:
        latest_first = reversed(history.past)
        return (one for one in latest_first if one.rider == rider and one.ridden)

    if next(ridden(), None) is None:
        return "no earlier session of this rider on this bike"
    if venue is not None and not any(one.venue == venue for one in ridden()):
        return "no earlier session of this rider here on this bike"
    return ""


def state_of_rear(session: Session, history: History, tyres: TyreSet) -> TyreState:
    """Return what makes the rear tyre grip less than its kind: worn, or new and not ridden in yet."""
    poor = poor_rear(session, history, tyres, None)
    return TyreState() if poor is ABSENT else TyreState("worn" in poor, "new" in poor)


class Riding(NamedTuple):
    """What the help to start with rests on: the rider's group, the surface, the rear tyre, the track."""

    group: str
    surface: str
    tyre: str
    track: Quantity | str | None
    state: TyreState


def help_to_start(riding: Riding, aid: Aid, limits: Limits) -> float | None:
    """Return how much help an aid starts with, 0 for the least to 1; None: this tyre is not for this surface.

    For engine braking it is the place on its scale, 1 for the weakest.
    """
    track_c = track_in_c(riding.track, limits) if riding.track is not None else None
    ground = surface_by_track(level_surface(riding.surface), track_c, limits[COLD_TRACK])
    return starting_help(RiderGroup(riding.group), ground, level_tyre(riding.tyre), aid, riding.state)


def level_to_start(helps: HelpScale, wanted: float, first: bool) -> Level:
    """Return the level with at least this help; one step more for what is `first`, here or on this bike."""
    level = helps.level_at_least(wanted)
    return helps.more_help(level) if first else level


def _at_a_track(
    session: Session, records: Mapping[str, Record], history: History, aid: Aid, limits: Limits
) -> float | None:
    rider, tyres = records.get("rider"), records.get("tyres")
    if not isinstance(rider, Rider) or not isinstance(tyres, TyreSet):
        return None
    group, surface, kind = rider.group, session.surface, tyres.rear.kind
    if group is None or surface is None or kind is None:
        return None
    riding = Riding(group, surface, kind, session.track, state_of_rear(session, history, tyres))
    return help_to_start(riding, aid, limits)


@fact("the level of {subject} to start at", per="control")
def suggested_level(
    subject: str,
    control: Control,
    bike: Bike,
    setup: SetUp,
    session: Session,
    aid_function: str,
    help_scale: HelpScale,
    records: Mapping[str, Record],
    refs: Mapping[str, Ref],
    history: History,
    limits: Limits,
) -> Setting | None:
    """Return the level that the row suggests; None where nothing tells it, or the riding mode bars it."""
    aid = Aid(aid_function)
    wanted = street_help(aid) if session.kind == ROAD else _at_a_track(session, records, history, aid, limits)
    if wanted is None:
        return None
    venue = refs["venue"].id if "venue" in refs else None
    first = bool(new_here(refs["rider"].id if "rider" in refs else None, venue, history))
    level = level_to_start(help_scale, wanted, first)
    in_force = control_in_force(subject, setup, bike)
    return level if in_force.fixed is None and in_force.allows(control, level) else None
