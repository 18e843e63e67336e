"""The dash card as rows: what has to be shown, as it is in force, and how the reading stands."""

import datetime as dt
from pathlib import Path

import attrs
import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.day.dash import MODE, READ
from paddock_tui.desk.edits.values import bike_of, setting
from paddock_tui.pages.dash import dash_page, last_ridden, rows_to_read
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import Path as Keys
from paddock_tui.records.paths import Ref
from paddock_tui.store.aside import aside
from paddock_tui.store.data import after
from tests.desk.opened import NEXT
from tests.every import every
from tests.pages.opened import SAMPLE
from tests.small import BIKE, session, write

NOW = dt.datetime(2026, 6, 20, 13, 5)
WAY = "left rocker up, T, then plus or minus; any time"
"""How the sample's traction control is reached, and when it may be changed."""


def card(
    *pairs: tuple[str, str], seen: frozenset[Keys] = frozenset(), root: Path = SAMPLE, ref: Ref = NEXT
) -> Page:
    """Give the card of the sample's next session with some values typed; nothing is written."""
    desk = Desk(root, lambda: NOW)
    files = aside(desk.files)
    if pairs:
        step = setting(files, ref, pairs)
        assert isinstance(step, Step)
        data = dict(files.data(ref))
        for change in step.changes:
            assert isinstance(change, Change)
            for edit in change.edits:
                data = after(data, edit, lambda _: True)
        files.stage(ref, data)
    loaded = files.read(ref)
    assert loaded is not None
    situation = desk.assembled(ref).situation
    before = last_ridden(situation.history)
    desk.close()
    return dash_page(loaded, bike_of(files, ref), "session 4", situation.day, seen, before)


def row(page: Page, *path: str) -> Row:
    return next(one for one in page.rows() if one.path == path)


def value(name: str) -> tuple[str, ...]:
    return ("dash", "values", name)


def test_every_control_stands_there_in_the_bikes_own_numbers_after_the_mode() -> None:
    rows = rows_to_read(card())
    assert [one.path[-1] for one in rows] == [
        "shown_mode",
        "traction",
        "wheelie",
        "slide",
        "front-abs",
        "rear-abs",
        "engine-braking",
        "throttle",
        "power",
        "launch",
        "shifter",
        "pit-limiter",
    ]
    assert (rows[1].value, rows[1].range) == ("3", "range 0-10")


def test_what_the_riding_mode_fixes_is_what_has_to_be_shown() -> None:
    page = card(("setup.mode", "wading"))
    assert row(page, *value("throttle")).value == "gentle"
    assert "fixed by mode" in row(page, *value("throttle")).aside


@every(
    ("name", "says"),
    [
        ("front-abs", "resets at ignition off"),
        ("power", "after ignition off: not known"),
        ("pit-limiter", "posted 60 km/h"),
        ("traction", WAY),
    ],
)
def test_a_row_says_what_the_key_does_and_what_is_posted(name: str, says: str) -> None:
    aside = row(card(), *value(name)).aside
    assert (says in aside) if says else aside == ""


def test_a_limiter_over_the_posted_limit_and_an_armed_launch_say_so() -> None:
    page = card(("setup.controls.pit-limiter", "80 km/h"), ("setup.controls.launch", "armed"))
    assert "over the posted 60 km/h" in row(page, *value("pit-limiter")).aside
    assert "armed" in row(page, *value("launch")).aside


def test_what_nobody_planned_is_not_known() -> None:
    assert (row(card(), *value("wheelie")).value, row(card(), *value("wheelie")).known) == (
        "not known",
        False,
    )


def test_what_differs_says_both_and_the_rest_is_left_to_answer() -> None:
    page = card(("dash.values.traction", "5"), ("dash.shown_mode", "wading"))
    assert row(page, *value("traction")).value == "5, plan 3"
    assert row(page, *value("traction")).severity == "serious"
    assert row(page, *MODE).value == "wading, plan wild"
    assert row(page, *READ).label == "the rest as planned"
    assert row(card(), *READ).label == "all as planned"


@every(
    ("pairs", "says", "known"),
    [
        ((), "not read", False),
        ((("dash.read", "13:01"), ("dash.by", "IS")), "read 13:01 IS", True),
        (
            (("dash.read", "13:01"), ("events.1.what", "stall")),
            "read 13:01, then stall: read it again",
            False,
        ),
        (
            (("dash.read", "13:01"), ("dash.planned_mode", "soaring")),
            "read 13:01, then riding mode soaring -> wild: read it again",
            False,
        ),
    ],
)
def test_the_reading_says_when_by_whom_and_what_undid_it(
    pairs: tuple[tuple[str, str], ...], says: str, known: bool
) -> None:
    found = row(card(*pairs), *READ)
    assert (found.value, found.known) == (says, known)


def test_a_row_that_was_looked_at_says_so() -> None:
    page = card(seen=frozenset({value("slide")}))
    assert row(page, *value("slide")).aside == "seen"
    assert row(page, *value("traction")).aside == WAY


def test_what_happened_says_when_last() -> None:
    page = card(("events.1.what", "stall"), ("events.1.at", "12:44"))
    assert row(page, "events", "stall").value == "last 12:44"
    assert row(page, "events", "fuse").value == ""


@pytest.mark.parametrize(
    ("bike", "says"),
    [
        ('name = "bare"\nelectronics = "none"\n', "This bike has nothing to set."),
        ('name = "unlisted"\n', "The bike's controls are not listed."),
    ],
)
def test_a_bike_without_controls_has_an_empty_card(tmp_path: Path, bike: str, says: str) -> None:
    root = write(tmp_path, sessions__one=session(), bikes__plain=bike)
    assert [one.value for one in card(root=root, ref=Ref("session", "one")).rows()] == [says]


def test_a_session_without_a_bike_says_so(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__one=session(bike="None"), bikes__plain=BIKE)
    assert [one.value for one in card(root=root, ref=Ref("session", "one")).rows()] == [
        "Which bike it is, is not known."
    ]


@pytest.mark.parametrize(("width", "height"), [(80, 24), (40, 20)])
def test_the_card_fits_every_screen(width: int, height: int) -> None:
    page = attrs.evolve(card(("dash.values.traction", "5")), verdict="CARE 1")
    laid = layout(page, View(width=width, height=height, cursor=3))
    assert len(laid.lines) == height
    assert "5, plan 3" in laid.text()


def test_a_row_that_differs_from_what_the_dash_showed_last_says_how_it_is_reached() -> None:
    """In session 2 traction was 5 and front ABS 4; in the next one 3 and 4 are planned."""
    assert row(card(), *value("traction")).aside.startswith(WAY)
    assert "menu" not in row(card(), *value("front-abs")).aside
    assert "throttle closed" in row(card(("setup.controls.throttle", "crisp")), *value("throttle")).aside


def test_what_the_dash_showed_now_counts_before_what_it_showed_then() -> None:
    assert WAY in row(card(("dash.values.traction", "5")), *value("traction")).aside
    assert WAY not in row(card(("setup.controls.traction", "5")), *value("traction")).aside
    assert (
        WAY
        in row(
            card(("setup.controls.traction", "5"), ("dash.values.traction", "4")), *value("traction")
        ).aside
    )
