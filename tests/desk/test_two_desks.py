"""Two programs on one garage: each shows what the other does, and neither takes anything from the other."""

from pathlib import Path

from paddock_tui.desk.files.records import creating
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.outcomes import said_of
from paddock_tui.store.saving import Clash, Saved
from tests.desk.opened import NEXT, at_desk, typed
from tests.small import snapshot


def test_edits_of_different_facts_of_one_file_both_stand_and_each_is_undone_by_itself(garage: Path) -> None:
    one, two = at_desk(garage), at_desk(garage)
    before = snapshot(garage)
    mine, theirs = typed(one, NEXT, ("fatigue", "3")), typed(two, NEXT, ("setup.controls.traction", "6"))

    one.do(mine)
    two.do(theirs)

    assert isinstance(one.settled()[0], Saved)
    assert isinstance(two.settled()[0], Saved)
    one.poll()
    assert (one.files.data(NEXT)["fatigue"], one.files.data(NEXT)["setup"]["controls"]["traction"]) == (3, 6)
    assert one.undo() == "fatigue 2 -> 3"
    assert two.undo() == "traction control 3 -> 6 (more help)"
    one.close()
    two.close()
    assert snapshot(garage) == before


def test_the_same_fact_is_a_clash_that_names_both_values_and_needs_the_key_again(garage: Path) -> None:
    one, two = at_desk(garage), at_desk(garage)
    mine, theirs = typed(one, NEXT, ("fatigue", "3")), typed(two, NEXT, ("fatigue", "4"))
    two.do(theirs)
    two.close()

    one.do(mine)
    (clash,) = one.settled()

    assert isinstance(clash, Clash)
    assert said_of(clash) == "not saved: another program set fatigue to 4; yours was 3, press again"
    assert one.unkept() == ()
    assert one.files.data(NEXT)["fatigue"] == 4
    one.do(typed(one, NEXT, ("fatigue", "3")))
    assert isinstance(one.settled()[0], Saved)
    one.close()


def test_a_record_that_the_other_makes_is_told_and_listed(garage: Path) -> None:
    one, two = at_desk(garage), at_desk(garage)
    assert Ref("rider", "bo") not in one.files.listing("rider")
    step = creating(two.files, Ref("rider", "bo"), {"name": "Bo"})
    assert isinstance(step, Step)
    two.do(step)
    two.close()

    assert one.poll() == (Ref("rider", "bo"),)
    assert Ref("rider", "bo") in one.files.listing("rider")
    assert one.poll() == ()
    one.close()


def test_what_is_not_kept_follows_a_file_that_others_change(garage: Path) -> None:
    desk = at_desk(garage)
    file = garage / "sessions" / "2026" / f"{NEXT.id}.toml"
    step = typed(desk, NEXT, ("fatigue", "3"))
    file.chmod(0o444)
    desk.do(step)
    desk.settled()
    assert dict(desk.marks())[NEXT, ("fatigue",)].startswith("not saved: ")
    file.chmod(0o644)
    file.write_text(file.read_text().replace("slide = 3", "slide = 5"))

    assert desk.poll() == (NEXT,)
    data = desk.files.data(NEXT)
    assert (data["fatigue"], data["setup"]["controls"]["slide"]) == (3, 5)
    assert "fatigue = 3" in desk.text_with(NEXT)
    assert "slide = 5" in desk.text_with(NEXT)
    desk.try_again()
    assert isinstance(desk.settled()[0], Saved)
    assert dict(desk.marks()) == {}
    desk.close()
