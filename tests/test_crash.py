"""An unexpected error: one plain sentence, a report without anything of the garage, a status that tells."""

import hashlib
import inspect
from pathlib import Path

import pytest
from textual.app import App

from paddock_tui.commands import show
from paddock_tui.store import half_typed
from paddock_tui.store.crash import CRASHED, report, sentence, state_folder
from tests.commands.running import Runner
from tests.screens.test_wire import started
from tests.widgets.wire import Wire

SECRET = "gold4711"
"""Stands for what a garage holds."""


@pytest.fixture
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    monkeypatch.setattr("sys.platform", "linux")
    return tmp_path / "state" / "paddock-tui"


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)


def broken(secret: str) -> None:
    try:
        int(secret)
    except ValueError as error:
        raise KeyError(secret) from error


def the_report(state: Path) -> str:
    (file,) = state.glob("crash-*")
    return file.read_text(encoding="utf-8")


def test_a_report_names_places_and_types_and_no_value(state: Path) -> None:
    with pytest.raises(KeyError) as caught:
        broken(SECRET)
    path = report(caught.value)

    text = the_report(state)
    assert path == str(next(state.iterdir()))
    assert "builtins.KeyError" in text
    assert "builtins.ValueError" in text
    assert "tests/test_crash.py" in text
    assert " broken" in text
    assert SECRET not in text
    assert str(Path.home()) not in text


def test_a_report_that_cannot_be_written_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "file"))
    monkeypatch.setattr("sys.platform", "linux")

    assert report(ValueError()) == ""
    assert "no report could be written" in sentence("")


def test_each_platform_has_its_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setenv("XDG_STATE_HOME", "not/absolute")
    assert state_folder() == Path.home() / ".local" / "state" / "paddock-tui"
    monkeypatch.setattr("sys.platform", "darwin")
    assert state_folder() == Path.home() / "Library" / "Logs" / "paddock-tui"


def test_a_command_that_breaks_says_one_sentence(
    garage: Path, state: Path, run: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(show, "show", lambda *_, **__: broken(SECRET))

    ran = run("show", garage)

    assert ran.status == CRASHED
    assert ran.out == ""
    assert ran.err.count("\n") == 1
    assert ran.err.startswith("an unexpected error ended paddock-tui; a report without garage content: ")
    assert SECRET not in ran.err + the_report(state)


def test_a_screen_that_breaks_keeps_what_was_typed_and_prints_no_value(garage: Path, state: Path) -> None:
    code = (
        "import sys\nfrom paddock_tui.__main__ import main\n"
        "from paddock_tui.screens.main import MainScreen\n"
        f"def broken(self, message, secret={SECRET!r}):\n    raise KeyError(secret)\n"
        "MainScreen.on_board_editing = broken\nMainScreen.on_board_accepted = broken\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )
    with Wire(code, settings={"XDG_STATE_HOME": str(state.parent)}) as wire:
        wire.read_until("? help")
        wire.type("p" + "\x1b[B" * 4 + "\r77")
        wire.type("\r")
        got = wire.read_until("unexpected error")
        assert wire.ended() == CRASHED
    assert b"Traceback" not in got
    assert SECRET.encode() not in got
    assert SECRET not in the_report(state)
    assert half_typed.take(garage) is not None
    with started(garage) as wire:
        wire.read_until("? help")
        wire.type("q")
        assert wire.ended() == 0


def test_the_stock_handler_is_the_one_that_was_read() -> None:
    text = inspect.getsource(App._handle_exception)

    assert hashlib.sha256(text.encode()).hexdigest()[:16] == "baea2e7f88e7ac52", "read it again, then app.py"


def test_an_error_that_is_its_own_cause_is_written_once(state: Path) -> None:
    one, two = ValueError(SECRET), KeyError(SECRET)
    one.__cause__, two.__cause__ = two, one

    report(one)

    text = the_report(state)
    assert text.count("builtins.ValueError") == 1
    assert text.count("builtins.KeyError") == 1
    assert SECRET not in text
