"""Checklists."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import one, tables
from paddock_tui.records.session import SESSION_KINDS
from paddock_tui.records.shapes import Whole, Word, WordList

STAGES = (
    "packing",
    "night before",
    "bike, morning",
    "rider",
    "paper",
    "venue",
    "before each session",
    "on return",
    "wet swap",
    "grid",
    "after a fall",
    "end of day",
)
"""When a list is gone through. The first six and the last stand in the day, the others in the session."""

DAY_STAGES = ("packing", "night before", "bike, morning", "rider", "paper", "venue", "end of day")

ASKED_WITHOUT_A_LIST = (
    "nothing-known-open",
    "last-outing",
    "declared",
    "rider-fit",
    "walked-round",
    "brakes-tried",
    "rear-brake",
    "pads",
    "controls-free",
    "wheels-secured",
    "tyres-seen",
    "tread-over-marks",
    "fuel-enough",
    "race-paper",
    "signed-on",
    "briefing",
    "inspection",
    "passing-rule",
    "pit-limit",
    "noise",
    "road-ready",
)
"""Items that are asked for before going out, whether a list of the garage has them or not."""

ROAD_HOME = {
    "home-pressures": "tyre pressures up to the road figures",
    "home-aids": "ABS, traction control and riding mode back for the road",
    "home-lights": "lights back on and tried, brake light by both levers",
    "home-mirrors": "mirrors on and set",
    "home-plate": "number plate and its light on",
    "home-tyres": "tyres looked at: wear, cuts, made for the road",
}
"""The steps of the way home by road, by the ids under which the day keeps their answers."""

ROAD = "road"

_UNLISTED = {
    "walked-round": "hold",
    "brakes-tried": "hold",
    "rear-brake": "hold",
    "pads": "hold",
    "controls-free": "hold",
    "wheels-secured": "hold",
    "tyres-seen": "hold",
    "inspection": "hold",
    "noise": "hold",
    "road-ready": "hold",
    "rider-fit": "serious",
    "tread-over-marks": "serious",
    "fuel-enough": "serious",
    "race-paper": "serious",
    "signed-on": "serious",
    "briefing": "serious",
    "home-lights": "hold",
    "home-plate": "hold",
    "home-tyres": "hold",
    "home-aids": "serious",
    "home-mirrors": "caution",
    "home-pressures": "caution",
}
"""How bad it is when an item that is asked for without any list is to fix."""


@attrs.frozen
class ChecklistItem:
    """One item of a checklist."""

    text: str | None = one(c.TEXT, "text", "what to look at")
    kinds: tuple[str, ...] | None = one(
        WordList("kinds of session", SESSION_KINDS),
        "for kinds",
        "the kinds of session it applies to; all when left out",
    )
    surfaces: tuple[str, ...] | None = one(
        WordList("surfaces", c.SURFACE.choices),
        "for surfaces",
        "the surfaces it applies to; all when left out",
    )
    to_fix: str | None = one(
        Word("hold", "serious", "caution", "note"), "to fix means", "how bad it is when this item is to fix"
    )
    answered_by: str | None = one(
        c.TEXT,
        "answered by",
        "the value that answers it: a path in the session, or in the day's entry for the day's lists",
    )
    quantity: int | None = one(Whole(1, 99), "how many", "how many of it are packed")
    box: str | None = one(c.TEXT, "box", "which box or bag it goes into")
    person: str | None = one(c.TEXT, "who brings it", "who packs or brings it")

    @property
    def of_the_road(self) -> bool:
        """Whether it is asked for on the road alone."""
        return self.kinds == (ROAD,)

    @property
    def goes(self) -> str:
        """How many of it go where, and who brings it; empty where none of that is entered."""
        many = f"{self.quantity}" if self.quantity is not None else ""
        return ", ".join(filter(None, (many, self.box or "", self.person or "")))


@attrs.frozen
class Checklist:
    """A list of things to look at, at one stage of the day."""

    name: str | None = one(c.TEXT, "name", "what you call the list")
    retired: dt.date | None = one(c.DAY, "retired", "hidden since this date")
    stage: str | None = one(Word(*STAGES), "stage", "when it is gone through")
    items: Mapping[str, ChecklistItem] = tables(ChecklistItem, "items", keyed_by="item")


def unlisted_item(name: str) -> ChecklistItem:
    """Return an item that no list has: what is asked for without one says itself how bad it is to fix."""
    kinds = (ROAD,) if name in ROAD_HOME or name == "road-ready" else None
    return ChecklistItem(ROAD_HOME.get(name), kinds=kinds, to_fix=_UNLISTED.get(name))
