"""Rules about the way home by road: pressures, tread, tyres, ABS and riding mode."""

from paddock_tui.facts.aids import least_watching
from paddock_tui.facts.controls import ShownControl
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import End
from paddock_tui.facts.road import TRACK_ONLY, Leaving
from paddock_tui.facts.weather import Dusk
from paddock_tui.limits import Limits
from paddock_tui.limits.pressures import BELOW_ROAD
from paddock_tui.limits.tyres import TREAD_CAUTION, TREAD_SERIOUS
from paddock_tui.limits.weather import DUSK_SUMMER, DUSK_WINTER
from paddock_tui.quantities import Quantity
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import Control
from paddock_tui.records.shapes_of_bike import is_off, label_of
from paddock_tui.rules.core import (
    AIDS,
    CAUTION,
    EVENT,
    HOLD,
    PRESSURES,
    SERIOUS,
    TYRES,
    RaisedFinding,
    Remedy,
    Result,
    SetValue,
    rule,
)

_HERE = ("on_the_road", "to_come")


@rule(
    "road-home-at-track-pressure",
    CAUTION,
    source="the manual's road figure; riders' guides: re-inflate before leaving",
    per="end",
    at="session:pressures.cold.{subject}",
    when=_HERE,
    limits=(BELOW_ROAD,),
    rank=PRESSURES,
)
def road_home_at_track_pressure(leaving_with: Leaving, road_pressure: Quantity, limits: Limits) -> Result:
    """A tyre leaves by road with the low pressure of the track."""
    if road_pressure.to("bar") - leaving_with.pressure.to("bar") < limits[BELOW_ROAD]:
        return None
    end = leaving_with.end
    put = SetValue(("setup", f"{end}_start"), str(road_pressure))
    return RaisedFinding(
        message=f"The {end} leaves with {leaving_with.pressure}; the road figure is {road_pressure}.",
        why="At road speeds and loads a soft tyre runs hot, wallows, and can fail.",
        remedy=Remedy(
            f"Pump it up to {road_pressure} cold before leaving, and enter what it was set to.",
            () if leaving_with.read else (put,),
        ),
        path=("pressures", "cold", f"set_to_{end}") if leaving_with.read else ("setup", f"{end}_start"),
    )


@rule(
    "little-tread-for-the-road",
    SERIOUS,
    source="the garage's own entry for what the law here asks; without one paddock practice, unpublished",
    per="end",
    at="tyres:{subject}.tread_middle",
    when=_HERE,
    limits=(TREAD_SERIOUS, TREAD_CAUTION),
    rank=TYRES,
)
def little_tread_for_the_road(end: End, least_tread: Quantity, limits: Limits) -> Result:
    """A tyre has little tread left for the road."""
    left = least_tread.to("mm")
    entered = limits.overridden(TREAD_SERIOUS)
    if left >= max(limits[TREAD_CAUTION], limits[TREAD_SERIOUS] if entered else 0.0):
        return None
    law = entered and left < limits[TREAD_SERIOUS]
    ask = (
        "Fit another tyre, or take the van."
        if law
        else (
            "Look up what the law asks for here, enter it among the thresholds; take the van, or fit another."
        )
    )
    return RaisedFinding(
        message=f"The {end} tyre has {least_tread} of tread left for the road.",
        why="Least tread is the law's, and on a wet road the tread is what is left of the grip.",
        remedy=Remedy(ask),
        severity=HOLD if law else SERIOUS if left < limits[TREAD_SERIOUS] else CAUTION,
    )


@rule(
    "tyre-not-for-the-road",
    HOLD,
    source="the side wall: marked not for use on the road",
    per="end",
    at="tyres:{subject}.kind",
    when=_HERE,
    rank=TYRES,
)
def tyre_not_for_the_road(end: End, tyre_kind_at: str) -> Result:
    """A tyre that is made for the track only is on the bike for the way home."""
    if tyre_kind_at not in TRACK_ONLY:
        return None
    return RaisedFinding(
        message=f"The {end} tyre ({tyre_kind_at}) is not made for the road.",
        why="Most are marked so: they never get warm there, and neither law nor insurance covers them.",
        remedy=Remedy("Fit road tyres, or take the van."),
    )


@rule(
    "abs-off-on-the-road",
    SERIOUS,
    per="control",
    at="setup:setup.controls.{subject}",
    when=_HERE,
    absorbs=("front-wheel-without-abs", "front-wheel-without-abs-in-the-wet", "rear-wheel-without-abs"),
    rank=AIDS,
)
def abs_off_on_the_road(
    subject: str,
    control: Control,
    wheels_watched: tuple[str, ...],
    wheels_left: tuple[str, ...],
    in_force: ShownControl,
    surface_if_known: str | None,
) -> Result:
    """ABS is left off for the way home."""
    if not wheels_left:
        return None
    level = least_watching(subject, control, wheels_watched, 1.0)
    return RaisedFinding(
        message=f"{label_of(subject)} leaves the {' and '.join(wheels_left)} without ABS on the road.",
        why="Gravel, paint, diesel and cars that pull out are not on any track.",
        remedy=Remedy(
            f"Set it to {'most help' if level is None else level}, then read the dash after ignition-on.",
            () if level is None else (SetValue(("setup", "controls", subject), level),),
        ),
        severity=CAUTION if surface_if_known == "dry" else SERIOUS,
        facts=f"road; {in_force}",
        parts=(subject,),
    )


@rule(
    "traction-off-on-the-road",
    CAUTION,
    per="control",
    at="setup:setup.controls.{subject}",
    when=_HERE,
    rank=AIDS,
)
def traction_off_on_the_road(
    subject: str, control: Control, aid_function: str, in_force: ShownControl, surface_if_known: str | None
) -> Result:
    """Traction control is left off for the way home; in the wet the rule for that says it, and worse."""
    if aid_function != "traction" or not is_off(control, in_force.value):
        return None
    if COLUMN.get(surface_if_known or "") == "wet":
        return None
    levels = levels_of(subject, control)
    scale = levels.help_if_known() if levels is not None else None
    level = scale.most if scale is not None else None
    return RaisedFinding(
        message=f"No help on the road: {label_of(subject)} is off.",
        why="Diesel, paint and cold tyres let go without a warning, and there is no run-off.",
        remedy=Remedy(
            f"Set it to {'most help' if level is None else level}, then read the dash after ignition-on.",
            () if level is None else (SetValue(("setup", "controls", subject), level),),
        ),
        facts=f"road; {in_force}",
        parts=(subject,),
    )


@rule(
    "dusk-on-the-road",
    CAUTION,
    at="session:start",
    when=_HERE,
    limits=(DUSK_SUMMER, DUSK_WINTER),
    rank=EVENT,
)
def dusk_on_the_road(dusk: Dusk, limits: Limits) -> Result:
    """A ride on the road that begins when the light goes."""
    summer, winter = limits[DUSK_SUMMER], limits[DUSK_WINTER]
    return RaisedFinding(
        message=f"Dusk on the road: it goes out at {dusk.at:%H:%M}.",
        why="Drivers see a single light late, low sun and a scratched visor hide what lies on the road. "
        f"Counted from {summer:g} h in summer, {winter:g} h in winter.",
        remedy=Remedy(
            "Go earlier, or clear visor, lights tried, something bright on, and a slower way home."
        ),
        subject="dusk",
    )


@rule("road-home-ahead", CAUTION, at="session:tyres", when=("to_come", "home_by_road"), rank=TYRES)
def road_home_ahead(unfit_for_home: tuple[str, ...], home_by_road: str) -> Result:
    """What the way home by road would be a hold or a caution for: said while it can still be changed."""
    if not unfit_for_home:
        return None
    named = " and ".join(unfit_for_home)
    return RaisedFinding(
        message=f"Home by road, and not made for it: {named}.",
        quoted=(named,),
        why="At the gate in the evening nothing can be changed any more; now a van or tyres can be found.",
        remedy=Remedy(
            "Take road tyres along, or a van. Plate, mirrors and lights go back on as well; for the dark a "
            "clear visor, or leave before it."
        ),
        subject="road-home",
        facts=f"{home_by_road}; {named}",
    )


@rule("track-mode-on-the-road", CAUTION, at="setup:setup.mode", when=_HERE, rank=AIDS)
def track_mode_on_the_road(mode_made_for: str) -> Result:
    """The riding mode in use is made for a dry track."""
    if mode_made_for != "dry":
        return None
    return RaisedFinding(
        message="The riding mode is one for a dry track, and this is the road.",
        why="Its throttle and aids count on a clean warm surface.",
        remedy=Remedy("Choose the bike's road mode, and read the dash after the last ignition-on."),
    )
