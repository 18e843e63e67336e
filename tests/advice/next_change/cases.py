"""A bike with everything that turns, ridden often enough here, and one symptom."""

import datetime as dt
from collections.abc import Callable
from typing import Any

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.next_change import Advised, next_change
from paddock_tui.facts.past import History
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref
from tests.rules.situations import BIKE_UP, Change, Data, files, put, situation, went_before

_CLICKS: Data = {"unit": "click", "range": [0, 24], "counted_from": "closed"}

BIKE: Data = {
    **BIKE_UP,
    "controls": {
        **BIKE_UP["controls"],
        "front-abs": {"kind": "level", "levels": [1, 5], "most_help": 5},
    },
    "adjusters": {
        "front-rebound": {"end": "front", "what": "rebound", **_CLICKS},
        "front-compression": {"end": "front", "what": "compression", **_CLICKS},
        "rear-rebound": {"end": "rear", "what": "rebound", **_CLICKS},
        "rear-compression-slow": {"end": "rear", "what": "compression slow", **_CLICKS},
        "rear-compression-fast": {"end": "rear", "what": "compression fast", **_CLICKS},
        "front-preload": {
            "end": "front",
            "what": "preload",
            "unit": "turn",
            "range": [0, 15],
            "step": 0.5,
            "counted_from": "open",
        },
        "rear-preload": {
            "end": "rear",
            "what": "preload",
            "unit": "turn",
            "range": [0, 12],
            "counted_from": "open",
        },
        "damper": {"end": "steering", "what": "damper", **_CLICKS},
    },
    "damping": {
        "automatic": {
            "kind": "semi-active",
            "closes": {"front-rebound": True},
            "offsets": {"under-braking": {"range": [-4, 4]}},
        }
    },
    "front": {
        "highest_clear": "8 mm",
        "travel": "120 mm",
        "top_out_springs": "none",
        "preload_per_turn": "1 mm",
    },
    "rear": {
        "highest_clear": "8 mm",
        "travel": "120 mm",
        "top_out_springs": "none",
        "preload_per_turn": "1.5 mm",
        "motion_ratio": 0.5,
    },
}

SETUP: Data = {
    "mode": "open",
    "damping": "by-hand",
    "rear_sprocket": 43,
    "fork_height": "4 mm",
    "rear_height": "2 mm",
    "front_start": "2.10 bar",
    "rear_start": "1.90 bar",
    "controls": {
        "traction": 6,
        "wheelie": 4,
        "front-abs": 4,
        "engine-braking": 3,
        "throttle": "even",
        "pit-limiter": "60 km/h",
    },
    "adjusters": {
        "front-rebound": 12,
        "front-compression": 12,
        "rear-rebound": 12,
        "rear-compression-slow": 12,
        "rear-compression-fast": 12,
        "front-preload": 6,
        "rear-preload": 4,
        "damper": 12,
    },
}

LAPS: Data = {str(number): f"1:45.{number}00" for number in range(1, 7)}

TYRES: Data = {
    end: {"kind": "track-day", "hot_dry": hot, "hot_wet": hot}
    for end, hot in (("front", "2.40 bar"), ("rear", "2.20 bar"))
}


def hot(front: str, rear: str) -> Change:
    """The hot pressures as read."""
    return put("session", "pressures.hot", {"at": dt.time(11, 1), "front": front, "rear": rear})


EITHER_END = ("harsh on single bumps", "harsh on a series", "vague", "loose in the heat")
"""Symptoms whose end has to be named."""


def sag(end: str, mm: float, load: str = "rider", **more: Any) -> Change:
    """A sag, from three lengths, at the preload of the set-up."""
    preload = SETUP["adjusters"][f"{end}-preload"]
    lengths = {"extended": "700 mm", "pushed": f"{698 - mm:g} mm", "lifted": f"{702 - mm:g} mm"}
    return put("session", f"sag.{end}.{load}", {**lengths, "preload": preload, **more})


def felt(what: str, answer: str = "", **more: Any) -> Change:
    """One symptom, with the answer to its question where there is one."""
    end = {"end": "front"} if what in EITHER_END else {}
    symptom = {"what": what, "each_lap": "same", **end, **more}
    return put("session", "symptoms.1", {**symptom, "answer": answer} if answer else symptom)


def seen(end: str, look: str) -> Change:
    """What a tyre looked like."""
    return put("session", f"look.{end}", {"seen": [look]})


USUAL: tuple[Change, ...] = (
    put("session", "air", "20 C"),
    put("session", "parked", dt.time(11, 0)),
    put("session", "sag", {end: {"rider": sag(end, 30.0)[2]} for end in ("front", "rear")}),
    put("session", "did", "noted"),
    ("bike", (), BIKE),
    ("tyres", (), TYRES),
    put("session", "setup", SETUP),
    put("session", "laps", LAPS),
    hot("2.40 bar", "2.20 bar"),
    put("session", "chain_slack", "32 mm"),
    put("session", "checks", {"bearings": {"status": "ok"}}),
    put("session", "look", {"front": {"seen": ["fine balls"]}, "rear": {"seen": ["fine balls"]}}),
)

BEFORE: Data = {"setup": SETUP, "laps": LAPS, "did": "nothing", "air": "20 C"}


def often() -> History:
    """Three sessions ridden here before, as this one."""
    return went_before(BEFORE, BEFORE, BEFORE)


def about(
    *changes: Change,
    history: History | None = None,
    order: Callable[[Data], Data] = lambda given: given,
    **more: Any,
) -> About:
    """Give what is looked at, changed; `order` puts the files, and what stands in them, in another one."""
    went = often() if history is None else history
    made = situation(order(files(*USUAL, *changes)), history=went, **more)
    refs = {**made.refs, "venue": Ref("venue", "anvilfen")}
    return About(attrs.evolve(made, refs=refs), went, Units(pressure="bar", temperature="C"))


def advised(*changes: Change, history: History | None = None, **more: Any) -> Advised:
    """Give the next change, changed."""
    return next_change(about(*changes, history=history, **more))
