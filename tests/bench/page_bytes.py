"""What each page and a key on it send at 80x24: `python -m tests.bench page_bytes [FOLDER]`.

The program stands in a pseudo-terminal of 80 by 24 on a copy of the sample garage; each page is gone to from
the garage, then the cursor goes down by a row, and bytes are counted until nothing has come for a while.
`FOLDER` is another checkout of the program, to compare with.
"""

import os
import shutil
import sys
import tempfile
from pathlib import Path

from tests.widgets.wire import Wire

PAGES = {
    "set-up": "p",
    "session": "s",
    "review": "r",
    "going out": "o",
    "dash card": "d",
    "checklist": "c",
    "next change": "j",
    "last time here": "h",
    "ledger": "l",
    "bench": "b",
    "day": "t",
}
"""The pages by the key that leads there from the garage."""

_DOWN = "\x1b[B"
_QUIET = 1.5


def main(arguments: list[str]) -> int:
    """Print a line for each page: bytes when it is gone to, and for an arrow key on it."""
    here = Path(arguments[0]).resolve() if arguments else Path.cwd()
    os.environ["PYTHONPATH"] = str(here)
    with tempfile.TemporaryDirectory() as folder:
        ignored = shutil.ignore_patterns(".paddock")
        garage = shutil.copytree(here / "sample_garage", Path(folder) / "garage", ignore=ignored)
        sys.stdout.write("| page | bytes of it | bytes of an arrow |\n| --- | ---: | ---: |\n")
        for name, key in PAGES.items():
            page, arrow = _measured(here, garage, key)
            sys.stdout.write(f"| {name} | {page} | {arrow} |\n")
            sys.stdout.flush()
    return 0


def _measured(here: Path, garage: Path, key: str) -> tuple[int, int]:
    code = (
        f"import sys\nsys.path.insert(0, {str(here)!r})\nfrom paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )
    with Wire(code, 80, 24, {"PYTHONPATH": str(here)}) as wire:
        wire.read_until("? help")
        page = wire.after(key, _QUIET)
        arrow = wire.after(_DOWN, _QUIET)
        wire.type("g")
        wire.read()
        wire.type("q")
        return len(page), len(arrow)
