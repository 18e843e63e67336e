"""What each page and a key on it send at 80x24: `python -m tests.bench page_bytes [FOLDER]`.

The program stands in a pseudo-terminal of 80 by 24 on a copy of the sample garage; each page is gone to from
the garage, then the cursor goes down by a row, and bytes are counted until nothing has come for a while. What
is worked out aside comes late there, so that its page is drawn twice: the most that it sends. Beside each
figure stands the one from before pages said their answer and findings opened under the cursor, and a ratio.
`FOLDER` is another checkout of the program, to compare with.
"""

import os
import re
import shutil
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

from tests.widgets.wire import Wire


class SentBefore(NamedTuple):
    """A page: the key that leads there from the garage, bytes of it and of an arrow before."""

    name: str
    key: str
    page: int
    arrow: int
    pictured: bool = False
    opens: bool = False
    """Whether a finding opens by now once the cursor has rested on its row."""


PAGES = (
    SentBefore("set-up", "p", 2196, 1366, pictured=True),
    SentBefore("session", "s", 2192, 51, pictured=True),
    SentBefore("review", "r", 1841, 83, opens=True),
    SentBefore("going out", "o", 2124, 85, opens=True),
    SentBefore("dash card", "d", 2187, 66),
    SentBefore("checklist", "c", 2210, 50),
    SentBefore("next change", "j", 1977, 60),
    SentBefore("last time here", "h", 2008, 94),
    SentBefore("change log", "l", 2151, 50, pictured=True),
    SentBefore("calculators", "b", 1910, 1222),
    SentBefore("day", "t", 1805, 51, pictured=True),
)
"""As measured by this command then, on the same sample."""

_DOWN = "\x1b[B"
_QUIET = 0.7
_SOON = 0.2
"""Less than a cursor has to rest before what is under it opens."""
_ARROWS = 40
_SEQUENCES = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]|\x1b[^\[]|[\x00-\x1f]")


def letters(sent: bytes) -> int:
    """Return how many bytes of what was sent are text: the others move, erase, and set styles."""
    return len(_SEQUENCES.sub("", sent.decode("utf-8")).encode())


def main(arguments: list[str]) -> int:
    """Print a line for each page: bytes when it is gone to, and for an arrow key on it."""
    here = Path(arguments[0]).resolve() if arguments else Path.cwd()
    os.environ["PYTHONPATH"] = str(here)
    heads = (
        "page",
        "before",
        "now",
        "ratio",
        "an arrow before",
        "now",
        "ratio",
        "once it rested",
        "of these text",
        f"mean of {_ARROWS}",
    )
    with tempfile.TemporaryDirectory() as folder:
        ignored = shutil.ignore_patterns(".paddock")
        garage = shutil.copytree(here / "sample_garage", Path(folder) / "garage", ignore=ignored)
        sys.stdout.write(f"{_line(*heads)}{_line('---', *['---:'] * (len(heads) - 1))}")
        for one in PAGES:
            page, arrow, rested, mean = _measured(here, garage, one.key)
            name = f"{one.name}, pictures" if one.pictured else one.name
            shares = f"{page / one.page:.2f}", f"{len(arrow) / one.arrow:.2f}"
            opened = len(rested), letters(rested)
            sys.stdout.write(
                _line(name, one.page, page, shares[0], one.arrow, len(arrow), shares[1], *opened, mean)
            )
            sys.stdout.flush()
    return 0


def _line(*cells: object) -> str:
    return f"| {' | '.join(map(str, cells))} |\n"


def _measured(here: Path, garage: Path, key: str) -> tuple[int, bytes, bytes, int]:
    """Return the bytes of a page, what the first arrow on it sends and what opens then, and the mean of more.

    The mean is of arrows that follow each other, with what opens where the last of them rests.
    """
    code = (
        f"import sys\nsys.path.insert(0, {str(here)!r})\nfrom paddock_tui.desk import answers\n"
        "answers.AT_ONCE_S = 0.0\nfrom paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '2026-06-20T12:55:30']))"
    )
    with Wire(code, 80, 24, {"PYTHONPATH": str(here)}) as wire:
        wire.read_until("? help")
        page = wire.after(key, 2 * _QUIET)
        arrow, rested = wire.after(_DOWN, _SOON), wire.after("", _QUIET)
        more = [len(wire.after(_DOWN, 0.15)) for _ in range(_ARROWS - 1)]
        more.append(len(wire.after("", _QUIET)))
        wire.type("g")
        wire.read()
        wire.type("q")
        return len(page), arrow, rested, (len(arrow) + len(rested) + sum(more)) // _ARROWS
