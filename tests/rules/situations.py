"""Small situations, written as their files would be: plain tables that are read like any garage."""

import datetime as dt
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Any, TypeVar
from unittest.mock import patch

from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.situation import Impossible, Situation
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import CLASSES, Record
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.reading import RecordRead, read_record
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.rules import RULES, Review, engine, review
from tests.shared import stays

Data = dict[str, Any]
R = TypeVar("R", bound=Record)

IDS = {
    "session": "2026-05-16-3-kestrel",
    "bike": "kestrel",
    "rider": "ines",
    "tyres": "may",
    "day": "2026-05-16",
    "venue": "anvilfen",
}

THE_EVENING_BEFORE = dt.datetime(2026, 5, 15, 20, 0)

BIKE_UP: Data = {
    "name": "counts up",
    "electronics": "listed",
    "suspension": "listed",
    "tank": {"capacity": "17 l"},
    "controls": {
        "traction": {"kind": "level", "levels": [0, 10], "most_help": 10, "off": True},
        "wheelie": {"kind": "level", "levels": [1, 6], "most_help": 6, "off": True},
        "abs": {
            "kind": "level",
            "levels": [0, 4],
            "most_help": 4,
            "off": 0,
            "effects": {
                "1": {"front": "off", "rear": "on"},
                "2": {"front": "on", "rear": "on"},
                "3": {"front": "on", "rear": "on"},
            },
        },
        "engine-braking": {"kind": "level", "levels": [1, 5], "frees_most": 5},
        "throttle": {"kind": "choice", "choices": ["sharp", "even", "soft"], "most_help": "soft"},
        "pit-limiter": {
            "kind": "speed",
            "speeds": ["40 km/h", "60 km/h"],
            "off": True,
            "outside_modes": True,
        },
    },
    "modes": {
        "open": {"use": "any"},
        "showers": {"use": "wet", "fixes": {"throttle": "soft"}, "limits": {"traction": [6, 10]}},
    },
    "adjusters": {
        "front-rebound": {"end": "front", "unit": "click", "range": [0, 24], "counted_from": "closed"},
        "front-preload": {"end": "front", "unit": "turn", "range": [0, 15], "step": 0.5},
    },
    "damping": {"automatic": {"kind": "semi-active", "closes": {"front-rebound": True}, "presets": ["calm"]}},
}

BIKE_DOWN: Data = {
    **BIKE_UP,
    "name": "counts down",
    "controls": {
        **BIKE_UP["controls"],
        "traction": {"kind": "level", "levels": [1, 11], "most_help": 1, "off": True},
        "wheelie": {"kind": "level", "levels": [1, 6], "most_help": 1, "off": True},
        "abs": {"kind": "level", "levels": [1, 4], "most_help": 1, "off": True},
        "engine-braking": {"kind": "level", "levels": [1, 5], "frees_most": 1},
        "throttle": {"kind": "choice", "choices": ["soft", "even", "sharp"], "most_help": "soft"},
    },
    "modes": {"open": {"use": "any"}},
}

SESSION: Data = {
    "date": dt.date(2026, 5, 16),
    "number": 3,
    "kind": "track day",
    "day": IDS["day"],
    "bike": IDS["bike"],
    "rider": IDS["rider"],
    "tyres": IDS["tyres"],
    "start": dt.time(10, 40),
    "planned_laps": 8,
    "filled_to_brim": True,
    "surface": "dry",
    "track": "24 C",
    "warmers": "none",
    "setup": {
        "mode": "open",
        "damping": "by-hand",
        "controls": {
            "traction": 8,
            "wheelie": 5,
            "abs": 4,
            "engine-braking": 3,
            "throttle": "even",
            "pit-limiter": "60 km/h",
        },
        "adjusters": {"front-rebound": 12, "front-preload": 6.5},
    },
    "dash": {"read": dt.time(10, 36)},
    "pressures": {"cold": {"front": "2.10 bar", "rear": "1.90 bar"}},
    "checks": {
        "nothing-known-open": {"status": "ok"},
        "rider-fit": {"status": "ok"},
        "walked-round": {"status": "ok"},
        "pads": {"status": "ok"},
    },
}

RIDER: Data = {"name": "Ines", "initials": "IS", "group": "intermediate"}

TYRES: Data = {"front": {"kind": "track-day"}, "rear": {"kind": "track-day"}}

DAY: Data = {
    "date": dt.date(2026, 5, 16),
    "limits": {"pit_lane": "60 km/h"},
    "entries": {"ines": {"kestrel": {"signed_on": True, "briefing": True, "inspected": True}}},
}

VENUE: Data = {"name": "Anvilfen", "length": "4.0 km"}

WHOLE: Mapping[str, Data] = {
    "session": SESSION,
    "bike": BIKE_UP,
    "rider": RIDER,
    "tyres": TYRES,
    "day": DAY,
    "venue": VENUE,
}
"""A dry track day with everything known and done: nothing is raised and nothing is left unjudged."""

_NO_GARAGE: Data = {}

_SHARED = {id(one): one for one in (*WHOLE.values(), BIKE_DOWN, _NO_GARAGE)}
"""Tables that most situations share as they are, by identity."""

stays(*_SHARED.values())

Change = tuple[str, Path, Any]
"""One change of a situation: the role, the path, and the value that is put there; None takes it away."""


def put(role: str, dotted: str, value: Any) -> Change:
    """Name one change, the path with dots."""
    return role, tuple(dotted.split(".")) if dotted else (), value


def without(role: str, dotted: str = "") -> Change:
    """Name one fact that is taken away; without a path the whole record."""
    return put(role, dotted, None)


def at(control: str, value: Any) -> Change:
    """Set a control."""
    return put("session", f"setup.controls.{control}", value)


def counts_down(*changes: Change) -> tuple[Change, ...]:
    """Name changes on the bike whose lower numbers help more, set as sensibly as the other."""
    return (("bike", (), BIKE_DOWN), at("traction", 3), at("wheelie", 2), at("abs", 1), *changes)


def files(*changes: Change) -> dict[str, Data]:
    """Give the whole situation as tables, changed."""
    return changed(WHOLE, *changes)


def changed(whole: Mapping[str, Data], *changes: Change) -> dict[str, Data]:
    """Give tables, changed; those of `whole` stay as they are, and serve where nothing changes."""
    made = dict(whole)
    for role, path, value in changes:
        if path:
            made[role] = _with(made.get(role, {}), path, value)
        elif value is None:
            made.pop(role, None)
        else:
            made[role] = value if id(value) in _SHARED else _copied(value)
    return made


def _with(data: Data, path: Path, value: Any) -> Data:
    """Return a table with this value at a path; what lies beside the path serves both."""
    new, key = dict(data), path[0]
    if path[1:]:
        new[key] = _with(data.get(key, {}), path[1:], value)
    elif value is None:
        new.pop(key, None)
    else:
        new[key] = _copied(value)
    return new


def _copied(data: Any) -> Any:
    """Copy the tables and lists of plain data: as `copy.deepcopy` does, without its memory."""
    if isinstance(data, dict):
        return {key: _copied(value) for key, value in data.items()}
    return [_copied(value) for value in data] if isinstance(data, list) else data


def read(kind: str, data: Data | None, as_class: type[R], bike: Bike | None = None) -> R | None:
    """Read one table as a record; None where there is none."""
    if data is None:
        return None
    record = _read(kind, data, bike).possible
    assert isinstance(record, as_class)
    return record


def _read(kind: str, data: Data, bike: Bike | None) -> RecordRead:
    key = (kind, id(data) if id(data) in _SHARED else repr(data), id(bike))
    if key not in _READ:
        if len(_READ) >= _MOST_READ:
            _READ.clear()
        _READ[key] = read_record(kind, data, bike), bike
    return _READ[key][0]


_READ: dict[tuple[str, str | int, int], tuple[RecordRead, Bike | None]] = {}
"""Records that were read, by their tables: they never change. The bike is held as long as its id is a key."""

_MOST_READ = 4096


def situation(made: Mapping[str, Data], **more: Any) -> Situation:
    """Read tables into a situation; what is not among them is not known."""
    tables = {"garage": _NO_GARAGE, **made}
    bike = read("bike", made.get("bike"), Bike)
    found = {
        role: _read(role, data, bike if role in ("session", "profile") else None)
        for role, data in tables.items()
    }
    records: dict[str, Any] = {role: one.possible for role, one in found.items()}
    assert all(isinstance(record, CLASSES[role]) for role, record in records.items())
    return Situation(
        **{
            **records,
            "refs": {role: Ref(role, IDS.get(role, role)) for role in made if role != "garage"},
            "impossible": tuple(
                Impossible(role, path, found[role].record) for role in made for path in found[role].impossible
            ),
            "now": THE_EVENING_BEFORE,
            **more,
        }
    )


def went_before(
    *sessions: Data,
    tyres: Mapping[str, Data] | None = None,
    venue: str = "anvilfen",
    lap_km: float = 4.0,
    hot_read: bool = True,
) -> History:
    """Give a history of earlier sessions on this bike, oldest first, each the usual one with these values.

    A session's table holds what differs from the usual one, keyed by paths with dots. Hot pressures of those
    that were ridden were read, without `hot_read` they were not.
    """
    bike = read("bike", BIKE_UP, Bike)
    past: list[PastSession] = []
    for place, changed in enumerate(sessions, 1):
        data: Data = dict(SESSION)
        for dotted, value in changed.items():
            data = _with(data, tuple(dotted.split(".")), value)
        ridden = "parked" in data or "laps" in data
        if hot_read and ridden and "hot" not in data.get("pressures", {}):
            data = _with(data, ("pressures", "hot"), {"front": "2.40 bar", "rear": "2.20 bar"})
        if "start" not in changed:
            data["start"] = dt.time((360 + 45 * place) // 60, (360 + 45 * place) % 60)
        record = read("session", data, Session, bike)
        assert record is not None
        past.append(PastSession(f"before-{place}", record, venue, lap_km))
    sets = {name: read("tyres", data, TyreSet) for name, data in (tyres or {}).items()}
    return History(tuple(past), {name: one for name, one in sets.items() if one is not None})


def look(*changes: Change, **more: Any) -> Review:
    """Review the whole situation, changed; `more` is given to the situation as it is."""
    return review(situation(files(*changes), **more))


@contextmanager
def asked(*rules: str, essentials: bool = True) -> Iterator[None]:
    """Have reviews ask these rules alone, and those that may take over what they raise.

    Without `essentials` what is missing of them is not looked for, which takes as long as many rules.
    """
    mine = set(rules)
    chosen = {key: one for key, one in RULES.items() if key in mine or not mine.isdisjoint(one.absorbs)}
    missing = engine._missing if essentials else lambda *_: ()
    with patch.multiple(engine, RULES=chosen, _missing=missing):
        yield


def look_for(rule: str, *changes: Change, **more: Any) -> Review:
    """Review the whole situation, changed, asking one rule and those that may take over what it raises.

    What it lists as missing, and so its verdict, is no part of it.
    """
    with asked(rule, essentials=False):
        return look(*changes, **more)


def raised(found: Review, rule: str) -> list[tuple[str, str]]:
    """List what a rule raised: subject and severity."""
    return [(one.subject, str(one.severity)) for one in found.findings if one.rule == rule]
