"""A race day and a coached day told as garages: what the pages say at each moment, word for word.

`DAYS=1` writes the pages anew; then read what changed.
"""

import datetime as dt
import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.day.moving import moved_to, moving
from paddock_tui.desk.edits.entry_line import entering, entry_context
from paddock_tui.desk.edits.values import setting
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.entry import read_line
from paddock_tui.pages.after import after_page
from paddock_tui.pages.before import before_page
from paddock_tui.pages.countdown import clock_words
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.season import season_page
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.printed import printed_page
from tests.small import write

FOLDER = Path(__file__).parent / "days"

BIKE = """name = "Finch"
electronics = "none"
[tank]
capacity = "14 l"
consumption = "14 l/100km"
"""
VENUE = """name = "Wendholt"
length = "3 km"
[corners.1]
name = "Gate"
side = "right"
gear = 3
[corners.2]
side = "left"
gear = 2
marker = "the second post"
"""
TYRES = '[front]\nkind = "race-treaded"\n[rear]\nkind = "race-treaded"\n'

RACE_DAY = """date = 2026-08-08
venue = "wendholt"
kind = "race meeting"
group = "twins"
[classes.twins]
source = "club paper, 2026"
tyres = 3
tyres_marked = true
least_weight = "170 kg"
tyre_choice = "15 min"
warm_up_laps = 1
slow_down_laps = 1
on_grid = "warmers until the one-minute board, no fuel"
closed_park = "30 minutes behind the scale"
[entries.kit.finch]
class = "twins"
signed_on = true
briefing = true
inspected = true
"""
RACE = """date = 2026-08-08
number = 2
kind = "race"
day = "race"
bike = "finch"
rider = "kit"
tyres = "soft"
planned_laps = 10
start = 14:00:00
surface = "dry"
warmers = "used"
filled_to_brim = true
[race]
grid = 13:52:00
"""

JULY_DAY = """date = 2026-07-11
venue = "wendholt"
kind = "track day"
[bring]
1 = "a second stand: the paddock slopes"
[packing.pads]
was = "missing"
[entries.kit.finch]
[entries.kit.finch.checks.battery]
status = "ok"
"""
JULY = """date = 2026-07-11
number = 1
kind = "track day"
day = "july"
bike = "finch"
rider = "kit"
tyres = "soft"
start = 10:00:00
went_out = 10:01:00
parked = 10:19:00
surface = "dry"
air = "21 C"
fuel_added = "6 l"
chain_slack = "32 mm"
happened = "nothing"
did = "nothing"
[laps]
1 = "1:50.000 out"
2 = "1:31.200"
3 = "1:30.400"
4 = "1:30.900"
[notes.1]
text = "the wind comes over the hill at noon"
"""
LATER_DAY = """date = 2026-08-29
venue = "wendholt"
kind = "track day"
group = "novice"
air = "12 C"
forecast = "wet"
[bookings.entry]
by = 2026-08-10
[timetable.novice.1]
from = 09:00:00
to = 09:20:00
[entries.kit.finch]
"""
PACKING_LIST = """name = "packing"
stage = "packing"
[items.pads]
text = "brake pads"
quantity = 2
box = "spares"
person = "KI"
"""

COACHED_DAY = """date = 2026-08-09
venue = "wendholt"
kind = "training"
group = "novice"
[timetable.novice.1]
from = 09:00:00
to = 09:20:00
[timetable.novice.2]
from = 10:00:00
to = 10:20:00
[timetable.intermediate.1]
from = 09:30:00
to = 09:50:00
[timetable.intermediate.2]
from = 10:30:00
to = 10:50:00
[entries.kit.finch]
signed_on = true
briefing = true
inspected = true
"""
COACHED = """date = 2026-08-09
number = 1
kind = "practice"
day = "coached"
bike = "finch"
rider = "kit"
tyres = "soft"
planned_time = "20 min"
start = 09:00:00
surface = "dry"
warmers = "none"
filled_to_brim = true
aim = "brake at the second post in 2"
aim_by = "JM"
"""


class DayTeller:
    """A garage whose clock is moved by hand, and what its pages say."""

    def __init__(self, root: Path, ref: Ref, **files: str) -> None:
        rider = 'name = "Kit"\ninitials = "KI"\ngroup = "novice"\n'
        held = {"bikes__finch": BIKE, "venues__wendholt": VENUE, "tyres__soft": TYRES, "riders__kit": rider}
        self.now = dt.datetime(2026, 8, 8)
        self.desk = Desk(write(root, **held, **files), lambda: self.now)
        self.ref = ref
        self.said: list[str] = []

    def at(self, hour: int, minute: int, day: int) -> None:
        self.now = dt.datetime(2026, 8, day, hour, minute)

    def prints(self, page: Page) -> None:
        """Take a page that is about a day or a year, at the hour that it is."""
        self.said += ["", f"===== {self.now:%a %d %b %H:%M}", "", *plain_page(page, 80)]

    def types(self, line: str) -> None:
        """Type an entry line about the session in hand."""
        move = moved_to(line)
        step: object
        if move is not None:
            step = moving(self.desk.files, self.ref, *move, self.now)
        else:
            context = entry_context(self.desk, self.ref)
            assert context is not None
            typed = read_line(line, context)
            assert typed.clear, (typed.errors, typed.questions)
            step = entering(self.desk.files, self.ref, typed)
        self.does(step, f"> {line}")

    def sets(self, ref: Ref, *pairs: tuple[str, str]) -> None:
        self.does(setting(self.desk.files, ref, pairs), f"> {', '.join(' '.join(pair) for pair in pairs)}")

    def does(self, step: object, words: str) -> None:
        assert isinstance(step, Step), step
        self.desk.do(step)
        self.desk.settled()
        self.said.append(words)

    def shows(self, *rooms: str) -> None:
        """Take the clock and the pages of rooms."""
        clock = clock_words(clock_of(self.desk.files, self.ref, self.now), self.now)
        self.said += ["", f"===== {self.now:%a %H:%M} · {clock or 'no clock'}"]
        for room in rooms:
            page = printed_page(self.desk, room, self.ref)
            self.said += ["", f"----- {room}", *plain_page(page, 80)]


def race_day(root: Path) -> Iterator[str]:
    told = DayTeller(
        root,
        Ref("session", "race"),
        days__race=RACE_DAY,
        sessions__race=RACE,
        days__july=JULY_DAY,
        sessions__july=JULY,
        days__later=LATER_DAY,
        checklists__packing=PACKING_LIST,
    )
    day = Ref("day", "race")
    told.at(19, 0, day=1)
    told.prints(before_page(told.desk, day))
    told.at(13, 30, day=8)
    told.types("job warmers to job fuel ki")
    told.shows("board", "crew", "out")
    for number, end in ((1, "front"), (2, "rear")):
        told.sets(
            day,
            *(
                (f"entries.kit.finch.marked.{number}.{key}", value)
                for key, value in (("tyres", "soft"), ("end", end))
            ),
        )
    told.types("holds TO")
    told.types("declared dry cold 2.1 1.9 went 13:51")
    told.at(13, 55, day=8)
    told.shows()
    told.at(14, 9, day=8)
    told.shows()
    told.types("red 3")
    told.shows("review")
    told.types("restart 14:30 5")
    told.at(14, 15, day=8)
    told.shows("board", "crew")
    told.at(14, 50, day=8)
    told.types('parked 14:49 finished 4 weighed 168kg penalty "one place back"')
    told.sets(told.ref, ("happened", "nothing"), ("did", "nothing"))
    told.shows("review", "return")
    told.sets(
        day,
        ("entries.kit.finch.said", "fourth, and brave on the brakes"),
        ("entries.kit.finch.costs.entry", "140.50 EUR"),
        ("entries.kit.finch.costs.tyres", "211.25 EUR"),
        ("packing.pads.was", "missing"),
    )
    told.sets(Ref("bike", "finch"), ("todos.1.what", "front pads"), ("todos.1.by", "2026-08-20"))
    told.at(20, 0, day=15)
    told.prints(after_page(told.desk, day))
    told.prints(before_page(told.desk, Ref("day", "later")))
    told.prints(season_page(season(told.desk, 2026), falls=False))
    yield from told.said


def coached_day(root: Path) -> Iterator[str]:
    told = DayTeller(root, Ref("session", "a"), days__coached=COACHED_DAY, sessions__a=COACHED)
    told.at(8, 50, day=9)
    told.shows("out")
    told.types("went 9:00")
    told.at(9, 20, day=9)
    told.types('parked 9:19 corner 2 "later still, eyes up"')
    told.shows("return")
    told.sets(told.ref, ("aim_met", "partly"), ("happened", "nothing"), ("did", "nothing"))
    told.types("moved intermediate JM")
    made, step = next_session(told.desk.files, told.ref, told.now)
    told.does(step, f"> the next session: {made.id}")
    told.ref = made
    told.shows("out", "corners", "crew", "board")
    told.sets(made, ("parked", "9:49"), ("aim_met", "yes"))
    last, step = next_session(told.desk.files, made, told.now)
    told.does(step, f"> the next session: {last.id}")
    told.ref = last
    told.shows("corners")
    yield from told.said


@pytest.mark.parametrize("day", [race_day, coached_day])
def test_the_day_is_told_word_for_word(tmp_path: Path, day: Callable[[Path], Iterator[str]]) -> None:
    text = "\n".join(day(tmp_path)) + "\n"
    file = FOLDER / f"{day.__name__.replace('_', '-')}.txt"
    if os.environ.get("DAYS"):
        file.write_text(text, encoding="utf-8")

    assert text == file.read_text(encoding="utf-8")
