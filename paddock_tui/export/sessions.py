"""Sessions, their laps, readings and settings as tables."""

from collections.abc import Callable, Iterator

from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import glances, order
from paddock_tui.export.cells import ColumnsOf, cell, cells, columns, declared_columns
from paddock_tui.export.table import Column, ExportScope, Row, Table, fixed
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import SET_UP, fields
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.race import Race
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.session_parts import Feel, PressureReading, Symptom
from paddock_tui.records.shapes import Number, Whole

SESSION = Column("session", "id of the session", joins="sessions")

_PERSONAL = {"health": ("fatigue",), "words": ("said",)}
"""What is personal in a session: left out unless asked for by name."""


def sessions_of(
    desk: LooksAt, wanted: ExportScope, seen: Callable[[int, int], None]
) -> Iterator[tuple[Ref, Session]]:
    """Return the sessions that are wanted, oldest first; those that cannot be read are left out.

    `seen` hears how many were looked at, of how many.
    """
    all_of_them = sorted(glances(desk.files), key=order)
    for place, one in enumerate(all_of_them):
        seen(place, len(all_of_them))
        if wanted.since is not None and one.date < wanted.since:
            continue
        loaded = desk.files.read(one.ref)
        session = loaded.record if loaded is not None else None
        if not isinstance(session, Session):
            continue
        if (wanted.bike and session.bike != wanted.bike) or (wanted.rider and session.rider != wanted.rider):
            continue
        yield one.ref, session


def _declared(wanted: ExportScope) -> tuple[ColumnsOf, ...]:
    left = (key for what, keys in _PERSONAL.items() if what not in wanted.personal for key in keys)
    return declared_columns(Session, leave_out=("retired", *left))


_FEEL = declared_columns(Feel, "feel_")
_RACE = declared_columns(Race, "race_")


def _session_columns(wanted: ExportScope) -> tuple[Column, ...]:
    ridden = Column("was_ridden", "whether it has a parked time, a lap, or a hot pressure after going out")
    return (SESSION, *columns(_declared(wanted)), ridden, *columns(_FEEL), *columns(_RACE))


def _session_rows(_: LooksAt, name: str, session: Session, wanted: ExportScope) -> Iterator[Row]:
    found = _declared(wanted)
    feel = cells(session.feel, _FEEL)
    race = cells(session.race, _RACE)
    yield (name, *cells(session, found), is_ridden(session), *feel, *race)


def _lap_rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
    for number in sorted(session.laps, key=int):
        lap = session.laps[number]
        yield name, int(number), lap.seconds, lap.mark or None


_READING = declared_columns(PressureReading)


def _reading_rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
    for key, reading in session.pressures.items():
        yield (name, key, *cells(reading, _READING))


_SYMPTOM = declared_columns(Symptom)


def _symptom_rows(_: LooksAt, name: str, session: Session, __: ExportScope) -> Iterator[Row]:
    for number in sorted(session.symptoms, key=int):
        yield (name, int(number), *cells(session.symptoms[number], _SYMPTOM))


def _setting_rows(desk: LooksAt, name: str, session: Session, _: ExportScope) -> Iterator[Row]:
    bike = bike_of(desk.files, Ref("session", name))
    # Of all the checks, laps and readings of a session no field is made: only those of its set-up are asked.
    bare = Session(setup=session.setup)
    for field in fields("session", bare, bike):
        value = value_at(bare, field.path) if field.path[0] == SET_UP else None
        if value is None:
            continue
        unit = field.shape.unit if isinstance(field.shape, Number | Whole) else ""
        if isinstance(value, Quantity):
            unit = value.unit
        number = cell(value)
        helped = _help_percent(field.path[-1], value, bike) if field.path[1] == "controls" else None
        yield (
            name,
            spell(field.path),
            field.label,
            str(cell(value)),
            None if isinstance(number, str | bool) else number,
            unit or None,
            helped,
        )


def _help_percent(name: str, value: object, bike: Bike | None) -> int | None:
    """Return the share of the most help in %; None where the bike's file does not tell it, or off."""
    control = bike.controls.get(name) if bike is not None else None
    levels = levels_of(name, control) if control is not None else None
    scale = levels.help_if_known() if levels is not None else None
    if scale is None or not isinstance(value, int | str) or scale.is_off(value):
        return None
    try:
        return round(100 * scale.help_of(value))
    except ValueError:
        return None


SESSIONS = Table("sessions", "one row a session, with all its single values", _session_columns, _session_rows)
LAPS = Table(
    "laps",
    "one row a lap, in the order ridden",
    fixed(
        SESSION,
        Column("number", "number of the lap"),
        Column("lap_s", "lap time", "s"),
        Column("mark", "out, in or traffic; empty for a clean lap"),
    ),
    _lap_rows,
)
READINGS = Table(
    "readings",
    "one row a reading of the tyre pressures (gauge)",
    fixed(SESSION, Column("reading", "cold, leaving, hot or another name"), *columns(_READING)),
    _reading_rows,
)
SYMPTOMS = Table(
    "symptoms",
    "one row for each thing the bike did",
    fixed(SESSION, Column("number", "number of the symptom"), *columns(_SYMPTOM)),
    _symptom_rows,
)
SETTINGS = Table(
    "settings",
    "one row for each value of a session's set-up",
    fixed(
        SESSION,
        Column("path", "where the value stands in the session's file"),
        Column("label", "what it is called"),
        Column("value", "the value as text, in the bike's own numbers and words"),
        Column("number", "the value where it is a number, in the unit beside it"),
        Column("unit", "the unit of the number"),
        Column(
            "help_percent",
            "share of the most help this bike offers; empty: no aid, off, not told",
            "%",
        ),
    ),
    _setting_rows,
)
