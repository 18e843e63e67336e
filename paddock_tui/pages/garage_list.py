"""The rows of a garage's sessions and records, out of their plain data: nothing here needs the records."""

import datetime as dt
from collections.abc import Callable, Container, Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import Any, NamedTuple, TypeVar

import attrs

from paddock_tui.desk.lookup import Glance, at_place, glance, in_order, order, session_in_hand, without_a_date
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.records.ridden import laps_ridden
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import SessionRow, row_of, year_of
from paddock_tui.store.loaded import glimpse
from paddock_tui.text import printable

TITLES = {
    "day": "days",
    "bike": "bikes",
    "rider": "riders",
    "venue": "venues",
    "tyres": "tyre sets",
    "profile": "profiles",
    "checklist": "checklists",
}
"""The kinds of record below the sessions, each with the title of its section."""


EARLIER = "earlier"
"""Begins the path of a row that stands for a year's sessions or days."""

MANY = 400
LATEST = 200
"""More than so many are listed up to so many; those before stand in a row for each year."""

MOST_DAYS = (100, 50)
"""The same of days: each is read for its row, and holds a whole timetable."""

Listed = TypeVar("Listed")


def lists_many(files: GarageFiles) -> bool:
    """Return whether so many records are listed that reading them for their rows takes a while."""
    return sum(len(files.listing(kind)) for kind in ("session", *TITLES)) > MANY


def garage_name(files: GarageFiles) -> str:
    """Name the garage by its own name, else by its folder's."""
    name = lookup(files.data(GARAGE), ("name",))
    words = name if isinstance(name, str) else files.root.resolve().name
    return f"garage · {printable(words)}"


def new_row(kind: str, title: str) -> Row:
    """Return the row that adds a record of a kind."""
    return Row(f"new {title.removesuffix('s')}", kind="add", adds=(kind,), known=False, key=f"new {kind}")


def session_rows(
    files: GarageFiles,
    now: dt.datetime,
    *,
    retired: bool,
    still_open: Callable[[Ref], str],
    years: Container[str] | None = None,
) -> Iterator[Row]:
    """List the sessions, newest first; `still_open` says what earlier ones left open for the one in hand.

    Of very many the earlier years are one row each, but for `years`; None lists all.
    """
    in_hand = session_in_hand(files, now)
    apart: list[Glance] = []
    for ref in without_a_date(files):
        data = files.data(ref)
        if "retired" in data and not retired:
            continue
        found = glance(ref, data, retired=True)
        if found is not None:
            apart.append(found)
        else:
            yield Row(ref.id, "its date is not known, or it cannot be read", ref=ref, opens=ref, kind="link")
    seen = [*in_order(files), *((order(one), one.ref) for one in apart)]
    seen.sort(reverse=True)
    retired_ones = {one.ref: one for one in apart}
    for placed in _by_years(seen, lambda one: str(one[0][0].year), "sessions", years, (MANY, LATEST)):
        if isinstance(placed, Row):
            yield placed
            continue
        ref = placed[1]
        one = retired_ones.get(ref) or at_place(files, ref)
        if one is not None:
            row = session_row(files, one, now, in_hand)
            yield attrs.evolve(row, aside=row.aside + still_open(ref)) if ref == in_hand else row


def of_latest_day(files: GarageFiles, rows: Sequence[Row], now: dt.datetime) -> int:
    """Count the rows of sessions that one comes for: of today and to come, else of the last day there was.

    What cannot be placed in time comes before them.
    """
    day: dt.date | None = None
    for at, row in enumerate(rows):
        if row.ref is None:
            return at
        seen = glimpse(files, row.ref, _listed).row
        if seen is None:
            continue
        day = day or min(seen.date, now.date())
        if seen.date < day:
            return at
    return len(rows)


EARLIER_SESSIONS = "earlier sessions"
"""The section of those of days gone by: the last of the garage, as no record is looked for there."""


def _by_years(
    listed: list[Listed],
    year: Callable[[Listed], str],
    title: str,
    open_years: Container[str] | None,
    most: tuple[int, int],
) -> Iterator[Listed | Row]:
    """Give the latest of very many, and a row for each year of the others, with those of open years.

    `most`: of more than so many, so many.
    """
    many, latest = most
    whole = len(listed) if open_years is None or len(listed) <= many else latest
    yield from listed[:whole]
    for name, others in groupby(listed[whole:], year):
        earlier = list(others)
        shown = open_years is not None and name in open_years
        said = f"{title}, enter {'hides' if shown else 'lists'} them"
        yield Row(name, said, kind="link", path=(EARLIER, title, name), key=f"earlier {title}")
        if shown:
            yield from earlier


class _Listed(NamedTuple):
    """What a list shows of a session."""

    row: SessionRow | None
    retired: bool
    has_start: bool
    words: tuple[tuple[str, str], ...]
    ride: str


def _listed(_: Ref, data: Mapping[str, Any]) -> _Listed:
    words = ((key, data.get(key)) for key in ("bike", "surface", "rider", "kind"))
    return _Listed(
        row_of({key: value for key, value in data.items() if key != "retired"}),
        "retired" in data,
        isinstance(data.get("start"), dt.time),
        tuple((key, word) for key, word in words if isinstance(word, str)),
        said_of_ride(data),
    )


def session_row(files: GarageFiles, one: Glance, now: dt.datetime, in_hand: Ref | None) -> Row:
    """Return the row of a session: what its name does not say already, and what is kept of the ride."""
    seen = glimpse(files, one.ref, _listed)
    coming = "to come" if one.date >= now.date() else "not ridden"
    state = "current" if one.ref == in_hand else seen.ride if one.ridden else coming
    return Row(
        label=one.ref.id,
        value=printable(" · ".join(_said_of_session(one, seen))),
        aside="retired" if seen.retired else state,
        kind="link",
        ref=one.ref,
        opens=one.ref,
        key=one.ref.id,
    )


def _said_of_session(one: Glance, seen: _Listed) -> Iterator[str]:
    if not one.ref.id.startswith(one.date.isoformat()):
        yield f"{short_date(one.date)} {one.date.year}"
    if seen.has_start:
        yield f"{one.start:%H:%M}"
    for key, word in seen.words:
        if not (key == "bike" and one.ref.id.endswith(f"-{word}")):
            yield word


def said_of_ride(data: Mapping[str, Any]) -> str:
    """Say how many laps a session that was ridden had, and what it went out with; "ridden" without laps."""
    counted, timed = data.get("ridden_laps"), data.get("laps")
    laps = laps_ridden(
        counted if type(counted) is int else None, len(timed) if isinstance(timed, dict) else 0
    )
    words = ["ridden" if laps < 1 else "1 lap" if laps == 1 else f"{laps} laps"]
    verdict = lookup(data, ("out", "verdict"))
    if isinstance(verdict, str):
        words.append(f"out {printable(verdict)}")
    return ", ".join(words)


def record_rows(
    files: GarageFiles, kind: str, *, retired: bool, years: Container[str] | None = None
) -> Iterator[Row]:
    """List the records of a kind, days newest first, of very many those of earlier years as `years` say."""
    refs = files.listing(kind)
    listed: Iterable[Ref | Row] = refs if kind != "day" else _days(refs, years)
    for ref in listed:
        if isinstance(ref, Row):
            yield ref
            continue
        is_retired, row = glimpse(files, ref, _record_row)
        if retired or not is_retired:
            yield row


def _record_row(ref: Ref, data: Mapping[str, Any]) -> tuple[bool, Row]:
    """Return the row of a record that is no session, and whether it is retired."""
    aside = "retired" if "retired" in data else _said_of(ref, data)
    name = data.get("name")
    label = printable(name) if isinstance(name, str) and name.strip() else ref.id
    value = ref.id if label != ref.id else ""
    row = Row(label, value, aside=printable(aside), kind="link", ref=ref, opens=ref, key=ref.id)
    return "retired" in data, row


def _days(refs: Sequence[Ref], years: Container[str] | None) -> Iterator[Ref | Row]:
    yield from _by_years(list(reversed(refs)), lambda ref: year_of(ref.id), "days", years, MOST_DAYS)


def _said_of(ref: Ref, data: Mapping[str, Any]) -> str:
    keys = {
        "day": ("organiser", "group"),
        "rider": ("group",),
        "profile": ("bike", "made_for"),
        "checklist": ("stage",),
        "tyres": (),
    }.get(ref.kind, ())
    return " · ".join(str(data[key]) for key in keys if isinstance(data.get(key), str))


def whose(files: GarageFiles, about: Ref | None) -> str:
    """Say in few cells whose verdict it is: the number and bike of a session, the name of a profile."""
    if about is None or about.kind != "session":
        return about.id if about is not None else ""
    data = files.data(about)
    return printable(" ".join(str(data[key]) for key in ("number", "bike") if key in data))
