"""What the program sends through a terminal: little for a key, nothing while idle, no command from a file."""

import signal
from pathlib import Path

from paddock_tui.store import half_typed
from tests.every import every
from tests.screens.rider import HAND
from tests.widgets.wire import Wire

DOWN = "\x1b[B"
ROOMS = ("s", "r", "p", "c", "b", "t", "g", "?", "m")

COMMANDS = ("\x1b]0;pwned\x07", "\x1b[2J", "\x9b31m", "pwned\x07", "\x7f", "\u202e", "\u200b")
"""What would give a terminal commands, or hide text, were it sent."""

EVIL = f"{''.join(COMMANDS)}[/foo] [red]x[/red] [@click=app.quit]y[/]"


def started(garage: Path, columns: int = 80, lines: int = 24, **settings: str) -> Wire:
    """Start the program on a garage, five minutes before anything is due."""
    code = (
        "import sys\nfrom paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )
    # What a terminal may be sent is decided while the interpreter starts.
    return Wire(code, columns, lines, settings, loaded="LANG" not in settings)


def quoted(text: str) -> str:
    """Write a text in TOML, whatever is in it."""
    return '"' + "".join(f"\\u{ord(char):04x}" if char not in " []/" else char for char in text) + '"'


def test_a_digit_and_an_arrow_cost_little_and_waiting_costs_nothing(garage: Path) -> None:
    with started(garage) as wire:
        wire.read_until("? help")
        wire.type("p" + DOWN * 5)
        wire.read_until("> wheelie control")
        arrow = wire.after(DOWN, mark=">│slide")
        digit = wire.after("6", mark="slide control 3 -> 6")
        assert "Slide control low" not in wire.shown
        assert "CARE 1 (1 to answer)" in wire.shown
        idle = wire.read(3.0, 3.0)
        wire.type("q")
        assert wire.ended() == 0
    assert len(arrow) <= 80
    assert len(digit) <= 450
    assert idle == b""


def spoilt(garage: Path) -> None:
    """Put commands into names, notes, chosen keys, unknown keys, and values that cannot be read."""
    evil = quoted(EVIL)
    file = garage / HAND
    text = file.read_text(encoding="utf-8")
    text = text.replace('aim = "drive out of 7 on the line, leave 4 alone"', f"aim = {evil}\nsaid = {evil}")
    text = text.replace('surface = "wet" ', f"surface = {evil} ").replace("slide = 3", f"slide = {evil}")
    file.write_text(f"{text}\n[notes.1]\ntext = {evil}\n\n[{evil}]\n{evil} = {evil}\n", encoding="utf-8")
    bike = garage / "bikes" / "magpie.toml"
    text = bike.read_text(encoding="utf-8").replace('name = "Magpie"', f"name = {evil}\n{evil} = {evil}")
    bike.write_text(f"{text}\n[controls.{evil}]\nkind = {evil}\n\n[modes.{evil}]\nnote = {evil}\n")
    day = garage / "days" / "2026-06-20-anvilfen.toml"
    text = day.read_text(encoding="utf-8").replace('organiser = "the fen club"', f"organiser = {evil}")
    day.write_text(f"{text}\n[timetable.{evil}.1]\nfrom = 09:00:00\nwhat = {evil}\n", encoding="utf-8")
    (garage / "venues" / "\x1b[31mred.toml").write_text(f"name = {evil}\n", encoding="utf-8")
    (garage / "riders" / "lost.toml").write_bytes(b'name = "\x1b]0;pwned\x07\n\xff')


def test_nothing_that_stands_in_a_file_commands_the_terminal(garage: Path) -> None:
    spoilt(garage)
    with started(garage, 100, 60) as wire:
        got = wire.read_until("? help")
        shown = wire.shown
        for key in ROOMS:
            got += wire.after(f"\x1b{key}", 0.1)
            shown += wire.shown
            got += wire.after("\x1b[F", 0.1)
            shown += wire.shown
        got += wire.after("\x1bg" + DOWN + "w")
        wire.type("\x1bq")
        assert wire.ended() == 0
    for command in COMMANDS:
        assert command.encode() not in got, command
    assert "[/foo]" in shown
    assert "[red]x[/red]" in shown
    assert "[@click=app.quit]y[/]" in shown


def test_what_is_half_typed_is_offered_again_after_a_signal(garage: Path) -> None:
    before = (garage / HAND).read_bytes()
    with started(garage) as wire:
        wire.read_until("? help")
        wire.type("p" + DOWN * 4 + "\r77")
        wire.read_until(">▌traction control      77")
        wire.signal(signal.SIGTERM)
        assert wire.ended() == 143
    assert (garage / HAND).read_bytes() == before
    with started(garage) as wire:
        wire.read_until("half typed")
        assert ">▌traction control      77" in wire.shown
        wire.after("\x1b")
        wire.type("q")
        assert wire.ended() == 0
    assert half_typed.take(garage) is None


@every(
    "settings",
    [
        {"NO_COLOR": "1"},
        {"TERM": "linux"},
        {"TERM": "vt100"},
        {"PADDOCK_THEME": "light"},
        {"PADDOCK_THEME": "plain"},
        {"PADDOCK_THEME": "dark"},
    ],
    ids=lambda settings: "=".join(*settings.items()),
)
def test_cursor_and_severity_are_told_by_weight_on_every_terminal(
    garage: Path, settings: dict[str, str]
) -> None:
    with started(garage, 80, 24, **settings) as wire:
        wire.read_until("? help")
        wire.type("p" + DOWN * 4 + "\r99\r")
        got = wire.read_until("HOLD 1")
        screen = wire.terminal
        wire.type("q")
        assert wire.ended() == 0
    # The console of Linux is drawn in ASCII.
    block = "#" if settings.get("TERM") == "linux" else "█"
    assert "1" in screen.look_of(f">{block}traction")
    assert {"1", "7"} <= screen.look_of("HOLD 1")
    assert {"1", "7"} <= screen.look_of("hold ")
    assert "1" not in screen.look_of("wheelie")
    if "NO_COLOR" in settings:
        codes = {code for line in screen.cells for _, look in line for code in look}
        assert codes <= {"1", "2", "3", "4", "7", "39", "49"}
    if settings.get("TERM"):
        assert b";5;" not in got
    assert b"38;2;" not in got


@every(
    "settings",
    [
        {"LANG": "C", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
        {"LANG": "C", "LC_ALL": ""},
    ],
)
def test_a_terminal_without_utf_8_gets_ascii_alone(garage: Path, settings: dict[str, str]) -> None:
    with started(garage, 80, 24, **settings) as wire:
        got = wire.read_until("? help")
        assert "-- sessions -- " in wire.shown
        for key in ROOMS if "PYTHONUTF8" in settings else ROOMS[:2]:
            got += wire.after(key, 0.1)
        wire.type("q")
        assert wire.ended() == 0
    assert got.isascii()


def test_a_terminal_that_draws_nothing_gets_the_pages_as_text(garage: Path) -> None:
    with started(garage, TERM="dumb") as wire:
        got = wire.read_until("go on with")
        assert wire.ended() == 0
    assert b"CARE 2" in got
    assert b"\x1b" not in got
