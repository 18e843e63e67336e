"""The machine: a throttle that sticks, an engine that cuts out, a clutch that slips, gears that jump out."""

from collections.abc import Iterator

from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents, part_missing, symptoms, what_is_missing
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS

FALSE_NEUTRAL = "false neutral"
"""An incident: a gear that did not engage. Once it is a slip of the foot, noted; more of them a rule says."""

NAMED = ("limiter", "kill switch", "empty tank")
"""Reasons for which an engine stops that are no matter of the bike."""


def _throttle_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in symptoms(outing, "throttle sticks", "engine cuts out"):
        missing = part_missing(one, outing.session, tested=True)
        named = one.what == "engine cuts out" and one.cause in NAMED
        if missing and not named:
            yield opened(
                "throttle-or-engine-danger",
                outing.session.bike,
                outing,
                ("symptoms", number, "found"),
                until=outing.session.parked,
                what=one.what or "",
                subject=(one.what or "").replace(" ", "-"),
                missing=missing,
            )


def _throttle(one: Opened, now: Present) -> Said:
    sticks = one.what == "throttle sticks"
    words = "The throttle stuck" if sticks else "The engine cut out"
    return Said(
        HOLD,
        f"{words}, {now.when(one)}, and nothing says why.",
        (
            "A throttle that does not shut takes the bike straight on."
            if sticks
            else "An engine that stops in a corner or in the middle of others leaves no way out."
        )
        + what_is_missing(one),
        "Find the cause: cable or grip, routing, plug, fuse, fuel, stand switch. With the engine running it "
        "has to snap shut at both locks. Enter what was found and done, the test, and who.",
        f"{one.what} {one.stamp}; not answered",
    )


def _clutch_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in symptoms(outing, "clutch slips", "jumps out of gear"):
        missing = part_missing(one, outing.session)
        if missing:
            yield opened(
                "clutch-or-gearbox",
                outing.session.bike,
                outing,
                ("symptoms", number, "found"),
                until=outing.session.parked,
                what=one.what or "",
                subject=(one.what or "").replace(" ", "-"),
                missing=missing,
            )
    for number, happened in incidents(outing, FALSE_NEUTRAL):
        missing = part_missing(happened, outing.session)
        if missing:
            yield opened(
                "clutch-or-gearbox",
                outing.session.bike,
                outing,
                ("incidents", number, "found"),
                at=happened.at,
                what=FALSE_NEUTRAL,
                subject="false-neutral",
                missing=missing,
            )


def _clutch_closes(one: Opened, outing: Outing) -> bool:
    if outing.session.bike != one.whom or not debriefed(outing):
        return False
    return not any(symptoms(outing, one.what)) and not any(incidents(outing, one.what))


_GEARS = {
    "clutch slips": "The clutch slipped",
    "jumps out of gear": "It jumped out of gear",
    FALSE_NEUTRAL: "A false neutral",
}


def _clutch(one: Opened, now: Present) -> Said:
    slips = one.what == "clutch slips"
    return Said(
        NOTE if one.what == FALSE_NEUTRAL else SERIOUS,
        f"{_GEARS[one.what]}, {now.when(one)}, unanswered.",
        (
            "A clutch that slips ends in a bike without drive among others."
            if slips
            else "Out of gear there is no engine braking: the bike arrives too fast."
        )
        + what_is_missing(one),
        "Look at play, linkage, lever height and oil, and have it opened where that does not answer it; "
        "enter what was found and done, and who.",
        f"{one.what} {one.stamp}; not answered",
    )


declare(
    MatterKind(
        "throttle-or-engine-danger",
        "bike",
        HOLD,
        "brakes",
        "what was found and done, by whom, and that it snaps shut at both locks with the engine running",
        _throttle_opens,
        _throttle,
        guard="an engine stopped by limiter, kill switch or empty tank",
        at="session:symptoms",
    )
)
declare(
    MatterKind(
        "clutch-or-gearbox",
        "bike",
        SERIOUS,
        "brakes",
        "what was found and done, by whom; or a debriefed session without it",
        _clutch_opens,
        _clutch,
        closes=_clutch_closes,
        guard="a false neutral: a note; from the second on what shifts down without the clutch says it",
        at="session:symptoms",
    )
)
