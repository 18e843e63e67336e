"""Tables that grow: their declaration at a path, and the entry that a value lies in."""

from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.fields import entry_of, find_table
from paddock_tui.records.garage import Garage
from paddock_tui.records.paths import Path, parse
from paddock_tui.records.people import Rider
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from tests.every import every


def path(text: str) -> Path:
    found = parse(text) if text else ()
    assert found is not None
    return found


@every(
    ("record", "at", "label"),
    [
        (Bike, "controls", "controls"),
        (Bike, "controls.traction.effects", "effects"),
        (Bike, "modes.wet.fixes", "fixes"),
        (Bike, "damping.live.offsets", "offsets"),
        (Bike, "torque_curve", "torque curve"),
        (RidingDay, "timetable", "timetable"),
        (RidingDay, "entries.ines.magpie.checks", "checks of the day"),
        (Session, "dash.values", "on the dash"),
        (Session, "setup.controls", "controls"),
        (Session, "because", "changes"),
        (Session, "laps", "laps"),
        (Profile, "counted", "counted"),
        (Checklist, "items", "items"),
        (Garage, "limits", "limits"),
    ],
)
def test_the_declaration_of_a_table(record: type, at: str, label: str) -> None:
    spec = find_table(record, path(at))

    assert spec is not None
    assert spec.label == label
    assert spec.keys


@every(
    ("record", "at"),
    [
        (Bike, ""),
        (Bike, "name"),
        (Bike, "front"),
        (Bike, "nothing"),
        (Bike, "controls.traction"),
        (Bike, "controls.traction.kind"),
        (Bike, "controls.traction.nothing"),
        (Bike, "torque_curve.8000"),
        (Bike, "torque_curve.8000.x"),
        (RidingDay, "timetable.slow"),
        (RidingDay, "entries.ines"),
        (RidingDay, "entries.ines.magpie"),
        (Session, "dash"),
        (Session, "setup"),
        (Session, "laps.1"),
        (Rider, "limits"),
        (Rider, "units"),
        (Garage, "limits.fuel"),
    ],
)
def test_what_is_no_table_that_grows(record: type, at: str) -> None:
    assert find_table(record, path(at)) is None


@every(
    ("record", "at", "table", "entry"),
    [
        (Bike, "controls.traction.levels", "controls", "controls.traction"),
        (Bike, "controls.traction", "controls", "controls.traction"),
        (Bike, 'controls.a.effects."up only".shifts', "controls.a.effects", 'controls.a.effects."up only"'),
        (Bike, "modes.wet.use", "modes", "modes.wet"),
        (Bike, "modes.wet.fixes.traction", "modes.wet.fixes", "modes.wet.fixes.traction"),
        (Bike, "torque_curve.8000", "torque_curve", "torque_curve.8000"),
        (RidingDay, "timetable.slow.1.from", "timetable", "timetable.slow.1"),
        (RidingDay, "entries.ines.magpie.noise.reading", "entries", "entries.ines.magpie"),
        (RidingDay, "entries.a.b.checks.oil.at", "entries.a.b.checks", "entries.a.b.checks.oil"),
        (Session, "laps.3", "laps", "laps.3"),
        (Session, "pressures.hot.front", "pressures", "pressures.hot"),
        (Session, "sag.front.alone.pushed", "sag", "sag.front.alone"),
        (Session, "because.controls.traction.why", "because", "because.controls.traction"),
        (Session, "setup.controls.traction", "setup.controls", "setup.controls.traction"),
        (Session, "dash.values.traction", "dash.values", "dash.values.traction"),
        (Garage, "limits.fuel.reserve", "limits", "limits.fuel.reserve"),
    ],
)
def test_the_innermost_entry_around_a_value(record: type, at: str, table: str, entry: str) -> None:
    assert entry_of(record, path(at)) == (path(table), path(entry))


@every(
    ("record", "at"),
    [
        (Bike, ""),
        (Bike, "name"),
        (Bike, "front.travel"),
        (Bike, "nothing.here"),
        (Bike, "controls"),
        (RidingDay, "timetable.slow"),
        (Session, "dash.read"),
        (Session, "setup.mode"),
        (Rider, "limits.heat_cycles"),
    ],
)
def test_a_value_in_no_entry(record: type, at: str) -> None:
    assert entry_of(record, path(at)) is None
