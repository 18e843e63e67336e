"""One file that cannot be written bars what is about it, in its order, and nothing else."""

from pathlib import Path

from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import NotSaved, Saved
from tests.desk.opened import NEXT, at_desk, typed

TOBIN = Ref("rider", "tobin")


def test_it_bars_what_is_about_it_in_its_order_and_nothing_else(garage: Path) -> None:
    desk, file = at_desk(garage), garage / "riders" / "tobin.toml"
    session = garage / "sessions" / "2026" / f"{NEXT.id}.toml"
    file.chmod(0o444)
    desk.do(typed(desk, TOBIN, ("note", "one")))
    assert [type(one) for one in desk.settled()] == [NotSaved]

    # Another record is written at once, again and again.
    for fatigue in ("3", "4"):
        desk.do(typed(desk, NEXT, ("fatigue", fatigue)))
        assert [type(one) for one in desk.settled()] == [Saved]
        assert f"fatigue = {fatigue}" in session.read_text(encoding="utf-8")

    # The same record waits for what came first, and shows both.
    desk.do(typed(desk, TOBIN, ("name", "Tobi")))
    assert {type(one) for one in desk.settled()} == {NotSaved}
    assert len(desk.unkept()) == 2
    assert all(done.refs == (TOBIN,) for done in desk.unkept())
    shown = desk.files.data(TOBIN)
    assert (shown["note"], shown["name"]) == ("one", "Tobi")
    assert '"one"' not in file.read_text(encoding="utf-8")

    # Once it can be written, the next edit of it brings all of them to the disk.
    file.chmod(0o644)
    desk.do(typed(desk, TOBIN, ("note", "two")))
    assert {type(one) for one in desk.settled()} == {Saved}
    assert desk.unkept() == ()
    written = file.read_text(encoding="utf-8")
    assert '"two"' in written
    assert '"Tobi"' in written
    desk.close()


def test_what_is_given_up_is_told_and_shows_no_more(garage: Path) -> None:
    desk, file = at_desk(garage), garage / "riders" / "tobin.toml"
    file.chmod(0o444)
    desk.do(typed(desk, TOBIN, ("note", "one")))
    desk.settled()
    told: list[tuple[Ref, ...]] = []
    desk.on_change.append(lambda change: told.append(change.refs))

    desk.undo()

    assert told == [(TOBIN,)]
    assert desk.files.data(TOBIN)["note"] != "one"
    assert desk.unkept() == ()
    desk.close()
