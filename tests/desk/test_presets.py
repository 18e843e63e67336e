"""Presets at the desk: typed like any value, hand damping started from one in one undoable step."""

from pathlib import Path

from paddock_tui.advice.presets import moved_words, preset_brings
from paddock_tui.desk import Desk
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.desk.files.preset_names import preset_at, renaming_preset
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.setup import SetUp
from tests.desk.opened import NEXT, at_desk, typed
from tests.small import snapshot

MAGPIE = Ref("bike", "magpie")


def held(desk: Desk) -> tuple[Bike, SetUp]:
    situation = desk.assembled(NEXT).situation
    assert situation.bike is not None
    assert situation.setup is not None
    return situation.bike, situation.setup


def test_hand_damping_starts_from_a_presets_clicks_in_one_step_and_back(garage: Path) -> None:
    desk = at_desk(garage)
    desk.do(typed(desk, NEXT, ("setup.damping", "motor-set")))
    desk.do(typed(desk, NEXT, ("setup.preset", "bumpy track")))
    desk.settled()
    before = snapshot(garage)

    step = offering(desk.files, NEXT, preset_brings(*held(desk)))
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    _, setup = held(desk)
    assert (setup.damping, setup.preset) == ("by-hand", "bumpy track")
    assert (setup.adjusters["front-rebound"], setup.adjusters["rear-compression"]) == (11, 14)
    assert moved_words(*held(desk)) == "bumpy track: as it is built"
    desk.do(typed(desk, NEXT, ("setup.adjusters.front-rebound", "9")))
    assert moved_words(*held(desk)) == "bumpy track: front rebound -2"

    desk.undo()
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


def test_what_a_preset_sets_is_typed_like_any_value(garage: Path) -> None:
    desk = at_desk(garage)
    desk.do(typed(desk, MAGPIE, ("damping.live.preset_values.keen.offsets.kerbs", "1")))
    desk.settled()

    assert moved_words(*held(desk)) == "keen: mid corner -1, kerbs -1"
    text = (garage / "bikes/magpie.toml").read_text()
    assert "kerbs = 1" in text.partition("[damping.live.preset_values.keen.offsets]")[2]


def test_a_preset_is_renamed_with_its_values_and_every_set_up_and_back(garage: Path) -> None:
    desk = at_desk(garage)
    before = snapshot(garage)

    step = renaming_preset(desk.files, MAGPIE, "live", "keen", "eager  track")
    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()

    text = (garage / "bikes/magpie.toml").read_text()
    assert 'presets = ["calm", "eager track", "rough road"]' in text
    assert '[damping.live.preset_values."eager track".offsets]' in text
    assert "keen" not in text
    bike, setup = held(desk)
    assert setup.preset == "eager track"
    assert moved_words(bike, setup) == "eager track: mid corner -1"
    assert not [name for name, data in snapshot(garage).items() if b'preset = "keen"' in data]
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


def test_a_preset_takes_no_name_that_is_there_or_cannot_be_one(garage: Path) -> None:
    files = at_desk(garage).files
    for old, new in (("keen", "calm"), ("keen", "a.b"), ("keen", " "), ("nothing", "new")):
        assert isinstance(renaming_preset(files, MAGPIE, "live", old, new), InputError)


def test_where_a_preset_stands_is_told_from_every_other_value() -> None:
    assert preset_at(("damping", "live", "preset_values", "keen", "use")) == ("live", "keen")
    assert preset_at(("damping", "live", "presets")) is None
    assert preset_at(("controls", "traction", "kind")) is None
