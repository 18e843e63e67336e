"""The built-in words of the entry line: pairs, whole-line words, and the words that stand alone."""

from typing import Literal

import attrs

from paddock_tui.records.calls import ADJUSTER_CALLS, CONTROL_CALLS
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes_of_bike import label_of

LAPS = "laps"
NOTE = "note"
AGO = "ago"
LATE = "late"
CORNER, RED, RESTART, JOB, PENALTY = "corner", "red", "restart", "job", "penalty"
TRACKSIDE = {
    CORNER: "words about a corner, by its number",
    RED: "a red flag now, with the laps ridden",
    RESTART: "when it goes on after a stop, with the laps left",
    JOB: "a job before the start, and the initials of whose it is",
    PENALTY: "a penalty, in the officials' words",
}
"""Words that begin an entry of a growing table."""

INCIDENT, FELT, WORK = "incident", "felt", "work"
NOTED = {
    INCIDENT: "what happened: leak, fall, airbag fired, helmet dropped, and where or what of it",
    FELT: "what the bike did, with its end and a grade of 1 to 3",
    WORK: "work done on the bike: axle, pads, shift pattern; torqued, pumped",
}
"""Words that note what happened, what was felt or what was done in fixed words."""

SPECIAL = {
    LAPS: "lap times, added after those that are there",
    NOTE: "a note",
    AGO: "parked, minutes ago",
    LATE: "minutes that the day runs late, by itself",
    **TRACKSIDE,
    **NOTED,
}
"""Words of a session that take pieces of their own."""

LONE = {
    "dry": "dry",
    "damp": "damp",
    "drying": "drying",
    "wet": "wet",
    "standing": "standing water",
}
"""The only words that stand alone, each with the surface it means."""

UP, DOWN, CLEAR, NOW, LEFT_OUT = "up", "down", "clear", "now", "-"

VALUE_WORDS = (UP, DOWN, CLEAR, NOW, "yes", "no", "on", "off", "out", "in", "traffic", "water")
"""Words that are part of a value and so cannot be calls."""


@attrs.frozen
class RowWords:
    """A call that several figures follow, in a fixed order.

    A slot is the path of a value, or the place of an adjuster: its end and what it adjusts.
    """

    call: str
    label: str
    slots: tuple[tuple[str, Path], ...]
    also: tuple[str, ...] = ()
    adjusters: bool = False


def _ends(call: str, label: str, front: str, rear: str, *also: str) -> RowWords:
    slots = (("front", tuple(front.split("."))), ("rear", tuple(rear.split("."))))
    return RowWords(call, label, slots, also)


def _adjusted(call: str, what: str) -> RowWords:
    also = () if call == what else (what,)
    return RowWords(call, what, (("front", ("front", what)), ("rear", ("rear", what))), also, True)


ROWS = (
    _ends("cold", "cold pressures", "pressures.cold.front", "pressures.cold.rear"),
    _ends("hot", "hot pressures", "pressures.hot.front", "pressures.hot.rear"),
    _ends("cold-set", "set to, cold", "pressures.cold.set_to_front", "pressures.cold.set_to_rear"),
    _ends("hot-set", "set to, hot", "pressures.hot.set_to_front", "pressures.hot.set_to_rear"),
    _ends("starting", "starting pressures", "setup.front_start", "setup.rear_start"),
    _adjusted("rebound", "rebound"),
    _adjusted("comp", "compression"),
    _adjusted("preload", "preload"),
    _ends("springs", "springs", "setup.front_spring", "setup.rear_spring"),
    _ends("teeth", "sprockets", "setup.front_sprocket", "setup.rear_sprocket", "sprockets"),
    _ends("heights", "heights", "setup.fork_height", "setup.rear_height"),
    _ends("travel", "travel used", "front_travel_used", "rear_travel_used"),
    _ends("pads", "brake pads", "front_pads", "rear_pads"),
    RowWords(
        "feel",
        "feel",
        tuple(
            (key.replace("_", " "), ("feel", key))
            for key in ("braking", "turning_in", "mid_corner", "driving_out", "straight")
        ),
    ),
)
"""Pairs, front then rear, and feel in the five phases of a corner."""

READINGS = {
    "cold-at": ("pressures", "cold", "at"),
    "hot-at": ("pressures", "hot", "at"),
    "cold-temperature": ("pressures", "cold", "temperature"),
    "hot-temperature": ("pressures", "hot", "temperature"),
}
"""Calls of values in the readings that every session has."""


@attrs.frozen
class Absent:
    """What a word means where it means nothing here: its label, and what would have to hold it."""

    label: str
    holder: Literal["electronics", "suspension", "record"]


def of_a_bike() -> dict[str, Absent]:
    """List every word for what a bike may have, with what it is: calls, names and pairs of adjusters."""
    words: dict[str, Absent] = {}
    for function, call in CONTROL_CALLS.items():
        words[call] = words[function] = Absent(label_of(function), "electronics")
    for (end, what), call in ADJUSTER_CALLS.items():
        words[call] = words["-".join((end, *what.split()))] = Absent(f"{end} {what}", "suspension")
    for row in ROWS:
        if row.adjusters:
            words |= dict.fromkeys((row.call, *row.also), Absent(row.label, "suspension"))
    return words


def fixed_calls() -> frozenset[str]:
    """List the calls that are the same for every bike, besides those of fields."""
    rows = {word for row in ROWS for word in (row.call, *row.also)}
    return frozenset({*rows, *SPECIAL, *READINGS, *of_a_bike()})
