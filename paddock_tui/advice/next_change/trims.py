"""Offsets of automatic damping: one step firmer or softer, where the bike's record says which way that is."""

from collections.abc import Mapping
from typing import Final

from paddock_tui.advice.about import End
from paddock_tui.advice.in_force import damping_that_frees
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.words import Move, Refusal
from paddock_tui.records.differences import setting_difference
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import OFFSET_ACTS, Offset
from paddock_tui.rules.core import SetValue

_WHEN: Final = {
    "dives": "braking",
    "hops": "braking",
    "skips on the brakes": "braking",
    "stands up on the brakes": "braking",
    "harsh on single bumps": "bumps",
    "harsh on a series": "bumps",
    "chatters": "mid-corner",
    "tucks": "mid-corner",
    "runs wide off the brake": "mid-corner",
    "runs wide on power": "drive",
    "slides on drive": "drive",
    "wallows": "drive",
    "kicks": "drive",
}
"""When an offset has to act for a symptom, where it does not act on one end alone."""


def trim(case: Case, end: End, clicks: float) -> Move | Refusal:
    """Move the offset that acts where damping is wanted: `clicks` above zero is firmer; always one step."""
    mode = case.bike.damping.get(case.setup.damping or "")
    offsets = mode.offsets if mode is not None else {}
    found = _acting(offsets, end) or _acting(offsets, _WHEN.get(case.symptom.what or "", ""))
    if found is None:
        frees = " or ".join(damping_that_frees(f"{end}-rebound", case.bike))
        return Refusal(
            f"damping mode {case.setup.damping} has no offset for this, and closes its adjusters: "
            f"{frees} turns them",
            own=True,
        )
    name, offset = found
    label = f"offset {label_of(name)}"
    if offset.firmest is None or offset.range is None:
        what = "its range" if offset.range is None else "which end of its range is firmest"
        return Refusal(f"{label}: enter {what} in the bike's file", own=True)
    old = case.setup.offsets.get(name)
    if old is None:
        return Refusal(f"{label} is not written down: read it on the dash", own=True)
    low, high = sorted(offset.range)
    firmer = 1.0 if offset.firmest == high else -1.0
    new = old + (firmer if clicks > 0 else -firmer)
    if not low <= new <= high:
        return Refusal(f"{label} has no more range that way", own=True)
    reads = f"offset {setting_difference('offsets', name, old, new, case.bike)}"
    value = int(new) if new == int(new) else new
    return Move(reads, (SetValue(("setup", "offsets", name), value),), (("offsets", name),))


def _acting(offsets: Mapping[str, Offset], where: str) -> tuple[str, Offset] | None:
    for name, one in offsets.items():
        if where and (one.acts or (name if name in OFFSET_ACTS else "")) == where:
            return name, one
    return None
