"""A leak: nothing leaves until it is mended and was looked at again hot."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, Seen, declare, opened
from paddock_tui.matters.incidents import incidents, part_missing, what_is_missing
from paddock_tui.matters.severity import HOLD


def _opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in incidents(outing, "leak"):
        missing = part_missing(one, tested=True)
        if missing:
            path = ("incidents", number, "mended")
            yield opened("leak-not-mended", outing.session.bike, outing, path, at=one.at, missing=missing)


def _says(one: Opened, now: Present) -> Said:
    return Said(
        HOLD,
        f"Leak {now.when(one)}: nothing is written of how it was mended.",
        "Oil, coolant or fuel on a tyre or the track brings down you and those behind you."
        + what_is_missing(one),
        "Leave it parked. Find where it comes from, mend it by the manual, run it hot on the stand, let a "
        "second person look; then enter what was done. Where nobody can tell, it stays parked.",
        f"leak {one.stamp}; not mended",
    )


LEAK = declare(
    MatterKind(
        "leak-not-mended",
        "bike",
        HOLD,
        "brakes",
        "what was found and done, by whom, and looked at again hot; overflow, lube, dew: what it was",
        _opens,
        _says,
    )
)
