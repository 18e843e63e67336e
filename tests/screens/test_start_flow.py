"""The guided start by keys: from nothing to a review on three bikes, cut short and gone on with anywhere."""

import datetime as dt
import os
import signal
import tomllib
from pathlib import Path

import pytest

from paddock_tui.commands.new import new
from paddock_tui.desk import Desk
from paddock_tui.desk.start.order import after, asks, context_of_start, goes_on
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.rules.core import CAUTION
from paddock_tui.screens.at_work.guide import StartState
from tests.bench.returning import keys_of
from tests.bench.starting import BIKES, FRIDAY, MORNING, SECOND, UP, starting
from tests.every import every
from tests.widgets.wire import Wire


@pytest.fixture
def made(tmp_path: Path) -> Path:
    garage = tmp_path / "garage"
    new(str(garage))
    return garage


@pytest.mark.parametrize("keys", BIKES.values(), ids=BIKES)
async def test_three_bikes_from_nothing_to_a_review_that_misses_nothing(made: Path, keys: str) -> None:
    async with starting(made) as rider:
        await rider.types(keys)

        assert rider.app.main.place.room == "review"
        seen = rider.app.main._seen
        assert seen is not None
        assert seen.review.unlocking() == ()
        assert [one.message for one in seen.review.findings if one.severity >= CAUTION] == []
        assert [one.rule for one in seen.review.to_do if one.rule == "checklist-items-open"]
    if keys == UP:
        await _second_day(made)


async def _second_day(made: Path) -> None:
    """Type the day after: it goes on from the first."""
    async with starting(made, "garage", FRIDAY) as rider:
        await rider.types(SECOND)

        assert rider.app.main.place.room == "review"
        assert str(rider.app.main.place.subject) == "session/2026-06-27-1-kite"
        seen = rider.app.main._seen
        assert seen is not None
        assert seen.review.unlocking() == ()
    text = (made / "sessions/2026/2026-06-27-1-kite.toml").read_text(encoding="utf-8")
    assert 'copied_from = "2026-06-20-1-kite"' in text
    assert "start = 09:20:00" in text
    assert "104 dB(A)" in (made / "days/2026-06-27-fen.toml").read_text(encoding="utf-8")


def test_the_keys_of_a_first_and_of_a_second_day_stay_within_their_budgets() -> None:
    assert len(keys_of(UP)) <= 260
    assert len(keys_of(SECOND)) <= 40


ANSWERS = {
    "rider": "ines",
    "rider/ines group": "1",
    "bike": "kite",
    "control traction": "0-10uok",
    "control shifter": "on k",
    "all electronics": "yes",
    "mode 0": "rain wet",
    "adjuster front rebound": "18c left",
    "adjuster front compression": "20c fast 4to right",
    "damping 0": "live calm, rough road",
    "all suspension": "yes",
    "tyres": "pair",
    "tyres hot_dry": "2.5 2.35",
    "venue": "fen",
    "date": "today",
    "times": "9:20 9:40 60x6",
    "surface": "dry",
}
"""What is answered; every other row is passed over."""

DOWN_ANSWERS = {
    "rider": "tobin",
    "bike": "kite",
    "control traction": "1-8dok",
    "control throttle": "direct rounded unk",
    "control pit-limiter": "40 60 80 o",
    "all electronics": "yes",
    "adjuster rear compression": "20c fast 3to",
    "surface": "wet",
}
NONE_ANSWERS = {
    "rider": "ann",
    "bike": "kite",
    "whole electronics": "0",
    "whole suspension": "0",
    "tyres": "pair",
    "surface": "dry",
}


@pytest.mark.parametrize(
    "wanted", [ANSWERS, DOWN_ANSWERS, NONE_ANSWERS], ids=["counting up", "counting down", "none"]
)
def test_a_start_cut_short_anywhere_goes_on_behind_the_last_answer(
    made: Path, wanted: dict[str, str]
) -> None:
    answered: list[str] = []
    key: str | None = "rider"
    while key is not None:
        desk = Desk(made, lambda: MORNING)
        rows = asks(context_of_start(desk, {}))
        one = next(row for row in rows if row.key == key)
        if key in wanted:
            found = one.answer(wanted[key])
            assert not isinstance(found, InputError)
            assert found.step is not None
            desk.do(found.step)
            answered.append(key)
        desk.close()
        desk = Desk(made, lambda: MORNING)
        rows = asks(context_of_start(desk, {}))
        on, following = goes_on(rows), after(rows, key)
        desk.close()
        if key in wanted:
            assert on == following
        key = following.key if following is not None else None

    assert answered == list(wanted)
    if wanted is not ANSWERS:
        return
    bike = tomllib.loads((made / "bikes/kite.toml").read_text(encoding="utf-8"))
    assert {name: one["range"] for name, one in bike["adjusters"].items()} == {
        "front-rebound": [0, 18],
        "front-compression-slow": [0, 20],
        "front-compression-fast": [0, 4],
    }
    assert bike["adjusters"]["front-compression-fast"]["leg"] == "right"
    assert bike["damping"]["live"]["presets"] == ["calm", "rough road"]


def test_the_rows_are_made_once_until_something_changes(made: Path) -> None:
    now, ines = [MORNING], Ref("rider", "ines")
    desk = Desk(made, lambda: now[0])
    state = StartState()

    def is_made_anew(rider: Ref | None) -> bool:
        before, found = state._made, state.rows(desk)
        assert found[0].about.rider == rider
        assert state.rows(desk) is found
        return found is not before

    assert is_made_anew(None)
    assert not is_made_anew(None)
    (made / "riders/ines.toml").write_text('name = "Ines"\ninitials = "IN"\n', encoding="utf-8")
    desk.poll()
    assert is_made_anew(ines)
    state.chosen["rider"] = None
    assert is_made_anew(None)
    del state.chosen["rider"]
    assert is_made_anew(ines)
    desk.files.stage(ines, {"name": "Ines", "retired": MORNING.date()})
    assert is_made_anew(None)
    now[0] += dt.timedelta(minutes=1)
    assert is_made_anew(None)
    desk.close()


async def test_what_cannot_be_read_stays_open_with_what_to_type_instead(made: Path) -> None:
    async with starting(made) as rider:
        await rider.types("text:ines enter text:62 enter 2 1 text:kite enter enter text:10 enter")

        assert rider.typing == "10"
        assert "lowest" in rider.screen
        await rider.types("escape")
        assert "[controls" not in (made / "bikes/kite.toml").read_text(encoding="utf-8")
        await rider.types("escape escape")
        assert rider.app.main.place.room == "guide"


async def test_a_suggestion_is_not_the_set_up_until_it_is_taken(made: Path) -> None:
    keys = "text:ines enter enter 2 enter 1 enter text:kite enter enter text:0-9uok enter"
    async with starting(made) as rider:
        await rider.types(keys)
        # An enter behind the digit that picked a choice passed no row.
        assert 'pressure = "bar"' in (made / "riders/ines.toml").read_text(encoding="utf-8")
        for key, answer in (("tyres", "text:pair enter 2"), ("surface", "4")):
            to = next(row for row in rider.app.main.board.page.rows() if row.key == key)
            rider.app.main.board.go(to.identity)
            await rider.types(answer)
        session = next((made / "sessions").rglob("*-kite.toml"))
        to = next(
            row for row in rider.app.main.board.page.rows() if row.label == "traction control" and row.offer
        )
        rider.app.main.board.go(to.identity)
        assert str(to.offer[0].value) in to.aside
        assert "traction" not in session.read_text(encoding="utf-8")
        await rider.types("escape v")

        assert f"traction = {to.offer[0].value}" in session.read_text(encoding="utf-8")


@every(
    ("typed", "date"),
    [
        ("today", dt.date(2026, 6, 20)),
        ("tomorrow", dt.date(2026, 6, 21)),
        ("sun", dt.date(2026, 6, 21)),
        ("19", dt.date(2026, 7, 19)),
        ("2027-01-02", dt.date(2027, 1, 2)),
        ("31", dt.date(2026, 7, 31)),
        ("soon", None),
        ("2026-02-30", None),
    ],
)
def test_dates_are_read_as_they_are_said_the_evening_before(typed: str, date: dt.date | None) -> None:
    from paddock_tui.desk.start.day import read_date

    assert read_date(typed, MORNING.date()) == date


@pytest.mark.skipif(not hasattr(signal, "SIGHUP"), reason="no such signals here")
def test_three_signals_between_answers_lose_none_and_the_start_goes_on(made: Path) -> None:
    code = (
        "import sys, datetime as dt\nfrom paddock_tui.app import run\n"
        f"now = dt.datetime.fromisoformat({MORNING.isoformat()!r})\n"
        f"sys.exit(run({str(made)!r}, lambda: now))"
    )
    goes_on = "m/guided\r\r"
    steps = (
        (signal.SIGHUP, "ines\r62\r", "> group"),
        (signal.SIGTERM, "2", "> units"),
        (signal.SIGKILL, "1kite\r", "> electronics"),
    )
    for number, keys, row in steps:
        with Wire(code) as wire:
            wire.read_until("guided start")
            wire.after(f"{goes_on}{keys}", mark=row)
            os.kill(wire.process.pid, number)
            wire.ended()
    with Wire(code) as wire:
        wire.read_until("? help")
        wire.after(goes_on, mark="> electronics")
        wire.type("\x1bq")
        wire.ended()
    assert 'name = "kite"' in (made / "bikes/kite.toml").read_text(encoding="utf-8")


async def test_what_a_control_was_taken_for_is_said_whole_and_its_hint_stays_while_one_types(
    made: Path,
) -> None:
    async with starting(made) as rider:
        await rider.types("text:ines enter text:62 enter 2 1 text:kite enter enter text:0-3uo0r enter")
        await rider.types("text:1-5_down_always enter text:1")
        assert "0-3; most help 3; 0 is off; ignition resets" in rider.screen
        assert "1-5; most help 1; always on" in rider.screen
        assert "lowest-highest or its words" in rider.screen
        await rider.types("escape")
        for label, words in (("throttle response", "sharp_soft_up"), ("quickshifter", "on_keeps")):
            row = next(one for one in rider.app.main.board.page.rows() if one.label == label)
            assert rider.app.main.board.go(row.identity)
            await rider.types(f"text:{words} enter")
        assert "sharp soft; most help soft" in rider.screen
        assert "on or off; ignition keeps" in rider.screen


async def test_a_size_that_begins_as_a_number_of_the_list_is_typed_and_a_number_of_none_is_said(
    made: Path,
) -> None:
    async with starting(made) as rider:
        await rider.types("text:ines enter text:62 enter 7")
        assert "7 is none of them: 1 novice" in rider.last
        assert rider.typing is None
        await rider.types("2 1 text:kite enter 0 0 text:17 enter text:110/80R18 enter 2 enter")
        text = (made / "bikes/kite.toml").read_text(encoding="utf-8")
        assert 'tyre_size = "110/80R18"' in text
        assert 'tyre_size = "190/55ZR17"' in text
        await rider.types("enter text:2nd_set enter")
        assert (made / "tyres/2nd-set.toml").exists()


async def test_what_has_a_fixed_length_goes_on_by_itself_as_on_any_page(made: Path) -> None:
    async with starting(made) as rider:
        await rider.types("text:ines enter text:62 enter 2 enter 1 enter text:kite enter 0 0 1 7 5")
        assert 'capacity = "17.5 l"' in (made / "bikes/kite.toml").read_text(encoding="utf-8")
        row = next(one for one in rider.app.main.board.page.rows() if one.key == "surface")
        assert rider.app.main.board.go(row.identity)
        await rider.types("1 1 0 2 0 enter")
        session = next((made / "sessions").rglob("*-kite.toml"))
        assert "start = 10:20:00" in session.read_text(encoding="utf-8")
        row = next(one for one in rider.app.main.board.page.rows() if one.label == "front start pressure")
        assert rider.app.main.board.go(row.identity)
        await rider.types("2 1 5 enter 1 9 5 enter")
        text = session.read_text(encoding="utf-8")
        assert 'front_start = "2.15 bar"' in text
        assert 'rear_start = "1.95 bar"' in text
