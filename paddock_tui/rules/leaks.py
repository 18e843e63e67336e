"""The rule about leaks: nothing leaves while one is open."""

from paddock_tui.facts.incidents import Happened
from paddock_tui.rules.core import BRAKES, HOLD, RaisedFinding, Remedy, Result, rule


@rule("leak-not-mended", HOLD, at="session:incidents", rank=BRAKES)
def leak_not_mended(bike_incidents: tuple[Happened, ...]) -> Result:
    """Something leaked, and nobody wrote down what it was and what was done."""
    leaks = [one for one in bike_incidents if one.incident.what == "leak" and one.unanswered]
    if not leaks:
        return None
    leak = leaks[-1]
    return RaisedFinding(
        message=f"Leak {leak.when}: nothing is written of how it was mended.",
        why="Oil, coolant or fuel on a tyre or the track brings down you and those behind you.",
        remedy=Remedy(
            "Leave it parked. Find where it comes from, mend it by the manual, run it hot on the stand, let "
            "a second person look; then enter what was done. Where nobody can tell, it stays parked."
        ),
        subject="bike",
        path=leak.path("mended"),
        ref=leak.ref,
        facts=f"leak {leak.stamp}; not mended",
    )
