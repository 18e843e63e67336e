"""The guided start, measured: key presses and bytes from an empty garage to a review, and for a second day.

`python -m tests.bench starting` types three bikes: electronics that count up, electronics that count down
with words, and none. Nothing is missing in the review then but what is read at the bike.
"""

import asyncio
import datetime as dt
import sys
import tempfile
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from paddock_tui.app import PaddockApp
from paddock_tui.commands.new import new
from paddock_tui.screens.place import Place
from tests.bench.returning import keys_of, shifted
from tests.screens.rider import Rider
from tests.widgets.wire import Wire

MORNING = dt.datetime(2026, 6, 20, 8, 0)
FRIDAY = dt.datetime(2026, 6, 26, 20, 0)
"""The evening before the second day."""

_RIDER = "text:ines enter text:62 enter 2 1"
_WHEELS = "text:17 enter 1 enter 2 enter enter"
_TYRES = "text:pair enter 2 enter enter text:2.5_2.35 enter text:2.3_2.15 enter text:2325 enter 1"
_DAY = "text:fen enter text:3.6 enter enter 1 text:9:20_9:40_60x6 enter 1 text:102 enter text:60 enter 2"
_OUT = "4 enter enter text:8 enter text:17 enter 1"
_LAST = "text:2.15 enter text:1.95 enter 1 text:4 enter enter"
_SIX = "enter text:14to enter text:18c enter text:18c enter text:10o enter text:18c enter text:18c enter"

UP = f"""{_RIDER} text:kite enter enter
text:0-10uok enter text:0-5uok enter text:1-7unk enter text:1-4unr enter text:0-3uo0r enter
text:hard_soft_unk enter text:1-3unk enter text:1-6dnk enter enter enter enter enter
text:own_any enter text:rain_wet enter enter {_SIX} enter enter enter 4 {_WHEELS} {_TYRES} {_DAY}
{_OUT} 1 6 4 5 4 3 2 3 3 3 7 1 1 1 0 5 9 {_LAST}"""
"""Eight controls that count up, two modes, six adjusters, one tyre set, one day, one session."""

DOWN = f"""{_RIDER} text:wren enter enter
text:1-8dok enter text:high_low_none_do enter enter enter enter text:1-3dnr enter
text:direct_rounded_unk enter enter text:1-4unk enter enter text:on_k enter text:40_60_80_o enter enter
text:street_road enter text:soaked_wet_t=2 enter enter
enter enter text:20o enter enter text:12t enter text:20o enter enter enter enter enter 1
{_WHEELS} {_TYRES} {_DAY}
{_OUT} 1 3 1 1 2 4 1 2 9 4 9 {_LAST}"""
"""Controls that count down and words, a switch and a pit limiter, fewer adjusters."""

NONE = f"{_RIDER} text:moth enter 0 0 {_WHEELS} {_TYRES} {_DAY} {_OUT} {_LAST}"
"""No electronics and nothing that turns by hand, each in one key."""

SECOND = "m slash text:a_day enter enter text:sat enter enter enter enter text:104 enter text:60 enter 2 "
SECOND += "1 text:8 enter text:22 enter 1 1 text:5 enter enter"
"""The day after, on the same bike, from the garage page to the review."""

BIKES = {"counting up": UP, "counting down": DOWN, "none": NONE}


@asynccontextmanager
async def starting(garage: Path, room: str = "guide", now: dt.datetime = MORNING) -> AsyncIterator[Rider]:
    """Open the screens in a room, as a new garage on a terminal does."""
    rider = Rider(garage, now)
    rider.app = PaddockApp(rider.desk, Place(room=room))
    async with rider.app.run_test(size=(80, 24)) as rider.pilot:
        yield rider
    rider.desk.close()


async def typed(garage: Path, keys: str) -> None:
    """Type a start into a garage."""
    async with starting(garage) as rider:
        await rider.types(keys)


def on_the_wire(garage: Path, keys: str, now: dt.datetime, room: str) -> int:
    """Give the bytes that a terminal of 80 by 24 receives for these keys, typed one by one."""
    code = (
        "import sys, datetime as dt\nfrom paddock_tui.app import run\n"
        f"now = dt.datetime.fromisoformat({now.isoformat()!r})\n"
        f"sys.exit(run({str(garage)!r}, lambda: now, {room!r}))"
    )
    names = {"enter": "\r", "space": " ", "slash": "/"}
    with Wire(code) as wire:
        wire.read_until("help")
        total = sum(len(wire.after(names.get(key, key), 0.15)) for key in keys_of(keys))
        wire.type("q")
        wire.ended()
    return total


def main(arguments: list[str]) -> int:  # noqa: ARG001 - asked for like the others
    """Print the table."""
    sys.stdout.write(f"{'':16}{'keys':>8}{'shifted':>9}{'bytes sent':>12}\n")
    with tempfile.TemporaryDirectory() as folder:
        for name, keys in BIKES.items():
            garage = Path(folder) / name.replace(" ", "-")
            new(str(garage))
            _line(name, keys, on_the_wire(garage, keys, MORNING, "guide"))
        first = Path(folder) / "second"
        new(str(first))
        asyncio.run(typed(first, UP))
        _line("second day", SECOND, on_the_wire(first, SECOND, FRIDAY, "garage"))
    return 0


def _line(name: str, keys: str, sent: int) -> None:
    sys.stdout.write(f"{name:16}{len(keys_of(keys)):>8}{len(shifted(keys)):>9}{sent:>12}\n")
