"""The sample garage: it reads without a trouble, shows every field, and names only what is there."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import DAY_STAGES, STAGES, Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.fields import ANY, declared, find_spec
from paddock_tui.records.garage import SCHEMA, Garage
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import GARAGE, Path, Ref, parse
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.records.shapes import Reference, is_id
from paddock_tui.records.shapes_of_bike import adjuster_shape, can_be_off, is_off
from paddock_tui.records.suspension import BY_HAND, Damping
from tests.every import every
from tests.sample import FILES, bike, data_of, named, read, records

PER_KIND = [pytest.param(kind, id=kind) for kind in CLASSES]
PER_FILE = [pytest.param(ref, id=str(ref)) for ref in FILES]


def set_ups() -> list[Any]:
    both = [*records(Session), *records(Profile)]
    return [pytest.param(bike(record.bike), record, id=name) for name, record in both]


def leaves(data: Mapping[str, Any], at: Path = ()) -> Iterator[tuple[Path, Any]]:
    """List every value of a file with its path."""
    for key, value in data.items():
        if isinstance(value, Mapping):
            yield from leaves(value, (*at, key))
        else:
            yield (*at, key), value


def fits(path: Path, pattern: Path) -> bool:
    return len(path) == len(pattern) and all(
        wanted in (ANY, key) for key, wanted in zip(path, pattern, strict=True)
    )


@every("ref", PER_FILE)
def test_every_file_reads_without_a_trouble_or_an_unknown_key(ref: Ref) -> None:
    found = read(ref)
    assert found.troubles == ()
    assert found.unknown == ()


@every("kind", PER_KIND)
def test_every_declared_field_stands_somewhere(kind: str) -> None:
    held = {path for ref in FILES if ref.kind == kind for path, _ in leaves(data_of(ref))}
    missing = [
        field.path for field in declared(CLASSES[kind]) if not any(fits(path, field.path) for path in held)
    ]
    assert missing == []


@every("ref", PER_FILE)
def test_figures_lie_in_the_bands_of_their_fields(ref: Ref) -> None:
    for path, raw in leaves(data_of(ref)):
        spec = find_spec(CLASSES[ref.kind], path)
        assert spec is not None
        assert spec.shape is not None
        band = spec.shape.band()
        value = spec.shape.load(raw)
        if band is None or isinstance(value, str):
            continue
        low, high, unit = band
        number = value.to(unit) if isinstance(value, Quantity) else value
        assert isinstance(number, int | float)
        assert low <= number <= high, path


@every("ref", PER_FILE)
def test_references_resolve(ref: Ref) -> None:
    for path, raw in leaves(data_of(ref)):
        spec = find_spec(CLASSES[ref.kind], path)
        if spec is not None and isinstance(spec.shape, Reference):
            assert Ref(spec.shape.kind, raw) in FILES, (path, raw)


@every("ref", PER_FILE)
def test_files_are_plain_tables_in_lines_that_fit(ref: Ref) -> None:
    text = FILES[ref].read_text(encoding="utf-8")
    assert is_id(ref.id)
    assert "[[" not in text
    assert text.endswith("\n")
    assert not text.endswith("\n\n")
    assert [line for line in text.splitlines() if len(line) > 100 or line != line.rstrip()] == []


def test_garage_is_of_the_format_this_program_writes() -> None:
    garage = read(GARAGE).record
    assert isinstance(garage, Garage)
    assert garage.schema == SCHEMA


@every("session", named(Session))
def test_session_is_named_after_its_date_number_and_bike(session: Session) -> None:
    name = f"{session.date}-{session.number}-{session.bike}"
    assert session.date is not None
    assert FILES[Ref("session", name)].parent.name == str(session.date.year)
    assert read(Ref("session", name)).record is session


@every("day", named(RidingDay))
def test_day_is_named_after_its_date_and_venue(day: RidingDay) -> None:
    assert read(Ref("day", f"{day.date}-{day.venue}")).record is day


# ---- what is set exists on its bike -------------------------------------------------------------


@every(("on", "record"), set_ups())
def test_controls_that_are_set_exist_and_lie_in_their_range(on: Bike, record: Session | Profile) -> None:
    for name, setting in record.setup.controls.items():
        control = on.controls[name]
        if setting == "off":
            assert can_be_off(control) or control.kind == "switch" or "off" in (control.choices or ()), name
        elif control.kind == "level":
            low, high = control.levels or (0, -1)
            assert isinstance(setting, int)
            assert low <= setting <= high, name
        else:
            assert setting in ((control.choices or ()) + (control.speeds or ()) or ("on",)), name


@every(("on", "record"), set_ups())
def test_the_riding_mode_exists_and_leaves_what_is_set(on: Bike, record: Session | Profile) -> None:
    if record.setup.mode is None:
        assert not on.modes
        return
    mode = on.modes[record.setup.mode]
    for name, setting in record.setup.controls.items():
        assert mode.fixes.get(name, setting) == setting, name
        limit = mode.limits.get(name, ())
        if is_off(on.controls[name], setting) and on.controls[name].off:
            assert name in (mode.off_allowed or ()), name
        elif limit and isinstance(limit[0], int):
            assert isinstance(setting, int)
            assert limit[0] <= setting <= int(limit[1]), name
        elif limit:
            assert setting in limit, name


@every(("on", "record"), set_ups())
def test_adjusters_exist_lie_in_their_range_and_on_a_step(on: Bike, record: Session | Profile) -> None:
    for name, value in record.setup.adjusters.items():
        shape = adjuster_shape(on.adjusters[name])
        low, high, _ = shape.band()
        assert low <= value <= high, name
        steps = (value - low) / shape.increment
        assert steps == pytest.approx(round(steps)), name
    assert set(record.counted) <= set(on.adjusters)


@every(("on", "record"), set_ups())
def test_damping_preset_and_offsets_are_the_bikes_own(on: Bike, record: Session | Profile) -> None:
    setup = record.setup
    if on.suspension is None:
        assert setup == SetUp(), "nobody wrote down what this bike has"
        return
    assert setup.damping is not None
    mode = Damping() if setup.damping == BY_HAND else on.damping[setup.damping]
    assert setup.preset is None or setup.preset in (mode.presets or ())
    for name, value in setup.offsets.items():
        low, high = mode.offsets[name].range or (0, -1)
        assert low <= value <= high, name


def test_one_set_up_keeps_a_count_that_its_damping_mode_does_not_use() -> None:
    kept = {
        name
        for name, session in records(Session)
        for adjuster in session.setup.adjusters
        if bike(session.bike).damping.get(session.setup.damping or "", Damping()).closes.get(adjuster, False)
    }
    assert kept == {"2026-06-20-4-magpie"}


@every("on", named(Bike))
def test_modes_and_damping_of_a_bike_name_what_it_has(on: Bike) -> None:
    for mode in on.modes.values():
        assert {*mode.fixes, *mode.limits, *(mode.off_allowed or ())} <= set(on.controls)
        assert not {name for name in mode.fixes if on.controls[name].outside_modes}
    for damping in on.damping.values():
        assert set(damping.closes) <= set(on.adjusters)


@every("session", named(Session))
def test_a_reason_stands_only_beside_something_that_changed(session: Session) -> None:
    before = read(Ref("session", session.copied_from)).record.setup if session.copied_from else SetUp()  # type: ignore[union-attr]
    for what, reasons in session.because.items():
        for name in reasons:
            old, new = getattr(before, what).get(name), getattr(session.setup, what).get(name)
            assert old is not None, name
            assert old != new, name


# ---- checklists -----------------------------------------------------------------------------------


def lists(in_day: bool) -> Iterator[Checklist]:
    for _, found in records(Checklist):
        if (found.stage in DAY_STAGES) == in_day:
            yield found


def test_every_stage_has_a_list_in_use() -> None:
    used = [found.stage for _, found in records(Checklist) if found.retired is None]
    assert sorted(used) == sorted(STAGES)


@pytest.mark.parametrize("in_day", [True, False])
def test_an_item_has_one_meaning_within_a_record(in_day: bool) -> None:
    items = [item for found in lists(in_day) for item in found.items]
    assert sorted(items) == sorted(set(items))


def test_ticks_of_a_session_are_items_of_its_lists() -> None:
    known = {item for found in lists(in_day=False) for item in found.items}
    for name, session in records(Session):
        assert set(session.checks) <= known, name


def test_ticks_of_a_day_are_items_of_its_lists() -> None:
    known = {item for found in lists(in_day=True) for item in found.items}
    for name, day in records(RidingDay):
        for entries in day.entries.values():
            for entry in entries.values():
                assert set(entry.checks) <= known, name


@every("found", named(Checklist))
def test_items_have_text_and_a_consequence_and_are_answered_by_real_places(found: Checklist) -> None:
    for name, item in found.items.items():
        assert item.text, name
        assert item.to_fix, name
        if item.answered_by is not None:
            spec = find_spec(Session, parse(item.answered_by) or ())
            assert spec is not None, name
            assert spec.shape is not None, name


@every(
    ("stage", "item"),
    [
        ("bike, morning", name)
        for name in ("brake-fluid", "pads", "lever-firm", "throttle-return", "kill-switch")
    ]
    + [
        ("bike, morning", name)
        for name in ("no-leaks", "bearings", "axles", "calipers", "tyres", "drain-plug")
    ]
    + [("before each session", "brake-lever"), ("after a fall", "forks-straight")],
)
def test_what_stops_or_holds_the_bike_together_is_a_hold(stage: str, item: str) -> None:
    used = [found for _, found in records(Checklist) if found.stage == stage and found.retired is None]
    assert used[0].items[item].to_fix == "hold"


def test_ids_in_the_files_are_the_only_ones_that_look_like_ids() -> None:
    """A day or session id spelled in a text must be one of this garage."""
    known = {ref.id for ref in FILES}
    for path in FILES.values():
        for found in re.findall(r"\b20\d\d-\d\d-\d\d-[a-z0-9-]+", path.read_text(encoding="utf-8")):
            assert found in known, (path.name, found)
