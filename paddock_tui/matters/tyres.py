"""What was seen on a tyre goes with the tyre: only another one ends it, or a fitter who looked at a cut."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.order import is_early
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE, SERIOUS, Severity
from paddock_tui.records.shown_words import shown

FINISHED = ("cord", "split", "below the marks", "bubble", "nail")

ENDS = ("front", "rear")


def _finished_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for end in ENDS:
        look = outing.session.look.get(end)
        found = [one for one in (look.seen or ()) if one in FINISHED] if look is not None else []
        if look is not None and found:
            yield opened(
                "tyre-finished",
                outing.tyres.get(end),
                outing,
                ("look", end, "seen"),
                at=look.at,
                subject=end,
                what=", ".join(map(shown, found)),
            )


def _finished(one: Opened, now: Present) -> Said:
    seen = "this session" if now.here(one) else f"session {one.of}"
    return Said(
        HOLD,
        f"The {one.subject} tyre is finished: {one.what} ({seen}).",
        "It may fail at any moment, and no inspection passes it.",
        "Replace it; enter the new tyre set, or when this end was fitted again.",
        f"{one.subject} tyre {one.what} ({one.stamp})",
        (one.what,),
    )


def _cut_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for end in ENDS:
        look = outing.session.look.get(end)
        if look is None or "cut" not in (look.seen or ()):
            continue
        answered = (look.found or "").strip() and (look.by or "").strip()
        if not answered or is_early(look, outing.session):
            yield opened(
                "tyre-cut", outing.tyres.get(end), outing, ("look", end, "found"), at=look.at, subject=end
            )


def _cut(one: Opened, now: Present) -> Said:
    return Said(
        CAUTION,
        f"The {one.subject} tyre has a cut ({now.when(one)}): nobody wrote what it is.",
        "A cut down to the cord ends in a burst; how deep it goes is seen only with the tyre warm and bent.",
        "Have a tyre fitter look at it, and enter what was found and who said so; to the cord is the end.",
        f"{one.subject} tyre cut ({one.stamp}); not looked at by a tyre fitter",
    )


def _repair_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for end, tyre in outing.fitted.items():
        if tyre.repair not in (None, "none"):
            yield opened(
                "tyre-repaired",
                outing.tyres.get(end),
                outing,
                (end, "repair"),
                record="tyres",
                home=outing.session.tyres or "",
                subject=end,
                what=tyre.repair,
                derived=True,
            )


def _repair(one: Opened, now: Present) -> Said | None:
    road = now.session.kind == "road"
    race = now.session.kind in ("race", "qualifying") or now.group in ("race", "")
    if road:
        severity: Severity = NOTE if one.what == "inside" else SERIOUS
    else:
        severity = HOLD if one.what != "inside" or race else SERIOUS
    return Said(
        severity,
        f"The {one.subject} tyre was repaired: {one.what}.",
        "A repair is made for the road and a lower speed; track heat and load work it loose."
        if not road
        else "A repair from inside may last; a plug or a repaired side wall gets you to the fitter.",
        "Another tyre. Ask a tyre fitter, the manual of the tyre and the organiser's rules before.",
        f"{one.subject} tyre repaired: {one.what}; {now.session.kind or 'kind not known'}",
    )


declare(
    MatterKind(
        "tyre-finished",
        "tyre",
        HOLD,
        "tyres",
        "another tyre",
        _finished_opens,
        _finished,
        guard="tear, graining, blue on race rubber are not this",
        at="session:look.{subject}",
    )
)
declare(
    MatterKind(
        "tyre-cut",
        "tyre",
        CAUTION,
        "tyres",
        "looked at by a tyre fitter, named; or another tyre",
        _cut_opens,
        _cut,
        at="session:look.{subject}",
    )
)
declare(
    MatterKind(
        "tyre-repaired",
        "tyre",
        NOTE,
        "tyres",
        "another tyre",
        _repair_opens,
        _repair,
        guard="repaired from inside, on the road: a note",
        at="tyres:{subject}.repair",
        afterwards=False,
    )
)
