"""The next session: set-up, rider and tyres of the last one on that bike; no weather, no measurements."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.desk.filing import creating
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.fields import declared
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.trouble import Trouble
from paddock_tui.store.garage import GarageFiles


def next_session(files: GarageFiles, source: Ref, now: dt.datetime) -> tuple[Ref, Step | Trouble]:
    """Make the step that creates the session after another one, copied from it.

    It belongs to the source's day while that is today or still to come, or the source is not ridden;
    else to today, and to the day record of today where there is one. Its start is the next one in the
    timetable of the day's group.
    """
    data = files.data(source)
    date = _date(data, now)
    number = _number(files, date, data.get("bike"), data.get("number") if date == data.get("date") else 0)
    bike = str(data.get("bike", "bike"))
    ref = Ref("session", f"{date.isoformat()}-{number}-{bike}")
    values: dict[str, Value] = {"date": date, "number": number}
    values.update(_carried(data))
    values["copied_from"] = source.id
    day = _day_of(files, date, data)
    values.pop("day", None)
    if day is not None:
        values["day"] = day.id
        start = _start(files.data(day), data, date)
        if start is not None:
            values["start"] = start
    ordered = {key: values[key] for key in _first_keys(values)}
    return ref, creating(files, ref, ordered)


def _date(data: Mapping[str, Any], now: dt.datetime) -> dt.date:
    held = data.get("date")
    if not isinstance(held, dt.date):
        return now.date()
    ridden = "parked" in data or "laps" in data or "hot" in data.get("pressures", {})
    return held if held >= now.date() or not ridden else now.date()


def _number(files: GarageFiles, date: dt.date, bike: object, after: object) -> int:
    """Give the number after the highest one of that day on that bike."""
    used = [after] if isinstance(after, int) else [0]
    for ref in files.listing("session"):
        if ref.id.startswith(date.isoformat()):
            data = files.data(ref)
            held = data.get("number")
            if data.get("date") == date and data.get("bike") == bike and isinstance(held, int):
                used.append(held)
    return max(used) + 1


def _carried(data: Mapping[str, Any]) -> dict[str, Value]:
    """Copy what is declared to carry over, as it stands in the source's file."""
    carried: dict[str, Value] = {}
    for one in declared(Session):
        if one.carry and one.path[0] in data and one.path[0] not in carried:
            carried[one.path[0]] = _only_carried(data[one.path[0]], one.path[:1])
    return carried


def _only_carried(value: Any, at: Path) -> Value:
    if not isinstance(value, Mapping):
        return value  # type: ignore[no-any-return]
    return {key: _only_carried(inner, (*at, key)) for key, inner in value.items()}


def _day_of(files: GarageFiles, date: dt.date, data: Mapping[str, Any]) -> Ref | None:
    held = data.get("day")
    if isinstance(held, str) and files.data(Ref("day", held)).get("date") == date:
        return Ref("day", held)
    same = [ref for ref in files.listing("day") if files.data(ref).get("date") == date]
    return same[0] if len(same) == 1 else None


def _start(day: Mapping[str, Any], data: Mapping[str, Any], date: dt.date) -> dt.time | None:
    """Give the start of the next slot of the rider's group after the source's start."""
    entry = day.get("entries", {}).get(data.get("rider"), {}).get(data.get("bike"), {})
    group = entry.get("group") or day.get("group")
    after = data.get("start") if data.get("date") == date else None
    slots = day.get("timetable", {}).get(group, {})
    starts = sorted(
        slot["from"]
        for slot in slots.values()
        if isinstance(slot, Mapping) and isinstance(slot.get("from"), dt.time)
    )
    later = [start for start in starts if not isinstance(after, dt.time) or start > after]
    return later[0] if later else None


def _first_keys(values: Mapping[str, Value]) -> list[str]:
    """Put the keys in the order of the declarations."""
    order = [one.path[0] for one in declared(Session)]
    return sorted(values, key=lambda key: order.index(key) if key in order else len(order))
