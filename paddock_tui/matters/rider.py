"""The rider: unwell, or spent."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.limits.matters import LITTLE_SLEEP
from paddock_tui.limits.rider import SPENT
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents
from paddock_tui.matters.order import Place, is_later
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE, SERIOUS

REST_MINUTES = 40
"""Minutes of rest before another fatigue counts as rested."""

_FIT = 3
"""The most fatigue, 1 fresh to 5 spent, that counts as fit on the day after."""

_FIT_TICKS = ("rider-fit", "fit-to-ride")
"""The ticks by which a rider says that they are fit now."""

_MISSED = ("off the track", "missed markers")

_DANGER = {"fainted", "confused", "vomiting", "chest", "sight"}
_ORDINARY = {"thirst", "sleep"}


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


def _fit_again(one: Opened, outing: Outing) -> bool:
    """Return whether the rider said on a later day how fit they are; a danger is for a doctor alone."""
    session = outing.session
    later = is_later(Place(outing.session.date, stage="morning"), one.place)
    return session.rider == one.whom and later and _said_fit(outing) and one.grade < 3


def _said_fit(outing: Outing) -> bool:
    """Return whether the rider said that they are fit: by a figure, or by the tick for it."""
    fatigue = outing.session.fatigue
    if fatigue is not None:
        return fatigue <= _FIT
    given = (outing.session.checks, outing.entry.checks)
    return any(name in checks and checks[name].status == "ok" for checks in given for name in _FIT_TICKS)


def _unwell(one: Opened, now: Present) -> Said | None:
    if not now.today(one) and one.grade < 3:
        return _unwell_yesterday(one, now)
    return Said(
        {1: NOTE, 2: SERIOUS, 3: HOLD}[one.grade],
        f"Unwell {now.when(one)}, and nobody qualified has looked since.",
        "Heat, thirst and sickness slow a rider down long before they feel it."
        if one.grade < 3
        else "Fainting, confusion, vomiting, chest or sight are for a doctor, not for a rest in the shade.",
        "Out of the leathers, shade, drink; go to the medical post and enter who said what.",
        f"unwell {one.stamp}; not looked at since",
    )


def _unwell_yesterday(one: Opened, now: Present) -> Said | None:
    if one.grade < 2:
        return None
    return Said(
        SERIOUS,
        f"Unwell {now.when(one)}: fit today? Nobody said.",
        "What made somebody unwell on one day is often not gone the next morning.",
        "Tick that the rider is fit, or enter fatigue, 1 fresh to 5 exhausted; else ask the medical post.",
        f"unwell {one.stamp}; fit today not answered",
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
            cause="missed" if any(incidents(outing, *_MISSED)) else "",
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
    out = "sit this one out" if one.cause else "sit this one out, or rest first"
    # On the road a rest can be had at any time; only what comes after it is ridden.
    little = now.session.kind == "road" and one.grade == now.limits[SPENT] and not one.cause
    return Said(
        CAUTION if little else SERIOUS,
        f"Fatigue {one.grade} of 5 {where}: {out}.",
        "Most falls late in the day come from tired heads and arms, not from the bike.",
        "Drink, eat, lie down; skip this session, and enter how it is before the next one.",
        f"fatigue {one.grade} of 5 {where}",
    )


def _slept_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    slept = outing.session.slept
    if slept is not None and slept.to("h") < outing.limits[LITTLE_SLEEP] - 1e-9:
        yield opened(
            "slept-little", outing.session.rider, outing, ("slept",), subject="rider", what=str(slept)
        )


def _slept_closes(one: Opened, outing: Outing) -> bool:
    same = outing.session.rider == one.whom
    return same and (outing.session.slept is not None or outing.session.date != one.date)


def _slept(one: Opened, now: Present) -> Said | None:
    if not now.today(one):
        return None
    return Said(
        NOTE,
        f"Slept {one.what} only.",
        "Little sleep costs attention first late in the day; nobody feels it come.",
        "Plan the last outings of the day as the ones to leave out, and drink and rest between.",
        f"slept {one.what}, {one.date}",
    )


declare(
    MatterKind(
        "rider-unwell",
        "rider",
        SERIOUS,
        "rider",
        "seen by whom, and when; the next day: fit today, but for what a doctor has to see",
        _unwell_opens,
        _unwell,
        closes=_fit_again,
        guard="thirst or little sleep alone: a note",
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
declare(
    MatterKind(
        "slept-little",
        "rider",
        NOTE,
        "rider",
        "another night",
        _slept_opens,
        _slept,
        closes=_slept_closes,
        guard="six hours are ordinary",
        at="session:slept",
        limits=(LITTLE_SLEEP,),
        afterwards=False,
    )
)
