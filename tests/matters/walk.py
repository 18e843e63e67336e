"""A small record for the walk: sessions of one bike, one after the other, as outings."""

import datetime as dt
from typing import Any

from paddock_tui.matters import Matter, MatterHistory, Outing, Present, matters
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.reading import read_record
from paddock_tui.records.session import Session

FIRST = dt.date(2026, 5, 16)
BASE: dict[str, Any] = {
    "kind": "track day",
    "bike": "kestrel",
    "rider": "ines",
    "tyres": "may",
    "surface": "dry",
}


def session(number: int, values: dict[str, Any], date: dt.date = FIRST) -> Session:
    """Read one session of the usual bike and rider."""
    data: dict[str, Any] = {**BASE, "date": date, "number": number, "start": dt.time(8 + number, 0)}
    for dotted, value in values.items():
        *tables, key = dotted.split(".")
        at = data
        for name in tables:
            at = at.setdefault(name, {})
        at[key] = value
    found = read_record("session", data)
    assert not found.troubles, found.troubles
    assert not found.unknown, found.unknown
    assert isinstance(found.record, Session)
    return found.record


def outing(number: int, values: dict[str, Any], date: dt.date = FIRST, **more: Any) -> Outing:
    """Make one outing, its tyres named by its set."""
    made = session(number, values, date)
    tyres = {} if made.tyres is None else {"front": made.tyres, "rear": made.tyres}
    return Outing(f"{date}-{number}", made, column=made.surface or "", tyres=tyres, **more)


def present(last: Outing, **more: Any) -> Present:
    """Look from the last outing."""
    return Present(last.id, last.session, column=last.column, tyres=last.tyres, **more)


def open_after(*outings: Outing, answers: dict[str, MatterAnswer] | None = None, **more: Any) -> list[str]:
    """List the kinds that are open for the last outing, each once; `answers` by kind, in every record."""
    given = {kind: {"1": one} for kind, one in (answers or {}).items()}
    records = {("bike", "kestrel"): given, ("rider", "ines"): given, ("tyres", "may"): given}
    return sorted({one.kind for one in found_after(*outings, records=records, **more)})


def found_after(*outings: Outing, records: Any = None, **more: Any) -> tuple[Matter, ...]:
    """List what is open for the last outing."""
    return matters(MatterHistory(outings, records or {}), present(outings[-1], **more))
