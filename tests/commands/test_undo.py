"""`undo` and `redo`: steps of any run, one at a time, told in words and by the status."""

from pathlib import Path

from tests.commands.running import NEXT, Runner, spoil
from tests.small import snapshot


def test_steps_of_other_runs_are_taken_back_and_done_again_one_at_a_time(garage: Path, run: Runner) -> None:
    before = snapshot(garage)
    run("set", garage, NEXT, "setup.controls.traction=6")
    run("set", garage, NEXT, "setup.controls.traction=7", "fatigue=3")
    after = snapshot(garage)

    first, second, third = (run("undo", garage) for _ in range(3))

    assert first.status == second.status == 0
    assert first.out.startswith("undone: traction control 6 -> 7 (more help); fatigue 2 -> 3 (of ")
    assert second.out.startswith("undone: traction control 3 -> 6 (more help) (of ")
    assert (third.status, third.out, third.err) == (3, "", "there is nothing to undo\n")
    assert snapshot(garage) == before
    assert run("redo", garage).out.startswith("done again: traction control 3 -> 6")
    assert run("redo", garage).status == 0
    assert run("redo", garage).err == "there is nothing to do again\n"
    assert snapshot(garage) == after


def test_a_value_that_somebody_changed_since_is_left_and_the_one_before_it_comes_next(
    garage: Path, run: Runner
) -> None:
    run("set", garage, NEXT, "fatigue=3")
    run("set", garage, NEXT, "setup.controls.traction=6")
    spoil(garage, "traction = 6 ", "traction = 9 ")
    theirs = snapshot(garage)

    refused = run("undo", garage)

    assert refused.status == 3
    assert "setup.controls.traction was changed meanwhile to 9" in refused.err
    assert snapshot(garage) == theirs
    assert run("undo", garage).out.startswith("undone: fatigue 2 -> 3")
    assert run("undo", garage).status == 3


def test_without_a_journal_there_is_nothing_to_undo_and_nothing_else_is_lost(
    garage: Path, run: Runner
) -> None:
    run("set", garage, NEXT, "fatigue=3")
    for path in (garage / ".paddock" / "journal").iterdir():
        path.unlink()

    assert run("undo", garage).err == "there is nothing to undo\n"
    assert "fatigue = 3" in (garage / "sessions" / "2026" / f"{NEXT}.toml").read_text()
    assert run("set", garage, NEXT, "fatigue=4").status == 0
    assert run("undo", garage).status == 0
