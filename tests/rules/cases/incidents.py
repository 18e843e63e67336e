"""Cases of the rules about what happened: leaks, lamps, falls, the rider's head, and how spent they are."""

import datetime as dt
from typing import Any

from paddock_tui.facts.past import PastSession
from tests.rules.case import Cases, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
BEFORE = dt.date(2026, 4, 18)
ANY = put("day", "inspection_after_fall", "any")


def happened(what: str | None = "fall", **values: Any) -> Change:
    """Write one incident into the session."""
    return put("session", "incidents.1", _incident(what, **values))


def earlier(what: str | None = "fall", day: dt.date | None = None, **values: Any) -> dict[str, object]:
    """Give an earlier session with one incident, as what differs from the usual one."""
    return {"incidents.1": _incident(what, **values), **({"date": day} if day else {})}


def _incident(what: str | None, **values: Any) -> dict[str, object]:
    return {"at": dt.time(9, 47), **({"what": what} if what else {}), **values}


def today(*sessions: dict[str, Any], **more: Any) -> tuple[PastSession, ...]:
    """Give sessions of this rider earlier today, on another bike."""
    return went_before(*({**one, "bike": "heron"} for one in sessions), **more).past


STANDING = happened(moving=False)
MOVING = happened(moving=True, head_contact=False)
AGAIN: dict[str, Any] = {"inspected_again": dt.time(10, 13)}
CLEARED: dict[str, Any] = {
    "cleared_by": "medical post",
    "cleared_at": dt.time(10, 2),
    "helmet_replaced": True,
}
KNOCK: dict[str, Any] = {"moving": True, "head_contact": True, "concussion": False}
NOT_TODAY = put("day", "entries.ines.kestrel.inspected", False)

CASES = {
    "fall-not-inspected": Cases(
        raising=(
            raises("bike", "hold", MOVING, says="Fall while moving 09:47"),
            raises("bike", "hold", happened(head_contact=False)),
            raises("bike", "hold", STANDING, ANY),
            raises("bike", "hold", MOVING, RIDDEN),
            raises("bike", "hold", history=went_before(earlier(moving=True)), says="16 May 09:47"),
            # Whoever rode it: the bike has to be shown again.
            raises("bike", "hold", history=went_before({**earlier(moving=True), "rider": "tobin"})),
            raises("bike", "hold", NOT_TODAY, history=went_before(earlier(day=BEFORE, moving=True))),
        ),
        silent=(
            silent(),
            silent(STANDING),
            silent(happened(moving=True, head_contact=False, **AGAIN)),
            silent(happened("off the track", moving=True)),
            # Inspection of a later day has seen it.
            silent(history=went_before(earlier(day=BEFORE, moving=True))),
            silent(happened(moving=True, **AGAIN), history=went_before(earlier(moving=True))),
        ),
        asks=True,
    ),
    "fall-at-standstill": Cases(
        raising=(
            raises("bike", "serious", STANDING, says="Fall at standstill 09:47"),
            raises("bike", "serious", STANDING, put("day", "inspection_after_fall", "moving")),
            raises("bike", "serious", history=went_before(earlier(moving=False))),
        ),
        silent=(silent(), silent(STANDING, ANY), silent(happened(moving=False, **AGAIN)), silent(MOVING)),
        asks=True,
    ),
    "two-falls-in-a-day": Cases(
        raising=(
            raises("rider", "serious", MOVING, history=went_before(earlier(moving=True))),
            raises("rider", "serious", MOVING, rider_today=today(earlier(moving=True))),
        ),
        silent=(
            silent(MOVING),
            silent(MOVING, history=went_before(earlier(moving=False))),
            silent(MOVING, history=went_before(earlier(moving=True, at_fault=False))),
            silent(MOVING, history=went_before(earlier(day=BEFORE, moving=True))),
            silent(MOVING, history=went_before({**earlier(moving=True), "rider": "tobin"})),
        ),
        asks=True,
    ),
    "concussion-suspected": Cases(
        raising=(
            raises("rider", "hold", happened(head_contact=True), says="not answered"),
            raises("rider", "hold", happened(head_contact=True, concussion=True), says="suspected"),
            # Nothing mends it today, not even all three.
            raises("rider", "hold", happened(head_contact=True, concussion=True, **CLEARED)),
            raises("rider", "hold", happened("contact", concussion=True)),
            raises("rider", "hold", history=went_before(earlier(head_contact=True))),
            raises("rider", "hold", rider_today=today(earlier(head_contact=True))),
            raises("rider", "hold", happened(head_contact=True), put("session", "kind", "road")),
        ),
        silent=(
            silent(happened(**KNOCK)),
            silent(history=went_before(earlier(day=BEFORE, head_contact=True))),
            silent(history=went_before({**earlier(head_contact=True), "rider": "tobin"})),
            silent(MOVING),
        ),
        asks=True,
    ),
    "head-hit-not-cleared": Cases(
        raising=(
            raises("rider", "hold", happened(**KNOCK), says="who cleared you and more"),
            *(
                raises("rider", "hold", happened(**{**KNOCK, **CLEARED, key: None}))
                for key in ("cleared_by", "cleared_at")
            ),
            raises("rider", "hold", happened(**{**KNOCK, **CLEARED, "cleared_by": " "})),
            raises("rider", "hold", rider_today=today(earlier(**KNOCK))),
            raises("rider", "hold", history=went_before(earlier(day=BEFORE, head_contact=True))),
        ),
        silent=(
            silent(happened(**KNOCK, **CLEARED)),
            silent(happened(**{**KNOCK, **CLEARED, "helmet_replaced": None})),
            silent(happened(head_contact=True)),
            silent(history=went_before(earlier(day=BEFORE, head_contact=True, **CLEARED))),
            silent(MOVING),
        ),
        asks=True,
    ),
    "head-contact-not-answered": Cases(
        raising=(
            raises("rider", "serious", happened(moving=True)),
            raises("rider", "serious", happened(), RIDDEN),
            raises("rider", "serious", rider_today=today(earlier(moving=True))),
        ),
        silent=(
            silent(MOVING),
            silent(STANDING),
            silent(happened(moving=True, concussion=True)),
            silent(history=went_before(earlier(day=BEFORE, moving=True))),
        ),
        asks=True,
    ),
    "rider-unwell": Cases(
        raising=(
            raises("rider", "serious", happened("unwell")),
            raises("rider", "serious", happened("unwell", cleared_by="medical post")),
            raises("rider", "serious", rider_today=today(earlier("unwell"))),
            raises(
                "rider",
                "serious",
                without("session", "checks.rider-fit"),
                history=went_before(earlier("unwell", day=BEFORE)),
                says="fit today",
            ),
        ),
        silent=(
            silent(),
            silent(happened("unwell", cleared_by="medical post", cleared_at=dt.time(10, 2))),
            silent(put("session", "fatigue", 3), history=went_before(earlier("unwell", day=BEFORE))),
        ),
        asks=True,
    ),
    "rider-spent": Cases(
        raising=(
            raises("rider", "serious", put("session", "fatigue", 4), says="Fatigue 4 of 5 now"),
            raises("rider", "serious", rider_today=today({"fatigue": 5}), says="in session 3"),
        ),
        silent=(
            silent(put("session", "fatigue", 3)),
            silent(put("session", "fatigue", 5), RIDDEN),
            # Rested since.
            silent(put("session", "fatigue", 2), rider_today=today({"fatigue": 5})),
            silent(rider_today=today({"fatigue": 5}, {"fatigue": 3})),
        ),
        asks=True,
    ),
    "leak-not-mended": Cases(
        raising=(
            raises("bike", "hold", happened("leak")),
            raises("bike", "hold", happened("leak", mended=" ")),
            raises("bike", "hold", happened("leak"), RIDDEN),
            raises("bike", "hold", history=went_before(earlier("leak", day=BEFORE))),
        ),
        silent=(silent(), silent(happened("leak", mended="hose clip, ran hot, dry"))),
        asks=True,
    ),
    "engine-lamp-not-mended": Cases(
        raising=(
            raises("bike", "hold", happened("warning lamp", lamp="oil"), says="The oil warning light"),
            raises("bike", "hold", happened("warning lamp", lamp="temperature")),
            raises("bike", "hold", history=went_before(earlier("warning lamp", lamp="oil"))),
        ),
        silent=(
            silent(happened("warning lamp", lamp="oil", mended="sender; pressure measured")),
            silent(happened("warning lamp", lamp="ABS")),
        ),
        asks=True,
    ),
    "lamp-not-explained": Cases(
        raising=(
            raises("bike", "serious", happened("warning lamp")),
            raises("bike", "serious", happened("warning lamp", lamp="other")),
        ),
        silent=(
            silent(happened("warning lamp", lamp="other", mended="fuel reserve")),
            silent(happened("warning lamp", lamp="oil")),
        ),
        asks=True,
    ),
}
