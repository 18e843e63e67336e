"""What became of a step, in the words of the last line."""

from paddock_tui.records.edits import MISSING, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.outcomes import said_of
from paddock_tui.store.saving import Clash, NotSaved, Saved

REF = Ref("session", "a")


def clash(found: object, new: object) -> str:
    edit = Edit(("setup", "controls", "traction"), 3, new)  # type: ignore[arg-type]
    return said_of(Clash(REF, edit, found))  # type: ignore[arg-type]


def test_all_is_well_without_a_word() -> None:
    assert said_of(None) == ""
    assert said_of(Saved(Step("back", ()))) == ""
    unnoted = Saved(Step("back", ()), unnoted="no space left on the disk")
    assert said_of(unnoted) == "saved, but only this run can undo it: no space left on the disk"


def test_a_clash_names_both_values_and_what_to_do() -> None:
    assert clash(7, 4) == (
        "not saved: another program set setup.controls.traction to 7; yours was 4, press again"
    )
    assert "to not known; yours was 4" in clash(MISSING, 4)
    assert "yours was not known" in clash(7, MISSING)
    assert "to a table" in clash({"x": 1}, 4)


def test_what_could_not_be_written_says_why_and_the_mend() -> None:
    assert said_of(NotSaved("the disk is full", "make room")) == "not saved: the disk is full; make room"
    assert said_of(NotSaved("the disk is full")) == "not saved: the disk is full"


def test_what_comes_from_a_file_is_printable() -> None:
    for said in (clash("\x1b[2J", "\u202e"), said_of(NotSaved("\x1b[2J", "\u202e"))):
        assert "\x1b" not in said
        assert "\u202e" not in said
