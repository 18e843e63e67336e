"""The rule about warning lamps of the aids: what a lit lamp speaks of counts as off."""

from collections.abc import Mapping

from paddock_tui.facts.incidents import Happened
from paddock_tui.facts.outing import COLUMN
from paddock_tui.records.kinds import Record
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.rules.core import BRAKES, HOLD, SERIOUS, RaisedFinding, Remedy, Result, rule

_AIDS = ("ABS", "traction", "engine")

_MEANS = {
    "ABS": "With its lamp lit there is no ABS: the next grabbed brake locks the wheel.",
    "traction": "With its lamp lit there is no traction control, and often no wheelie or launch control.",
    "engine": "With its lamp lit the engine may cut, or run without its aids and softer maps.",
}


@rule("aid-lamp-lit", SERIOUS, when=("to_come",), at="session:incidents", rank=BRAKES)
def aid_lamp_lit(
    bike_incidents: tuple[Happened, ...], session: Session, records: Mapping[str, Record]
) -> Result:
    """A lamp of ABS, traction or engine was lit, and nobody wrote down what was found and done."""
    lit = {
        one.incident.lamp: one
        for one in bike_incidents
        if one.incident.what == "warning lamp"
        and one.incident.lamp in _AIDS
        and not (one.incident.mended or "").strip()
    }
    return [_raised(lamp, one, session, records) for lamp, one in lit.items() if lamp is not None]


def _raised(lamp: str, one: Happened, session: Session, records: Mapping[str, Record]) -> RaisedFinding:
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
