"""Output that cannot be written: what was asked for is done, its status given, and one line says so."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.commands.running import NEXT

COMMAND = [sys.executable, "-m", "paddock_tui"]
FULL = Path("/dev/full")


@pytest.mark.skipif(not FULL.exists(), reason="there is no device that is always full")
@pytest.mark.parametrize("command", ["set", "check", "show"])
def test_a_full_disk_ends_with_the_status_of_what_was_done(garage: Path, command: str) -> None:
    words = {"set": ["set", str(garage), NEXT, "setup.controls.slide=6"]}.get(command, [command, str(garage)])
    with FULL.open("w") as full:
        done = subprocess.run([*COMMAND, *words], stdout=full, stderr=subprocess.PIPE, check=False)

    plain = subprocess.run([*COMMAND, *words], capture_output=True, check=False)
    assert done.stderr.splitlines()[-1] == b"the output could not be written: no space left on the disk"
    assert done.returncode == plain.returncode
    assert b"Traceback" not in done.stderr
    if command == "set":
        assert "slide = 6" in (garage / "sessions" / "2026" / f"{NEXT}.toml").read_text()


def test_nobody_to_tell_is_no_traceback(garage: Path) -> None:
    near, far = os.pipe()
    os.close(near)
    done = subprocess.run([*COMMAND, "show", str(garage / "none")], stdout=far, stderr=far, check=False)
    os.close(far)

    assert done.returncode == 3
