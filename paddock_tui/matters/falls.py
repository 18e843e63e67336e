"""Falls, and what left the track or touched another: looked at again before the bike goes out."""

from collections.abc import Iterator

import attrs

from paddock_tui.limits.matters import RUN_OFFS
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents
from paddock_tui.matters.order import Place, is_early, is_later
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE, SERIOUS
from paddock_tui.records.session_parts import Incident

_RULES = "ten organisers' and clubs' lists: after any fall the bike goes through inspection again"

_LOOK = (
    "Go through the list for after a fall, then show the bike to inspection again and enter when it "
    "passed. The manual, inspection and qualified people decide; a look of your own is not enough."
)

_HARMLESS = ("kerb", "tarmac")


def _falls(kind: str, outing: Outing) -> Iterator[Opened]:
    falls = list(incidents(outing, "fall"))
    for place, (number, one) in enumerate(falls):
        # The bike was seen whole: what fell before is answered with it.
        seen = (_seen_whole(one, fall, place <= after) for after, (_, fall) in enumerate(falls))
        if any(seen) and not _list_to_fix(outing):
            continue
        words = {True: "fall while moving", False: "fall at standstill", None: "fall"}[one.moving]
        path = ("incidents", number, "inspected_again")
        yield opened(
            kind,
            outing.session.bike,
            outing,
            path,
            at=one.at,
            what=words,
            grade=int(one.moving is not False),
        )


def _seen_whole(fall: Incident, other: Incident, follows: bool) -> bool:
    """Return whether a fall was before the inspection that another led to, or its own; without clocks in
    the order of their numbers.
    """
    if other.inspected_again is None:
        return False
    if fall.at is not None:
        return fall.at <= other.inspected_again
    return follows


def _list_to_fix(outing: Outing) -> bool:
    """Return whether an item of the list for after a fall is to fix that holds."""
    return any(
        name in outing.fall_items and check.status == "to fix"
        for name, check in outing.session.checks.items()
    )


def _inspected(one: Opened, outing: Outing) -> bool:
    """Return whether inspection has seen the bike since: on a later day, or after another fall."""
    if outing.session.bike != one.whom or _list_to_fix(outing):
        return False
    later = is_later(Place(outing.session.date, stage="morning"), one.place)
    again = any(fall.inspected_again is not None for _, fall in incidents(outing, "fall"))
    return again or (later and bool(outing.entry.inspected))


def _must(one: Opened, now: Present) -> bool:
    """Return whether the organiser inspects again: any fall, or one while moving; not known counts."""
    return bool(one.grade) or now.inspected_after == "any"


def _moving(one: Opened, now: Present) -> Said | None:
    if not _must(one, now):
        return None
    return Said(
        HOLD,
        f"{_fell(one, now)}: the bike was not inspected since.",
        "Bent, cracked or leaking parts do not show from the saddle; every organiser inspects again.",
        _LOOK,
        f"{one.what} {one.stamp}; organiser: {now.inspected_after or 'not known'}; not inspected since",
    )


def _standing(one: Opened, now: Present) -> Said | None:
    if _must(one, now):
        return None
    asks = "" if now.inspected_after else " Ask whether this organiser wants any fall inspected."
    return Said(
        SERIOUS,
        f"{_fell(one, now)}: not inspected since.",
        f"A lever, a footrest, a disc or a sensor bends at standstill too.{asks}",
        _LOOK,
        f"{one.what} {one.stamp}; {now.fall_list}; not inspected since",
    )


def _fell(one: Opened, now: Present) -> str:
    return f"{one.what[:1].upper()}{one.what[1:]} {now.when(one)}"


def _fall_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _falls("fall-not-inspected", outing)


def _standstill_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _falls("fall-at-standstill", outing)


def _off_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "off the track", "contact"):
        if not _looked_over(one) or is_early(one, outing.session):
            path = ("incidents", number, "found")
            yield opened(
                "off-or-contact-not-looked-over",
                outing.session.bike,
                outing,
                path,
                at=one.at,
                what=one.what or "",
                grade=int(one.where not in _HARMLESS),
            )


def _looked_over(one: Incident) -> bool:
    if one.inspected_again is not None or (one.mended or "").strip():
        return True
    return bool((one.found or "").strip() and (one.by or "").strip())


def _off(one: Opened, now: Present) -> Said | None:
    if _at_once(one, now):
        return None
    words = "Off the track" if one.what == "off the track" else "Contact"
    return Said(
        HOLD if one.grade else NOTE,
        f"{words} {now.when(one)}: the bike was not inspected since.",
        "Gravel, grass and barriers cut tyres, bend rims and levers, block radiators and tear lines; it "
        "shows at the next hard braking.",
        "Tyres and rims, lines and levers, radiator, fluids, chain: look, and enter what was found and your "
        "initials. Where the organiser inspects after any off, show it there first.",
        f"{one.what} {one.stamp}; not inspected",
    )


def _at_once(one: Opened, now: Present) -> bool:
    """Return whether the organiser inspects any bike that left the track: then nobody looks it over alone."""
    return bool(one.grade) and now.day is not None and now.day.inspection_after_off is True


def _shown_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return (attrs.evolve(one, kind="off-to-be-inspected") for one in _off_opens(outing, seen))


def _shown(one: Opened, now: Present) -> Said | None:
    if not _at_once(one, now):
        return None
    words = "Off the track" if one.what == "off the track" else "Contact"
    return Said(
        HOLD,
        f"{words} {now.when(one)}: this organiser inspects after any off.",
        "What the ground did to tyres, rims and lines shows at the next hard braking; here others look.",
        "Show the bike to inspection, and enter when it passed; look over tyres, rims, lines, levers, "
        "radiator and chain before.",
        f"{one.what} {one.stamp}; not inspected",
    )


def _run_offs_open(outing: Outing, seen: Seen) -> Iterator[Opened]:
    offs = list(incidents(outing, "off the track"))
    if offs:
        number, last = offs[-1]
        yield opened(
            "run-offs-in-a-day",
            outing.session.rider,
            outing,
            ("incidents", number, "note"),
            at=last.at,
            subject="rider",
            count=len(offs),
        )


def _run_offs_carried(one: Opened, outing: Outing) -> Opened:
    """Count those of the rest of the day."""
    if outing.session.rider != one.whom or outing.session.date != one.date:
        return one
    more = list(incidents(outing, "off the track"))
    return attrs.evolve(one, count=one.count + len(more), at=more[-1][1].at) if more else one


def _run_offs_close(one: Opened, outing: Outing) -> bool:
    """Return whether the day is over."""
    return outing.session.rider == one.whom and outing.session.date != one.date


def _run_offs(one: Opened, now: Present) -> Said | None:
    if not now.today(one) or one.count < now.limits[RUN_OFFS]:
        return None
    return Said(
        CAUTION,
        f"Off the track {one.count} times today, last {now.when(one)}: ease off.",
        "The third run-off of a day is no bad luck: head or pace, and the next one may not be on tarmac.",
        "Sit one out, drink, talk the corner through with an instructor; brake earlier in the next one.",
        f"off the track {one.count} times, last {one.stamp}",
    )


declare(
    MatterKind(
        "fall-not-inspected",
        "bike",
        HOLD,
        "brakes",
        "inspected again",
        _fall_opens,
        _moving,
        closes=_inspected,
        source=_RULES,
    )
)
declare(
    MatterKind(
        "fall-at-standstill",
        "bike",
        SERIOUS,
        "brakes",
        "inspected again",
        _standstill_opens,
        _standing,
        closes=_inspected,
        source=_RULES,
    )
)
declare(
    MatterKind(
        "off-or-contact-not-looked-over",
        "bike",
        HOLD,
        "brakes",
        "looked over, with initials; or inspected",
        _off_opens,
        _off,
        closes=_inspected,
        guard="over a kerb or on tarmac: a note",
        todo="look the bike over: it left the track or touched something",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "off-to-be-inspected",
        "bike",
        HOLD,
        "brakes",
        "inspected again, or looked over with initials",
        _shown_opens,
        _shown,
        closes=_inspected,
        guard="over a kerb or on tarmac; where the organiser does not inspect after any off",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "run-offs-in-a-day",
        "rider",
        CAUTION,
        "rider",
        "the day is over",
        _run_offs_open,
        _run_offs,
        closes=_run_offs_close,
        carried=_run_offs_carried,
        guard="under three a day",
        limits=(RUN_OFFS,),
        afterwards=False,
    )
)
