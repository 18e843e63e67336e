"""Leaving when told to or when the link goes: through a real terminal."""

import signal
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.widgets.signals import Leaver, run_child
from tests.widgets.wire import Wire


@pytest.fixture
def saves(tmp_path: Path) -> Path:
    return tmp_path / "saves"


def started(saves: Path) -> Wire:
    wire = Wire(f"from tests.widgets.link_app import main\nmain({str(saves)!r})\n")
    wire.read_until("front ABS")
    return wire


LOSSES: dict[str, tuple[Callable[[Wire], None], int]] = {
    "hang-up": (lambda wire: wire.signal(signal.SIGHUP), 129),
    "termination": (lambda wire: wire.signal(signal.SIGTERM), 143),
    "terminal closed": (lambda wire: wire.hang_up(), 129),
}


@pytest.mark.parametrize("loss", LOSSES)
def test_what_is_half_typed_is_saved_and_the_program_leaves(loss: str, saves: Path) -> None:
    lose, code = LOSSES[loss]
    with started(saves) as wire:
        wire.after("\r12")
        lose(wire)

        assert wire.ended() == code
    assert "saved 12" in saves.read_text(encoding="utf-8")


@pytest.mark.parametrize("loss", LOSSES)
def test_a_loop_that_answers_no_more_does_not_keep_the_program(loss: str, saves: Path) -> None:
    lose, code = LOSSES[loss]
    with started(saves) as wire:
        wire.after("s")
        lose(wire)

        assert wire.ended() == code
    assert saves.read_text(encoding="utf-8") == "saved None\n"


def test_a_second_wish_to_leave_does_nothing() -> None:
    asked: list[int] = []

    def ask(number: int) -> None:
        asked.append(number)
        leaver.finished()

    leaver = Leaver(ask, lambda: None)
    leaver.leave(15)
    leaver.leave(1)

    assert asked == [15]
    assert leaver.exit_code == 143


def test_a_child_can_be_ended_by_the_signals_that_are_held_back_here() -> None:
    codes: list[int] = []

    def inside() -> None:
        signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGTERM])
        code = "import os, signal; os.kill(os.getpid(), signal.SIGTERM); print('still here')"
        codes.append(run_child([sys.executable, "-c", code]))

    # In a thread of its own, so that the signals of the tests stay as they are.
    thread = threading.Thread(target=inside)
    thread.start()
    thread.join()

    assert codes == [-signal.SIGTERM]
