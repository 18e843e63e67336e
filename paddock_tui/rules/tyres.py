"""Rules about tyres for the surface and the day: kinds, cold, warmers, new ones."""

from collections.abc import Mapping

from paddock_tui.facts.past import End
from paddock_tui.facts.tyres import KindHere
from paddock_tui.limits import Limits
from paddock_tui.limits.tyres import ANY_WARMER, COLD_TRACK, OFF_WARMERS, ROAD_WARMER, SOAK, WARM_TRACK
from paddock_tui.rules.core import (
    CAUTION,
    HOLD,
    NOTE,
    SERIOUS,
    TYRES,
    RaisedFinding,
    Remedy,
    Result,
    Severity,
    rule,
)


@rule("slicks-in-the-wet", HOLD, per="end", at="session:tyres", when=("to_come",), rank=TYRES)
def slicks_in_the_wet(end: End, kind_here: KindHere, surface: str, column: str, wet_said: str) -> Result:
    """Slicks on a wet track: nothing lets the water out."""
    if column != "wet" or kind_here.kind != "slick":
        return None
    return RaisedFinding(
        message=f"Slicks on a wet track: {kind_here.ends}.",
        why=f"Without grooves the tyre aquaplanes, and stays cold.{wet_said}",
        remedy=Remedy("Fit wets, or sit it out."),
        subject=end,
    )


@rule("race-tyres-off-a-dry-track", SERIOUS, per="end", at="session:tyres", when=("to_come",), rank=TYRES)
def race_tyres_off_a_dry_track(
    end: End, kind_here: KindHere, surface: str, column: str, wet_said: str
) -> Result:
    """Slicks in the damp, or race treads in the damp or the wet: no heat, and grip goes at once."""
    slick, treaded = kind_here.kind == "slick", kind_here.kind == "race-treaded"
    if not ((column == "damp" and (slick or treaded)) or (column == "wet" and treaded)):
        return None
    what = "Slicks" if slick else "Race-treaded tyres"
    return RaisedFinding(
        message=f"{what} {_on(surface)}: {kind_here.ends}.",
        why=f"Race rubber gets no heat on water, and then lets go without a warning.{wet_said}",
        remedy=Remedy("Fit road, intermediate or wet tyres, or wait until it is dry."),
        severity=CAUTION if column == "damp" and treaded else SERIOUS,
        subject=end,
    )


@rule("rain-tyres-in-the-dry", SERIOUS, per="end", at="session:tyres", when=("to_come",), rank=TYRES)
def rain_tyres_in_the_dry(end: End, kind_here: KindHere, surface: str) -> Result:
    """Full wets on a dry track, or on a line that dries."""
    if surface not in ("dry", "drying") or kind_here.kind != "wet":
        return None
    where = "a dry track" if surface == "dry" else "a drying line"
    return RaisedFinding(
        message=f"Rain tyres on {where}: {kind_here.ends}.",
        why="Wet rubber overheats without water: the blocks squirm, turn greasy and tear.",
        remedy=Remedy("Change them; until then keep to the puddles and come in."),
        severity=SERIOUS if surface == "dry" else CAUTION,
        subject=end,
    )


@rule(
    "intermediates-out-of-their-range", CAUTION, per="end", at="session:tyres", when=("to_come",), rank=TYRES
)
def intermediates_out_of_their_range(
    end: End, kind_here: KindHere, surface: str, cold_track: bool | None
) -> Result:
    """Intermediates on a dry track that is not cold, or in standing water."""
    if kind_here.kind != "intermediate":
        return None
    if surface == "standing water":
        return RaisedFinding(
            message=f"Intermediates in standing water: {kind_here.ends}.",
            why="Their grooves cannot carry so much water away: they aquaplane.",
            remedy=Remedy("Fit full wets, or sit it out."),
            severity=SERIOUS,
            subject=end,
        )
    if surface != "dry" or cold_track is True:
        return None
    return RaisedFinding(
        message=f"Intermediates on a dry track: {kind_here.ends}.",
        why="Soft rubber with grooves overheats on a warm dry track and wears within a session.",
        remedy=Remedy("Fit tyres for the dry, or ride a few easy laps only."),
        subject=end,
    )


@rule("standing-water", SERIOUS, at="session:surface", when=("to_come",), rank=TYRES)
def standing_water(surface: str, group: str, on_full_wets: bool) -> Result:
    """Water stands on the track: for whoever learns it is serious on any tyre, for others but on wets."""
    if surface != "standing water":
        return None
    return RaisedFinding(
        message="Water stands on the track: any tyre can aquaplane.",
        why="A tyre that aquaplanes neither brakes nor steers, and no aid works through it.",
        remedy=Remedy("Wait until it has run off; else far slower, upright through it, and no brakes there."),
        severity=CAUTION if on_full_wets and group in ("advanced", "race") else SERIOUS,
        subject="surface",
    )


@rule("tyres-of-two-worlds", CAUTION, at="session:tyres", when=("to_come",), rank=TYRES)
def tyres_of_two_worlds(both_kinds: tuple[str, str]) -> Result:
    """A rain tyre at one end and a tyre for the dry at the other."""
    if len({kind in ("wet", "intermediate") for kind in both_kinds}) == 1:
        return None
    front, rear = both_kinds
    return RaisedFinding(
        message=f"The two ends are for different weather: front {front}, rear {rear}.",
        why="One end grips where the other slides, and they heat differently.",
        remedy=Remedy("Fit a pair, or correct the tyre set if only the record is wrong."),
    )


@rule(
    "race-tyres-without-heat",
    SERIOUS,
    at="session:warmers",
    when=("on_dry", "race_rubber", "organised", "to_come"),
    limits=(COLD_TRACK, WARM_TRACK),
    rank=TYRES,
)
def race_tyres_without_heat(
    fitted: Mapping[End, str], unwarmed: str, track_c: float, limits: Limits
) -> Result:
    """Race rubber without warmers: four to eight laps until it works, and cold tears."""
    slick = "slick" in fitted.values()
    kind = "Slicks" if slick else "Race-treaded tyres"
    severity: Severity = CAUTION
    if track_c < limits[COLD_TRACK]:
        severity = SERIOUS
    elif track_c > limits[WARM_TRACK] and not slick:
        severity = NOTE
    return RaisedFinding(
        message=f"{kind} without warmers on a track of {track_c:g} C.",
        why="Race rubber takes four to eight laps to get warm, tears when cold, and may never get there.",
        remedy=Remedy("Use warmers, fit track-day tyres, or ride four laps as if it were wet."),
        severity=severity,
    )


@rule(
    "warmers-on-too-short",
    CAUTION,
    at="session:warmers_on",
    when=("race_rubber", "to_come"),
    limits=(SOAK,),
    rank=TYRES,
)
def warmers_on_too_short(soaked_min: float, limits: Limits) -> Result:
    """Race rubber from cold on the warmers for less than it takes to heat the carcass and the wheel."""
    if soaked_min >= limits[SOAK]:
        return None
    return RaisedFinding(
        message=f"The warmers are on for {soaked_min:.0f} min only, from cold.",
        why="The surface is hot long before carcass and wheel are, and cools on the out-lap.",
        remedy=Remedy(f"Leave them on for {limits[SOAK]:g} min, or ride two easy laps."),
    )


@rule(
    "off-the-warmers-too-long",
    NOTE,
    at="session:went_out",
    when=("race_rubber",),
    limits=(OFF_WARMERS,),
    rank=TYRES,
)
def off_the_warmers_too_long(off_warmers_min: float, limits: Limits) -> Result:
    """Race rubber stood off the warmers before it went out: to be known when the session is looked at."""
    if off_warmers_min <= limits[OFF_WARMERS]:
        return None
    return RaisedFinding(
        message=f"The tyres were off the warmers for {off_warmers_min:.0f} min before going out.",
        why="A few minutes in the queue undo much of what the warmers did.",
        remedy=Remedy("Take them off at the last call; after a wait ride two easy laps."),
    )


@rule(
    "warmers-too-hot",
    CAUTION,
    per="end",
    at="session:warmers_at",
    when=("to_come",),
    limits=(ROAD_WARMER, ANY_WARMER),
    rank=TYRES,
)
def warmers_too_hot(end: End, kind_here: KindHere, warmers_c: float, limits: Limits) -> Result:
    """Warmers set hotter than the tyre is made for."""
    road = kind_here.kind == "road"
    most = limits[ROAD_WARMER if road else ANY_WARMER]
    if warmers_c <= most:
        return None
    return RaisedFinding(
        message=f"The warmers are set to {warmers_c:g} C{' on road tyres' if road else ''}.",
        why="Overheated rubber goes hard, and the tyre vendor knows how hot this one may get.",
        remedy=Remedy(f"Set them to {most:g} C or less, or to the vendor's figure."),
        severity=SERIOUS if warmers_c > limits[ANY_WARMER] else CAUTION,
        subject=end,
    )


@rule(
    "tyre-not-scrubbed-in", CAUTION, per="end", at="tyres:{subject}.scrubbed", when=("to_come",), rank=TYRES
)
def tyre_not_scrubbed_in(end: End, unscrubbed: bool, column: str, cold_track: bool | None) -> Result:
    """A new tyre with its skin on: slippery until it is worn off, all the more in the wet and the cold."""
    bad = column == "wet" or cold_track is True
    where = " on a wet track" if column == "wet" else " on a cold track" if bad else ""
    return RaisedFinding(
        message=f"The {end} tyre is new and not scrubbed in{where}.",
        why="The skin of a new tyre is slippery until it is roughened, to the edge and on both sides.",
        remedy=Remedy("More traction control, a gentle first session, lean added lap by lap on both sides."),
        severity=SERIOUS if bad else CAUTION,
    )


def _on(surface: str) -> str:
    return {
        "damp": "on a damp track",
        "drying": "on a drying track",
        "wet": "on a wet track",
        "standing water": "in standing water",
    }.get(surface, f"on a {surface} track")
