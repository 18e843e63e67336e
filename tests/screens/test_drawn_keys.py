"""Keys drawn over rows of every kind: what changes data is one step of the journal, undone to the byte."""

import os
import random
from pathlib import Path

import attrs

from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Ref
from paddock_tui.store.journal import newest_place
from tests.examples import TIMES
from tests.screens.rider import Rider, riding
from tests.screens.test_return_flow import BACK
from tests.small import snapshot

PAIRS = 3
"""Pairs of a row and a key on each page in the suite; TIMES in the environment tries so many times more."""

ROOMS = ("p", "s", "d", "c", "i", "guide", "record")
"""Keys of pages; the guided start, and the records, have none of their own."""

RECORDS = tuple(
    Ref(*one.split("/"))
    for one in (
        "bike/magpie",
        "rider/ines",
        "tyres/magpie-trackday-2",
        "day/2026-06-20-anvilfen",
        "venue/anvilfen",
        "profile/magpie-ines-wet",
        "checklist/bike-morning",
    )
)
KEYS = (*"0123456789", "+", "minus", "left", "right", "space", "backspace", "f", "v", "x")


def records(garage: Path) -> dict[str, bytes]:
    return {name: text for name, text in snapshot(garage).items() if not name.startswith(".paddock")}


def kinds(rider: Rider) -> dict[tuple[str, str], list[Row]]:
    """Return the rows of the page shown by their kind and how they are typed."""
    found: dict[tuple[str, str], list[Row]] = {}
    for row in rider.app.main.board.page.rows():
        if row.kind in ("field", "check", "ask"):
            found.setdefault((row.kind, row.typing), []).append(row)
    return found


async def pressed(rider: Rider, row: Row, key: str) -> None:
    """Press a key on a row, end what it may have begun by an arrow, and leave what is still asked."""
    assert rider.app.main.board.go(row.identity)
    await rider.types(key)
    await rider.types("down")
    while rider.typing is not None:
        await rider.types("escape")


async def opened(rider: Rider, room: str, drawn: random.Random) -> None:
    """Open a page, of records one of them."""
    await rider.types("escape g p")
    if room == "record":
        main = rider.app.main
        main.go(attrs.evolve(main.place, room="record", record=drawn.choice(RECORDS)))
    elif room == "guide":
        await rider.chooses("start")
    else:
        await rider.types(room)


async def test_a_drawn_key_that_changes_data_is_one_step_undone_to_the_byte(garage: Path) -> None:
    drawn = random.Random(20260620)
    changed = 0
    async with riding(garage, now=BACK) as rider:
        for room in ROOMS:
            for _ in range(PAIRS * int(os.environ.get(TIMES, "1"))):
                await opened(rider, room, drawn)
                rows = [drawn.choice(some) for some in kinds(rider).values()]
                row, key = drawn.choice(rows), drawn.choice(KEYS)
                before, place = records(garage), newest_place(garage)
                await pressed(rider, row, key)
                after, steps = records(garage), newest_place(garage) - place
                assert steps == int(after != before), (room, row.identity, key)
                if after != before:
                    changed += 1
                    rider.app.main.act("undo")
                    await rider.settled()
                    assert records(garage) == before, (room, row.identity, key)
    assert changed >= PAIRS


async def test_on_a_row_that_takes_words_no_plain_letter_acts(garage: Path) -> None:
    async with riding(garage) as rider:
        await rider.types("s")
        words = [some[0] for some in kinds(rider).values() if some[0].takes_letters]
        assert {row.typing for row in words} >= {"words", "yes or no"}
        for row in words:
            before = records(garage)
            for letter in "uxogmfvk":
                assert rider.app.main.board.go(row.identity)
                await rider.types(letter)
                assert rider.app.main.place.room == "session", (row.identity, letter)
                while rider.typing is not None:
                    await rider.types("escape")
                assert records(garage) == before, (row.identity, letter)
