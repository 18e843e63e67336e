"""A career of any size, written straight to files: riders on their bikes, season after season.

Bikes, riders, venues, profiles and checklists are the sample's. Of each pair of rider and bike the sample's
fullest ridden session is the form of all that are written here: set-ups change by one thing at a time and
now and then back, laps get faster with learning and slower with the tyre, sets of tyres are replaced, and
now and then somebody falls.
"""

import copy
import datetime as dt
import random
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.records.paths import FOLDERS
from paddock_tui.store.render import render_line, render_table
from tests.sample import FILES, SAMPLE, data_of

SESSIONS_A_DAY = 6
DAYS_A_SEASON = 55
OUTINGS_A_SET = 18
LAPS = 8
FALLS_ONE_IN = 300
CHANGES_ONE_IN = 2
LAST_SEASON = 2026

_STRIPPED = ("symptoms", "notes", "incidents", "because", "copied_from", "taken_from", "accepted", "retired")


@attrs.frozen
class Career:
    """What was written: the garage's folder, its sessions by file name, and a moment in its last day."""

    root: Path
    sessions: tuple[str, ...]
    at: dt.datetime

    @property
    def in_hand(self) -> str:
        """Return the last session, which is not ridden yet."""
        return self.sessions[-1]


@attrs.define
class _Pair:
    """One rider on one bike: the form of their sessions, and where they stand."""

    bike: str
    rider: str
    form: dict[str, Any]
    tyres: dict[str, Any]
    learnt_s: float = 4.0
    outings: int = 0
    set_number: int = 0
    last: dict[str, Any] | None = None
    last_id: str = ""
    undo: tuple[str, str, Any] | None = None


def write_career(root: Path, sessions: int, seed: int = 1) -> Career:
    """Write a garage of so many sessions into a folder that is not there yet."""
    draw = random.Random(seed)
    _copy_what_stays(root)
    pairs = _pairs()
    venues = sorted(ref.id for ref in FILES if ref.kind == "venue")
    days = list(_dates(-(-sessions // (SESSIONS_A_DAY * len(pairs)))))
    written: list[str] = []
    for place, date in enumerate(days):
        venue = draw.choice(venues)
        _write(root / "days" / f"{date}-{venue}.toml", _day(date, venue, pairs))
        for number in range(1, SESSIONS_A_DAY + 1):
            for pair in pairs:
                if len(written) == sessions:
                    break
                last = len(written) == sessions - 1
                name, data = _session(draw, root, pair, date, venue, number, ridden=not last)
                _write(root / "sessions" / str(date.year) / f"{name}.toml", data)
                written.append(name)
        if place == len(days) - 1:
            break
    return Career(root, tuple(written), dt.datetime.combine(days[-1], dt.time(8, 30)))


def _copy_what_stays(root: Path) -> None:
    root.mkdir(parents=True)
    shutil.copy(SAMPLE / "garage.toml", root)
    for kind, folder in FOLDERS.items():
        if kind not in ("session", "day", "tyres"):
            shutil.copytree(SAMPLE / folder, root / folder)
        (root / folder).mkdir(exist_ok=True)
    for path in root.rglob("*.toml"):
        # What came of the sample's sessions, of which none is here: a session's id that names nothing is
        # looked for among the former ids of all.
        text = path.read_text(encoding="utf-8")
        path.write_text(re.sub(r'^of = "[0-9-]+-\w+"\n', "", text, flags=re.MULTILINE), encoding="utf-8")


def _pairs() -> list[_Pair]:
    """Return each bike of the sample with its rider: its fullest ridden session is the form of theirs."""
    found: dict[str, _Pair] = {}
    fullest = sorted((ref for ref in FILES if ref.kind == "session"), key=lambda ref: -len(data_of(ref)))
    for ref in fullest:
        data = copy.deepcopy(data_of(ref))
        if "laps" not in data and "ridden_laps" not in data:
            continue
        if data["bike"] in found or not {"tyres", "setup"} <= data.keys() or data.get("kind") == "road":
            continue
        for key in _STRIPPED:
            data.pop(key, None)
        sets = {one.id: data_of(one) for one in FILES if one.kind == "tyres"}
        found[data["bike"]] = _Pair(data["bike"], data["rider"], data, sets[data["tyres"]])
    pairs = [found[name] for name in sorted(found)]
    for pair, rider in zip(pairs, sorted(ref.id for ref in FILES if ref.kind == "rider"), strict=False):
        pair.rider = rider
    return pairs


def _dates(count: int) -> Iterator[dt.date]:
    """Give so many days in order, the last ones in the last season: weekdays from March to October."""
    seasons = -(-count // DAYS_A_SEASON)
    left = count - DAYS_A_SEASON * (seasons - 1)
    for place in range(seasons):
        first = dt.date(LAST_SEASON - seasons + 1 + place, 3, 2)
        for number in range(left if place == 0 else DAYS_A_SEASON):
            yield first + dt.timedelta(days=4 * number)


def _day(date: dt.date, venue: str, pairs: list[_Pair]) -> dict[str, Any]:
    fullest = max((ref for ref in FILES if ref.kind == "day"), key=lambda ref: len(str(data_of(ref))))
    data = copy.deepcopy(data_of(fullest))
    entries = data.pop("entries", {})
    form: dict[str, Any] = next(iter(next(iter(entries.values())).values()), {})
    data |= {"date": date, "venue": venue}
    data["entries"] = {pair.rider: {pair.bike: copy.deepcopy(form)} for pair in pairs}
    return data


def _session(
    draw: random.Random, root: Path, pair: _Pair, date: dt.date, venue: str, number: int, *, ridden: bool
) -> tuple[str, dict[str, Any]]:
    name = f"{date}-{number}-{pair.bike}"
    data = copy.deepcopy(pair.last or pair.form)
    data.pop("incidents", None)
    if pair.outings % OUTINGS_A_SET == 0:
        pair.set_number += 1
        _write(root / "tyres" / f"{_set(pair)}.toml", _fresh_set(pair, date))
    pair.outings += 1
    data |= {
        "rider": pair.rider,
        "date": date,
        "number": number,
        "day": f"{date}-{venue}",
        "tyres": _set(pair),
    }
    if pair.last_id:
        data["copied_from"] = pair.last_id
    if draw.randrange(CHANGES_ONE_IN) == 0:
        _change(draw, pair, data)
    hour = 9 + number - (1 if number < 4 else 0)
    data["start"], data["went_out"] = dt.time(hour, 20), dt.time(hour, 21)
    if not ridden:
        for key in ("went_out", "parked", "ridden_time", "ridden_laps", "laps", "aim_met", "said"):
            data.pop(key, None)
        data["pressures"] = {key: one for key, one in data["pressures"].items() if key != "hot"}
    else:
        data["parked"], data["ridden_laps"] = dt.time(hour, 40), LAPS
        data["laps"] = dict(_laps(draw, pair))
        if draw.randrange(FALLS_ONE_IN) == 0:
            data["incidents"] = {"1": _fall(hour)}
    pair.last, pair.last_id = data, name
    return name, data


def _set(pair: _Pair) -> str:
    return f"{pair.bike}-set-{pair.set_number}"


def _fresh_set(pair: _Pair, date: dt.date) -> dict[str, Any]:
    data = copy.deepcopy(pair.tyres)
    data["name"] = f"{pair.bike}, set {pair.set_number}"
    for end in ("front", "rear"):
        data.get(end, {}).pop("continues", None)
        data.setdefault(end, {})["fitted"] = date
    return data


def _change(draw: random.Random, pair: _Pair, data: dict[str, Any]) -> None:
    """Change one figure of the set-up by one, or take the last change back."""
    setup = data["setup"]
    if pair.undo is not None and draw.randrange(2) == 0:
        table, key, old = pair.undo
        pair.undo = None
        setup[table][key] = old
        return
    table = draw.choice([one for one in ("controls", "adjusters") if one in setup])
    whole = sorted(key for key, one in setup[table].items() if type(one) is int and one > 1)
    if not whole:
        return
    key = draw.choice(whole)
    old = setup[table][key]
    form = pair.form["setup"][table].get(key, old)
    setup[table][key] = old - 1 if old >= form else old + 1
    pair.undo = (table, key, old)
    data["because"] = {table: {key: {"why": "calmer into the slow turn", "expect": "less work"}}}


def _laps(draw: random.Random, pair: _Pair) -> Iterator[tuple[str, str]]:
    pair.learnt_s *= 0.995
    worn_s = 0.02 * (pair.outings % OUTINGS_A_SET)
    luck_s = draw.gauss(0.0, 0.25)
    for number in range(1, LAPS + 1):
        lap_s = 104.0 + pair.learnt_s + worn_s + luck_s + draw.gauss(0.0, 0.25)
        out = " out" if number == 1 else ""
        yield str(number), f"{int(lap_s // 60)}:{lap_s % 60:06.3f}{out}"


def _fall(hour: int) -> dict[str, Any]:
    return {
        "what": "fall",
        "at": dt.time(hour, 30),
        "moving": True,
        "head_contact": False,
        "inspected_again": dt.time(hour, 55),
    }


def _write(path: Path, data: dict[str, Any]) -> None:
    own = {key: one for key, one in data.items() if not isinstance(one, dict)}
    lines = [render_line((key,), one) for key, one in own.items()]
    for key, one in data.items():
        if isinstance(one, dict):
            lines += ["", *render_table((key,), one)]
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
