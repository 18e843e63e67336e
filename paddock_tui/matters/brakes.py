"""The front brake lever, and brakes that fade: firm when cold answers only a long one."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import part_missing, symptoms, what_is_missing
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, SERIOUS, Severity
from paddock_tui.matters.work import WHEELS

_LISTS = "organisers' inspection lists: lever firm, never to the bar"

_FEEL: dict[str, tuple[Severity, str, str, str]] = {
    "to the bar": (
        HOLD,
        "The brake lever comes to the bar.",
        "There is nothing left to pull; the next pull may find no brake at all.",
        "Leave it parked. Find the air, the leak or the worn part, replace and bleed by the manual, let "
        "a second person feel it, try it at walking pace; then answer it in the bike's file.",
    ),
    "spongy hot": (
        HOLD,
        "The brake lever goes spongy when hot.",
        "Fluid that boils turns to vapour, and the lever then finds nothing; cold it feels firm again.",
        "Bleed with new fluid by the manual, pump until hard, feel it again at walking pace; then answer "
        "it in the bike's file.",
    ),
    "long": (
        CAUTION,
        "The brake lever has a long way to go.",
        "Air, old fluid, worn pads or a disc that pushes them back; it gets longer when hot.",
        "Pump it first, look at pads, discs and fluid, bleed by the manual if it stays long, and enter it "
        "again.",
    ),
}


def _lever_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    lever = outing.session.lever
    if lever is None or lever not in _FEEL:
        return
    bike = outing.session.bike
    before = seen.bike(bike)
    if lever == "long":
        worked = before.worked or any(one.what in WHEELS for one in outing.session.work.values())
        yield opened(
            "brake-lever-not-firm",
            bike,
            outing,
            ("lever",),
            what=lever,
            subject="lever",
            count=2 if before.lever == "long" else 1,
            cause="worked" if worked else "",
        )
    else:
        path = ("answers", "brake-lever-not-firm")
        yield opened("brake-lever-not-firm", bike, outing, path, record="bike", what=lever, subject="lever")


def _lever_closes(one: Opened, outing: Outing) -> bool:
    same = outing.session.bike == one.whom
    return same and one.what == "long" and outing.session.lever is not None


def _lever(one: Opened, now: Present) -> Said:
    severity, message, why, remedy = _FEEL[one.what]
    if one.count > 1:
        severity, why = SERIOUS, "Long a second time: it does not go away by itself. " + why
    if one.cause:
        remedy = (
            "Pump it until hard: pistons were pushed back when pads or wheel were out. Firm then, enter it; "
            "long still, leave it parked and bleed by the manual."
        )
    felt = "now" if now.here(one) else now.when(one)
    said = message if now.here(one) else f"{message[:-1]}, {felt}."
    return Said(severity, said, why, remedy, f"lever {one.what} {one.stamp}")


def _fade_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in symptoms(outing, "brakes fade"):
        missing = part_missing(one, outing.session, tested=True)
        if missing:
            path = ("symptoms", number, "found")
            yield opened(
                "brakes-fade",
                outing.session.bike,
                outing,
                path,
                until=outing.session.parked,
                subject="brakes",
                missing=missing,
            )


def _fade(one: Opened, now: Present) -> Said:
    return Said(
        HOLD,
        f"The brakes faded, {now.when(one)}, and nothing says what was done.",
        "Pads that are too hot or fluid that boils: the next hard stop may find no brake."
        + what_is_missing(one),
        "Look at pads, discs and fluid, bleed or replace by the manual, pump until hard, try it at walking "
        "pace; then enter what was found and done, the test, and who.",
        f"brakes faded {one.stamp}; not answered",
    )


declare(
    MatterKind(
        "brake-lever-not-firm",
        "bike",
        HOLD,
        "brakes",
        "bled or part replaced, by whom; firm, pumped, tried at walking pace; felt again: only long",
        _lever_opens,
        _lever,
        closes=_lever_closes,
        guard="long once: a caution; after work on pads or wheels it is pumped first",
        at="session:lever",
        wants=("found", "done", "by", "test"),
        source=_LISTS,
    )
)
declare(
    MatterKind(
        "brakes-fade",
        "bike",
        HOLD,
        "brakes",
        "what was found and done, the test, by whom",
        _fade_opens,
        _fade,
        at="session:symptoms",
    )
)
