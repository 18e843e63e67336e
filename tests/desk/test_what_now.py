"""The one next thing to do, and the places that name it."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.what_now import AGAIN, BACK, BEGIN, FIX, WHEN, next_thing
from paddock_tui.desk.edits.values import setting
from paddock_tui.pages.actions import said_next
from paddock_tui.pages.layout.footer import last_line
from paddock_tui.pages.layout.pen import Pen, text_of
from paddock_tui.records.edits import Step
from paddock_tui.rules import Review
from paddock_tui.screens.registry import ACTIONS
from tests.desk.opened import NEXT, at_desk
from tests.every import every

AT = dt.datetime(2026, 6, 20, 12, 55)


def said(garage: Path, now: dt.datetime, *values: tuple[str, str]) -> str:
    """Say the next thing for the session in hand once some values of it are set."""
    desk = at_desk(garage, now)
    if values:
        step = setting(desk.files, NEXT, values)
        assert isinstance(step, Step)
        desk.do(step)
    found = next_thing(desk.files.data(NEXT), desk.review(NEXT))
    desk.close()
    return said_next(found, ACTIONS)


def test_it_is_the_first_to_do_of_the_review_with_the_key_that_leads_there(garage: Path) -> None:
    assert said(garage, AT) == "read the cold pressures, due 13:10: s"


@every(
    ("now", "values", "words"),
    [
        (AT, [("pressures.cold.front", "2.15"), ("pressures.cold.rear", "1.95")], "due 13:10: c"),
        (AT, [("went_out", "13:20")], f"{BACK}: i"),
        (AT, [("went_out", "13:20"), ("parked", "13:41")], ""),
        (AT, [("went_out", "13:20"), ("events.1.what", "red flag")], f"{WHEN}: e"),
        (
            AT,
            [("went_out", "13:20"), ("events.1.what", "stall"), ("events.1.restart", "13:40")],
            f"{AGAIN}: d",
        ),
        (AT, [("lever", "to the bar")], f"{FIX}: r"),
        (AT.replace(hour=13, minute=18), [], "late: read the cold pressures: s"),
        # What has no words of its own to be done is said by its message.
        (
            AT.replace(hour=13, minute=18),
            [("pressures.cold.front", "2.15"), ("pressures.cold.rear", "1.95")],
            "late: Before each session open: front lever pumped, firm; rear pedal works, and 5 more: c",
        ),
    ],
)
def test_what_was_done_what_is_late_and_a_hold_change_it(
    garage: Path, now: dt.datetime, values: list[tuple[str, str]], words: str
) -> None:
    found = said(garage, now, *values)

    assert found.endswith(words)
    assert bool(found) == bool(words)


def test_an_empty_garage_is_led_to_the_guided_start() -> None:
    found = next_thing(None, Review(about_a_session=False))

    assert said_next(found, ACTIONS) == f"{BEGIN}: m, guided start"


@every(
    ("wide", "shown"),
    [
        (120, "out 13:20 in 40 min, read the tyres, due 13:10: s"),
        (80, "out 13:20 in 40 min, read the tyres, due 13:10: s"),
        (70, "out in 40 min, read the tyres, due 13:10: s"),
        (50, "out in 40 min, read the tyres: s"),
        (40, "read the tyres: s"),
        (20, ""),
    ],
)
def test_the_last_line_says_it_as_long_as_there_is_room(wide: int, shown: str) -> None:
    line = last_line(
        "", (), "", Pen(wide), "out 13:20 in 40 min · kit on in 30 min", "read the tyres, due 13:10: s"
    )

    assert text_of(line).strip() == shown
