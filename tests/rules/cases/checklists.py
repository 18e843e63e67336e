"""Cases of the rules about checklists: what is to fix, and what is still open when the rider goes out."""

import datetime as dt
from typing import Any

from paddock_tui.records.checklist import Checklist
from paddock_tui.records.session import Session
from tests.rules.case import Cases, raises, silent
from tests.rules.situations import SESSION, Change, Data, put, read, went_before, without

OF_DAY = "entries.ines.kestrel.checks"
RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")

MORNING: Data = {
    "name": "Bike, morning",
    "stage": "bike, morning",
    "items": {
        "lever-firm": {"text": "front lever firm", "to_fix": "hold"},
        "chain-slack": {"text": "slack at the tight point", "to_fix": "serious"},
        "stickers": {"text": "stickers straight."},
    },
}
BEFORE: Data = {
    "name": "before each session",
    "stage": "before each session",
    "items": {
        "pressures-set": {
            "text": "pressures set",
            "to_fix": "caution",
            "answered_by": "pressures.cold.front",
        },
        "visor": {"text": "visor clean", "to_fix": "note"},
        "gear": {"text": "first gear to leave in", "answered_by": "setup.mode"},
    },
}
RETURN: Data = {
    "stage": "on return",
    "items": {
        "leaks": {"text": "no leak", "to_fix": "hold"},
        "tyre-look": {"text": "tyres looked at", "to_fix": "note"},
    },
}
WETS: Data = {"stage": "wet swap", "items": {"wets": {"text": "wets on", "surfaces": ["damp", "wet"]}}}
PAPER: Data = {"stage": "paper", "items": {"ticket": {"text": "noise ticket", "to_fix": "serious"}}}
FALL: Data = {"stage": "after a fall", "items": {"forks": {"text": "forks straight", "to_fix": "hold"}}}
GRID: Data = {"stage": "grid", "items": {"number": {"text": "number on", "kinds": ["race"]}}}


def lists(**given: Data) -> dict[str, Checklist]:
    """Read checklists by their ids."""
    made = {name: read("checklist", data, Checklist) for name, data in given.items()}
    return {name: found for name, found in made.items() if found is not None}


EVERY = lists(morning=MORNING, before=BEFORE, back=RETURN, wets=WETS, paper=PAPER, fall=FALL, grid=GRID)


def before(**changes: Any) -> tuple[Session, ...]:
    """Give session 2 of the same day, with these values."""
    found = read("session", {**SESSION, "number": 2, "parked": dt.time(10, 20), **changes}, Session)
    assert found is not None
    return (found,)


def check(where: str, status: str) -> Change:
    """Answer an item, of the day where its path says so."""
    role = "day" if where.startswith("entries") else "session"
    return put(role, where, {"status": status, "at": dt.time(7, 55), "by": "IS"})


def answered(*left_out: str) -> tuple[Change, ...]:
    """Answer everything that is due before going out, but for these items."""
    places = {name: f"{OF_DAY}.{name}" for name in MORNING["items"]}
    places |= {"visor": "checks.visor", "gear": "checks.gear"}
    return tuple(check(place, "ok") for name, place in places.items() if name not in left_out)


FELL = {"incidents": {"1": {"what": "fall"}}}
WET_ON_SLICKS = (put("session", "surface", "wet"), put("tyres", "rear.kind", "slick"))

CASES = {
    "checklist-item-to-fix": Cases(
        raising=(
            raises(
                "lever-firm",
                "hold",
                check(f"{OF_DAY}.lever-firm", "to fix"),
                says="To fix: front lever firm.",
                checklists=EVERY,
            ),
            raises("chain-slack", "serious", check(f"{OF_DAY}.chain-slack", "to fix"), checklists=EVERY),
            raises("stickers", "caution", check(f"{OF_DAY}.stickers", "to fix"), checklists=EVERY),
            raises("visor", "note", check("checks.visor", "to fix"), checklists=EVERY),
            raises("ticket", "serious", check(f"{OF_DAY}.ticket", "to fix"), checklists=EVERY),
            raises("leaks", "hold", check("checks.leaks", "to fix"), RIDDEN, checklists=EVERY),
            raises("forks", "hold", check("checks.forks", "to fix"), checklists=EVERY),
            # What the record says of it does not mend it.
            raises("pressures-set", "caution", check("checks.pressures-set", "to fix"), checklists=EVERY),
            # What is asked for without a list says itself how bad it is, a failing brake first.
            raises("rear-brake", "hold", check("checks.rear-brake", "to fix"), says="To fix: rear brake."),
            raises("walked-round", "hold", check("checks.walked-round", "to fix")),
            raises("wheels-secured", "hold", check(f"{OF_DAY}.wheels-secured", "to fix")),
            raises("fuel-enough", "serious", check("checks.fuel-enough", "to fix")),
            # For the road: as bad as it is there; on a track a caution, unless the bike goes home in a van.
            raises("home-plate", "hold", check("checks.home-plate", "to fix"), ROAD),
            raises("home-lights", "hold", check("checks.home-lights", "to fix"), ROAD),
            raises("home-mirrors", "caution", check("checks.home-mirrors", "to fix"), ROAD),
            raises("home-pressures", "caution", check("checks.home-pressures", "to fix"), ROAD),
            raises("home-plate", "caution", check("checks.home-plate", "to fix")),
            raises(
                "home-plate", "caution", check("checks.home-plate", "to fix"), put("day", "travel", "road")
            ),
            raises("home-plate", "note", check("checks.home-plate", "to fix"), put("day", "travel", "van")),
            # On no list, or on one that is retired or not for this surface: still to fix.
            raises(
                "horn",
                "caution",
                check("checks.horn", "to fix"),
                says="To fix: horn, on none of the lists.",
            ),
            raises("wets", "caution", check("checks.wets", "to fix"), checklists=EVERY),
            raises(
                "lever-firm",
                "hold",
                check(f"{OF_DAY}.lever-firm", "to fix"),
                says="To fix: front lever firm.",
                checklists=lists(old={**MORNING, "retired": dt.date(2025, 1, 1)}),
            ),
            # The worst of two lists counts.
            raises(
                "lever-firm",
                "hold",
                check(f"{OF_DAY}.lever-firm", "to fix"),
                checklists=lists(
                    club={"stage": "rider", "items": {"lever-firm": {"to_fix": "note"}}}, morning=MORNING
                ),
            ),
            # Found on return, and not looked at again since.
            raises(
                "leaks",
                "hold",
                checklists=EVERY,
                history=went_before({"checks.leaks": {"status": "to fix", "at": dt.time(10, 21)}}),
            ),
            raises("horn", "caution", history=went_before({"checks.horn": {"status": "to fix"}})),
            # Another day, and not applicable since: both leave it open.
            raises(
                "horn",
                "caution",
                check("checks.horn", "not applicable"),
                history=went_before({"checks.horn": {"status": "to fix"}, "date": dt.date(2026, 4, 18)}),
            ),
        ),
        silent=(
            silent(checklists=EVERY),
            silent(check(f"{OF_DAY}.lever-firm", "ok"), checklists=EVERY),
            silent(check("checks.leaks", "not applicable"), checklists=EVERY),
            silent(
                check("checks.leaks", "ok"),
                checklists=EVERY,
                history=went_before({"checks.leaks": {"status": "to fix"}}),
            ),
            # A note of an earlier session is over with it.
            silent(checklists=EVERY, history=went_before({"checks.tyre-look": {"status": "to fix"}})),
            # Another rider's morning on the same bike is not this one's.
            silent(put("day", "entries.tobin.kestrel.checks.lever-firm", {"status": "to fix"})),
        ),
        asks=True,
    ),
    "checklist-items-open": Cases(
        raising=(
            raises(
                "morning",
                "caution",
                says="Bike, morning open: front lever firm, and 2 more.",
                going_out=True,
                checklists=EVERY,
            ),
            raises(
                "morning",
                "caution",
                *answered("chain-slack"),
                says="Bike, morning open: slack at the tight point.",
                going_out=True,
                checklists=EVERY,
            ),
            # Cold pressures are asked for by a rule of their own; a value carried over answers nothing.
            raises(
                "before",
                "caution",
                without("session", "pressures"),
                put("session", "copied_from", "2026-05-16-2-kestrel"),
                says="Before each session open: first gear to leave in, and 1 more.",
                going_out=True,
                checklists=EVERY,
                source=before()[0],
            ),
            raises(
                "wets",
                "caution",
                *WET_ON_SLICKS,
                says="Wet swap open: wets on.",
                going_out=True,
                checklists=EVERY,
            ),
            raises(
                "wets",
                "caution",
                put("session", "surface", "damp"),
                going_out=True,
                checklists=EVERY,
                source=before(tyres="april")[0],
            ),
            raises("grid", "caution", put("session", "kind", "race"), going_out=True, checklists=EVERY),
            raises(
                "fall",
                "caution",
                says="After a fall open: forks straight.",
                going_out=True,
                checklists=EVERY,
                earlier=before(**FELL),
            ),
            # Without a day nobody can have looked.
            raises("morning", "caution", without("day"), going_out=True, checklists=EVERY),
        ),
        silent=(
            silent(going_out=True),
            silent(*answered(), going_out=True, checklists=EVERY),
            silent(RIDDEN, going_out=True, checklists=EVERY),
            silent(*answered(), RIDDEN, put("session", "incidents", FELL["incidents"]), checklists=EVERY),
            # In the wet on wets since the session before: the swap is done.
            silent(
                *answered(),
                put("session", "surface", "wet"),
                put("tyres", "front.kind", "wet"),
                put("tyres", "rear.kind", "wet"),
                going_out=True,
                checklists=EVERY,
                source=before(surface="wet")[0],
            ),
            # Gone through after the fall, in that session.
            silent(
                *answered(),
                going_out=True,
                checklists=EVERY,
                earlier=before(**FELL, checks={"forks": {"status": "ok"}}),
            ),
            # On the road without a day, the day's lists have no place.
            silent(
                put("session", "kind", "road"),
                without("session", "day"),
                without("day"),
                going_out=True,
                checklists=lists(morning=MORNING),
            ),
            silent(going_out=True, checklists=lists(paper=PAPER, night={**PAPER, "stage": "night before"})),
            silent(going_out=True, checklists=lists(old={**MORNING, "retired": dt.date(2025, 1, 1)})),
        ),
        asks=True,
    ),
}
