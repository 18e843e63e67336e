"""What the program sends: few bytes for a key, none while idle, none that came from a file."""

import signal
from pathlib import Path

from paddock_tui.store import half_typed
from tests.widgets.wire import Wire

SESSION = "sessions/2026/2026-06-20-4-magpie.toml"
DOWN = "\x1b[B"


def test_without_colour_nothing_is_painted_black_on_black(garage: Path) -> None:
    with Wire(program(garage), settings={"NO_COLOR": "1"}) as wire:
        got = wire.read_until("in hand")
        wire.type("q")
        assert wire.ended() == 0
    assert b"38;5;16m\x1b[48;5;16m" not in got
    assert b"38;5;16;48;5;16" not in got


def program(garage: Path) -> str:
    return (
        "import sys\nfrom paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )


def test_a_digit_and_an_arrow_cost_little_and_waiting_costs_nothing(garage: Path) -> None:
    with Wire(program(garage)) as wire:
        wire.read_until("in hand")
        wire.type("p")
        wire.read_until("slide")
        wire.after(DOWN * 5)
        arrow = wire.after(DOWN)
        digit = wire.after("6")
        wire.read(1.0, 2.0)
        idle = wire.read(3.0, 3.0)
        wire.type("q")
        assert wire.ended() == 0
    assert b"slide 3 -> 6" in digit
    assert len(arrow) <= 300
    assert len(digit) <= 600
    assert idle == b""


def test_nothing_that_stands_in_a_file_commands_the_terminal(garage: Path) -> None:
    file = garage / SESSION
    evil = '"\\u001b]0;pwned\\u0007\\u001b[2J \\u009b31m [/foo] [red]x[/red] \\u202e \\u200b"'
    text = file.read_text(encoding="utf-8")
    text = text.replace('aim = "drive out of 7 on the line, leave 4 alone"', f"aim = {evil}\nsaid = {evil}")
    file.write_text(text + f"\n[notes.1]\ntext = {evil}\n", encoding="utf-8")
    bike = garage / "bikes" / "magpie.toml"
    bike.write_text(bike.read_text().replace('name = "Magpie"', f"name = {evil}\nodd = {evil}"))
    with Wire(program(garage), columns=100, lines=60) as wire:
        got = wire.read_until("in hand")
        for key in ("s", "r", "p", "c", "b", "g", "?", "m"):
            got += wire.after(key)
        wire.type("q")
        assert wire.ended() == 0
    assert b"\x1b]0;pwned" not in got
    assert b"\x1b[2J" not in got
    assert "\x9b".encode() not in got
    assert "\u202e".encode() not in got
    assert "\u200b".encode() not in got
    assert b"[/foo]" in got
    assert b"[red]x" in got


def test_what_is_half_typed_is_offered_again_after_a_signal(garage: Path) -> None:
    before = (garage / SESSION).read_bytes()
    with Wire(program(garage)) as wire:
        wire.read_until("in hand")
        wire.type("p")
        wire.read_until("slide")
        wire.after(DOWN * 4)
        wire.after("77")
        wire.signal(signal.SIGTERM)
        assert wire.ended() == 128 + signal.SIGTERM
    assert (garage / SESSION).read_bytes() == before
    with Wire(program(garage)) as wire:
        assert b"half typed" in wire.read_until("half typed")
        wire.type("\x1b")
        wire.read()
        wire.type("q")
        assert wire.ended() == 0
    assert half_typed.take(garage) is None


def test_a_terminal_that_draws_nothing_gets_the_pages_as_text(garage: Path) -> None:
    with Wire(program(garage), settings={"TERM": "dumb"}) as wire:
        got = wire.read_until("go on with")
        assert wire.ended() == 0
    assert b"CARE 2" in got
    assert b"\x1b" not in got
