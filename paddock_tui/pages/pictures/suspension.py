"""The suspension of both ends side by side: where each adjuster stands between closed and open."""

from collections.abc import Mapping, Sequence

import attrs

from paddock_tui.pages.pictures.data import NOW, Lane, Mark, Pair, Pairs
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import counted
from paddock_tui.records.in_force import closed_by
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.suspension import Adjuster

LEGEND = "share of each range, not stiffness"

_ENDS = ("front", "rear")


@attrs.frozen
class ComparedAdjusters:
    """Another set-up to compare with: the letter of its mark, its word, and what it held."""

    sign: str
    word: str
    adjusters: Mapping[str, float]


def suspension_pairs(bike: Bike, setup: SetUp, others: Sequence[ComparedAdjusters]) -> Pairs | None:
    """Draw each adjuster that has a range and that both or one of the ends have; None without one.

    Closed, which is turned in, is outside; an adjuster of which nobody knows from where it is counted has no
    mark: where it stands is not known. Those that do nothing in the damping mode have no track.
    """
    found: dict[str, dict[str, Lane]] = {}
    rows: list[tuple[str, ...]] = []
    for name, adjuster in bike.adjusters.items():
        if adjuster.end not in _ENDS or adjuster.range is None or adjuster.what in (None, "damper"):
            continue
        lane = _lane(adjuster, setup.adjusters.get(name), name, others)
        lane = attrs.evolve(lane, shut=bool(closed_by(name, setup, bike)))
        what = adjuster.what or name
        if adjuster.end in found.setdefault(what, {}):
            what = name
            found[what] = {}
        found[what][adjuster.end] = lane
        compared = tuple(_word(one.adjusters.get(name)) for one in others)
        rows.append((f"{adjuster.end} {what}", lane.value, _share(lane), *compared))
    if not found:
        return None
    return Pairs(
        tuple(Pair(what, ends.get("front"), ends.get("rear")) for what, ends in found.items()),
        "; ".join(f"{row[0]} {row[1]}{f', {row[2]}' if row[2] else ''}" for row in rows),
        outer="closed",
        inner="open",
        heads=("", "now", "of its range in", *(one.word for one in others)),
        table=tuple(rows),
    )


def _lane(adjuster: Adjuster, value: float | None, name: str, others: Sequence[ComparedAdjusters]) -> Lane:
    marks = []
    for sign, word, held in (
        *((one.sign, one.word, one.adjusters.get(name)) for one in others),
        (NOW, "now", value),
    ):
        at = turned_in(adjuster, held)
        if at is not None:
            marks.append(Mark(sign, at, word))
    said = "not known" if value is None else counted(show_number(value), adjuster)
    return Lane(adjuster.what or name, tuple(marks), said)


def turned_in(adjuster: Adjuster, value: float | None) -> float | None:
    """Return how far an adjuster is turned in, 0.0 open to 1.0 closed; None where that is not known."""
    if value is None or adjuster.range is None:
        return None
    low, high = min(adjuster.range), max(adjuster.range)
    if high <= low or not low <= value <= high:
        return None
    part = (value - low) / (high - low)
    if adjuster.counted_from == "closed":
        return 1.0 - part
    return part if adjuster.counted_from == "open" else None


def _share(lane: Lane) -> str:
    now = next((mark.at for mark in lane.marks if mark.sign == NOW), None)
    return "" if now is None else f"{round(100 * now)} % closed"


def _word(value: float | None) -> str:
    return "not known" if value is None else show_number(value)
