"""What a race meeting adds: the start and the stops of an outing, penalties, and the rules of a class.

No rule of a class is built in: each is what somebody entered from the rules of that class.
"""

import datetime as dt

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.fields import one
from paddock_tui.records.shapes import Reference, Whole, Word

STOPS = ("red flag", "wait in the lane", "stall")
"""What stops an outing on the way: it goes on with a restart, on tyres that cooled and with less fuel."""

ELECTRICS = ("key-on", "key-off", "stall", "fuse", "battery")
"""What may change the dash."""


@attrs.frozen
class Event:
    """Something after which the dash may not show what it did, or which stopped the outing."""

    what: str | None = one(
        Word(*ELECTRICS, *(one for one in STOPS if one not in ELECTRICS)),
        "what",
        "what happened to the electrics, or stopped the outing",
    )
    at: dt.time | None = one(c.CLOCK, "at", "when it happened")
    laps_ridden: int | None = one(
        Whole(0, 300), "laps ridden", "of a stop: laps ridden before it, where they were counted"
    )
    restart: dt.time | None = one(c.CLOCK, "restart at", "of a stop: when it goes on")
    laps_left: int | None = one(
        Whole(1, 200), "restart laps", "of a stop: the part distance that is ridden after it"
    )


@attrs.frozen
class Race:
    """The start of a session from a grid, and what follows the flag."""

    grid: dt.time | None = one(c.CLOCK, "on the grid by", "when the bike has to be on the grid", call="grid")
    place: int | None = one(Whole(1, 60), "grid place", "where it starts from, 1 = the front")
    warm_up_laps: int | None = one(
        Whole(0, 5), "warm-up laps", "laps before the start; where left out what the class says"
    )
    slow_down_laps: int | None = one(
        Whole(0, 5), "slow-down laps", "laps after the flag; where left out what the class says"
    )
    declared: str | None = one(
        Word("dry", "wet"), "race declared", "what the race direction declared", call="declared"
    )
    tyre_choice: dt.time | None = one(
        c.CLOCK, "tyre choice by", "until when the tyres may be changed", call="choice"
    )
    holds_bike: str | None = one(
        c.TEXT, "holds the bike", "initials of whoever stands with it on the grid", call="holds"
    )
    launch_armed: bool | None = one(
        c.FLAG, "launch armed", "whether launch control was armed on the grid, as the dash showed"
    )
    finished: int | None = one(Whole(1, 60), "place at the flag", "where it finished", call="finished")
    weighed: Quantity | None = one(
        c.WET_MASS, "weighed after", "as the officials' scale showed after the flag", call="weighed"
    )
    closed_park: dt.time | None = one(
        c.CLOCK, "closed park until", "until when the bike has to stand there", call="park"
    )


@attrs.frozen
class Penalty:
    """One penalty, in the officials' words."""

    what: str | None = one(c.TEXT, "penalty", "what it is, as the officials wrote it")
    why: str | None = one(c.TEXT, "penalty for", "what it was given for")
    served: bool | None = one(c.FLAG, "penalty served", "whether it was served")


@attrs.frozen
class RaceClass:
    """The rules of one class, as somebody entered them from that class's own rules."""

    source: str | None = one(c.TEXT, "class rules from", "which rules these are, with their date")
    tyres: int | None = one(
        Whole(1, 40), "tyres counted", "how many tyres the class lets a rider use at the meeting"
    )
    tyres_marked: bool | None = one(c.FLAG, "tyres marked", "whether only marked tyres may be used")
    least_weight: Quantity | None = one(
        c.WET_MASS, "least weight", "what has to be on the scale after the race"
    )
    weighed_with: str | None = one(
        Word("bike", "bike and rider"), "weighed with", "what stands on that scale"
    )
    tyre_choice: Quantity | None = one(
        c.MINUTES, "tyre choice before", "minutes before the start until which tyres may be changed"
    )
    warm_up_laps: int | None = one(Whole(0, 5), "class warm-up laps", "laps before the start")
    slow_down_laps: int | None = one(Whole(0, 5), "class slow-down laps", "laps after the flag")
    start: str | None = one(c.TEXT, "start procedure", "boards, lights, warm-up lap, in the rules' words")
    jump: str | None = one(c.TEXT, "jump start", "what counts as one and what it costs")
    on_grid: str | None = one(c.TEXT, "on the grid", "what may be touched on the grid, and by how many")
    closed_park: str | None = one(c.TEXT, "closed park", "where, how long, and what may be touched there")
    penalties: str | None = one(c.TEXT, "penalties", "how they are shown and served")


@attrs.frozen
class MarkedTyre:
    """One tyre that counts for a rider and bike at this meeting."""

    tyres: str | None = one(Reference("tyres"), "tyre set", "the set it belongs to")
    end: str | None = one(Word("front", "rear"), "end", "which end")
    mark: str | None = one(c.TEXT, "mark", "what the sticker or the paint says")
    at: dt.time | None = one(c.CLOCK, "marked at", "when it was marked")
