"""Ctrl+c is heard by the input thread: a loop that does not answer is left, and what was typed is saved."""

from pathlib import Path

from paddock_tui.store import half_typed
from tests.widgets.wire import Wire

CODE = """
import datetime as dt, time
from paddock_tui.app import run
from paddock_tui.screens.main import MainScreen
real = MainScreen.on_mount
def on_mount(self):
    real(self)
    self.set_timer(float({after!r}), lambda: time.sleep(60))
MainScreen.on_mount = on_mount
raise SystemExit(run({garage!r}, lambda: dt.datetime(2026, 6, 20, 12, 55)))
"""


def test_ctrl_c_ends_what_does_not_answer_and_keeps_what_was_typed(garage: Path) -> None:
    with Wire(CODE.format(garage=str(garage), after=2.5)) as wire:
        wire.read_until("? help")
        wire.type("e")
        wire.read()
        wire.type("t6 sl")
        wire.read_until("t6 sl")
        wire.read(quiet=2.5)
        wire.type("\x03")
        sent = wire.read(quiet=3.0)

        assert wire.process.wait(10) == 130

    assert b"\x1b[?1049l" in sent
    half = half_typed.take(garage)
    assert half is not None
    assert half.text == "t6 sl"


def test_ctrl_c_leaves_a_loop_that_answers_alone(garage: Path) -> None:
    with Wire(CODE.format(garage=str(garage), after=3600)) as wire:
        wire.read_until("? help")
        wire.type("\x03")
        wire.read(quiet=1.5)

        assert wire.process.poll() is None
        wire.type("q")
        assert wire.process.wait(10) == 0
