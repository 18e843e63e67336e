"""A link that goes, in every way: what was kept is on disk, the process is gone, its status tells why."""

import fcntl
import os
import signal
import struct
import termios
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.store import half_typed
from tests.screens.rider import HAND
from tests.screens.test_wire import DOWN, started
from tests.widgets.wire import Wire

KEPT = "traction = 6 "


def edited(wire: Wire, garage: Path) -> None:
    """Set one value, and begin to type another."""
    wire.read_until("? help")
    wire.type("p" + DOWN * 4 + "6")
    wire.read_until("traction control 3 -> 6")
    # Enter straight after a digit only ends it: from another row and back it opens the editor.
    wire.type(f"{DOWN}\x1b[A\r77")
    wire.read_until(">│traction control      77")
    assert KEPT in (garage / HAND).read_text(encoding="utf-8")


def frozen_then_closed(wire: Wire) -> None:
    """Stop what the program sends, type until it is stuck with what it cannot send; then the link dies."""
    far = os.open(f"/proc/{wire.process.pid}/fd/0", os.O_RDWR | os.O_NOCTTY)
    termios.tcflow(far, termios.TCOOFF)
    for _ in range(60):  # its queue of writes holds 30
        wire.type("8\x7f")
        time.sleep(0.01)
    os.close(far)
    wire.hang_up()


LOSSES: dict[str, tuple[Callable[[Wire], None], int]] = {
    "hang-up": (lambda wire: wire.signal(signal.SIGHUP), 129),
    "termination": (lambda wire: wire.signal(signal.SIGTERM), 143),
    "terminal closed": (lambda wire: wire.hang_up(), 129),
    "frozen, then closed": (frozen_then_closed, 129),
}


@pytest.mark.parametrize("loss", LOSSES)
def test_what_was_kept_stands_and_what_was_half_typed_is_offered_again(garage: Path, loss: str) -> None:
    lose, status = LOSSES[loss]
    if lose is frozen_then_closed and not Path("/proc/self/fd").exists():
        pytest.skip("the far end of the terminal cannot be reached here")
    with started(garage) as wire:
        edited(wire, garage)
        lose(wire)
        assert wire.ended() == status
    assert KEPT in (garage / HAND).read_text(encoding="utf-8")
    half = half_typed.take(garage)
    assert half is not None
    assert half.path == ("setup", "controls", "traction")
    assert half.text.startswith("77")


def test_a_terminal_that_goes_ends_a_program_that_ignores_the_hang_up_too(garage: Path) -> None:
    code = (
        "import signal, sys\nsignal.signal(signal.SIGHUP, signal.SIG_IGN)\n"
        "from paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )
    with Wire(code) as wire:
        edited(wire, garage)
        wire.hang_up()
        assert wire.ended() == 129
    assert (garage / ".paddock" / "half-typed").exists()


def test_noise_and_a_screen_of_one_cell_change_nothing(garage: Path) -> None:
    before = (garage / HAND).read_bytes()
    with started(garage) as wire:
        wire.read_until("? help")
        wire.type("p")
        wire.read_until("riding mode")
        wire.type(b"\xff\xfe\x80")
        wire.type("\x03")
        wire.read_until("ctrl+c leaves nothing")
        for lines, columns in ((1, 1), (24, 80)):
            fcntl.ioctl(wire.near, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
            wire.signal(signal.SIGWINCH)
            wire.read()
        assert "riding mode" in wire.shown
        wire.type("q")
        assert wire.ended() == 0
    assert (garage / HAND).read_bytes() == before


def test_the_terminal_is_left_as_it_was_found(garage: Path) -> None:
    with started(garage) as wire:
        wire.read_until("? help")
        wire.signal(signal.SIGTERM)
        assert wire.ended() == 143
        got = wire.read(0.1, 1.0)
        found = termios.tcgetattr(wire.near)
    assert found[3] & termios.ICANON
    assert found[3] & termios.ECHO
    assert got.count(b"\x1b[?1049h") == 0


SHELL = """
import os, signal, sys
signal.signal(signal.SIGTTOU, signal.SIG_IGN)
pid = os.fork()
os.setpgid(pid or 0, pid or 0)
if pid == 0:
    os.tcsetpgrp(0, os.getpid())
    signal.signal(signal.SIGTTOU, signal.SIG_DFL)
    from paddock_tui.__main__ import main
    sys.exit(main([GARAGE, "--at", "2026-06-20T12:55:30"]))
_, status = os.waitpid(pid, os.WUNTRACED)
os.tcsetpgrp(0, os.getpgrp())
print("stopped" if os.WIFSTOPPED(status) else "ended", flush=True)
sys.stdin.readline()
os.tcsetpgrp(0, pid)
os.killpg(pid, signal.SIGCONT)
_, status = os.waitpid(pid, 0)
sys.exit(os.waitstatus_to_exitcode(status))
"""
"""A shell with job control, for one program."""


def test_ctrl_z_goes_to_the_shell_and_what_comes_back_is_painted_again(garage: Path) -> None:
    with Wire(SHELL.replace("GARAGE", repr(str(garage)))) as wire:
        edited(wire, garage)
        wire.after("\x1b")
        wire.type("\x1a")
        wire.read_until("stopped")
        assert KEPT in (garage / HAND).read_text(encoding="utf-8")
        wire.type("\n")
        assert b"riding mode" in wire.read_until("riding mode")
        wire.type("q")
        assert wire.ended() == 0
