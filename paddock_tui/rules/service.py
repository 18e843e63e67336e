"""Rules about service that is due: old brake fluid, oil and the rest, by hours or by months."""

import datetime as dt

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.service_due import due_date
from paddock_tui.facts.service import ServiceDue
from paddock_tui.limits import Limits
from paddock_tui.limits.brakes import FLUID_MONTHS
from paddock_tui.records.session import Session
from paddock_tui.rules.core import BRAKES, CAUTION, NOTE, RaisedFinding, Remedy, Result, rule


@rule(
    "brake-fluid-old",
    CAUTION,
    source="fluid makers' and organisers' lists: yearly at least",
    at="bike:service",
    when=("to_come",),
    limits=(FLUID_MONTHS,),
    rank=BRAKES,
)
def brake_fluid_old(service_items: tuple[ServiceDue, ...], session: Session, limits: Limits) -> Result:
    """The brake fluid is older than the bike's file says, else than a year."""
    found = []
    for one in (one for one in service_items if one.is_brake_fluid):
        due = one.date if one.item.every is not None else _after(one.item.last, limits[FLUID_MONTHS])
        if due is not None and session.date is not None and session.date > due:
            found.append(
                RaisedFinding(
                    message=f"The {one.label} of {one.item.last} was due by {due}.",
                    why="It takes up water from the air, and boils sooner for it: the lever goes soft.",
                    remedy=Remedy("Bleed with new fluid of the kind on the cap, and enter when it was done."),
                    subject=one.name,
                    path=("service", one.name, "last"),
                    facts=f"{one.label} last {one.item.last}, due {due}",
                )
            )
    return found


@rule("service-due", CAUTION, source="the intervals in the bike's file", at="bike:service", when=("to_come",))
def service_due(service_items: tuple[ServiceDue, ...], session: Session) -> Result:
    """An item of service is due by hours, distance or date: oil is a caution, the rest a note."""
    found = []
    for one in (one for one in service_items if not one.is_brake_fluid):
        words = _overdue(one, session.date)
        if words:
            found.append(
                RaisedFinding(
                    message=f"Service due: {one.label}, {words}.",
                    why="The interval in the bike's file is past; hard riding asks for a shorter one.",
                    remedy=Remedy("Do it, then enter date, engine hours or distance in the bike's file."),
                    severity=CAUTION if one.is_oil else NOTE,
                    subject=one.name,
                    path=("service", one.name, "last"),
                    facts=f"{one.label} due: {words}",
                )
            )
    return found


def _overdue(one: ServiceDue, day: dt.date | None) -> str:
    words = []
    if one.hours is not None and one.hours <= 0:
        words.append(f"{abs(one.hours):.1f} h over")
    if one.km is not None and one.km <= 0:
        words.append(f"{abs(one.km):.0f} km over")
    if one.date is not None and day is not None and day > one.date:
        words.append(f"since {one.date}")
    return ", ".join(words)


def _after(last: dt.date | None, months: float) -> dt.date | None:
    try:
        return due_date(last, months) if last is not None else None
    except (OutOfRange, ValueError, OverflowError):
        return None
