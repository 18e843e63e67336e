"""The board of the day: six riders by the clock, judged once a minute, and nothing of a person."""

import datetime as dt
import json
from collections.abc import Sequence
from pathlib import Path

from paddock_tui.desk import Desk
from paddock_tui.desk.day.board import BoardMemory, board_date, board_of
from paddock_tui.pages.board import board_as_dict, board_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.speech import spoken
from paddock_tui.records.paths import Ref
from paddock_tui.records.session_parts import INCIDENTS
from paddock_tui.rules.personal import personal_matter
from tests.desk.opened import NEXT, at_desk, typed

NOON = dt.datetime(2026, 6, 20, 12, 55)
DATE = NOON.date()

STARTS = {"ada": "13:00", "bo": "13:05", "cy": "13:40", "dee": "14:00"}
"""Four more riders, each on a bike of their own, by the start of their next session."""


def six(garage: Path) -> Path:
    """Have six riders with six bikes on the sample's day: Tobin's next session is made as well."""
    session = (garage / "sessions/2026/2026-06-20-4-magpie.toml").read_text(encoding="utf-8")
    for rider, start in STARTS.items():
        (garage / f"riders/{rider}.toml").write_text(f'name = "{rider}"\ngroup = "novice"\n')
        (garage / f"bikes/{rider}s.toml").write_text((garage / "bikes/magpie.toml").read_text())
        lines = [
            f'bike = "{rider}s"' if line.startswith("bike =") else line
            for line in session.splitlines()
            if not line.startswith(("rider =", "start =", "copied_from =", "taken_from ="))
        ]
        text = "\n".join([f'rider = "{rider}"', f"start = {start}:00", *lines, ""])
        (garage / f"sessions/2026/2026-06-20-4-{rider}s.toml").write_text(text, encoding="utf-8")
    (garage / "sessions/2026/2026-06-20-4-otter.toml").write_text(
        'date = 2026-06-20\nnumber = 4\nkind = "track day"\nday = "2026-06-20-anvilfen"\n'
        'bike = "otter"\nrider = "tobin"\ntyres = "otter-trackday"\nstart = 13:20:00\n'
    )
    return garage


def lines(desk: Desk, columns: int = 80) -> Sequence[str]:
    return tuple(plain_page(board_page(desk, BoardMemory()), columns))


def test_six_riders_stand_in_the_order_of_the_clock_with_what_is_open(garage: Path) -> None:
    desk = at_desk(six(garage), NOON)
    out = Ref("session", "2026-06-20-4-ada" + "s")
    desk.do(typed(desk, out, ("went_out", "12:50")))

    found = board_of(desk, DATE, BoardMemory())

    assert [(one.rider, one.bike, one.state) for one in found] == [
        ("ada", "adas", "out"),
        ("bo", "bos", "to come"),
        ("ines", "magpie", "to come"),
        ("tobin", "otter", "to come"),
        ("cy", "cys", "to come"),
        ("dee", "dees", "to come"),
    ]
    assert "\n".join(lines(desk)) == (Path(__file__).parent / "board-of-six.txt").read_text().rstrip("\n")
    assert max(map(len, lines(desk, 40))) <= 40


def test_a_rider_who_is_done_stands_last_and_one_without_a_session_where_the_timetable_says(
    garage: Path,
) -> None:
    desk = at_desk(garage, dt.datetime(2026, 6, 20, 14, 50))
    found = {one.rider: one for one in board_of(desk, DATE, BoardMemory())}

    assert (found["tobin"].state, found["tobin"].starts) == ("none made", dt.datetime(2026, 6, 20, 15, 20))
    assert found["ines"].starts == dt.datetime(2026, 6, 20, 13, 20)
    late = at_desk(garage, dt.datetime(2026, 6, 20, 18, 0))
    assert [one.rider for one in board_of(late, DATE, BoardMemory())][-1] == "tobin"
    assert board_date(at_desk(garage, dt.datetime(2026, 7, 1)), None) == DATE, "that of the current session"


def test_sessions_are_judged_once_a_minute_and_again_when_something_changed(garage: Path) -> None:
    now = [NOON]
    desk = Desk(six(garage), lambda: now[0])
    memory = BoardMemory()
    for _ in range(5):
        board_page(desk, memory)
    assert memory.judged == 6

    now[0] += dt.timedelta(seconds=59)
    board_page(desk, memory)
    assert memory.judged == 6

    other = at_desk(garage, NOON)
    other.do(typed(other, NEXT, ("surface", "standing water")))
    other.settled()
    assert desk.poll() == (NEXT,)
    shown = "\n".join(plain_page(board_page(desk, memory)))
    assert memory.judged == 12
    assert "Water stands on the track" in shown, shown


PLANTED = ("zugzwang", "quixotic", "wombat")
"""Words that stand only in what happened, in health, and in an acceptance."""


def test_what_happened_to_a_rider_or_bike_stands_on_no_board(garage: Path) -> None:
    desk = at_desk(garage, NOON)
    before = {(one.rule, one.subject) for one in desk.review(NEXT).findings}
    more = {"note": "zugzwang", "at": "12:40", "lamp": "oil", "fluid": "oil", "where": "gravel"}
    more |= {"head_contact": "yes", "count": "5", "signs": "fainted", "due": "2026-06-20"}
    pairs = [
        (f"incidents.{number}.{key}", value)
        for number, what in enumerate(INCIDENTS, 1)
        for key, value in {"what": what, **more}.items()
    ]
    accepted = "accepted.little-traction-for-the-wet.traction"
    pairs += [("fatigue", "5"), (f"{accepted}.reason", "quixotic"), (f"{accepted}.by", "wombat")]
    desk.do(typed(desk, NEXT, *pairs))

    judged = desk.review(NEXT).findings
    new = [one for one in judged if (one.rule, one.subject) not in before]
    assert len(new) >= 12
    assert [one.rule for one in new if not personal_matter(one)] == []
    held = json.dumps(board_as_dict(desk, BoardMemory()))
    page = board_page(desk, BoardMemory())
    said = "\n".join([*plain_page(page), *spoken(page), held]).casefold()
    for word in (*PLANTED, "concussion", "head", "fell", " fall", "fatigue", "unwell", "gravel", "accepted"):
        assert word not in said, word
    assert "rider: hold" in said
