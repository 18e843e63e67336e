"""How wide commands print: as the user says, as the terminal is, and 80 where there is none."""

import io
import os

import pytest

from paddock_tui.commands.common import columns
from tests.every import every


class _Out(io.StringIO):
    """An output with a number that no terminal has."""

    def fileno(self) -> int:
        return 99


@every(
    ("asked", "wide", "found"),
    [
        ("90", 60, 90),
        ("20", 60, 38),
        ("400", 60, 100),
        ("", 60, 60),
        ("0", 60, 60),
        ("wide", 60, 60),
        ("", 0, 80),
    ],
)
def test_the_width_is_what_is_asked_then_the_terminals(
    asked: str, wide: int, found: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", asked)
    monkeypatch.setattr("sys.__stdout__", _Out())
    monkeypatch.setattr(os, "get_terminal_size", lambda _: os.terminal_size((wide, 24)))

    assert columns() == found


def test_without_a_terminal_it_is_80(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("COLUMNS")
    monkeypatch.setattr("sys.__stdout__", _Out())
    assert columns() == 80

    monkeypatch.setattr("sys.__stdout__", None)
    assert columns() == 80
