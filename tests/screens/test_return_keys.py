"""How many keys a return takes: counts, no timings."""

import shutil
from pathlib import Path

import pytest

from tests.bench.returning import (
    AFTERWARDS,
    BACK,
    LATER,
    RETURN,
    ROOMS,
    TEN_LAPS,
    added_lines,
    keys_of,
    shifted,
    typed,
)
from tests.screens.rider import riding

SESSION, NEXT = "2026-06-20-4-magpie.toml", "2026-06-20-5-magpie.toml"

FACTS = """parked = 13:41:00

[pressures.hot]
front = "2.38 bar"
at = 13:41:00
rear = "2.05 bar"

[feel]
braking = 3
turning_in = 4
mid_corner = 3
driving_out = 2
straight = 5

[symptoms.1]
what = "wallows"
corner = "4"
end = "rear"
each_lap = "same"
"""

BEGINNING = RETURN[:7]
"""Parked is stamped, and the first pressure is whole."""

LAPS = ("42.3", "41.8", "41.6", "42.1", "43.1", "41.9", "41.7", "44.0", "42.4", "42.2")


@pytest.mark.parametrize("way", [RETURN, AFTERWARDS])
def test_a_return_takes_at_most_26_keys_and_with_ten_laps_60_none_of_them_shifted(way: str) -> None:
    assert len(keys_of(way)) <= 26
    assert len(keys_of(f"{way} {TEN_LAPS}")) <= 60
    assert shifted(f"{way} {TEN_LAPS}") == []
    assert shifted("A") == ["A"]


@pytest.mark.parametrize("room", ROOMS[::9])
async def test_these_keys_keep_every_fact_from_any_screen(garage: Path, room: str) -> None:
    added = await typed(garage, RETURN, room)

    assert added == {SESSION: FACTS, NEXT: 'fuel_added = "6.5 l"\n'}


async def test_from_every_screen_the_same_return_begins(garage: Path) -> None:
    """Where page, row, editor and files are the same after its first keys, all others do the same."""
    begun: dict[str, tuple[object, ...]] = {}
    for room in ROOMS:
        copy = shutil.copytree(garage, garage.parent / f"from {ROOMS.index(room)}")
        async with riding(copy, now=BACK) as rider:
            await rider.types(f"{room} {BEGINNING}")
            board, place = rider.app.main.board, rider.app.main.place
            row = board.cursor_row
            assert row is not None
            begun[room] = place.room, place.subject, board.page, row, rider.typing, added_lines(garage, copy)

    first = begun[ROOMS[0]]
    assert first[0] == "return"
    assert first[-1] == {SESSION: 'parked = 13:41:00\n\n[pressures.hot]\nfront = "2.38 bar"\nat = 13:41:00\n'}
    assert [room for room, found in begun.items() if found != first] == []


async def test_ten_laps_follow_in_the_same_return(garage: Path) -> None:
    added = await typed(garage, f"{RETURN} {TEN_LAPS}")

    laps = "".join(f'{number} = "1:{lap}"\n' for number, lap in enumerate(LAPS, 1))
    assert added[SESSION] == f"{FACTS}\n[laps]\n{laps}"


async def test_the_same_keys_and_one_time_type_it_in_on_a_later_day(garage: Path) -> None:
    added = await typed(garage, f"{AFTERWARDS} {TEN_LAPS}", now=LATER)

    laps = "".join(f'{number} = "1:{lap}"\n' for number, lap in enumerate(LAPS, 1))
    facts = FACTS.replace("parked = 13:41:00\n", 'parked = 13:41:00\ntimes = "typed afterwards"\n')
    facts = facts.replace("at = 13:41:00\n", "")
    assert added == {SESSION: f"{facts}\n[laps]\n{laps}", NEXT: 'fuel_added = "6.5 l"\n'}
