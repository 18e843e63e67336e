"""Cautions that a pit box needs now and then: fumes, frost, plain water, what has to be out of the way."""

from paddock_tui.facts.weather import Coldest
from paddock_tui.limits import Limits
from paddock_tui.limits.weather import FROST, HEATERS_LIT
from paddock_tui.records.session import Session
from paddock_tui.rules.core import CAUTION, EVENT, NOTE, RaisedFinding, Remedy, Result, rule


@rule(
    "frost-near",
    NOTE,
    at="session:air",
    when=("to_come", "first_on_this_surface"),
    limits=(FROST,),
    rank=EVENT,
)
def frost_near(coldest: Coldest, coolant: str | None, limits: Limits) -> Result:
    """It is near freezing: plain water freezes in the engine, and cold slicks crack.

    Where the record says that there is no antifreeze in it, it is a caution: such an engine bursts overnight.
    """
    if coldest.celsius > limits[FROST]:
        return None
    bursts = coolant in ("plain water", "water with additive")
    minded = f"the engine holds {coolant}" if bursts else "mind coolant and tyres"
    return RaisedFinding(
        severity=CAUTION if bursts else NOTE,
        message=f"{coldest.words}: frost is near, {minded}.",
        why="Plain water bursts an engine overnight; slicks and wets crack when they are bent frozen.",
        remedy=Remedy(
            "Drain plain water or bring the bike in; keep slicks and wets where it does not freeze, and do "
            "not fit or bend them frozen. Look for ice in the shade of the track."
        ),
        subject="frost",
    )


@rule(
    "fumes-in-a-closed-space",
    NOTE,
    at="session:warmers",
    when=("to_come", "first_on_this_surface"),
    limits=(HEATERS_LIT,),
    rank=EVENT,
)
def fumes_in_a_closed_space(session: Session, limits: Limits) -> Result:
    """Warmers need a generator and cold people a heater: carbon monoxide gathers in vans and closed pits."""
    air = session.air
    cold = (air == "cold") if isinstance(air, str) or air is None else air.to("C") <= limits[HEATERS_LIT]
    if session.warmers != "used" and not cold:
        return None
    return RaisedFinding(
        message="Generator or heater: never in a van, tent or closed pit.",
        why="Carbon monoxide has no smell; headache and sleepiness come first, and look like a long day.",
        remedy=Remedy(
            "Outside and downwind, doors open; out into the air and to the medics with a headache."
        ),
        subject="fumes",
    )


@rule("tinted-visor-in-poor-light", CAUTION, at="session:visor", when=("to_come",), rank=EVENT)
def tinted_visor_in_poor_light(tinted_visor: str, poor_light: str) -> Result:
    """A visor that takes light away when there is little."""
    return RaisedFinding(
        message=f"A {tinted_visor} visor {poor_light.partition(' (')[0]}.",
        why="It takes away light that is needed: oil, patches and a fallen rider are seen late.",
        remedy=Remedy("Fit the clear one, clean and with its insert against mist; keep it in the box."),
        subject="visor",
    )
