"""The whole job by keyboard: set up, read the findings, accept, mend, record; and what the files hold."""

from pathlib import Path

from paddock_tui.__main__ import main
from paddock_tui.records.paths import Ref
from tests.screens.rider import HAND, Rider
from tests.small import snapshot

MADE = "sessions/2026/2026-06-20-5-magpie.toml"


TAKEN = {
    "traction = 3                # as it was in the dry",
    "slide = 3",
    "front-abs = 4",
    "engine-braking = 3",
    'throttle = "even"',
    "front-preload = 6.5",
    "rear-preload = 4",
    "front-rebound = 9           # for by-hand; live damping does its own",
}
PUT = {
    "traction = 8                # as it was in the dry",
    "slide = 6",
    "wheelie = 4",
    "front-abs = 3",
    "engine-braking = 2",
    'throttle = "gentle"',
    "front-preload = 7",
    "rear-preload = 4.5",
    "front-rebound = 10           # for by-hand; live damping does its own",
    "rear-rebound = 9",
}
"""The lines of the session in hand before and after the set-up below, comments kept."""


async def test_set_up_judge_accept_mend_and_record_leave_exactly_that_in_the_files(garage: Path) -> None:
    before = snapshot(garage)
    rider = Rider(garage)
    async with rider.app.run_test(size=(80, 24)) as rider.pilot:
        await _accept_and_mend(rider, garage, before)
        await _set_up(rider)
        # The next session: copied, but for the surface, which is asked.
        await rider.types("escape n")
        await rider.types("text:damp enter")
        assert rider.app.main.place.subject == Ref("session", "2026-06-20-5-magpie")
        await _record(rider)
        screen = rider.verdict.split()[0]
        await rider.types("q")
    rider.desk.close()

    after = snapshot(garage)
    assert {name for name in after if after[name] != before.get(name)} == {HAND, MADE}
    assert _changed(before[HAND].decode(), after[HAND].decode()) == (TAKEN, PUT)
    made = after[MADE].decode()
    for line in ('surface = "damp"', 'front = "2.41 bar"', 'rear = "30 psi"', '9 = "1:53.900"'):
        assert line in made
    assert "11 =" not in made
    status = main(["check", str(garage), "--session", "2026-06-20-5-magpie", "--at", "2026-06-20T12:55"])
    assert screen in (("NO",), ("CARE", "NOT"), ("HOLD",))[status]


async def _accept_and_mend(rider: Rider, garage: Path, before: dict[str, bytes]) -> None:
    """Accept the serious finding with a reason and take that back; apply a remedy and undo it."""
    await rider.types("r")
    assert rider.verdict.startswith("CARE 2 (1 to answer)")
    await rider.types("a")
    await rider.types("text:behind_the_instructor enter")
    assert rider.verdict.startswith("CARE 2 (0 to answer)")
    assert b"[accepted.little-traction-help-in-the-wet.traction]" in snapshot(garage)[HAND]
    await rider.types("a")
    assert rider.verdict.startswith("CARE 2 (1 to answer)")
    assert snapshot(garage) == before
    await rider.types("f")
    assert "serious little-traction-help-in-the-wet traction" not in rider.findings()
    await rider.types("u")
    assert snapshot(garage) == before


async def _set_up(rider: Rider) -> None:
    """Change six levels and four adjusters; findings come and go with them."""
    await rider.types("p")
    for name, keys in (
        ("traction", "1 2 enter"),
        ("traction", "8 enter"),
        ("slide", "6"),
        ("wheelie", "4"),
        ("front-abs", "3"),
        ("engine-braking", "2"),
        ("throttle", "enter ctrl+u text:gentle enter"),
    ):
        rider.to("setup", "controls", name)
        await rider.types(keys)
        if keys.startswith("1"):
            assert rider.verdict.startswith("HOLD 1")
    assert rider.verdict.startswith("NOT YET 5 missing")
    for name, keys in (
        ("front-preload", "enter ctrl+u text:7 enter"),
        ("rear-preload", "+"),
        ("front-rebound", "1 0 enter"),
        ("rear-rebound", "9 enter"),
    ):
        rider.to("setup", "adjusters", name)
        await rider.types(keys)


async def _record(rider: Rider) -> None:
    """Enter hot pressures in two units and ten laps; what cannot be read is refused, and kept."""
    await rider.types("s")
    rider.to("pressures", "hot", "front")
    await rider.types("2 text:,41 enter")
    rider.to("pressures", "hot", "rear")
    await rider.types("3 0 text:psi enter")
    for number in range(1, 11):
        rider.to("laps", str(number))
        # Nobody has stamped that it went out: the first lap is asked about.
        sure = " enter" if number == 1 else ""
        await rider.types(f"1 text::{44 + number}.{number}00 enter{sure}")
    rider.to("laps", "11")
    await rider.types("1 text::75.2 enter")
    assert rider.app.main.board.half_typed is not None
    await rider.types("escape")


def _changed(before: str, after: str) -> tuple[set[str], set[str]]:
    old, new = before.splitlines(), after.splitlines()
    return {line for line in old if line not in new}, {line for line in new if line not in old}


async def test_what_another_program_does_is_said_and_the_rest_goes_on(garage: Path) -> None:
    rider = Rider(garage)
    async with rider.app.run_test(size=(40, 20)) as rider.pilot:
        await rider.types("p")
        file = garage / HAND
        file.write_text(file.read_text().replace("traction = 3 ", "traction = 8 "))
        rider.app.main.follower.poll()
        assert "little-traction-help-in-the-wet traction" not in " ".join(rider.findings())
        (garage / "bikes" / "magpie.toml").write_text("x = [")
        rider.app.main.follower.poll()
        await rider.types("r s p g")
        (garage / "bikes" / "magpie.toml").unlink()
        rider.app.main.follower.poll()
        await rider.types("r s p g")
        assert any("magpie" in row.label for row in rider.app.main.board.page.rows())
        # A file without its write bit: said, the file is whole, and the edit stays on the screen.
        file.chmod(0o444)
        await rider.types("s")
        rider.to("aim")
        await rider.types("enter end text:x enter")
        await rider.types("down")
        assert 'aim = "drive out of 7 on the line, leave 4 alone"' in file.read_text()
        rider.to("aim")
        row = rider.app.main.board.cursor_row
        assert row is not None
        assert row.value == "drive out of 7 on the line, leave 4 alonex"
        await rider.types("escape q")
        assert rider.app.is_running
        await rider.types("enter")
    rider.desk.close()


async def test_a_ridden_session_asks_once_before_what_is_known_of_it_changes(garage: Path) -> None:
    before = snapshot(garage)
    rider = Rider(garage)
    async with rider.app.run_test(size=(80, 24)) as rider.pilot:
        rider.app.main.open(Ref("session", "2026-05-16-3-magpie"))
        rider.to("fatigue")
        await rider.types("5")
        assert snapshot(garage) == before
        await rider.types("escape")
        assert snapshot(garage) == before
        await rider.types("5")
        await rider.types("enter")
        await rider.types("4")
        assert b"fatigue = 4" in snapshot(garage)["sessions/2026/2026-05-16-3-magpie.toml"]
        await rider.types("u u q")
    rider.desk.close()
    assert snapshot(garage) == before
