"""A guided start told word for word: what rows ask and offer, what answers do, what a refusal says.

`START=1` writes `start.txt` anew; then read what changed.
"""

import datetime as dt
import os
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.commands.new import new
from paddock_tui.desk import Desk
from paddock_tui.desk.start.about import Chosen
from paddock_tui.desk.start.ask import Ask, AskResult
from paddock_tui.desk.start.order import asks, context_of_start
from paddock_tui.records.edits import MISSING, AnyChange, Change
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref, spell
from paddock_tui.store.outcomes import Saved

TOLD = Path(__file__).parent / "start.txt"
SATURDAY = dt.datetime(2026, 6, 20, 8, 0)
FRIDAY = dt.datetime(2026, 6, 26, 20, 0)

FIRST = """
rider: ! | ines
group: 2
units: 7 | 1 | 3
bike: kite
whole electronics: 7 | 0-10uok
control traction: 10 | 1-3o9 | 0-10uok
control wheelie: 1-8dr
control throttle: 1-3u | hard soft un
control abs: 1-3unk
control engine-braking: 1-4uk
control pit-limiter: 40 60
control shifter: on k
whole electronics: 0
all electronics: 1
mode 0: rain zz=9 | rain t=99 | rain t=3-99 | rain th=wild | rain t=3 w=1 | rain wet t=3
mode 1: own
adjuster front preload: 14
adjuster front preload: 14to
adjuster front compression: 12t | 20c fast 4to right
adjuster rear rebound: loose | 18c
damping 0: !! | live | live calm, rough road
all suspension: yes
tank.capacity: much | 17
front.tyre_size: 1
rear.tyre_size: 180/55 ZR 17
tyres: pair
tyres kind: 2
tyres size: 120/70ZR17 | 120/70ZR17 180/55ZR17
tyres hot_dry: 36 34
tyres date_code: 2325
tyres scrubbed: 2
venue: fen
length: 2.2
date: soon | today
day group: 1
kind: 1
times: 9:20 9:40 60 | 9:20 9:40 60x3
timing: 3
limits.noise: 102
limits.pit_lane: 37
travel: 2
surface: 9 | 4
planned_time: 20
warmers: 1
setup.controls.traction: 11 | 4
setup.mode: 1
setup.damping: 3 | 2
setup.preset: 1
setup.adjusters.rear-rebound: 5
setup.front_start: 31
"""
SECOND = """
rider: 1
date: sat
day group: 1
limits.noise: 104
tyres date_code: 2325 1226
surface: 1
"""
"""What is typed at which row: behind each bar again, after a refusal."""


def keyed(rows: tuple[Ask, ...], key: str) -> Ask:
    """Find a row by its key, or by its record's path."""
    return next(one for one in rows if one.key == key or spell(one.path) == key or one.path == (key,))


def done(change: AnyChange) -> str:
    assert isinstance(change, Change)
    edits = (
        f"{spell(one.path)} {'' if one.old is MISSING else f'{one.old!r} '}"
        f"-> {'gone' if one.new is MISSING else one.new}"
        for one in change.edits
    )
    return f"    {change.ref}: " + "; ".join(edits)


def conversation(root: Path, now: dt.datetime, typed: str, chosen: Chosen) -> Iterator[str]:
    picked = dict(chosen)
    desk = Desk(root, lambda: now)
    for line in typed.strip().splitlines():
        key, _, texts = line.partition(": ")
        for text in texts.split(" | "):
            row = keyed(asks(context_of_start(desk, picked)), key)
            offered = f" [{row.offered}]" if row.offered else ""
            unsaid = [one for one in row.choices if one not in row.how]
            picks = f" ({', '.join(unsaid)} by a digit)" if unsaid else ""
            yield f"{row.section} / {row.label}{offered}{' (or typed)' if row.free else ''}: {row.how}{picks}"
            result = row.answer(text)
            if isinstance(result, InputError):
                yield f"  {text} -- {result.sentence()}"
                continue
            yield f"  {text} -> {result.step.label if result.step else 'goes on with it'}"
            if result.step is not None:
                yield from (done(one) for one in result.step.changes if isinstance(one, Change))
                desk.do(result.step)
            _take(picked, result)
    assert [one for one in desk.settled() if not isinstance(one, Saved)] == []
    rows = asks(context_of_start(desk, picked))
    desk.close()
    yield ""
    for one in rows:
        offered = f" [{one.offered}]" if one.is_open and one.offered else ""
        yield f"{one.section} / {one.label} = {one.value or f'? {one.how}'}{offered}"
    yield ""


def _take(picked: dict[str, Ref | None], result: AskResult) -> None:
    if result.about is not None:
        picked[result.about.kind] = result.about


def test_a_first_and_a_second_day_are_asked_word_for_word(tmp_path: Path) -> None:
    garage = tmp_path / "garage"
    new(str(garage))
    lines = [*conversation(garage, SATURDAY, FIRST, {}), "THE SECOND DAY", ""]
    lines += conversation(garage, FRIDAY, SECOND, {"session": None})
    told = "\n".join(line.rstrip() for line in lines)

    if os.environ.get("START"):
        TOLD.write_text(told, encoding="utf-8")
    assert told == TOLD.read_text(encoding="utf-8")
