"""Rules about falls: the bike is looked at again by somebody who knows, and two in a day are enough."""

from paddock_tui.facts.checklists import Checked
from paddock_tui.facts.incidents import Happened
from paddock_tui.limits import Limits
from paddock_tui.limits.rider import FALLS_IN_A_DAY
from paddock_tui.records.session import Session
from paddock_tui.rules.core import BRAKES, HOLD, RIDER, SERIOUS, RaisedFinding, Remedy, Result, rule

_RULES = "ten organisers' and clubs' lists: after any fall the bike goes through inspection again"


_LOOK = (
    "Go through the list for after a fall, then show the bike to inspection again and enter when it "
    "passed. The manual, inspection and qualified people decide; a look of your own is not enough."
)


@rule("fall-not-inspected", HOLD, source=_RULES, at="session:incidents", rank=BRAKES)
def fall_not_inspected(falls_not_inspected: tuple[Happened, ...], inspected_after: str) -> Result:
    """The bike fell while moving, or where any fall is inspected, and was not shown since."""
    asked = [one for one in falls_not_inspected if _must(one, inspected_after)]
    if not asked:
        return None
    fall = asked[-1]
    words = _words(fall)
    return _raised(
        fall,
        f"{_capital(words)}: the bike was not inspected since.",
        "Bent, cracked or leaking parts do not show from the saddle; every organiser inspects again.",
        f"{_kind(fall)} {fall.stamp}; organiser: {inspected_after or 'not known'}; not inspected since",
    )


@rule("fall-at-standstill", SERIOUS, source=_RULES, at="session:incidents", rank=BRAKES)
def fall_at_standstill(
    falls_not_inspected: tuple[Happened, ...], inspected_after: str, checked: Checked
) -> Result:
    """The bike fell over while it stood, and nobody has inspected it since."""
    if not falls_not_inspected or any(_must(one, inspected_after) for one in falls_not_inspected):
        return None
    fall = falls_not_inspected[-1]
    asks = "" if inspected_after else " Ask whether this organiser wants any fall inspected."
    return _raised(
        fall,
        f"{_capital(_words(fall))}: not inspected since.",
        f"A lever, a footrest, a disc or a sensor bends at standstill too.{asks}",
        f"{_kind(fall)} {fall.stamp}; {_list(checked)}; not inspected since",
    )


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


def _must(fall: Happened, inspected_after: str) -> bool:
    """Return whether the organiser inspects again: any fall, or one while moving; what is not known
    counts.
    """
    return fall.incident.moving is not False or inspected_after == "any"


def _own_fall(one: Happened) -> bool:
    incident = one.incident
    return incident.what == "fall" and incident.moving is not False and incident.at_fault is not False


def _raised(fall: Happened, message: str, why: str, facts: str) -> RaisedFinding:
    return RaisedFinding(
        message=message,
        why=why,
        remedy=Remedy(_LOOK),
        subject="bike",
        path=fall.path("inspected_again"),
        ref=fall.ref,
        facts=facts,
    )


def _words(fall: Happened) -> str:
    return f"{_kind(fall)} {fall.when}"


def _kind(fall: Happened) -> str:
    return {True: "fall while moving", False: "fall at standstill", None: "fall"}[fall.incident.moving]


def _list(checked: Checked) -> str:
    """Say how the list for after a fall stands; it is gone from the page once it is gone through."""
    still = sum(len(one.open) + len(one.to_fix) for one in checked.lists if one.stage == "after a fall")
    return f"{still} of the list not ok" if still else "no item of the list open"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
