"""Rules about leaks and warning lamps: they come before everything else."""

from paddock_tui.facts.incidents import Happened
from paddock_tui.rules.core import BRAKES, HOLD, SERIOUS, RaisedFinding, Remedy, Result, rule

_ENGINE = ("oil", "temperature")
_OTHER = ("other", None)


@rule("leak-not-mended", HOLD, at="session:incidents", rank=BRAKES)
def leak_not_mended(bike_incidents: tuple[Happened, ...]) -> Result:
    """Something leaked, and nobody wrote down what it was and what was done."""
    leaks = _open(bike_incidents, "leak")
    if not leaks:
        return None
    return _raised(
        leaks[-1],
        f"Leak {leaks[-1].when}: nothing is written of how it was mended.",
        "Oil, coolant or fuel on a tyre or the track brings down you and those behind you.",
        "Leave it parked. Find where it comes from, mend it by the manual, run it hot on the stand, let a "
        "second person look; then enter what was done. Where nobody can tell, it stays parked.",
        f"leak {leaks[-1].stamp}; not mended",
    )


@rule("engine-lamp-not-mended", HOLD, at="session:incidents", rank=BRAKES)
def engine_lamp_not_mended(bike_incidents: tuple[Happened, ...]) -> Result:
    """The oil or the temperature lamp was lit, and nobody wrote down why."""
    lit = [one for one in _open(bike_incidents, "warning lamp") if one.incident.lamp in _ENGINE]
    if not lit:
        return None
    lamp = lit[-1].incident.lamp
    return _raised(
        lit[-1],
        f"The {lamp} lamp was lit {lit[-1].when}, and nothing says why.",
        "Without oil pressure or coolant an engine seizes within a lap and puts its oil on the track.",
        "Engine off, let it cool, do not ride it back. Level, leaks, pressure or coolant by the manual; "
        "enter what was found and done.",
        f"{lamp} lamp {lit[-1].stamp}; not mended",
    )


@rule("lamp-not-explained", SERIOUS, at="session:incidents", rank=BRAKES)
def lamp_not_explained(bike_incidents: tuple[Happened, ...]) -> Result:
    """A lamp was lit, nobody said which or it has no word of its own, and nothing says why."""
    lit = [one for one in _open(bike_incidents, "warning lamp") if one.incident.lamp in _OTHER]
    if not lit:
        return None
    return _raised(
        lit[-1],
        f"A warning lamp was lit {lit[-1].when}, and nothing says why.",
        "What a lamp warns of is in the manual; until that is read it may be brakes, oil or an aid.",
        "Look up in the manual which lamp it is, find the cause, and enter lamp, cause and mend.",
        f"warning lamp {lit[-1].stamp}; not explained",
    )


def _open(incidents: tuple[Happened, ...], what: str) -> list[Happened]:
    return [one for one in incidents if one.incident.what == what and not (one.incident.mended or "").strip()]


def _raised(one: Happened, message: str, why: str, remedy: str, facts: str) -> RaisedFinding:
    return RaisedFinding(
        message=message,
        why=why,
        remedy=Remedy(remedy),
        subject="bike",
        path=one.path("mended"),
        ref=one.ref,
        facts=facts,
    )
