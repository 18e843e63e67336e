"""Commands run as the shell would, inside this process."""

from pathlib import Path

import attrs
import pytest

from paddock_tui.__main__ import main

NEXT = "2026-06-20-4-magpie"
FILE = f"sessions/2026/{NEXT}.toml"
EARLY = "2026-06-20T08:00"
"""A time at which nothing of the sample's next session is due yet."""


@attrs.frozen
class Ran:
    """What a command gave: exit status, standard output, standard error."""

    status: int
    out: str
    err: str


@attrs.frozen
class Runner:
    """Runs commands, and gives what each printed."""

    capsys: pytest.CaptureFixture[str]

    def __call__(self, *arguments: str | Path) -> Ran:
        self.capsys.readouterr()
        try:
            status = main([str(one) for one in arguments])
        except SystemExit as end:
            status = int(end.code or 0)
        found = self.capsys.readouterr()
        return Ran(status, found.out, found.err)


def spoil(garage: Path, old: str, new: str, file: str = FILE) -> Path:
    """Change a text in a file of the garage that stands there exactly once."""
    path = garage / file
    text = path.read_text()
    assert text.count(old) == 1, old
    path.write_text(text.replace(old, new))
    return path
