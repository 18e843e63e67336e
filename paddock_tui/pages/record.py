"""The page of any record: every declared field as a row, under its headings."""

from collections.abc import Iterator, Mapping

from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.setup import setup_sections
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.electronics import function_of
from paddock_tui.records.fielding import SET_UP, Field, field_at, fields
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Path
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

_ONLY_FOR = {
    "levels": ("level",),
    "choices": ("choice", "state"),
    "speeds": ("speed",),
    "most_help": ("level", "choice"),
    "frees_most": ("engine-braking",),
}
"""Which kinds of control a value is about; the freeing end is of engine braking only."""


def record_page(loaded: Loaded, bike: Bike | None = None, units: Units | None = None) -> Page:
    """Make the page of one record; a record whose file is lost shows its problem only."""
    title = title_of(loaded)
    if loaded.record is None:
        return Page(title, (Section("cannot be read", tuple(problem_rows(loaded.troubles))),), judged=False)
    sections = list(record_sections(loaded, bike, units or Units()))
    if loaded.unknown:
        sections.append(Section("keys that are not known", tuple(problem_rows(loaded.unknown))))
    return Page(title, tuple(sections), judged=False)


def title_of(loaded: Loaded) -> str:
    """Name a record: its kind, and its own name where it has one."""
    name = loaded.data.get("name")
    words = printable(name) if isinstance(name, str) and name.strip() else loaded.ref.id
    return f"{loaded.ref.kind} · {words}" if loaded.ref.kind != "garage" else f"garage · {words}"


def record_sections(loaded: Loaded, bike: Bike | None, units: Units) -> Iterator[Section]:
    """Group the fields of a record under their headings, in the order of the declarations."""
    record = loaded.record
    if record is None:
        return
    groups: dict[tuple[str, ...], list[Row]] = {}
    for field in _with_unreadable(loaded, record, bike):
        if _applies(record, field.path):
            groups.setdefault(field.section, []).append(field_row(loaded, field, units))
    own = groups.pop((), [])
    if own:
        yield Section(loaded.ref.kind, tuple(own))
    setup = getattr(record, SET_UP, None)
    if setup is not None and bike is not None:
        sections = tuple(setup_sections(loaded, setup, bike, units))
        yield from sections
        groups = dict(_beyond(groups, {row.path for section in sections for row in section.rows}))
    for section, rows in groups.items():
        yield Section(" · ".join(section), tuple(rows))


def _beyond(
    groups: Mapping[tuple[str, ...], list[Row]], shown: set[Path]
) -> Iterator[tuple[tuple[str, ...], list[Row]]]:
    """Leave of a set-up what its own sections do not show: values written down that are not in use."""
    unused: list[Row] = []
    for section, rows in groups.items():
        kept = [row for row in rows if row.path[0] != SET_UP]
        unused += [
            row
            for row in rows
            if row.path[0] == SET_UP and row.path not in shown and (row.known or row.trouble)
        ]
        if kept:
            yield section, kept
    if unused:
        yield ("written down, not in use on this bike",), unused


def _applies(record: Record, path: Path) -> bool:
    """Leave out what says nothing of a control of its kind, such as the speeds of a level; what is known stays."""
    if not isinstance(record, Bike) or len(path) != 3 or path[0] != "controls":
        return True
    control = record.controls.get(path[1])
    wanted = _ONLY_FOR.get(path[2])
    if control is None or control.kind is None or wanted is None or getattr(control, path[2]) is not None:
        return True
    return control.kind in wanted or (path[2] == "frees_most" and function_of(path[1], control) in wanted)


def _with_unreadable(loaded: Loaded, record: Record, bike: Bike | None) -> Iterator[Field]:
    """List the fields, and those under keys that only a value which cannot be read stands at."""
    seen: set[Path] = set()
    for field in fields(loaded.ref.kind, record, bike):
        seen.add(field.path)
        yield field
    for trouble in loaded.troubles:
        unread = field_at(loaded.ref.kind, trouble.path, record, bike)
        if unread is not None and trouble.path not in seen:
            yield unread
