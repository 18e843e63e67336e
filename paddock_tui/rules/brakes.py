"""Rules about the brakes: a lever that is not firm, and pads that are too thin."""

from paddock_tui.facts.brakes import Felt, LeastPad, PadLeft
from paddock_tui.limits import Limits
from paddock_tui.limits.brakes import LEAST_PAD
from paddock_tui.rules.core import (
    BRAKES,
    CAUTION,
    HOLD,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    Severity,
    rule,
)

_LISTS = "organisers' inspection lists: a least thickness, or half or more left; lever firm, never to the bar"


_FEEL: dict[str, tuple[Severity, str, str, str]] = {
    "to the bar": (
        HOLD,
        "The brake lever comes to the bar.",
        "There is nothing left to pull; the next pull may find no brake at all.",
        "Leave it parked. Find the air, the leak or the worn part, replace and bleed by the manual, let "
        "a second person feel it; then enter the lever again.",
    ),
    "spongy hot": (
        SERIOUS,
        "The brake lever goes spongy when hot.",
        "Fluid that boils turns to vapour, and the lever then finds nothing.",
        "Bleed with new fluid by the manual, pump until hard, feel it again at walking pace, and enter it.",
    ),
    "long": (
        CAUTION,
        "The brake lever has a long way to go.",
        "Air, old fluid, worn pads or a disc that pushes them back; it gets longer when hot.",
        "Pump it, look at pads, discs and fluid, bleed by the manual if it stays long, and enter it again.",
    ),
}


@rule("brake-lever-not-firm", HOLD, source=_LISTS, at="session:lever", rank=BRAKES)
def brake_lever_not_firm(lever_felt: Felt) -> Result:
    """The front brake lever was not firm when it was last felt."""
    known = _FEEL.get(lever_felt.word)
    if known is None:
        return None
    severity, message, why, remedy = known
    said = message if lever_felt.where == "now" else f"{message[:-1]}, {lever_felt.where}."
    return RaisedFinding(said, why, Remedy(remedy), severity=severity, subject="lever")


@rule(
    "pads-below-the-least",
    HOLD,
    source=_LISTS,
    per="end",
    at="session:{subject}_pads",
    limits=(LEAST_PAD,),
    rank=BRAKES,
)
def pads_below_the_least(pads_left: PadLeft, least_pad: LeastPad, limits: Limits) -> Result:
    """The pads of one end are thinner than the organiser accepts, or than is common."""
    posted = least_pad.posted
    least = posted.to("mm") if posted is not None else limits[LEAST_PAD]
    if pads_left.left.to("mm") >= least:
        return None
    said = f"the organiser's {posted}" if posted is not None else f"{least:g} mm"
    return RaisedFinding(
        message=f"The {pads_left.end} pads, {pads_left.left}, are thinner than {said}.",
        why="A worn pad overheats, may lose its lining, and no organiser lets it out.",
        remedy=Remedy(
            "Fit new pads by the manual, pump the brake until hard, try it at walking pace, bed them in, and "
            "enter their thickness."
        ),
    )
