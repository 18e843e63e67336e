"""How a situation with a known best answer is written: what was changed, felt, measured, and its answer."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.advice.about import About
from paddock_tui.facts.past import History
from tests.advice.next_change.cases import BEFORE, BIKE, SETUP, about, sag
from tests.rules.situations import Change, Data, put, went_before

FROM = put("session", "copied_from", "before-3")
NOVICE, RACE = put("rider", "group", "novice"), put("rider", "group", "race")
WET = put("session", "surface", "wet")


def turned(**values: float) -> Change:
    """Adjusters at other values than usual."""
    named = {name.replace("_", "-"): value for name, value in values.items()}
    return put("session", "setup.adjusters", {**SETUP["adjusters"], **named})


def setup(**values: Any) -> Data:
    """Give the usual set-up with other values, of adjusters and controls by their names."""
    made = {key: dict(one) if isinstance(one, dict) else one for key, one in SETUP.items()}
    for name, value in values.items():
        key = name.replace("_", "-")
        table = next((made[one] for one in ("adjusters", "controls") if key in made[one]), made)
        table[key if key in table else name] = value
    return made


def last(**more: Any) -> History:
    """Give three sessions before, the last of them with other values."""
    return went_before(
        BEFORE, BEFORE, {**BEFORE, **{key.replace("__", "."): one for key, one in more.items()}}
    )


def several(*symptoms: Data) -> Change:
    """Several symptoms of one session."""
    return put("session", "symptoms", {str(place): one for place, one in enumerate(symptoms, 1)})


def accepted(control: str) -> Change:
    """A risk accepted about a control."""
    return put("session", "accepted", {"little-help": {control: {"reason": "dry line", "facts": "dry"}}})


AUTOMATIC: tuple[Change, ...] = (
    put(
        "bike",
        "damping.automatic",
        {
            "kind": "semi-active",
            "closes": {
                name: True for name in BIKE["adjusters"] if "preload" not in name and name != "damper"
            },
            "offsets": {
                "front": {"range": [-4, 4], "firmest": 4},
                "drive": {"range": [-4, 4], "firmest": -4},
            },
        },
    ),
    put("session", "setup.damping", "automatic"),
    put("session", "setup.offsets", {"front": 0, "drive": 0}),
)


@attrs.frozen
class Expected:
    """One situation and its answer: cause, kind, and what is set or asked, each by its path."""

    name: str
    changes: tuple[Change, ...]
    cause: str
    kind: str
    puts: Data = attrs.field(factory=dict)
    asks: str = ""
    history: History | None = None
    now: dt.datetime | None = None

    def about(self, **more: Any) -> About:
        """Give what is looked at."""
        at: dict[str, Any] = {} if self.now is None else {"now": self.now}
        return about(*self.changes, history=self.history, **at, **more)


@attrs.frozen
class Guard:
    """What is guarded against, in two situations that differ in it: where the guard acts, and where not.

    `says` are words heard in the first alone, `frees` words heard in the second alone.
    """

    what: str
    says: str
    acts: Expected
    silent: Expected
    frees: str = ""


def situation_of(name: str, cause: str, kind: str, *changes: Change, **more: Any) -> Expected:
    return Expected(name, changes, cause, kind, **more)


def adjuster(name: str, value: float) -> Data:
    return {f"adjusters.{name}": value}


def incident(**values: Any) -> Change:
    return put("session", "incidents.1", values)


FELL = {"what": "fall", "moving": True, "head_contact": False, "inspected_again": dt.time(11, 30)}
ASKED_NOT = went_before(BEFORE, BEFORE, {key: one for key, one in BEFORE.items() if key != "did"})
SPRING: tuple[Change, ...] = (
    turned(front_preload=14),
    sag("front", 43.0, preload=14),
    sag("front", 25.0, "alone", preload=14),
    put("bike", "front.spring", "9.0 N/mm"),
    put("bike", "front.technician_free_sag", "18 mm"),
    put("rider", "weight", "80 kg"),
)


def there_and_back(gain_s: float) -> History:
    """Front compression 12, 8, 12 and 8 again, much faster with 8: a help by the laps."""

    def ridden(number: int, seconds: float, compression: int, source: str) -> Data:
        laps = {str(lap): f"1:{seconds + 0.03 * (lap % 3):06.3f}" for lap in range(1, 11)}
        return {
            **BEFORE,
            "number": number,
            "laps": laps,
            "copied_from": source,
            "setup": setup(front_compression=compression),
        }

    return went_before(
        ridden(1, 46.3, 12, ""),
        ridden(2, 46.3 - gain_s, 8, "before-1"),
        ridden(3, 46.3, 12, "before-2"),
        ridden(4, 46.3 - gain_s, 8, "before-3"),
    )


def failing(compression: int, copied: str) -> Data:
    """Give a session whose front compression was turned, and felt the same."""
    return {
        **BEFORE,
        "setup": setup(front_compression=compression),
        "copied_from": copied,
        "because": {"adjusters": {"front-compression": {"verdict": "same"}}},
    }


PARKED = dt.datetime(2026, 5, 16, 11, 20)
"""Twenty minutes after the session looked at was parked."""


def timetable(*starts: int) -> tuple[Change, ...]:
    """A day whose group goes out at these hours."""
    slots = {str(place): {"from": dt.time(hour)} for place, hour in enumerate(starts, 1)}
    return put("day", "group", "blue"), put("day", "timetable", {"blue": slots})
