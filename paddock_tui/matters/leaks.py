"""A leak: nothing leaves until it is mended and was looked at again hot; what is no leak is named."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents, part_missing, what_is_missing
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, SERIOUS

_NO_LEAK = ("overflow", "lube", "dew")
_WEEP = "fork or shock weep"


def _opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "leak"):
        missing = part_missing(one, outing.session, tested=True)
        if missing and one.fluid not in _NO_LEAK:
            yield opened(
                "leak-not-mended",
                outing.session.bike,
                outing,
                ("incidents", number, "mended"),
                at=one.at,
                missing=missing,
                what=one.fluid or "",
                grade=2 if one.fluid == _WEEP and one.on_tyre is False else 3,
            )


def _says(one: Opened, now: Present) -> Said:
    weep = one.what == _WEEP
    words = "Fork or shock weeps" if weep else f"Leak of {one.what}" if one.what else "Leak"
    return Said(
        HOLD if one.grade == 3 else SERIOUS,
        f"{words} {now.when(one)}: nothing is written of how it was repaired.",
        (
            "A seal that weeps wets a brake disc or the tyre next, and damping goes with the oil."
            if weep
            else "Oil, coolant or fuel on a tyre or the track brings down you and those behind you."
        )
        + (" Whether it reached disc or tyre counts as yes." if weep and one.grade == 3 else "")
        + what_is_missing(one),
        "Leave it parked. Find where it comes from, repair it by the manual, run it hot on the stand, let a "
        "second person look; then enter what was done. Where nobody can tell, it stays parked.",
        f"leak {one.stamp}; {one.what or 'fluid not known'}; not repaired",
    )


LEAK = declare(
    MatterKind(
        "leak-not-mended",
        "bike",
        SERIOUS,
        "brakes",
        "what was found and done, by whom, and looked at again hot",
        _opens,
        _says,
        guard="overflow, lube, dew: naming it closes; a weep that reached neither disc nor tyre is serious",
    )
)
