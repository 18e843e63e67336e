"""The driver on a bad link: through a real terminal; and guards over what it replaces."""

import hashlib
import inspect
import os
import signal
from pathlib import Path

import pytest
from textual.drivers.linux_driver import LinuxDriver

from paddock_tui.widgets import driver
from paddock_tui.widgets.driver import LinkDriver, WakingEvent, driver_class
from tests.every import every
from tests.widgets.wire import Wire

READ = {
    "_run_input_thread": "d2ef22cc2c97a9eb",
    "run_input_thread": "d796af6d69db337d",
    "start_application_mode": "7c41f5ba11a8ef05",
    "disable_input": "6154c5a7c1743fe9",
    "stop_application_mode": "9a7e99c8d4bdbd3b",
}
"""Digests of the stock methods that were read when ours were written."""

APP = """
import sys
from tests.widgets.link_app import LinkApp
app = LinkApp()
app.run(mouse=False)
sys.exit(app.return_code)
"""


def started() -> Wire:
    wire = Wire(APP)
    wire.read_until("front ABS")
    return wire


def test_our_driver_is_used() -> None:
    assert driver_class() is LinkDriver


@every("name", READ)
def test_the_stock_method_is_the_one_that_was_read(name: str) -> None:
    text = inspect.getsource(getattr(LinuxDriver, name))

    assert hashlib.sha256(text.encode()).hexdigest()[:16] == READ[name], f"read {name} again, then {__file__}"


def test_the_stock_driver_is_used_where_the_parser_has_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(driver, "XTermParser", lambda debug: object())  # noqa: ARG005

    assert driver_class() is None


def test_an_event_wakes_its_descriptor_until_it_is_cleared() -> None:
    event = WakingEvent()
    event.set()

    assert os.read(event.awake, 10) == b"."
    event.clear()
    assert not event.is_set()


def test_bytes_that_are_no_text_change_nothing() -> None:
    with started() as wire:
        wire.type(b"\xff\xfe\xe9")
        assert b"wheelie" in wire.after("\x1b[B")
        wire.type("q")

        assert wire.ended() == 0


def test_the_end_of_input_is_a_hang_up(tmp_path: Path) -> None:
    pipe = tmp_path / "keys"
    os.mkfifo(pipe)
    # What is typed comes from a pipe here, since a terminal has no end while somebody holds it.
    code = f"import os\nos.dup2(os.open({str(pipe)!r}, os.O_RDONLY), 0)\n"
    with Wire(code + APP) as wire:
        keys = os.open(pipe, os.O_WRONLY)
        wire.read_until("front ABS")
        os.close(keys)

        assert wire.ended() == driver.HANGUP_CODE


def test_nothing_is_sent_for_a_change_of_focus_that_a_terminal_reports_unasked() -> None:
    with Wire(APP) as wire:
        sent = wire.read_until("front ABS")

        assert sent.rindex(b"\x1b[?1004l") > sent.rindex(b"\x1b[?1004h")


def test_the_screen_is_painted_again_after_a_stop() -> None:
    with started() as wire:
        wire.signal(signal.SIGTSTP)
        wire.read()
        wire.signal(signal.SIGCONT)

        assert b"front ABS" in wire.read_until("front ABS")
        wire.type("q")
        assert wire.ended() == 0


def test_an_escape_and_the_key_behind_it_in_one_piece_are_two_keys() -> None:
    with started() as wire:
        wire.after("\r9")
        # Left, then down; an escape swallowed by the next key would leave the editor open, and keep the 9.
        assert b"wheelie" in wire.after("\x1b\x1b[B")
        wire.after("\r7")
        wire.type("\x1bq")

        assert wire.ended() == 0


def test_an_escape_alone_and_one_that_begins_an_arrow_are_told_apart() -> None:
    with started() as wire:
        wire.after("\r9")
        left = wire.after("\x1b")
        assert b"4" in left
        assert b"wheelie" in wire.after("\x1b[B")
        wire.type("q")
        assert wire.ended() == 0
