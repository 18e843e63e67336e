"""Where to start with each aid: help 0.0 to 1.0 for a group, a surface and a tyre.

A starting point, never a guarantee; the bike's manual and an instructor come first. All figures are common
practice, no source: less help for quicker groups, more for cold, damp and wet. Turn them into a bike's level
with HelpScale.level_at_least, which rounds toward more help.
"""

import enum

import attrs

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.levels import Level, Levels, Scale


class RiderGroup(enum.Enum):
    """Who rides."""

    NOVICE = "novice"
    INTERMEDIATE = "intermediate"
    ADVANCED = "advanced"
    RACE = "race"


class Surface(enum.Enum):
    """What is ridden on; cold-dry is a dry track that counts as cold."""

    DRY = "dry"
    COLD_DRY = "cold-dry"
    DAMP = "damp"
    DRYING = "drying"
    WET = "wet"
    STANDING = "standing"


class TyreKind(enum.Enum):
    """What it is ridden with."""

    ROAD = "road"
    TRACKDAY = "trackday"
    RACE_TREADED = "race-treaded"
    SLICK = "slick"
    INTERMEDIATE = "intermediate"
    WET = "wet"


class Aid(enum.Enum):
    """What is set. Engine braking is a position toward the end that frees the rear, not help."""

    TRACTION = "traction"
    SLIDE = "slide"
    WHEELIE = "wheelie"
    FRONT_ABS = "front-abs"
    REAR_ABS = "rear-abs"
    ABS = "abs"
    ENGINE_BRAKING = "engine-braking"
    THROTTLE = "throttle"
    POWER = "power"


_COLUMNS = {
    Aid.TRACTION: 0,
    Aid.SLIDE: 0,
    Aid.WHEELIE: 1,
    Aid.FRONT_ABS: 2,
    Aid.REAR_ABS: 3,
    Aid.ENGINE_BRAKING: 4,
    Aid.THROTTLE: 5,
    Aid.POWER: 5,
}
_BASE = {
    RiderGroup.NOVICE: (0.70, 0.70, 0.85, 0.85, 0.50, 0.60),
    RiderGroup.INTERMEDIATE: (0.50, 0.50, 0.65, 0.55, 0.50, 0.35),
    RiderGroup.ADVANCED: (0.35, 0.35, 0.40, 0.25, 0.40, 0.15),
    RiderGroup.RACE: (0.30, 0.30, 0.30, 0.10, 0.35, 0.10),
}
_ADDED = {
    Surface.DRY: (0.0, 0.0, 0.0, 0.0, 0.0, 0.0),
    Surface.COLD_DRY: (0.10, 0.05, 0.05, 0.05, 0.05, 0.10),
    Surface.DAMP: (0.20, 0.15, 0.15, 0.25, 0.20, 0.25),
    Surface.WET: (0.30, 0.25, 0.25, 0.40, 0.30, 0.40),
}
_FLOOR = {
    Surface.DAMP: (0.50, 0.45, 0.50, 0.35, 0.55, 0.35),
    Surface.WET: (0.60, 0.55, 0.60, 0.50, 0.65, 0.50),
}
_STREET = (0.70, 0.70, 1.0, 1.0, 0.50, 0.40)
_SAME_SURFACE = {Surface.DRYING: Surface.DAMP, Surface.STANDING: Surface.WET}
_SAME_TYRE = {TyreKind.INTERMEDIATE: TyreKind.WET, TyreKind.RACE_TREADED: TyreKind.TRACKDAY}
_WET_SURFACES = (Surface.DAMP, Surface.WET)

WHEELIE_FOR_LAUNCH = 0.30
"""Least wheelie help for a start with launch control. Common practice, no source."""


@attrs.frozen
class TyreState:
    """What makes the rear tyre grip less than its kind: worn, or new and not yet scrubbed in."""

    worn: bool = False
    unscrubbed: bool = False


_GOOD = TyreState()


def surface_by_track(surface: Surface, track_c: float | None, cold_below_c: float) -> Surface:
    """Return cold-dry for a dry track colder than that; without a track temperature the surface as given."""
    if surface is Surface.DRY and track_c is not None and track_c < cold_below_c:
        return Surface.COLD_DRY
    return surface


def starting_help(
    group: RiderGroup, surface: Surface, tyre: TyreKind, aid: Aid, rear: TyreState = _GOOD
) -> float | None:
    """Help to start with, 0.0 to 1.0; None where the tyre does not suit the surface and no level helps.

    Drying counts as damp, standing water as wet with more traction control (or stay in); a race-treaded
    tyre as a track-day one, an intermediate as a wet one. ABS that is one control takes the higher of its
    two wheels.
    """
    if aid is Aid.ABS:
        return _higher(
            starting_help(group, surface, tyre, Aid.FRONT_ABS, rear),
            starting_help(group, surface, tyre, Aid.REAR_ABS, rear),
        )
    ground = _SAME_SURFACE.get(surface, surface)
    rubber = _SAME_TYRE.get(tyre, tyre)
    if not _suits(rubber, ground):
        return None
    column = _COLUMNS[aid]
    wanted = _BASE[group][column] + _ADDED[ground][column]
    if column == 0:
        wanted += _for_tyre(group, ground, rubber)
    if ground in _FLOOR:
        wanted = max(wanted, _FLOOR[ground][column])
    wanted += _for_state(column, rear, surface)
    return round(min(max(wanted, 0.0), 1.0), 4)


def street_help(aid: Aid) -> float:
    """Help to start with on the road home."""
    return 1.0 if aid is Aid.ABS else _STREET[_COLUMNS[aid]]


def launch_to_start_with(levels: Levels, starts_made: int) -> Level | None:
    """Return the gentlest launch level for who has made no start with it yet; None: the rider's own from then
    on.

    `levels.most` names the gentlest end; raises Inconsistent while that is not known. Launch control is for
    races and declared start practice; off is its safe state.
    """
    scale: Scale | None = levels.scale_if_known()
    if scale is None:
        raise Inconsistent("launch", "which end is the gentlest is not known")
    return scale.most if starts_made <= 0 else None


def _suits(tyre: TyreKind, surface: Surface) -> bool:
    if tyre is TyreKind.SLICK:
        return surface not in _WET_SURFACES
    return tyre is not TyreKind.WET or surface in _WET_SURFACES


def _for_tyre(group: RiderGroup, surface: Surface, tyre: TyreKind) -> float:
    if tyre is TyreKind.ROAD:
        return 0.10
    if tyre is TyreKind.SLICK:
        if surface is Surface.COLD_DRY:
            return 0.10
        return -0.05 if group in (RiderGroup.ADVANCED, RiderGroup.RACE) else 0.0
    return 0.0


def _for_state(column: int, rear: TyreState, surface: Surface) -> float:
    added = 0.0
    if column == 0:
        added += 0.10 if rear.worn else 0.0
        added += 0.15 if rear.unscrubbed else 0.0
        added += 0.10 if surface is Surface.STANDING else 0.0
    elif column == 1 and rear.worn:
        added += 0.05
    return added


def _higher(first: float | None, second: float | None) -> float | None:
    return None if first is None or second is None else max(first, second)
