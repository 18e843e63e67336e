"""What officials said of the bike: black flag, refusal, mend by a date; and an airbag that has fired."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents
from paddock_tui.matters.order import is_early
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS
from paddock_tui.records.session_parts import Incident


def _done(one: Incident) -> bool:
    return bool((one.mended or "").strip() or (one.done or "").strip())


def _stopped_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "black flag", "refused by inspection"):
        found = (one.found or "").strip() or (one.mended or "").strip()
        if not (found and (one.shown_to or "").strip()) or is_early(one, outing.session):
            own = one.what == "black flag" and one.at_fault is True
            path = ("incidents", number, "shown_to" if found else "found")
            yield opened(
                "stopped-by-officials",
                outing.session.bike,
                outing,
                path,
                at=one.at,
                what=one.what or "",
                grade=int(not own),
            )


def _stopped(one: Opened, now: Present) -> Said:
    if not one.grade:
        return Said(
            NOTE,
            f"Black flag {now.when(one)}, for the rider: talk to race control.",
            "What they saw is worth hearing before the next start.",
            "Go to race control, hear what it was for, and enter who told you.",
            f"black flag {one.stamp}; for the rider",
        )
    words = "Black flag" if one.what == "black flag" else "Refused by inspection"
    return Said(
        HOLD,
        f"{words} {now.when(one)}: what was found and who saw it since is missing.",
        "Officials stop a bike for what others see and the rider does not: smoke, fluid, something loose.",
        "Find what it was, repair it by the manual, show it to inspection or whoever stopped you, and enter "
        "what was found and to whom it was shown.",
        f"{one.what} {one.stamp}; not shown since",
    )


def _by_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "mend by"):
        if not _done(one) or is_early(one, outing.session):
            yield opened(
                "mend-by-a-date",
                outing.session.bike,
                outing,
                ("incidents", number, "done"),
                at=one.at,
                last=one.due,
                what=one.note or "",
            )


def _mend_by(one: Opened, now: Present) -> Said:
    date = now.session.date
    # A date that nobody wrote down may be past.
    due = one.last is None or date is None or date >= one.last
    when = f"by {one.last}" if one.last is not None else "by a date that is not written down"
    return Said(
        SERIOUS if due else NOTE,
        f"Inspection wants something put right {when}: not done.",
        f"{one.what.strip().rstrip('.')}. {_REFUSED}" if one.what.strip() else _REFUSED,
        "Repair it by the manual, and enter what was done; show it at the next inspection.",
        f"to fix {when}; not done",
    )


_REFUSED = "The next inspection looks for it first, and may refuse the bike."


def _airbag_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "airbag fired"):
        if not (_done(one) or one.rearmed) or is_early(one, outing.session):
            path = ("incidents", number, "rearmed")
            yield opened("airbag-fired", outing.session.rider, outing, path, at=one.at, subject="airbag")


def _airbag(one: Opened, now: Present) -> Said:
    required = now.day is not None and now.day.airbag == "required"
    return Said(
        HOLD if required else SERIOUS,
        f"The airbag fired {now.when(one)}: nothing says that it is armed again.",
        "Fired once it is a plain vest: its charge is used up, and a sensor that may be lost as well.",
        "New cartridge and self-test by its manual, then enter that it is armed again; where airbags are "
        "required it is a hold until then: ask the organiser.",
        f"airbag fired {one.stamp}; not armed again; here {'required' if required else 'not known required'}",
    )


declare(
    MatterKind(
        "stopped-by-officials",
        "bike",
        HOLD,
        "brakes",
        "what was found, and shown to whom",
        _stopped_opens,
        _stopped,
        guard="a black flag of the rider's own: a note",
    )
)
declare(
    MatterKind(
        "mend-by-a-date",
        "bike",
        SERIOUS,
        "event",
        "what was done",
        _by_opens,
        _mend_by,
        guard="before its date: a note",
    )
)
declare(
    MatterKind(
        "airbag-fired",
        "rider",
        SERIOUS,
        "rider",
        "armed again: what was done",
        _airbag_opens,
        _airbag,
    )
)
