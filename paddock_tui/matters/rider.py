"""The rider: unwell, or spent."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.limits.rider import SPENT
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, Seen, declare, opened
from paddock_tui.matters.incidents import incidents
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS

REST_MINUTES = 40
"""Minutes of rest before another fatigue counts as rested."""

_DANGER = {"fainted", "confused", "vomiting", "chest", "sight"}
_ORDINARY = {"thirst"}


def _unwell_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "unwell"):
        if (one.cleared_by or "").strip() and one.cleared_at:
            continue
        signs = set(one.signs or ())
        grade = 3 if signs & _DANGER else 1 if signs and signs <= _ORDINARY else 2
        path = ("incidents", number, "cleared_by")
        yield opened(
            "rider-unwell", outing.session.rider, outing, path, at=one.at, subject="rider", grade=grade
        )


def _unwell(one: Opened, now: Present) -> Said | None:
    if not now.today(one) and one.grade < 3:
        return None
    return Said(
        {1: NOTE, 2: SERIOUS, 3: HOLD}[one.grade],
        f"Unwell {now.when(one)}, and nobody qualified has looked since.",
        "Heat, thirst and sickness slow a rider down long before they feel it."
        if one.grade < 3
        else "Fainting, confusion, vomiting, chest or sight are for a doctor, not for a rest in the shade.",
        "Out of the leathers, shade, drink; go to the medical post and enter who said what.",
        f"unwell {one.stamp}; not looked at since",
    )


def _spent_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    if session.fatigue is not None:
        at = session.parked or session.start
        yield opened(
            "rider-spent",
            session.rider,
            outing,
            ("fatigue",),
            at=at,
            subject="rider",
            grade=session.fatigue,
        )


def _spent_closes(one: Opened, outing: Outing) -> bool:
    session = outing.session
    if session.rider != one.whom or session.fatigue is None or session.date != one.date:
        return session.rider == one.whom and session.date is not None and session.date != one.date
    return session.fatigue >= one.grade or not _too_soon(one.at, session.start)


def _too_soon(before: dt.time | None, now: dt.time | None) -> bool:
    if before is None or now is None:
        return False
    apart = (now.hour - before.hour) * 60 + now.minute - before.minute
    return 0 <= apart < REST_MINUTES


def _spent(one: Opened, now: Present) -> Said | None:
    if one.grade < now.limits[SPENT] or not now.today(one):
        return None
    where = "now" if now.here(one) else f"in session {one.number}"
    return Said(
        SERIOUS,
        f"Fatigue {one.grade} of 5 {where}: sit this one out, or rest first.",
        "Most falls late in the day come from tired heads and arms, not from the bike.",
        "Drink, eat, lie down; skip this session, and enter how it is before the next one.",
        f"fatigue {one.grade} of 5 {where}",
    )


declare(
    MatterKind(
        "rider-unwell",
        "rider",
        SERIOUS,
        "rider",
        "seen by whom, and when; another day, but for what a doctor has to see",
        _unwell_opens,
        _unwell,
        guard="thirst alone: a note",
    )
)
declare(
    MatterKind(
        "rider-spent",
        "rider",
        SERIOUS,
        "rider",
        "a lower fatigue after forty minutes; another day",
        _spent_opens,
        _spent,
        closes=_spent_closes,
        guard="three of five",
        at="session:fatigue",
        limits=(SPENT,),
        afterwards=False,
    )
)
