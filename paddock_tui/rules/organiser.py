"""Rules about what the organiser posted."""

from decimal import Decimal

from paddock_tui.facts.day import Limiter
from paddock_tui.quantities import Quantity, rounded
from paddock_tui.records.electronics import speed_of
from paddock_tui.rules.core import CAUTION, EVENT, HOLD, RaisedFinding, Remedy, Result, SetValue, rule

_RULES = (
    "FIM superbike-class regulations (60 km/h, ride-through; renumbered each year) and club rule books; "
    "the figure of the day counts"
)


@rule(
    "pit-limiter-over-the-limit",
    HOLD,
    source=_RULES,
    when=("organised", "to_come"),
    rank=EVENT,
    at="setup:setup.controls.pit-limiter",
)
def pit_limiter_over_the_limit(limiter: Limiter, posted_pit_limit: Quantity) -> Result:
    """The limiter is set above the posted pit-lane limit, whatever units they are in."""
    if limiter.set_to is None or limiter.set_to.to("km/h") <= posted_pit_limit.to("km/h"):
        return None
    speeds = [speed for speed in map(speed_of, limiter.control.speeds or ()) if speed is not None]
    under = [speed for speed in speeds if speed.to("km/h") <= posted_pit_limit.to("km/h")]
    path = ("setup", "controls", limiter.name)
    why = "Over the limit in the pit lane is a penalty, or the end of the day; people walk there."
    said = _also(limiter.set_to, posted_pit_limit)
    if under or not speeds:
        best = max(under, key=lambda speed: speed.to("km/h"), default=posted_pit_limit)
        return RaisedFinding(
            message=f"Pit limiter {said} is over the posted {posted_pit_limit}.",
            why=why,
            remedy=Remedy(
                f"Set it to {_also(best, posted_pit_limit)} or less.", (SetValue(path, str(best)),)
            ),
            path=path,
            subject=limiter.name,
        )
    lowest = min(speeds, key=lambda speed: speed.to("km/h"))
    off = (SetValue(path, "off"),) if limiter.control.off is True else ()
    return RaisedFinding(
        message=f"Pit limiter {said} cannot hold the posted {posted_pit_limit}.",
        why=f"{why} The lowest speed that it offers is {_also(lowest, posted_pit_limit)}.",
        remedy=Remedy("Leave the limiter off, and keep to the limit by the speedometer.", off),
        severity=CAUTION,
        path=path,
        subject=limiter.name,
    )


@rule(
    "pit-limiter-figure-missing",
    CAUTION,
    source=_RULES,
    when=("organised", "to_come"),
    rank=EVENT,
    at="setup:setup.controls.pit-limiter",
)
def pit_limiter_figure_missing(limiter_without_figure: bool, posted_pit_limit: Quantity) -> Result:
    """The organiser posts a limit, the bike has a limiter, and nobody wrote down what it is set to."""
    if not limiter_without_figure:
        return None
    return RaisedFinding(
        message=f"The limit is {posted_pit_limit}, and the pit limiter's figure is not known.",
        why="Over the limit in the pit lane is a penalty, or the end of the day.",
        remedy=Remedy("Read the limiter's figure on the dash and enter it, or off."),
    )


def _also(speed: Quantity, other: Quantity) -> str:
    """Write a speed, with the same in the other's unit where the units differ.

    Figures on dashes are rounded, so the equivalent has as many decimals as it takes to differ from
    the other: 30.01 km/h is not shown as the 30 km/h that it is over.
    """
    if speed.unit == other.unit:
        return str(speed)
    written = (rounded(speed.to(other.unit), digits) for digits in (1, 2, 3, 4))
    shown = next((text for text in written if Decimal(text) != other.number), str(other.number))
    return f"{speed} ({shown} {other.unit})"
