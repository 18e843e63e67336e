"""Which record is meant, and which session is in hand."""

import bisect
import datetime as dt
import operator
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS, GARAGE, Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import SessionRow, row_of

Order = tuple[dt.date, int, dt.time, str]
"""Where a session stands: date, number, start, and its id where these are the same."""


class NoSuchRecord(Exception):
    """A reference that somebody gave does not name one record of this garage."""

    def __init__(self, trouble: InputError) -> None:
        super().__init__(trouble.sentence())
        self.trouble = trouble


def find(files: GarageFiles, text: str, among: tuple[str, ...] = tuple(FOLDERS)) -> Ref:
    """Find the record meant by 'kind/id', by an id, or by the start of one where that is unique.

    An id without its kind is looked for `among` these kinds only. Raises NoSuchRecord.
    """
    kind, slash, name = text.partition("/")
    if text == "garage":
        return GARAGE
    if slash:
        ref = Ref(kind, name)
        if kind not in FOLDERS:
            raise NoSuchRecord(InputError(f'"{text}"', f"a kind out of {', '.join(FOLDERS)}"))
        ref = files.former.current(ref)
        if files.path_of(ref) is not None:
            return ref
        near = [one.id for one in files.listing(kind)]
        raise NoSuchRecord(InputError(f'there is no {kind} "{name}"', f"one of: {_some(near)}"))
    everything = [ref for kind in among for ref in files.listing(kind)]
    same = [ref for ref in everything if ref.id == text]
    starts = [ref for ref in everything if ref.id.startswith(text)] if len(text) >= 3 else []
    found = same or _before(files, text, among) or starts
    if len(found) == 1:
        return found[0]
    if found:
        raise NoSuchRecord(
            InputError(f'"{text}" may be {_some([str(ref) for ref in found])}', "one of them, in full")
        )
    raise NoSuchRecord(
        InputError(
            f'there is no {_one_of(among)} "{text}"',
            "kind/id or an id",
            "list them with: paddock-tui show GARAGE",
        )
    )


def _before(files: GarageFiles, text: str, among: tuple[str, ...]) -> list[Ref]:
    """List the records that had an id before they were renamed."""
    return [now for kind in among if (now := files.former.current(Ref(kind, text))).id != text]


@attrs.frozen
class Glance:
    """What is seen of a session at a glance: enough to order sessions and to tell the next one."""

    ref: Ref
    date: dt.date
    number: int
    start: dt.time
    ridden: bool


def session_in_hand(files: GarageFiles, now: dt.datetime) -> Ref | None:
    """Return the session in hand.

    The first not ridden session today or later; else the first not ridden one of the latest day; else
    the last ridden. Only sessions named in this year or later are read, or in the latest one, and
    those named in no year.
    """
    refs = files.sessions_since(now.year)
    return files.rows.derived(refs, ("current", now.date()), lambda: _in_hand(files, now))


def _in_hand(files: GarageFiles, now: dt.datetime) -> Ref | None:
    seen = sorted(glances(files, now.year), key=order)
    coming = [one for one in seen if not one.ridden and one.date >= now.date()]
    if coming:
        return coming[0].ref
    latest = max((one.date for one in seen), default=None)
    left = [one for one in seen if not one.ridden and one.date == latest]
    if left:
        return left[0].ref
    ridden = [one for one in seen if one.ridden]
    last = ridden or seen
    return last[-1].ref if last else None


def order(one: Glance) -> Order:
    """Order sessions by date, number and start."""
    return one.date, one.number, one.start, one.ref.id


def glances(files: GarageFiles, since: int = 0) -> Iterator[Glance]:
    """Look at the sessions of a year and later, and of the latest one where that is before; 0: at all."""
    refs = files.sessions_since(since)
    return iter(files.rows.derived(refs, ("glances", since), lambda: _glances(files, refs)))


def _glances(files: GarageFiles, refs: tuple[Ref, ...]) -> list[Glance]:
    rows = zip(refs, files.rows.each(refs), strict=True)
    found = [Glance(ref, *row[:4]) for ref, row in rows if row is not None]
    files.rows.write()
    return found


def on_dates(files: GarageFiles, first: dt.date, count: int) -> list[Glance]:
    """Look at the sessions of so many dates, among those of the first one's year and later.

    Every page asks for those of now: they are found without a look at all others of the year.
    """
    refs = files.sessions_since(first.year)
    by_date = files.rows.derived(refs, ("glances by date", first.year), lambda: _by_date(files, first.year))
    start = first.toordinal()
    dates = map(dt.date.fromordinal, range(start, min(start + count, dt.date.max.toordinal() + 1)))
    return [one for date in dates for one in by_date.get(date, ())]


def _by_date(files: GarageFiles, since: int) -> dict[dt.date, list[Glance]]:
    found: dict[dt.date, list[Glance]] = {}
    for one in glances(files, since):
        found.setdefault(one.date, []).append(one)
    return found


def at_place(files: GarageFiles, ref: Ref) -> Glance | None:
    """Look at one session that has a place in the order of time; None where it has none."""
    row = files.rows.of(ref)
    return Glance(ref, row.date, row.number, row.start, row.ridden) if row is not None else None


def by_bike(files: GarageFiles) -> Mapping[str, Sequence[tuple[Order, Ref]]]:
    """List the sessions of each bike in their order; those that name none stand under an empty name."""
    refs = files.listing("session")

    def grouped() -> dict[str, list[tuple[Order, Ref]]]:
        found, placed = defaultdict[str, list[tuple[Order, Ref]]](list), _placed(files)
        for row, one in zip(placed.rows, placed.order, strict=True):
            found[row.bike].append(one)
        return dict(found)

    return files.rows.derived(refs, ("by bike",), grouped)


def of_bike(files: GarageFiles, bike: str) -> Sequence[tuple[Order, Ref]]:
    """List the sessions of a bike in their order."""
    return _of(files, "bike", bike)


def of_rider(files: GarageFiles, rider: str) -> Sequence[tuple[Order, Ref]]:
    """List the sessions of a rider in their order."""
    return _of(files, "rider", rider)


def of_date(files: GarageFiles, date: dt.date) -> Sequence[tuple[Order, Ref]]:
    """List the sessions of a date in their order."""
    placed = in_order(files)
    first = bisect.bisect_left(placed, date, key=_date_of)
    return placed[first : bisect.bisect_right(placed, date, first, key=_date_of)]


def _date_of(placed: tuple[Order, Ref]) -> dt.date:
    return placed[0][0]


def in_order(files: GarageFiles) -> Sequence[tuple[Order, Ref]]:
    """List the sessions that have a place, in their order."""
    return _placed(files).order


class _Placed(NamedTuple):
    """All sessions that have a place, in their order, and beside each its row."""

    order: list[tuple[Order, Ref]]
    rows: list[SessionRow]


def _placed(files: GarageFiles) -> _Placed:
    refs = files.listing("session")

    def placed() -> _Placed:
        there = [(ref, row) for ref, row in zip(refs, _rows(files, refs), strict=True) if row is not None]
        files.rows.write()
        # A row begins with date, number and start.
        found = [((*row[:3], ref.id), ref) for ref, row in there]
        rows = [row for _, row in there]
        # They are named after their days, so that mostly they stand in their order.
        if not all(map(operator.lt, found, found[1:])):
            places = sorted(range(len(found)), key=found.__getitem__)
            found, rows = [found[at] for at in places], [rows[at] for at in places]
        return _Placed(found, rows)

    return files.rows.derived(refs, ("placed",), placed)


def _rows(files: GarageFiles, refs: tuple[Ref, ...]) -> Sequence[SessionRow | None]:
    """Return the rows of all sessions, which are put together once for all that is asked of them."""
    return files.rows.derived(refs, ("rows",), lambda: files.rows.each(refs))


def _of(files: GarageFiles, what: str, name: str) -> Sequence[tuple[Order, Ref]]:
    """List the sessions that name something, in their order: the same list while nothing of it changed."""
    refs = files.listing("session")

    def found() -> list[tuple[Order, Ref]]:
        placed = _placed(files)
        names = map(operator.attrgetter(what), placed.rows)
        return [one for one, its in zip(placed.order, names, strict=True) if its == name]

    return files.rows.derived(refs, ("of", what, name), found)


def without_a_date(files: GarageFiles) -> Sequence[Ref]:
    """List the sessions whose date is not known, and all that are retired."""
    refs = files.listing("session")
    return files.rows.derived(
        refs,
        ("without a date",),
        lambda: [ref for ref, row in zip(refs, _rows(files, refs), strict=True) if row is None],
    )


def without_a_place(files: GarageFiles) -> Sequence[Ref]:
    """List the sessions that lack a date, a bike or a rider, and all that are retired."""
    refs = files.listing("session")

    def found() -> list[Ref]:
        rows = zip(refs, _rows(files, refs), strict=True)
        return [ref for ref, row in rows if row is None or not (row.bike and row.rider)]

    return files.rows.derived(refs, ("without a place",), found)


def unplaced(files: GarageFiles, now: dt.datetime) -> tuple[Ref, ...]:
    """List the sessions whose date cannot be read: one of them may be the one in hand."""
    found: list[Ref] = []
    for ref in files.sessions_since(now.year):
        if files.rows.of(ref) is not None:
            continue
        loaded = files.read(ref) if "retired" not in files.data(ref) else None
        if loaded is not None and (
            loaded.record is None or any(trouble.path == ("date",) for trouble in loaded.troubles)
        ):
            found.append(ref)
    return tuple(found)


def glance(ref: Ref, data: Mapping[str, Any], *, retired: bool = False) -> Glance | None:
    """Look at one session's plain data; None where its date is not known, or it is `retired` unless asked."""
    row = row_of({key: value for key, value in data.items() if key != "retired"} if retired else data)
    return Glance(ref, row.date, row.number, row.start, row.ridden) if row is not None else None


def _one_of(kinds: tuple[str, ...]) -> str:
    return "record" if len(kinds) > 1 else kinds[0]


def _some(names: list[str]) -> str:
    return (
        ", ".join(names[:8]) + (f" and {len(names) - 8} more" if len(names) > 8 else "") or "(there are none)"
    )
