"""The return, measured: key presses, beside the same facts on paper and in an editor; bytes on the wire.

`python -m tests.bench returning` prints the table. Counts are of a copy of the sample garage, whose session 4
comes back at 13:41. Opening an editor, finding the place in the file and saving are not counted there.
"""

import asyncio
import datetime as dt
import difflib
import shutil
import sys
import tempfile
from pathlib import Path

import attrs

from tests.screens.rider import riding
from tests.screens.typing import spelled
from tests.widgets.wire import Wire

BACK = dt.datetime(2026, 6, 20, 13, 41)
LATER = dt.datetime(2026, 6, 21, 18, 0)
"""The evening after."""

ROOMS = ("g", "p", "s", "c", "b", "r", "t", "h", "?", "m")
"""The keys of the screens from which the return was begun."""

FACTS = "2 3 8 2 0 5 3 4 3 2 5 9 4 enter r s enter 0 6 5"
"""Hot 2.38 and 2.05, five phases, wallows in corner 4 at the rear each lap, no second symptom, 6.5 l."""

RETURN = f"i {FACTS}"
"""Back from the track at once: parked and read at are stamped."""

AFTERWARDS = f"i 1 3 4 1 enter {FACTS}"
"""The same session typed on a later day: when it was parked, and not known when it was read."""

TEN_LAPS = "enter text:423418416421431419417440424422 enter"
"""No change, then ten clean laps beside a usual one, on the row where the return ends."""

ON_PAPER = {
    "parked": "1341",
    "read at": "1341",
    "pressures": "238205",
    "feel": "34325",
    "symptom": "wallows4rs",
    "fuel": "065",
}
TEN_ON_PAPER = "42.341.841.642.143.141.941.744.042.442.2"
"""What is written on the slip for the same facts, by its boxes and lines."""

_SHIFTED = set('~!@#$%^&*()_+{}|:"<>?ABCDEFGHIJKLMNOPQRSTUVWXYZ')
"""What takes shift on a US keyboard."""


@attrs.frozen
class Counted:
    """How many keys or characters each way takes."""

    keys: int
    shifted: int
    slip: int
    editor: int


def keys_of(keys: str) -> list[str]:
    """List what is pressed: characters and names of keys."""
    return [character if character and character.isprintable() else name for name, character in spelled(keys)]


def shifted(keys: str) -> list[str]:
    """List what is pressed with shift on a US keyboard."""
    return [key for key in keys_of(keys) if key in _SHIFTED]


def counted(added: dict[str, str], keys: str, slip: str) -> Counted:
    """Count one return: its keys, the characters on the slip, and those of the lines in the files."""
    editor = sum(len(text) for text in added.values())
    return Counted(len(keys_of(keys)), len(shifted(keys)), len(slip), editor)


def added_lines(before: Path, after: Path) -> dict[str, str]:
    """Give by file what was added to the sessions of a garage; of a new file only the fuel and its table."""
    found: dict[str, str] = {}
    for file in sorted((after / "sessions").rglob("*.toml")):
        old = before / file.relative_to(after)
        new = file.read_text(encoding="utf-8").splitlines(keepends=True)
        if not old.exists():
            found[file.name] = "".join(line for line in new if line.startswith("fuel_added"))
            continue
        lines = difflib.ndiff(old.read_text(encoding="utf-8").splitlines(keepends=True), new)
        text = "".join(line[2:] for line in lines if line.startswith("+ "))
        if text:
            found[file.name] = text
    return found


async def typed(garage: Path, keys: str, room: str = "g", now: dt.datetime = BACK) -> dict[str, str]:
    """Type a return from a room on a copy of a garage, and give what it added to the files."""
    with tempfile.TemporaryDirectory() as folder:
        copy = shutil.copytree(garage, Path(folder) / "garage", ignore=shutil.ignore_patterns(".paddock"))
        async with riding(copy, now=now) as rider:
            await rider.types(room)
            await rider.types(keys)
        return added_lines(garage, copy)


def on_the_wire(garage: Path, keys: str, now: dt.datetime = BACK) -> int:
    """Give the bytes that a terminal of 80 by 24 receives for these keys, typed one by one."""
    code = (
        "import sys\nfrom paddock_tui.__main__ import main\n"
        f"sys.exit(main([{str(garage)!r}, '--at', '{now.isoformat()}']))"
    )
    with Wire(code) as wire:
        wire.read_until("? help")
        total = 0
        for key in keys_of(keys):
            total += len(wire.after("\r" if key == "enter" else " " if key == "space" else key, 0.15))
        wire.type("\x1bq")  # the row of the laps takes letters: alt and q leaves
        wire.ended()
    return total


def main(arguments: list[str]) -> int:  # noqa: ARG001 - asked for like the others
    """Print the table."""
    sample = Path(__file__).parents[2] / "sample_garage"
    slip = "".join(ON_PAPER.values())
    sys.stdout.write(f"{'':24}{'keys':>8}{'shifted':>9}{'slip':>8}{'TOML':>8}{'bytes sent':>12}\n")
    for name, keys, paper in (
        ("return", RETURN, slip),
        ("return with ten laps", f"{RETURN} {TEN_LAPS}", slip + TEN_ON_PAPER),
        ("afterwards", AFTERWARDS, slip),
        ("afterwards, ten laps", f"{AFTERWARDS} {TEN_LAPS}", slip + TEN_ON_PAPER),
    ):
        day = LATER if keys.startswith(AFTERWARDS) else BACK
        one = counted(asyncio.run(typed(sample, keys, now=day)), keys, paper)
        with tempfile.TemporaryDirectory() as folder:
            copy = shutil.copytree(sample, Path(folder) / "garage", ignore=shutil.ignore_patterns(".paddock"))
            sent = on_the_wire(copy, keys, day)
        figures = f"{one.keys:>8}{one.shifted:>9}{one.slip:>8}{one.editor:>8}{sent:>12}"
        sys.stdout.write(f"{name:24}{figures}\n")
    return 0
