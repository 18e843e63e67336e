"""Keys drawn over rows of every kind: what changes data is one step of the journal, undone to the byte."""

import os
import random
from pathlib import Path

import attrs

from paddock_tui.entry.row_typing import MEANS
from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Ref
from paddock_tui.store.journal import newest_place
from tests.examples import TIMES
from tests.screens.rider import Rider, riding
from tests.screens.test_return_flow import BACK
from tests.small import snapshot

PAIRS = 54
"""Pairs of a row and a key in the suite at least; TIMES in the environment tries so many times more."""

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
PAGES: tuple[str | Ref, ...] = ("p", "s", "d", "c", "i", "guide", *RECORDS)
"""Keys of pages; the guided start, and the records, have none of their own."""

DEAR = ("guide", Ref("bike", "magpie"), Ref("day", "2026-06-20-anvilfen"))
"""Pages that take longest to make anew: half as many pairs."""

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
    if rider.typing is not None:
        await rider.types("down")
    while rider.typing is not None:
        await rider.types("escape")


async def opened(rider: Rider, page: str | Ref) -> None:
    """Open a page."""
    await rider.types("escape g p")
    if isinstance(page, Ref):
        main = rider.app.main
        main.go(attrs.evolve(main.place, room="record", record=page))
    elif page == "guide":
        await rider.chooses("start")
    else:
        await rider.types(page)


class Watched:
    """The records of a garage and the place of its journal, read again after each key."""

    def __init__(self, rider: Rider) -> None:
        self.rider = rider
        self.before, self.place = [records(rider.garage)], newest_place(rider.garage)

    async def tries(self, row: Row, key: str) -> None:
        """Press a key on a row: a change of records is one step of the journal."""
        await pressed(self.rider, row, key)
        self.counts((row.identity, key))

    def counts(self, what: object) -> None:
        """Hold what was just done to one step of the journal where records changed, and to none where not."""
        after, place = records(self.rider.garage), newest_place(self.rider.garage)
        assert place - self.place == int(after != self.before[-1]), what
        if after != self.before[-1]:
            self.before.append(after)
        self.place = place

    async def undoes(self) -> int:
        """Take every step back, to the byte, the last one by its key; return how many there were."""
        changed = len(self.before) - 1
        while len(self.before) > 1:
            self.before.pop()
            if len(self.before) > 1:
                assert self.rider.desk.undo() is not None
            else:
                self.rider.app.main.act("undo")
            await self.rider.settled()
            assert records(self.rider.garage) == self.before[-1]
        self.place = newest_place(self.rider.garage)
        return changed


async def test_a_drawn_key_that_changes_data_is_one_step_undone_to_the_byte(garage: Path) -> None:
    drawn = random.Random(20260620)
    changed = 0
    kinds_tried: set[tuple[str, str]] = set()
    each = -(-2 * PAIRS * int(os.environ.get(TIMES, "1")) // (2 * len(PAGES) - len(DEAR)))
    tries = 0
    async with riding(garage, 60, 14, BACK) as rider:
        watched = Watched(rider)
        for page in PAGES:
            await opened(rider, page)
            # The return stamps the bike parked as it opens: a step of its own.
            watched.counts(page)
            place = rider.app.main.place
            for _ in range(-(-each // 2) if page in DEAR else each):
                tries += 1
                if rider.app.main.place.key != place.key:
                    rider.app.main.go(place)
                kind, rows = drawn.choice(sorted(kinds(rider).items()))
                kinds_tried.add(kind)
                await watched.tries(drawn.choice(rows), drawn.choice(KEYS))
            changed += await watched.undoes()
    assert tries >= PAIRS
    assert changed >= PAIRS // 4
    assert {typing for _, typing in kinds_tried} >= set(MEANS) - {""}


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
