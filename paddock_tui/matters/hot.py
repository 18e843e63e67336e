"""Hot pressures off the tyre's target last time, with the same start planned again."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.calc.tyre_air_learning import HOT_WITHIN_MIN
from paddock_tui.limits.next_change import HOT_LAPS
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION, OFF_TARGET_SERIOUS
from paddock_tui.limits.weather import MOVED_SINCE_SET
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, NOTE, SERIOUS
from paddock_tui.quantities import Quantity
from paddock_tui.records.hot_target import hot_target_on


def _opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    hot = session.pressures.get("hot")
    if hot is None:
        return
    for end, tyre in outing.fitted.items():
        read, set_to = getattr(hot, end), getattr(hot, f"set_to_{end}")
        target = hot_target_on(tyre, outing.column)
        if read is None or target is None or set_to is not None:
            continue
        over = target.over_bar(read)
        start = getattr(session.setup, f"{end}_start")
        if abs(over) > outing.limits[OFF_TARGET_CAUTION] + 1e-9 and start is not None:
            yield opened(
                "hot-pressure-off-last-time",
                outing.tyres.get(end),
                outing,
                ("setup", f"{end}_start"),
                subject=end,
                value=over,
                what=str(read),
                cause=str(start),
                grade=2 if _is_hot(outing, hot.at) else 0,
                conditions=(session.track, session.warmers or ""),
            )


def _is_hot(outing: Outing, at: dt.time | None) -> bool:
    """Return whether it was read before the tyre cooled, and after laps that made it hot."""
    parked = outing.session.parked
    if parked is None or at is None or outing.session.lap_count < outing.limits[HOT_LAPS]:
        return False
    return 0 <= (at.hour - parked.hour) * 60 + at.minute - parked.minute <= HOT_WITHIN_MIN


def _closes(one: Opened, outing: Outing) -> bool:
    """Return whether it was read again on the same tyre and surface: that reading says it anew."""
    hot = outing.session.pressures.get("hot")
    same = outing.tyres.get(one.subject) == one.whom and outing.column == one.column
    return same and hot is not None and getattr(hot, one.subject) is not None


def _says(one: Opened, now: Present) -> Said | None:
    if now.here(one) or one.column != now.column or not _alike(one, now):
        return None
    start = getattr(now.session.setup, f"{one.subject}_start")
    if start is None or not _same_start(start, one.cause):
        return None
    way = "over" if one.value > 0 else "under"
    by = abs(one.value)
    if one.grade == 0:
        return Said(
            NOTE,
            f"The {one.subject} was {by:.2f} bar {way} its target last time, not read hot.",
            "Read late or after few laps it says little: the start is not moved by it.",
            f"Read within {HOT_WITHIN_MIN:g} minutes of parking,"
            f" after {now.limits[HOT_LAPS]:g} laps or more.",
            f"{one.subject} {one.what} {one.stamp}; not read hot",
        )
    return Said(
        SERIOUS if by > now.limits[OFF_TARGET_SERIOUS] + 1e-9 else CAUTION,
        f"The {one.subject} was {by:.2f} bar {way} its hot target, {now.when(one)}; same start again.",
        "Started the same it comes back the same: "
        + ("a small, hot contact patch." if one.value > 0 else "the carcass flexes too much and runs hot."),
        "Move the starting pressure by about as much; the set-up page works it out beside the row.",
        f"{one.subject} hot {one.what} {one.stamp}; start {one.cause}",
    )


def _alike(one: Opened, now: Present) -> bool:
    """Return whether track and warmers are as they were, or not known to be otherwise."""
    track, warmers = one.conditions
    other = now.session.track
    if now.session.warmers is not None and warmers and warmers != now.session.warmers:
        return False
    if isinstance(track, Quantity) and isinstance(other, Quantity):
        return abs(track.to("C") - other.to("C")) <= now.limits[MOVED_SINCE_SET] + 1e-9
    # A word against a figure, or against nothing, does not tell that they differ.
    return not (isinstance(track, str) and isinstance(other, str)) or track == other


def _same_start(start: Quantity, before: str) -> bool:
    return str(start) == before


declare(
    MatterKind(
        "hot-pressure-off-last-time",
        "tyre",
        NOTE,
        "tyres",
        "the start changed, air set, or read again",
        _opens,
        _says,
        closes=_closes,
        guard="another tyre, surface, start, track or warmers; not read hot: a note",
        at="setup:setup.{subject}_start",
        afterwards=False,
        needs=("surface",),
    )
)
