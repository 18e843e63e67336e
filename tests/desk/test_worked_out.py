"""Taking over what was worked out: one step for all values, a reason where it cannot be."""

from pathlib import Path

from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.rules.core import SetValue
from paddock_tui.store.garage import GarageFiles

NEXT = Ref("session", "2026-06-20-4-magpie")
PAIR = (SetValue(("setup", "front_sprocket"), 15), SetValue(("setup", "rear_sprocket"), 41))


def test_all_values_of_an_answer_are_one_step(garage: Path) -> None:
    step = offering(GarageFiles(garage), NEXT, PAIR)

    assert isinstance(step, Step)
    assert step.label == "front sprocket 16 -> 15 teeth; rear sprocket 43 -> 41 teeth"
    (change,) = step.changes
    assert [edit.new for edit in change.edits] == [15, 41]  # type: ignore[union-attr]


def test_what_stands_so_already_is_said(garage: Path) -> None:
    put = SetValue(("setup", "front_sprocket"), 16)

    assert offering(GarageFiles(garage), NEXT, (put,)) == "it stands so already"


def test_a_profile_takes_no_measurement(garage: Path) -> None:
    put = SetValue(("fuel_added",), "3 l", "session")

    said = offering(GarageFiles(garage), Ref("profile", "magpie-ines-wet"), (put,))

    assert said == "a profile has no place for this: open a session"


def test_a_value_in_the_way_is_not_overwritten(garage: Path) -> None:
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    file.write_text(file.read_text() + '\n[pressures]\nhot = "warm"\n')

    said = offering(
        GarageFiles(garage), NEXT, (SetValue(("pressures", "hot", "set_to_front"), "2.50 bar", "session"),)
    )

    assert isinstance(said, str)
    assert "edit the file" in said
