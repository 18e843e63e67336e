"""The page of any record: every declared field as a row, under its headings."""

import re
from collections.abc import Iterator
from typing import Any

import attrs

from paddock_tui.pages.disputes import with_disputes
from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.setup import setup_sections
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.electronics import function_of
from paddock_tui.records.fields import Spec, entry_of, specs
from paddock_tui.records.fields_of_record import SET_UP, Field, below, field_at
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path, Ref, parse
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

_ONLY_FOR = {
    "levels": ("level",),
    "choices": ("choice", "state"),
    "speeds": ("speed",),
    "most_help": ("level", "choice"),
    "frees_most": ("engine-braking",),
    "gentlest": ("launch",),
}
"""Which kinds of control a value is about, or which function: the freeing and the gentlest end."""

_ADDED = {"fixes": "fixed control", "allowed ranges": "allowed range", "on the dash": "control on the dash"}
"""What a row adds, where several tables of a page are kept by the same thing."""


def record_page(loaded: Loaded, bike: Bike | None = None, units: Units | None = None) -> Page:
    """Make the page of one record; a record whose file is lost shows its problem only."""
    title = title_of(loaded)
    if loaded.record is None:
        return Page(title, (Section("cannot be read", tuple(problem_rows(loaded.troubles))),), judged=False)
    sections = list(record_sections(loaded, bike, units or Units()))
    if loaded.unknown:
        sections.append(Section("names that are not known", tuple(problem_rows(loaded.unknown))))
    return with_disputes(Page(title, tuple(sections), judged=False), loaded)


def title_of(loaded: Loaded) -> str:
    """Name a record: its kind, and its own name where it has one."""
    name = loaded.data.get("name")
    words = printable(name) if isinstance(name, str) and name.strip() else loaded.ref.id
    kind = "tyre set" if loaded.ref.kind == "tyres" else loaded.ref.kind
    return f"{kind} · {words}"


def record_sections(loaded: Loaded, bike: Bike | None, units: Units) -> Iterator[Section]:
    """Walk the declarations of a record: every field a row, every table that grows with a row to add by."""
    record = loaded.record
    if record is None:
        return
    walker = _Walker(loaded, units)
    shown: set[Path] = set()
    has_set_up = bike is not None and hasattr(record, SET_UP)
    for place, section in enumerate(walker.sections(type(record), record, (), ())):
        if has_set_up and section.rows and section.rows[0].path[:1] == (SET_UP,):
            continue
        shown |= {row.path for row in section.rows if row.kind != "add"}
        yield section
        if place == 0 and bike is not None and has_set_up:
            yield from _set_up(loaded, bike, units, shown, walker)
    lost = [trouble for trouble in loaded.troubles if trouble.path not in shown]
    if lost:
        yield Section("cannot be read", tuple(problem_rows(lost)))


def add_row(ref: Ref, spec: Spec, path: Path) -> Row:
    """Make the row by which an entry is added to a table that grows."""
    label = f"add: {_ADDED.get(spec.label, spec.keyed_by)}"
    return Row(label, kind="add", ref=ref, path=path, adds=path, known=False, key="add")


def _set_up(
    loaded: Loaded, bike: Bike, units: Units, shown: set[Path], walker: "_Walker"
) -> Iterator[Section]:
    """Show a set-up as its bike has it, and what is written down that the bike does not use."""
    setup = getattr(loaded.record, SET_UP)
    sections = tuple(setup_sections(loaded, setup, bike, units))
    yield from sections
    used = {row.path for section in sections for row in section.rows}
    shown |= used
    written = walker.sections(type(setup), setup, (SET_UP,), ("set-up",))
    held = (row for section in written for row in section.rows if row.path not in used)
    unused = tuple(row for row in held if row.kind == "field" and (row.known or row.trouble))
    if unused:
        shown |= {row.path for row in unused}
        yield Section("written down, not in use on this bike", unused)


class _Walker:
    """Makes the sections of one record from the declarations of its class."""

    def __init__(self, loaded: Loaded, units: Units) -> None:
        self._loaded, self._units = loaded, units
        self._unread = [trouble.path for trouble in loaded.troubles]

    def sections(self, cls: type, record: Any, at: Path, heading: tuple[str, ...]) -> Iterator[Section]:
        """Return the section of a record's own values, then those of its tables."""
        rows: list[Row] = []
        below: list[tuple[Spec, Path, Any]] = []
        for key, (name, spec) in specs(cls).items():
            path = (*at, key)
            if spec.nature == "one" and spec.shape is not None:
                if _applies(self._loaded.record, path):
                    rows.append(self._row(path, spec.label, spec))
            else:
                below.append((spec, path, getattr(record, name)))
        if at:
            rows += [add_row(self._loaded.ref, spec, path) for spec, path, _ in below if spec.keys]
        if rows:
            yield Section(" · ".join(heading) or self._loaded.ref.kind, tuple(rows))
        for spec, path, value in below:
            yield from self._table(spec, path, value, (*heading, spec.label))

    def _table(self, spec: Spec, path: Path, value: Any, heading: tuple[str, ...]) -> Iterator[Section]:
        if spec.record is not None and not spec.keys:
            yield from self.sections(spec.record, value, path, heading)
            return
        rows: list[Row] = []
        for keys, inner in self._entries(spec, path, value):
            labels = tuple(map(label_of, keys))
            if spec.record is not None:
                yield from self.sections(spec.record, inner, (*path, *keys), (*heading, *labels))
            else:
                rows.append(self._row((*path, *keys), " ".join(labels), spec))
        # Inside an entry the row to add by stands among the entry's own.
        if len(path) == 1:
            rows.append(add_row(self._loaded.ref, spec, path))
        if rows:
            yield Section(" · ".join(heading), tuple(rows))

    def _entries(self, spec: Spec, path: Path, value: Any) -> list[tuple[Path, Any]]:
        """List the entries of a table, and the keys that only a value which cannot be read stands at."""
        found = list(below(value, len(spec.keys)))
        there = {keys for keys, _ in found}
        for unread in self._unread:
            keys = unread[len(path) : len(path) + len(spec.keys)]
            if unread[: len(path)] == path and len(keys) == len(spec.keys) and keys not in there:
                there.add(keys)
                found.append((keys, None if spec.record is None else spec.record()))
        return found

    def _row(self, path: Path, label: str, spec: Spec) -> Row:
        shape = spec.shape
        if shape is None:
            raise TypeError(label)
        row = field_row(self._loaded, Field(path, label, (), shape, spec.help), self._units)
        if row.known and not row.trouble:
            row = _in_words(row)
        ratio = getattr(self._loaded.record, path[0], None) if path[-1] == "motion_ratio" else None
        ratio = getattr(ratio, "motion_ratio", None)
        if ratio is not None and row.known and not row.trouble:
            row = attrs.evolve(row, aside=f"leverage ratio {1 / ratio:.2f}")
        place = entry_of(type(self._loaded.record), path)
        return row if place is None else attrs.evolve(row, adds=place[0], drops=place[1])


def _in_words(row: Row) -> Row:
    """Name what a value refers to as riders do, and write an offset with its sign."""
    if row.path[-1] == "answered_by":
        return _answering(row)
    if row.path[-1] == "off_allowed":
        return attrs.evolve(row, value=", ".join(map(label_of, row.edit.replace(",", " ").split())))
    signed = row.path[-2:-1] == ("offsets",) and re.fullmatch(r"[0-9.]*[1-9][0-9.]*", row.value)
    return attrs.evolve(row, value=f"+{row.value}") if signed else row


def _answering(row: Row) -> Row:
    """Name the value that answers a list's item by its label; where it stands is said beside it."""
    path = parse(row.edit) or ()
    named = field_at("session", path) or field_at("day", ("entries", "rider", "bike", *path))
    if named is None:
        return row
    lead = " ".join(one for one in named.section[1:] if one in ("front", "rear") or one in path)
    return attrs.evolve(row, value=f"{lead} {named.label}".strip(), aside=row.edit)


def _applies(record: Record | None, path: Path) -> bool:
    """Leave out what no control of its kind has, such as the speeds of a level, unless it stands there."""
    if not isinstance(record, Bike) or len(path) != 3 or path[0] != "controls":
        return True
    control = record.controls.get(path[1])
    wanted = _ONLY_FOR.get(path[2])
    if control is not None and path[2] == "most_help" and control.most_help is None:
        # Engine braking has an end that brakes least, and none that helps.
        return function_of(path[1], control) != "engine-braking" and control.kind in (
            None,
            *_ONLY_FOR["most_help"],
        )
    if control is None or control.kind is None or wanted is None or getattr(control, path[2]) is not None:
        return True
    return control.kind in wanted or function_of(path[1], control) in wanted
