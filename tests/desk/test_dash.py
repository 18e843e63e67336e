"""Reading the dash on disk: stamped with who and for which mode, what differs, what undoes it."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.day.dash import MODE, as_planned, noting, reading, showing, unread
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Path as Keys
from paddock_tui.records.paths import Ref
from paddock_tui.store.saving import Saved
from tests.desk.opened import at_desk
from tests.small import BIKE, session, snapshot, write

ONE = Ref("session", "one")
NOW = dt.datetime(2026, 5, 16, 9, 57, 7, 500)
TRACTION: Keys = ("dash", "values", "traction")
WHEELIE: Keys = ("dash", "values", "wheelie")
MODES = f"{BIKE}\n[modes.dry.limits]\ntraction = [0, 10]\n\n[modes.rain.fixes]\nwheelie = 1\n"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    text = session().replace("traction = 5    # as before", "traction = 5    # as before\nwheelie = 2")
    return write(tmp_path, sessions__one=text)


def with_modes(root: Path) -> Path:
    """Give the bike riding modes, and the plan the one for rain."""
    text = session().replace("[setup.controls]", '[setup]\nmode = "rain"\n\n[setup.controls]')
    return write(root, sessions__one=text, bikes__plain=MODES)


def done(desk: Desk, step: Step | str | InputError) -> Step:
    """Do a step, and wait until it is on disk."""
    assert isinstance(step, Step), step
    desk.do(step)
    assert all(isinstance(outcome, Saved) for outcome in desk.settled())
    return step


def text_of(root: Path) -> str:
    return (root / "sessions/one.toml").read_text()


def test_a_reading_is_stamped_with_the_time_and_the_initials(root: Path) -> None:
    desk = at_desk(root, NOW)
    before = text_of(root)
    assert done(desk, reading(desk.files, ONE, NOW)).label == "dash read 09:57 as planned"
    assert text_of(root) == f'{before}\n[dash]\nread = 09:57:07\nby = "AN"\n'
    assert desk.undo()
    desk.settled()
    assert text_of(root) == before


def test_a_reading_notes_the_mode_that_it_is_for(root: Path) -> None:
    desk = at_desk(with_modes(root), NOW)
    done(desk, reading(desk.files, ONE, NOW))
    assert text_of(root).endswith('[dash]\nread = 09:57:07\nby = "AN"\nplanned_mode = "rain"\n')


def test_a_later_reading_changes_only_its_time(root: Path) -> None:
    desk = at_desk(root, NOW)
    done(desk, reading(desk.files, ONE, NOW))
    first = text_of(root)
    later = NOW.replace(minute=59, second=0)
    done(desk, reading(desk.files, ONE, later))
    assert text_of(root) == first.replace("09:57:07", "09:59:00")


def test_what_the_dash_shows_instead_is_kept_and_a_reading_leaves_it(root: Path) -> None:
    desk = at_desk(root, NOW)
    step = done(desk, showing(desk.files, ONE, TRACTION, "4"))
    assert step.label == "the dash shows traction control 4"
    assert done(desk, reading(desk.files, ONE, NOW)).label == "dash read 09:57, 1 other than planned"
    assert "[dash.values]\ntraction = 4\n" in text_of(root)


def test_what_is_planned_leaves_nothing_to_write(root: Path) -> None:
    desk = at_desk(root, NOW)
    before = snapshot(root)
    step = showing(desk.files, ONE, TRACTION, "5")
    assert isinstance(step, Step)
    assert step.changes == ()
    done(desk, showing(desk.files, ONE, TRACTION, "4"))
    done(desk, showing(desk.files, ONE, TRACTION, "5"))
    done(desk, showing(desk.files, ONE, WHEELIE, "2"))
    assert "traction = 4" not in text_of(root)
    assert before.keys() == snapshot(root).keys()


def test_a_row_as_planned_takes_back_what_it_was_said_to_show(root: Path) -> None:
    desk = at_desk(root, NOW)
    done(desk, showing(desk.files, ONE, TRACTION, "4"))
    assert done(desk, as_planned(desk.files, ONE, TRACTION)).label == "traction control as planned"
    assert "traction = 4" not in text_of(root)


def test_what_the_mode_fixes_is_what_the_dash_has_to_show(root: Path) -> None:
    desk = at_desk(with_modes(root), NOW)
    fixed, other = (showing(desk.files, ONE, WHEELIE, text) for text in ("1", "2"))
    assert isinstance(fixed, Step)
    assert isinstance(other, Step)
    assert (len(fixed.changes), len(other.changes)) == (0, 1)


def test_another_riding_mode_on_the_dash_is_kept_by_its_name(root: Path) -> None:
    desk = at_desk(with_modes(root), NOW)
    assert done(desk, showing(desk.files, ONE, MODE, "d")).label == "the dash shows riding mode dry"
    assert 'shown_mode = "dry"' in text_of(root)


def test_what_nobody_planned_becomes_the_plan_once_it_is_read(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, sessions__one=session()), NOW)
    assert reading(desk.files, ONE, NOW) == "not planned yet: wheelie control; type what the dash shows"
    done(desk, showing(desk.files, ONE, WHEELIE, "3"))
    text = (tmp_path / "sessions/one.toml").read_text()
    assert "wheelie = 3\n" in text
    assert "dash" not in text
    assert isinstance(reading(desk.files, ONE, NOW), Step)


@pytest.mark.parametrize("text", ["", "much", "4.5"])
def test_what_the_control_cannot_be_is_refused(root: Path, text: str) -> None:
    assert isinstance(showing(at_desk(root, NOW).files, ONE, TRACTION, text or "?"), InputError)


@pytest.mark.parametrize("what", ["key-off", "stall", "fuse", "battery"])
def test_what_happened_is_noted_with_its_time_and_undoes_the_reading(root: Path, what: str) -> None:
    desk = at_desk(root, NOW)
    done(desk, reading(desk.files, ONE, NOW))
    assert "dash-not-read" not in {one.rule for one in desk.review(ONE).to_do}
    later = NOW.replace(minute=58)
    assert done(desk, noting(desk.files, ONE, what, later)).label == f"{what} 09:58: read the dash again"
    assert text_of(root).endswith(f'[events.1]\nwhat = "{what}"\nat = 09:58:07\n')
    assert "dash-not-read" in {one.rule for one in desk.review(ONE).findings}


def test_a_second_happening_gets_the_next_number(root: Path) -> None:
    desk = at_desk(root, NOW)
    done(desk, noting(desk.files, ONE, "stall", NOW))
    done(desk, noting(desk.files, ONE, "stall", NOW))
    assert "[events.2]" in text_of(root)


def test_a_reading_taken_back_leaves_what_differed(root: Path) -> None:
    desk = at_desk(root, NOW)
    done(desk, showing(desk.files, ONE, TRACTION, "4"))
    done(desk, reading(desk.files, ONE, NOW))
    done(desk, unread(desk.files, ONE))
    assert "read =" not in text_of(root)
    assert "traction = 4" in text_of(root)


def test_nothing_is_stamped_on_another_day(root: Path) -> None:
    desk = at_desk(root, NOW)
    evening = NOW.replace(day=15)
    for found in (reading(desk.files, ONE, evening), noting(desk.files, ONE, "stall", evening)):
        assert found == "the session is of 16 May: the dash is read after the last ignition-on of that day"


def test_it_may_be_answered_on_return_of_the_same_day(root: Path) -> None:
    text = session(parked="10:20:00").replace("traction = 5", "traction = 5\nwheelie = 2")
    desk = at_desk(write(root, sessions__one=text), NOW.replace(hour=10, minute=25))
    assert isinstance(reading(desk.files, ONE, desk.now()), Step)


def test_what_is_noted_gets_a_number_after_the_highest_there_is(tmp_path: Path) -> None:
    events = '\n[events.1]\nwhat = "stall"\n\n[events.4]\nwhat = "stall"\n'
    desk = at_desk(write(tmp_path, sessions__one=session() + events), NOW)
    step = noting(desk.files, ONE, "stall", NOW)

    assert isinstance(step, Step)
    desk.do(step)
    desk.settled()
    assert set(desk.files.data(ONE)["events"]) == {"1", "4", "5"}
    desk.close()
