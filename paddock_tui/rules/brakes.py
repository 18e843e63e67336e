"""Rules about the brakes: a lever that is not firm, and pads that are too thin."""

from paddock_tui.facts.brakes import LeastPad, PadLeft
from paddock_tui.limits import Limits
from paddock_tui.limits.brakes import LEAST_PAD
from paddock_tui.rules.core import (
    BRAKES,
    HOLD,
    RaisedFinding,
    Remedy,
    Result,
    rule,
)

_LISTS = "organisers' inspection lists: a least thickness, or half or more left; lever firm, never to the bar"


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
