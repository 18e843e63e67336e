"""Rules about warning lights: what a lit one speaks of stays parked, is explained, or counts as off."""

from collections.abc import Mapping

from paddock_tui.facts.incidents import Happened
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.rules.core import BRAKES, HOLD, SERIOUS, RaisedFinding, Remedy, Result, rule

_ENGINE = ("oil", "temperature")
_OTHER = ("other", None)
_AIDS = ("ABS", "traction", "engine")

_MEANS = {
    "ABS": "With its lamp lit there is no ABS: the next grabbed brake locks the wheel.",
    "traction": "With its lamp lit there is no traction control, and often no wheelie or launch control.",
    "engine": "With its lamp lit the engine may cut, or run without its aids and softer maps.",
}


@rule("engine-lamp-not-mended", HOLD, at="session:incidents", rank=BRAKES)
def engine_lamp_not_mended(bike_incidents: tuple[Happened, ...]) -> Result:
    """The oil or the temperature lamp was lit, and nobody wrote down why."""
    lit = [one for one in _lit(bike_incidents) if one.incident.lamp in _ENGINE]
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
    lit = [one for one in _lit(bike_incidents) if one.incident.lamp in _OTHER]
    if not lit:
        return None
    return _raised(
        lit[-1],
        f"A warning lamp was lit {lit[-1].when}, and nothing says why.",
        "What a lamp warns of is in the manual; until that is read it may be brakes, oil or an aid.",
        "Look up in the manual which lamp it is, find the cause, and enter lamp, cause and mend.",
        f"warning lamp {lit[-1].stamp}; not explained",
    )


@rule("aid-lamp-lit", SERIOUS, when=("to_come",), at="session:incidents", rank=BRAKES)
def aid_lamp_lit(
    bike_incidents: tuple[Happened, ...], session: Session, records: Mapping[str, Record]
) -> Result:
    """A lamp of ABS, traction or engine was lit, and nobody wrote down what was found and done."""
    lit = {
        one.incident.lamp: one
        for one in bike_incidents
        if one.incident.what == "warning lamp" and one.incident.lamp in _AIDS and one.unanswered
    }
    return [_aid_raised(lamp, one, session, records) for lamp, one in lit.items() if lamp is not None]


def _aid_raised(lamp: str, one: Happened, session: Session, records: Mapping[str, Record]) -> RaisedFinding:
    rider, surface = records.get("rider"), session.surface
    group = rider.group if isinstance(rider, Rider) else None
    # The same as the aid switched off: for a novice in the wet that is a hold.
    worst = lamp != "engine" and COLUMN.get(surface or "") == "wet" and group == "novice"
    return RaisedFinding(
        message=f"The {lamp} lamp was lit {one.when}, and nothing says why: take it as off.",
        why=_MEANS[lamp],
        remedy=Remedy(
            "Find the cause before going out: sensor gap and dirt, plug, fuse, fault code. Enter what was "
            "done. Till then ride as if it were off."
        ),
        severity=HOLD if worst else SERIOUS,
        subject=lamp,
        path=one.path("mended"),
        ref=one.ref,
        facts=f"{lamp} lamp {one.when}; surface {surface or 'not known'}; {group or 'unknown'} rider",
    )


def _lit(incidents: tuple[Happened, ...]) -> list[Happened]:
    return [one for one in incidents if one.incident.what == "warning lamp" and one.unanswered]


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
