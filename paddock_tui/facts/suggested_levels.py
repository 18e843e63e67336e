"""The level of each aid to start at, for this rider, surface and rear tyre: one for row, rule and package."""

from collections.abc import Mapping

from paddock_tui.facts.core import ABSENT, fact
from paddock_tui.facts.past import History
from paddock_tui.facts.rear_tyre import poor_rear
from paddock_tui.facts.starting_words import level_surface, level_tyre
from paddock_tui.facts.tyres import track_in_c
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import COLD_TRACK
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes import Setting
from paddock_tui.records.tyres import TyreSet
from paddock_tui.trade.levels import HelpScale
from paddock_tui.trade.starting_levels import (
    Aid,
    RiderGroup,
    TyreState,
    starting_help,
    surface_by_track,
)


def new_here(rider: str | None, venue: str | None, history: History) -> str:
    """Say what is new to a rider, the bike or the venue; empty where neither is, or nobody knows."""
    if rider is None:
        return ""
    ridden = [one for one in history.past if one.session.rider == rider and is_ridden(one.session)]
    if not ridden:
        return "no earlier session of this rider on this bike"
    if venue is not None and not any(one.venue == venue for one in ridden):
        return "no earlier session of this rider here on this bike"
    return ""


def state_of_rear(session: Session, history: History, tyres: TyreSet) -> TyreState:
    """Return what makes the rear tyre grip less than its kind: worn, or new and not ridden in yet."""
    poor = poor_rear(session, history, tyres, None)
    return TyreState() if poor is ABSENT else TyreState("worn" in poor, "new" in poor)


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
    rider, tyres = records.get("rider"), records.get("tyres")
    if not isinstance(rider, Rider) or not isinstance(tyres, TyreSet):
        return None
    if None in (rider.group, session.surface, tyres.rear.kind):
        return None
    surface, kind = session.surface or "", tyres.rear.kind or ""
    ground = level_surface(surface)
    track_c = track_in_c(session.track, limits) if session.track is not None else None
    wanted = starting_help(
        RiderGroup(rider.group),
        surface_by_track(ground, track_c, limits[COLD_TRACK]),
        level_tyre(kind),
        Aid(aid_function),
        state_of_rear(session, history, tyres),
    )
    if wanted is None:
        return None
    level = help_scale.level_at_least(wanted)
    venue = refs["venue"].id if "venue" in refs else None
    if new_here(refs["rider"].id if "rider" in refs else None, venue, history):
        level = help_scale.more_help(level)
    in_force = control_in_force(subject, setup, bike)
    return level if in_force.fixed is None and in_force.allows(control, level) else None
