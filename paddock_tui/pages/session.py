"""The session page: its facts in the order in which they become known, known or not."""

import re
from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.pages.record import record_sections
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.setup import setup_sections
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.fielding import SET_UP, field_at
from paddock_tui.records.fields import ANY, declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.of_bike import label_of
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.store.garage import Loaded

NEXT = "#"
"""In a place of the order: every number that is there, and the next one, to be filled in."""

ORDER: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("outing", ("date", "number", "kind", "day", "bike", "rider", "tyres")),
    ("plan", ("start", "planned_time", "planned_laps", "aim", "copied_from", "taken_from")),
    ("conditions", ("surface", "air", "track", "humidity", "air_pressure", "wind")),
    ("fuel", ("fuel_added", "filled_to_brim")),
    (
        "pressures before",
        (
            "warmers",
            "warmers_on",
            "warmers_off",
            "warmers_at",
            "pressures.cold",
            "pressures.warmers",
            "pressures.leaving",
        ),
    ),
    ("dash and key", ("dash", "events.#")),
    ("out and back", ("went_out", "parked", "ridden_time", "ridden_laps", "distance")),
    ("pressures hot", ("pressures.hot",)),
    ("feel", ("feel", "confidence", "fatigue", "symptoms.#", "said", "aim_met")),
    ("laps", ("best_lap", "laps.#", "top_speed", "top_revs")),
    ("looked at", ("look.front", "look.rear", "front_travel_used", "rear_travel_used")),
    ("brakes and chain", ("lever", "front_pads", "rear_pads", "chain_slack")),
    ("incidents", ("incidents.#",)),
    ("work done", ("work.#",)),
    ("notes", ("notes.#",)),
    ("sag", ("sag.front.alone", "sag.front.rider", "sag.rear.alone", "sag.rear.rider")),
)
"""The headings of the page, and what stands under each: a value, a table, or numbered tables."""


def session_page(loaded: Loaded, heading: str, units: Units) -> Page:
    """Make the page of a session; what the order does not name follows under its own heading."""
    sections = [Section(title, tuple(_rows(loaded, places, units))) for title, places in ORDER]
    shown = {row.path for section in sections for row in section.rows}
    sections += _rest(loaded, shown, units)
    return Page(heading, tuple(sections))


def set_up_page(loaded: Loaded, bike: Bike | None, heading: str, units: Units) -> Page:
    """Make the set-up page of a session or a profile."""
    record = loaded.record
    setup = getattr(record, SET_UP, None)
    if setup is None or bike is None:
        said = (
            "the bike is not known: enter it on the session page"
            if setup is not None
            else "it cannot be read"
        )
        return Page(heading, (Section("set-up", (Row("", said, kind="text", key="lost"),)),))
    sections = list(setup_sections(loaded, setup, bike, units))
    if isinstance(record, Session):
        conditions = Section("conditions", tuple(_rows(loaded, ("surface", "air", "track"), units)))
        sections.insert(0, conditions)
    else:
        own = tuple(_rows(loaded, ("name", "made_for", "baseline", "note"), units))
        sections.insert(0, Section("profile", own))
    return Page(heading, tuple(sections))


def _rows(loaded: Loaded, places: tuple[str, ...], units: Units) -> Iterator[Row]:
    for place in places:
        for path in _paths(loaded, tuple(place.split("."))):
            field = field_at(loaded.ref.kind, path)
            if field is not None:
                row = field_row(loaded, field, units)
                yield _named(row, path)


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


def _below(loaded: Loaded, place: Path) -> Iterator[Path]:
    """List the declared values at or below a place; under chosen keys further down, those that are there."""
    for one in declared(CLASSES[loaded.ref.kind]):
        if len(one.path) < len(place) or not all(
            wanted in (ANY, key) for key, wanted in zip(place, one.path[: len(place)], strict=True)
        ):
            continue
        rest = one.path[len(place) :]
        if ANY not in rest:
            yield (*place, *rest)
        elif rest[-1] == ANY and ANY not in rest[:-1]:
            table = (*place, *rest[:-1])
            yield from ((*table, key) for key in _table(loaded.data, table))


def _rest(loaded: Loaded, shown: set[Path], units: Units) -> Iterator[Section]:
    """Give what is known beyond the order: reasons of changes, counted adjusters, checks, acceptances."""
    for section in record_sections(loaded, None, units):
        rows = tuple(row for row in section.rows if row.path not in shown and row.path[0] != SET_UP)
        if any(row.known or row.trouble for row in rows):
            yield Section(section.title, rows, section.note)


def _named(row: Row, path: Path) -> Row:
    """Put the reading's or the number's name before the label of a value in a table."""
    if len(path) == 1:
        return row
    lead = {"laps": "lap", "events": "key", "symptoms": "symptom", "notes": "note"}.get(path[0], "")
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
