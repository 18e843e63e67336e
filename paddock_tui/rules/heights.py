"""The rule about ride height: no higher than where full bottoming was checked clear."""

from paddock_tui.facts.heights import Raised
from paddock_tui.quantities import Quantity
from paddock_tui.rules.core import HOLD, SUSPENSION, RaisedFinding, Remedy, Result, SetValue, rule


@rule(
    "raised-beyond-what-is-clear",
    HOLD,
    per="end",
    when=("to_come",),
    at="setup:setup.{subject}",
    rank=SUSPENSION,
)
def raised_beyond_what_is_clear(subject: str, raised_by: Raised, clear_to: Quantity) -> Result:
    """Fork or rear raised beyond the highest position that was checked clear at full bottoming."""
    if raised_by.height.to("mm") <= clear_to.to("mm") + 1e-9:
        return None
    name = "fork protrusion" if subject == "front" else "rear ride height"
    hits = "radiator, guard or fairing" if subject == "front" else "seat, guard or exhaust"
    return RaisedFinding(
        message=f"{name.capitalize()} {raised_by.height}: clear only up to {clear_to}.",
        why=f"At full travel the {subject} tyre may hit {hits}, and stop dead.",
        remedy=Remedy(
            f"Go back to {clear_to}; or take the spring out or strap it down, press it to the stop, see that "
            "nothing touches, and enter the new highest position in the bike's file.",
            (SetValue(("setup", raised_by.key), str(clear_to)),),
        ),
        path=("setup", raised_by.key),
    )
