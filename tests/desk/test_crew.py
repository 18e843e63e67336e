"""The crew: whose a job is, who did it and who looked; a rider moved to another group; the corners' words."""

import datetime as dt
from pathlib import Path

from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.day.jobs import jobs_of, signing_job
from paddock_tui.desk.day.moving import moved_to, moving
from paddock_tui.desk.edits.entry_line import entering, entry_context
from paddock_tui.entry import read_line
from paddock_tui.pages.corners import corners_page
from paddock_tui.pages.crew import crew_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.store.saving import Clash
from tests.desk.opened import NEXT, at_desk
from tests.every import every

NOW = dt.datetime(2026, 6, 20, 12, 55)
DAY = Ref("day", "2026-06-20-anvilfen")


def entered(garage: Path, line: str, ref: Ref = NEXT) -> Step:
    desk = at_desk(garage, NOW)
    context = entry_context(desk, ref)
    assert context is not None
    typed = read_line(line, context)
    assert typed.clear, (typed.errors, typed.questions)
    step = entering(desk.files, ref, typed)
    assert isinstance(step, Step)
    desk.do(step)
    desk.close()
    return step


def session_of(garage: Path, ref: Ref = NEXT) -> Session:
    loaded = at_desk(garage, NOW).files.read(ref)
    assert loaded is not None
    assert isinstance(loaded.record, Session)
    assert (loaded.troubles, loaded.unknown) == ((), ())
    return loaded.record


def test_a_job_is_given_done_and_looked_at_by_somebody_else(garage: Path) -> None:
    entered(garage, "job fuel to")
    desk = at_desk(garage, NOW)
    for by in ("TO", "IS"):
        step = signing_job(desk.files, NEXT, "fuel", by, NOW)
        assert isinstance(step, Step)
        desk.do(step)
        refused = signing_job(desk.files, NEXT, "fuel", "TO", NOW)
        assert isinstance(refused, InputError)
        assert refused.sentence().startswith("TO did it")
    job = session_of(garage).jobs["fuel"] if desk.settled() else None

    assert job is not None
    assert (job.who, job.done_by, job.checked_by, job.at) == ("TO", "TO", "IS", dt.time(12, 55))
    states = {one.name: one for one in jobs_of(session_of(garage), clock_of(desk.files, NEXT, NOW))}
    assert states["fuel"].done
    assert (states["dash"].done, states["dash"].due) == (False, dt.datetime(2026, 6, 20, 13, 17))


def test_a_job_goes_back_byte_for_byte_whoever_did_it(garage: Path) -> None:
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    whole = file.read_bytes()
    entered(garage, "job fuel to")
    desk = at_desk(garage, NOW)
    for job, by in (("fuel", "TO"), ("fuel", "IS"), ("warmers", "TO")):
        step = signing_job(desk.files, NEXT, job, by, NOW)
        assert isinstance(step, Step)
        desk.do(step)
        desk.settled()
    assert file.read_bytes() != whole
    for _ in range(4):
        assert desk.undo()
        desk.settled()
    assert file.read_bytes() == whole


def test_two_laptops_cannot_both_answer_a_job(garage: Path) -> None:
    entered(garage, "job fuel to")
    one, other = at_desk(garage, NOW), at_desk(garage, NOW)
    steps = [signing_job(desk.files, NEXT, "fuel", by, NOW) for desk, by in ((one, "TO"), (other, "IS"))]
    for desk, step in zip((one, other), steps, strict=True):
        assert isinstance(step, Step)
        desk.do(step)
        outcome = desk.settled()[-1]
        assert isinstance(outcome, Clash) is (desk is other), outcome

    assert session_of(garage).jobs["fuel"].done_by == "TO"


@every(
    ("line", "found"),
    [
        ("moved novice JM", ("novice", "JM")),
        ("moved to advanced by tob", ("advanced", "TOB")),
        ("moved novice", None),
        ("late 15", None),
        ("t4 moved novice JM", None),
    ],
)
def test_a_line_says_who_moved_the_rider_where(line: str, found: tuple[str, str] | None) -> None:
    assert moved_to(line) == found


def test_a_move_is_one_step_that_keeps_where_from_and_goes_back_byte_for_byte(garage: Path) -> None:
    file = garage / "days/2026-06-20-anvilfen.toml"
    before = file.read_bytes()
    desk = at_desk(garage, NOW)
    step = moving(desk.files, NEXT, "novice", "JM", NOW)
    assert isinstance(step, Step)
    assert step.label == "ines moved from intermediate to novice by JM"
    desk.do(step)
    desk.settled()

    entry = desk.assembled(NEXT).situation.day
    assert entry is not None
    held = entry.entries["ines"]["magpie"]
    move = held.moves["1"]
    assert held.group == "novice"
    assert (move.from_, move.to, move.by, move.at) == ("intermediate", "novice", "JM", dt.time(12, 55))
    assert isinstance(moving(desk.files, NEXT, "novice", "JM", NOW), InputError)
    assert desk.undo() == step.label
    desk.settled()
    assert file.read_bytes() == before


def test_the_words_of_the_trackside_are_one_step_each_and_go_back(garage: Path) -> None:
    file = garage / "sessions/2026/2026-06-20-4-magpie.toml"
    before = file.read_bytes()
    lines = (
        "red 4",
        "restart 14:40 6",
        'corner 4 "late apex"',
        "corner 7 wait for the fence",
        "penalty one place",
    )
    for line in lines:
        entered(garage, line)
    session = session_of(garage)
    stop = session.events[max(session.events)]

    assert (stop.what, stop.at, stop.laps_ridden) == ("red flag", dt.time(12, 55), 4)
    assert (stop.restart, stop.laps_left) == (dt.time(14, 40), 6)
    assert session.corner_words == {"4": "late apex", "7": "wait for the fence"}
    assert session.penalties["1"].what == "one place"
    desk = at_desk(garage, NOW)
    for _ in lines:
        assert desk.undo()
    desk.settled()
    assert file.read_bytes() == before


@every(
    ("line", "said"),
    [
        ("restart 14:40", "nothing stopped this outing"),
        ("corner late apex", "corner waits for its number"),
        ("corner 4", "the words about corner 4 are missing"),
        ("job fuel", "job waits for what and whose"),
    ],
)
def test_what_is_missing_behind_a_word_is_said(garage: Path, line: str, said: str) -> None:
    desk = at_desk(garage, NOW)
    context = entry_context(desk, NEXT)
    assert context is not None

    assert [one.message for one in read_line(line, context).errors] == [said]


def test_the_corners_say_what_was_said_or_felt_the_last_time(garage: Path) -> None:
    desk = at_desk(garage, NOW)
    loaded, situation = desk.files.read(NEXT), desk.assembled(NEXT).situation
    assert loaded is not None
    rows = {row.label: row.aside for row in corners_page(loaded, situation, "here", Units()).rows()}

    assert rows["7 Long Reed"].startswith("20 Jun: wait for the end of the fence, then one smooth opening")
    assert rows["6 Pump House"] == "16 May: front dives; left, gear 2, the pump house door"
    assert rows["1 Sluice"] == "right, gear 3, brake at the second white post"


def test_the_crew_reads_the_class_as_it_was_entered_and_nothing_else_of_it(garage: Path) -> None:
    race = Ref("session", "2025-06-14-2-shrew")
    desk = at_desk(garage, dt.datetime(2025, 6, 14, 13, 50))
    page = crew_page(desk.assembled(race).situation, clock_of(desk.files, race, desk.now()), "race")
    said = "\n".join(plain_page(page))

    for words in ("no fuel", "five-minute board", "nobody touches the bike", "140 kg", "club paper of March"):
        assert words in said
    track_day = crew_page(at_desk(garage, NOW).assembled(NEXT).situation, None, "track day")
    assert "class" not in "\n".join(plain_page(track_day))
