"""Rules about falls: the bike is looked at again by somebody who knows, and two in a day are enough."""

from paddock_tui.facts.incidents import Happened
from paddock_tui.limits import Limits
from paddock_tui.limits.rider import FALLS_IN_A_DAY
from paddock_tui.records.session import Session
from paddock_tui.rules.core import RIDER, SERIOUS, RaisedFinding, Remedy, Result, rule

_RULES = "ten organisers' and clubs' lists: after any fall the bike goes through inspection again"


@rule(
    "two-falls-in-a-day",
    SERIOUS,
    source="a club's rule: parked",
    at="session:incidents",
    limits=(FALLS_IN_A_DAY,),
    rank=RIDER,
)
def two_falls_in_a_day(rider_incidents: tuple[Happened, ...], session: Session, limits: Limits) -> Result:
    """The rider fell twice today by their own fault: the bike stays parked."""
    falls = [one for one in rider_incidents if one.on(session.date) and _own_fall(one)]
    if len(falls) < limits[FALLS_IN_A_DAY]:
        return None
    times = ", ".join(one.stamp for one in falls)
    return RaisedFinding(
        message=f"{len(falls)} falls of your own today: the day is over.",
        why="After a second fall of one's own most people are hurt, tired or shaken; clubs park the rider.",
        remedy=Remedy("Stay parked today, and talk the falls through with an instructor."),
        subject="rider",
        path=falls[-1].path("at_fault"),
        ref=falls[-1].ref,
        facts=f"falls today: {times}",
    )


def _own_fall(one: Happened) -> bool:
    incident = one.incident
    return incident.what == "fall" and incident.moving is not False and incident.at_fault is not False
