"""The session page: its facts in the order in which they become known, known or not."""

import functools
import re
from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.facts.checklists import RACING
from paddock_tui.pages.disputes import with_disputes
from paddock_tui.pages.entries import stands
from paddock_tui.pages.record import add_row, record_sections
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.setup import setup_sections
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.fields import ANY, declared, entry_of, find_table
from paddock_tui.records.fields_of_record import SET_UP, field_at
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.store.garage import Loaded

NEXT = "#"
"""In a place of the order: every number that is there, and the next one, to be filled in."""

ADD = "+"
"""At the end of a place of the order: a row by which an entry is added to the table."""

RACE = "race"
"""The heading of what only a session from a grid has."""

ORDER: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("outing", ("date", "number", "kind", "day", "bike", "rider", "tyres")),
    ("plan", ("start", "planned_time", "planned_laps", "aim", "aim_by", "copied_from", "taken_from")),
    (RACE, ("race", "penalties.#")),
    ("conditions", ("surface", "air", "track", "humidity", "air_pressure", "wind", "ice")),
    ("rider", ("slept", "visor")),
    ("fuel", ("fuel_in_tank", "fuel_added", "filled_to_brim")),
    (
        "tyre warmers",
        ("warmers", "warmers_on", "warmers_off", "warmers_at", "pressures.warmers"),
    ),
    ("pressures cold", ("pressures.cold",)),
    ("pressures leaving", ("pressures.leaving",)),
    ("dash and ignition", ("dash", "dash.values.+", "events.#")),
    ("out and back", ("went_out", "parked", "ridden_time", "ridden_laps", "distance")),
    ("pressures hot", ("pressures.hot", "pressures.+", "front_pressure_change", "rear_pressure_change")),
    ("feel", ("feel", "confidence", "fatigue", "did", "symptoms.#", "said", "aim_met")),
    ("laps", ("best_lap", "laps.#", "sectors.#", "top_speed", "top_revs")),
    (
        "inspected",
        ("look.front", "look.rear", "front_tread", "rear_tread", "front_travel_used", "rear_travel_used"),
    ),
    (
        "brakes and chain",
        ("lever", "front_pads", "rear_pads", "chain_slack", "chain_slack_stance", "chain_length"),
    ),
    ("incidents", ("happened", "incidents.#")),
    ("work done", ("work.#",)),
    ("notes", ("notes.#",)),
    ("sag", ("sag.front.alone", "sag.front.rider", "sag.rear.alone", "sag.rear.rider")),
)
"""The headings of the page, and what stands under each: values, tables, numbered ones, rows to add by."""

GROWING = (("counted",), ("because",), ("jobs",), ("corner_words",))
"""Tables that follow the order and can be added to; checks and acceptances have pages of their own."""

OWN = ("name", "made_for", "baseline", "note")
BELONGS = ("bike", "rider", "taken_from", "retired")
"""What a profile says of itself: the first above its set-up, the others below."""


def session_page(loaded: Loaded, heading: str, units: Units) -> Page:
    """Make the page of a session; what the order does not name follows under its own heading."""
    racing = loaded.data.get("kind") in RACING
    order = [(title, places) for title, places in ORDER if racing or title != RACE]
    sections = [Section(title, tuple(_rows(loaded, places, units))) for title, places in order]
    sections += _rest(loaded, sections, units)
    return with_disputes(Page(heading, tuple(sections)), loaded)


def without_laps(page: Page, why: str) -> Page:
    """Return a session page whose lap rows take no key and say why; the page as it is without a reason."""
    if not why:
        return page
    sections = tuple(
        attrs.evolve(
            section,
            rows=tuple(
                attrs.evolve(row, shut=why) if row.path[:1] in (("laps",), ("best_lap",)) else row
                for row in section.rows
            ),
        )
        for section in page.sections
    )
    return attrs.evolve(page, sections=sections)


def set_up_page(loaded: Loaded, bike: Bike | None, heading: str, units: Units) -> Page:
    """Make the set-up page of a session or a profile."""
    setup = getattr(loaded.record, SET_UP, None)
    if setup is None:
        return Page(heading, (_lost("it cannot be read"),))
    is_session = isinstance(loaded.record, Session)
    above = ("conditions", ("surface", "air", "track")) if is_session else ("profile", OWN)
    sections = [Section(above[0], tuple(_rows(loaded, above[1], units)))]
    if bike is not None:
        sections += setup_sections(loaded, setup, bike, units)
        sections += _not_in_use(loaded, bike, sections, units)
    elif is_session:
        return Page(heading, (_lost("the bike is not known: enter it on the session page"),))
    else:
        sections.append(_lost("the bike is not known: enter it below"))
    if not is_session:
        sections.append(Section("belongs to", tuple(_rows(loaded, BELONGS, units))))
        sections += _rest(loaded, sections, units)
    return with_disputes(Page(heading, tuple(sections)), loaded)


def _lost(said: str) -> Section:
    return Section("set-up", (Row("", said, kind="text", key="lost"),))


def _not_in_use(loaded: Loaded, bike: Bike, sections: list[Section], units: Units) -> Iterator[Section]:
    """Return what the set-up holds and the bike does not use, so that it can be seen and cleared."""
    shown = {row.path for section in sections for row in section.rows}
    if all(path in shown for path in _leaves(loaded.data.get(SET_UP), (SET_UP,))):
        return
    for section in record_sections(loaded, bike, units):
        rows = tuple(row for row in section.rows if row.path[:1] == (SET_UP,) and row.path not in shown)
        if rows:
            yield Section(section.title, rows, section.note)


def _leaves(value: object, at: Path) -> Iterator[Path]:
    if isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _leaves(inner, (*at, key))
    elif value is not None:
        yield at


def _rows(loaded: Loaded, places: tuple[str, ...], units: Units) -> Iterator[Row]:
    cls = CLASSES[loaded.ref.kind]
    for place in places:
        keys = tuple(place.split("."))
        spec = find_table(cls, keys[:-1]) if keys[-1] == ADD else None
        if spec is not None:
            yield add_row(loaded.ref, spec, keys[:-1])
            continue
        for path in _paths(loaded, keys):
            field = field_at(loaded.ref.kind, path)
            if field is not None and stands(path, _table(loaded.data, path[:-1])):
                row = _named(field_row(loaded, field, units), path)
                entry = entry_of(cls, path)
                yield row if entry is None else attrs.evolve(row, adds=entry[0], drops=entry[1])


def _paths(loaded: Loaded, place: Path) -> Iterator[Path]:
    """List the real paths of a place: of a value, of each value of a table, of numbered ones."""
    if NEXT not in place:
        yield from _below(loaded, place)
        return
    table = place[: place.index(NEXT)]
    there = _table(loaded.data, table)
    numbers = sorted((int(key) for key in there if re.fullmatch(r"[1-9]\d{0,3}", key)), key=int)
    for number in (*numbers, (numbers[-1] if numbers else 0) + 1):
        yield from _below(loaded, (*table, str(number)))


@functools.cache
def _declared(kind: str) -> Mapping[str, tuple[Path, ...]]:
    """List the declared paths of a kind by their first key; the page walks them at every key pressed."""
    found: dict[str, tuple[Path, ...]] = {}
    for one in declared(CLASSES[kind]):
        found[one.path[0]] = (*found.get(one.path[0], ()), one.path)
    return found


def _below(loaded: Loaded, place: Path) -> Iterator[Path]:
    """List the declared values at or below a place; under chosen keys further down, those that are there."""
    for pattern in _declared(loaded.ref.kind).get(place[0], ()):
        if len(pattern) < len(place) or not all(
            wanted in (ANY, key) for key, wanted in zip(place, pattern[: len(place)], strict=True)
        ):
            continue
        rest = pattern[len(place) :]
        if ANY not in rest:
            yield (*place, *rest)
        elif rest[-1] == ANY and ANY not in rest[:-1]:
            table = (*place, *rest[:-1])
            yield from ((*table, key) for key in _table(loaded.data, table))


def _rest(loaded: Loaded, above: list[Section], units: Units) -> Iterator[Section]:
    """Return what is known beyond the order: reasons of changes, counted adjusters, checks, acceptances.

    Of what is not known only rows to add by, for the tables that have no place in the order.
    """
    shown = {row.path for section in above for row in section.rows if row.kind != "add"}
    for section in record_sections(loaded, None, units):
        rows = tuple(
            row
            for row in section.rows
            if row.path not in shown
            and row.path[:1] != (SET_UP,)
            and (row.kind != "add" or row.path in GROWING)
        )
        if any(row.known or row.trouble or row.kind == "add" for row in rows):
            yield Section(section.title, rows, section.note)


def _named(row: Row, path: Path) -> Row:
    """Put the reading's or the number's name before the label of a value in a table."""
    if len(path) == 1:
        return row
    lead = {"laps": "lap", "events": "event", "symptoms": "symptom", "notes": "note"}.get(path[0], "")
    if path[0] in ("pressures", "look"):
        label = f"{label_of(path[1])} {row.label}"
    elif path[0] == "sag":
        label = f"{path[1]} {path[2]}, {row.label}"
    elif path[0] == "laps":
        label = f"lap {path[1]}"
    elif path[0] in ("incidents", "work"):
        label = f"{path[1]} {row.label}"
    elif lead:
        label = f"{lead} {path[1]} {row.label}"
    else:
        return row
    return attrs.evolve(row, label=label)


def _table(data: Mapping[str, object], path: Path) -> Mapping[str, object]:
    here: object = data
    for key in path:
        here = here.get(key) if isinstance(here, Mapping) else None
    return here if isinstance(here, Mapping) else {}
