"""The return as groups: what is typed on each row, how many keys it takes, and what they mean.

One declaration makes the rows of the return and the boxes of the paper slip, so that both have one order.
"""

import re
from typing import Literal

import attrs

from paddock_tui.entry.symptoms import picked
from paddock_tui.entry.typing_kinds import pointed, unit_of_digits
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes import Amount

Reads = Literal["pressure", "score", "symptom", "corner", "end", "each lap", "volume", "change"]

SYMPTOMS = "symptoms"


@attrs.frozen
class ReturnRow:
    """One row of the return: what one short run of keys fills.

    `boxes` is how many keys fill it, as boxes on the slip; 0: a line to write on. `of_next` says that the
    value belongs to the next session on this bike.
    """

    section: str
    label: str
    path: Path
    reads: Reads
    boxes: int = 0
    of_next: bool = False

    @property
    def key(self) -> str:
        """What tells the group from all others."""
        return ".".join(self.path)

    @property
    def letters(self) -> bool:
        """Whether letters answer it, so that it is opened for typing as soon as the cursor comes."""
        return self.reads in ("symptom", "end", "each lap")


HOT, FEEL, SYMPTOM, NEXT = "hot pressures", "feel", "symptom", "for the next session"

_BEFORE_SYMPTOMS = (
    ReturnRow(HOT, "front, hot", ("pressures", "hot", "front"), "pressure", 3),
    ReturnRow(HOT, "rear, hot", ("pressures", "hot", "rear"), "pressure", 3),
    ReturnRow(FEEL, "braking", ("feel", "braking"), "score", 1),
    ReturnRow(FEEL, "turn-in", ("feel", "turning_in"), "score", 1),
    ReturnRow(FEEL, "mid-corner", ("feel", "mid_corner"), "score", 1),
    ReturnRow(FEEL, "exit, drive", ("feel", "driving_out"), "score", 1),
    ReturnRow(FEEL, "straight", ("feel", "straight"), "score", 1),
)

_AFTER_SYMPTOMS = (
    ReturnRow(NEXT, "fuel added", ("fuel_added",), "volume", 3, True),
    ReturnRow(NEXT, "next change", ("notes", "change"), "change", 0, True),
)


def symptom_groups(number: int) -> tuple[ReturnRow, ...]:
    """Return the groups of one symptom."""
    lead = "" if number == 1 else f"{number} "
    at = (SYMPTOMS, str(number))
    return (
        ReturnRow(SYMPTOM, f"{lead}symptom", (*at, "what"), "symptom"),
        ReturnRow(SYMPTOM, f"{lead}corner", (*at, "corner"), "corner", 2),
        ReturnRow(SYMPTOM, f"{lead}end", (*at, "end"), "end", 1),
        ReturnRow(SYMPTOM, f"{lead}every lap", (*at, "each_lap"), "each lap", 1),
    )


def groups(known: int = 0) -> tuple[ReturnRow, ...]:
    """List the groups in the order typed, beside so many symptoms that are known: one more may follow."""
    found = [group for number in range(1, known + 1) for group in symptom_groups(number)]
    found += symptom_groups(known + 1)[: 1 if known else None]
    return (*_BEFORE_SYMPTOMS, *found, *_AFTER_SYMPTOMS)


LATER: tuple[tuple[str, tuple[Path, ...]], ...] = (
    ("what happened", (("did",), ("happened",))),
    ("tyre look", (("look", "front", "seen"), ("look", "rear", "seen"))),
    ("travel", (("front_travel_used",), ("rear_travel_used",))),
    ("readings", (("track",), ("air",), ("confidence",), ("fatigue",), ("ridden_laps",), ("said",))),
)
"""What can wait, after the laps: headings with the values of the session under them."""

LEARNT_BACK_IN: tuple[tuple[str, tuple[Path, ...]], ...] = (
    (
        "brakes and chain",
        (("lever",), ("front_pads",), ("rear_pads",), ("chain_slack",), ("chain_slack_stance",)),
    ),
    ("for next time", (("front_pressure_change",), ("rear_pressure_change",), ("visor",))),
    ("this morning", (("slept",), ("ice",), ("fuel_in_tank",))),
)
"""What is seen of the bike once it is back, and wanted otherwise; the slip's one page has no room for it."""

LEARNT_OF: tuple[tuple[str, tuple[Path, ...]], ...] = (
    ("tyres", (("front", "repair"), ("rear", "repair"), ("wheels",))),
    ("bike", (("drive", "coolant"),)),
)
"""What is learnt of the tyres and the bike as they came back, each in its own file."""


_OF_A_TYRE = ("kind", "hot_dry", "hot_dry_to", "on_warmers", "on_warmers_to", "circumference")
_OF_THE_BOOK = ("slack_least", "slack_most", "slack_stance", "shift_pattern")

LEARNT_ONCE: tuple[tuple[str, tuple[Path, ...]], ...] = (
    ("tyres", tuple((end, key) for key in _OF_A_TYRE for end in ("front", "rear"))),
    ("bike", tuple(("drive", key) for key in _OF_THE_BOOK)),
    ("day", (("distance_home",),)),
)
"""What vendor, manual and map say: asked until it is written down."""


AFTER_THE_FLAG: tuple[tuple[str, tuple[Path, ...]], ...] = (
    (
        "after the flag",
        (
            ("race", "finished"),
            ("race", "weighed"),
            ("race", "closed_park"),
            ("penalties", "1", "what"),
            ("penalties", "1", "why"),
            ("penalties", "1", "served"),
        ),
    ),
)
"""What is asked besides after a session from a grid."""


NOTES = {
    HOT: "three digits; enter skips",
    FEEL: "1 holds me back, 3 fine, 5 could push more; 0 skips",
    SYMPTOM: "enter or 0 skips",
    NEXT: "enter skips",
}
"""What holds for every group of a section."""


def rule_of(group: ReturnRow, units: Units) -> str:
    """Say how a group is typed, beside what holds for its section."""
    if group.reads == "pressure":
        return _PRESSURE[units.pressure or "bar"]
    if group.reads == "volume":
        return f"065 is 6.5 {units.volume or 'l'}"
    return _RULES[group.reads]


_PRESSURE = {"bar": "238 is 2.38 bar", "psi": "345 is 34.5 psi", "kPa": "238 is 238 kPa"}
_RULES = {
    "score": "1 to 5",
    "symptom": "first letters, or a digit below",
    "corner": "07, or 7 and enter; 00 skips",
    "end": "f front, r rear",
    "each lap": "s every lap, d some laps",
    "change": "ONE, in words; 0 none",
}

SKIP = "0"


def is_skipped(group: ReturnRow, text: str) -> bool:
    """Return whether what was typed passes a group over: a nought, two where a corner goes ("07" is one)."""
    return text.strip() == SKIP * (2 if group.reads == "corner" else 1)


def is_no_answer(group: ReturnRow, text: str) -> bool:
    """Return whether what was typed can never become one of the few answers of a group."""
    known = _CHOICES.get(group.reads)
    return known is not None and text.strip()[:1].casefold() not in ("", *known)


def read_group(group: ReturnRow, text: str, units: Units) -> Value | InputError | None:
    """Read what was typed so far on a group; None while more has to come."""
    typed = text.strip().casefold()
    if not typed:
        return None
    if group.reads in ("pressure", "volume"):
        return _three_digits(group, typed, units)
    if group.reads == "score":
        return c.SCORE.read(typed)
    if group.reads == "symptom":
        return picked(typed)
    if group.reads == "corner":
        return str(int(typed)) if re.fullmatch(r"[0-9]{2}", typed) and int(typed) else None
    if group.reads in _CHOICES:
        return _CHOICES[group.reads].get(typed[0])
    return None


_CHOICES = {
    "end": {"f": "front", "1": "front", "r": "rear", "2": "rear"},
    "each lap": {"s": "same", "1": "same", "d": "differs", "2": "differs"},
}


def _three_digits(group: ReturnRow, typed: str, units: Units) -> Value | InputError | None:
    """Read three digits with the point where the unit has it; anything else waits for enter."""
    if not re.fullmatch(r"[0-9]{3,}", typed):
        return None
    if len(typed) > 3:
        return InputError(f'"{typed}"', "three digits", "backspace, or write it out with its unit")
    shape = c.TYRE_PRESSURE if group.reads == "pressure" else c.VOLUME
    found = shape.load(pointed(typed, unit_of_digits(shape, units)))
    return found if isinstance(found, InputError) else _in_band(found, shape)


def _in_band(found: Quantity, shape: Amount) -> Value | InputError:
    low, high, unit = shape.band()
    if low <= found.to(unit) <= high:
        return str(found)
    ends = f"{low:g} to {high:g} {unit}"
    return InputError(f"{found} cannot be", ends, "backspace corrects it")
