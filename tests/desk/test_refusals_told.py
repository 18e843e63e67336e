"""What the desk refuses, each of its refusals provoked once: the whole sentence, with what to do instead.

`REFUSALS=1` writes `refusals.txt` anew; then read what changed.
"""

import datetime as dt
import os
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.day.before import GoesThere, first_session
from paddock_tui.desk.day.dash import showing
from paddock_tui.desk.day.jobs import signing_job
from paddock_tui.desk.day.late import delaying
from paddock_tui.desk.day.moving import moving
from paddock_tui.desk.day.timetable import read_times
from paddock_tui.desk.debrief.steps import answering
from paddock_tui.desk.edits.disputes import deciding
from paddock_tui.desk.edits.questions import questions
from paddock_tui.desk.edits.tables import adding
from paddock_tui.desk.edits.values import setting
from paddock_tui.desk.files.names import naming
from paddock_tui.desk.files.preset_names import renaming_preset
from paddock_tui.desk.files.records import creating, duplicating, renaming
from paddock_tui.desk.lookup import NoSuchRecord, find
from paddock_tui.desk.sessions.from_json import set_up_from_json
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.desk.sessions.profile_for_another import profile_for
from paddock_tui.desk.sessions.profiles import taking
from paddock_tui.desk.sessions.restore import setting_back, trying_back
from paddock_tui.desk.start.order import asks, context_of_start
from paddock_tui.entry.return_rows import groups
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import MISSING, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.store.garage import GarageFiles
from tests.small import BIKE, session, write

TOLD = Path(__file__).parent / "refusals.txt"
NOON = dt.datetime(2026, 5, 16, 12, 0)

A, B, BROKEN, ELSEWHERE = (Ref("session", name) for name in ("a", "b", "broken", "elsewhere"))
PLAIN, DAY = Ref("bike", "plain"), Ref("day", "2026-05-16-fen")
LIVE = BIKE + '\n[damping.live]\npresets = ["calm", "keen"]\n'
FEN = """date = 2026-05-16
venue = "fen"
group = "novice"
timing = "forbidden"
[timetable.novice.1]
from = 09:00:00
to = 09:20:00
"""
ON_IT = {"day": '"2026-05-16-fen"'}


TIMES = (
    "9 0",
    "novice every 60",
    "9:00 9:20 10:00",
    "9:20 9:00",
    "9:00 9:20 every 5 x3",
    "x every",
    "9:00 9:20 every 60",
)
DISPUTE = """
[conflict."setup.controls.traction"]
base = 3
ours = 4
theirs = 7
"""


def garage_of(root: Path) -> Path:
    """Write a garage in which something is wrong with most of it."""
    return write(
        root,
        bikes__plain=LIVE,
        bikes__other='name = "Other"\n',
        bikes__gone='name = "Gone"\nretired = 2026-01-01\n',
        venues__fen='name = "Fen"\n',
        **{"days__2026-05-16-fen": FEN},
        profiles__theirs='bike = "other"\n[setup]\nmode = "x"\n',
        profiles__empty='bike = "plain"\nname = "Empty"\n',
        sessions__a=session(1, parked="10:20:00", tyres='"worn"', **ON_IT),
        sessions__b=session(2, copied_from='"a"', parked="11:20:00", **ON_IT).replace("= 5", "= 7"),
        sessions__bare="date = 2026-05-16\nnumber = 7\n",
        sessions__elsewhere=session(1, bike='"other"'),
        sessions__broken='date = = \nbike = "other"\n',
        profiles__plain='bike = "plain"\n',
        bikes__heron='was = ["swan"]\n',
        riders__broken="name = = \n",
        days__broken="date = = \n",
        tyres__worn='name = "Worn"\nretired = 2026-01-01\n',
        sessions__disputed='date = 2026-05-16\nnumber = 8\nbike = "plain"\nsetup = 5\n' + DISPUTE,
        sessions__odd='date = 2026-05-16\nnumber = 9\nbike = "plain"\nsetup = 5\npressures = 3\n',
    )


def sentence(result: object) -> str:
    if isinstance(result, tuple):
        return sentence(result[1])
    if isinstance(result, list):
        return " // ".join(one.sentence() for one in result)
    assert isinstance(result, InputError), result
    return result.sentence()


Refused = Iterator[tuple[str, object]]
"""What was asked for, and what came back."""


def refused(root: Path) -> Refused:
    """Provoke each refusal."""
    desk = Desk(root, lambda: NOON)
    yield from of_names(desk.files)
    yield from of_a_day(desk)
    yield from of_sessions(desk)
    yield from of_values(desk.files)
    desk.close()


def of_names(files: GarageFiles) -> Refused:
    for old, new in (("calm", "keen"), ("calm", "a.b"), ("none", "x")):
        yield f"preset {old} to {new}", renaming_preset(files, PLAIN, "live", old, new)
    for kind, text in (
        ("bike", "a/b"),
        ("bike", "???"),
        ("bike", "x" * 90),
        ("bike", "Plain"),
        ("bike", "gone"),
        ("bike", "swan"),
        ("day", "2026-02-30 fen"),
        ("day", "nowhere"),
        ("session", "nothing"),
    ):
        yield f"new {kind} {text[:20]}", naming(files, kind, text, NOON.date())
    yield "new with a capital", creating(files, Ref("bike", "Abc"), {})
    yield "copy what is broken", duplicating(files, BROKEN, "again")
    yield "rename what is not there", renaming(files, Ref("bike", "nothing"), "x")
    yield "rename to what is there", renaming(files, PLAIN, "other")
    yield "rename what is named in a broken file", renaming(files, Ref("bike", "other"), "osprey")
    for text in ("nothing", "bike/nothing", "kind/x", "session/", "o", "plain"):
        try:
            yield f"find {text}", find(files, text)
        except NoSuchRecord as error:
            yield f"find {text}", error.trouble


def of_a_day(desk: Desk) -> Refused:
    files = desk.files
    for text in (
        "9 0",
        "novice every 60",
        "9:00 9:20 10:00",
        "9:20 9:00",
        "9:00 9:20 every 5 x3",
        "x every",
        "9:00 9:20 every 60",
    ):
        yield f"times {text}", read_times(text, RidingDay(group="novice"), None)
    yield "times too many", read_times("9:00 9:20 every 60 x20", RidingDay(group="novice"), None)
    yield "times of no group", read_times("9:00 9:20", RidingDay(), "\u6a2a")
    yield "late 0", delaying(files, DAY, 0, NOON)
    yield "late on another day", delaying(files, DAY, 5, NOON + dt.timedelta(days=3))
    yield "late with nothing to come", delaying(files, DAY, 5, NOON + dt.timedelta(hours=6))
    yield "late into the night", delaying(files, DAY, 5000, NOON - dt.timedelta(hours=4))
    times = next(
        one
        for one in asks(context_of_start(desk, {"day": Ref("day", "broken"), "session": A}))
        if one.key == "times"
    )
    yield "times of a broken day", times.answer("9:00 9:20")
    yield "move without a rider", moving(files, Ref("session", "bare"), "advanced", "AN", NOON)
    yield "move to the same", moving(files, A, "novice", "AN", NOON)
    yield "dash without a bike", showing(files, Ref("session", "bare"), ("setup", "mode"), "x")
    yield "first of a bike never ridden", first_session(desk, DAY, GoesThere("ann", "plain", True))
    signed = signing_job(files, A, "fuel", "AN", NOON)
    assert isinstance(signed, Step)
    desk.do(signed)
    yield "checked by who did it", signing_job(files, A, "fuel", "AN", NOON)


def of_sessions(desk: Desk) -> Refused:
    files = desk.files
    yield "a dispute that is none", deciding(files, A, "surface", "mine")
    disputed, key = Ref("session", "disputed"), "setup.controls.traction"
    yield "a dispute under a value", deciding(files, disputed, key, "theirs")
    yield "an entry of no table", adding(files, PLAIN, ("nothing",), "x")
    yield "an entry that is no value", adding(files, A, ("readings",), "x")
    yield "from JSON to a bike", set_up_from_json(files, PLAIN, "{}")
    yield "from JSON over a value", set_up_from_json(files, Ref("session", "odd"), '{"setup": {"mode": "x"}}')
    for text in ("none", "[" * 100_000, "NaN", "{}", '{"setup": {"modus": 1}}'):
        yield f"from JSON {text[:30]}", set_up_from_json(files, A, text)
    yield "next of what is broken", next_session(files, BROKEN, NOON)
    yield "profile of another bike", taking(files, A, Ref("profile", "theirs"))
    yield "profile of no bike", taking(files, Ref("session", "bare"), Ref("profile", "theirs"))
    yield "profile for a broken rider", profile_for(files, desk.about(A), Ref("rider", "broken"))
    yield "profile without a set-up", taking(files, A, Ref("profile", "empty"))
    yield "back to itself", setting_back(files, A, A, NOON)
    yield "back to another bike's", setting_back(files, A, ELSEWHERE, NOON)
    yield "back to what is none", setting_back(files, A, Ref("session", "odd"), NOON)
    entry = next(one for one in ledger(desk).entries if one.label == "traction control")
    for name, changed in (
        ("nowhere from", {"source": None}),
        ("into a danger", {"danger_back": "weaves in session a"}),
        ("on no bike", {"bike": "none"}),
        ("not listed", {"changes": tuple(attrs.evolve(one, listed=False) for one in entry.changes)}),
        ("on a retired set", {"changes": tuple(attrs.evolve(one, path=("tyres",)) for one in entry.changes)}),
        ("not known", {"changes": tuple(attrs.evolve(one, path=("fuel_added",)) for one in entry.changes)}),
    ):
        yield f"re-test {name}", trying_back(files, attrs.evolve(entry, **changed), NOON)
    hot = next(one for one in groups() if one.reads == "pressure")
    yield "an answer under a value", answering(files, Ref("session", "odd"), hot, "2.3 bar", NOON)


def of_values(files: GarageFiles) -> Refused:
    for path, text in (
        ("best_lap", "1:40.5"),
        ("setup.controls.traction", "loud"),
        ("nothing.at.all", "1"),
        ("rider", "nobody"),
    ):
        yield f"{path} = {text}", setting(files, A, [(path, text)])
    edit = Edit(("pressures", "cold", "front"), MISSING, "9 bar")
    yield "9 bar in a tyre", questions(A, files.data(A), [edit])
    for path, text in (
        ("limits.tyre-old.nothing", "3"),
        ("limits.tyre-old.years", "3000"),
        ("limits.tyre-old.years.more", "3"),
        ("limits.tyre-old", "3"),
    ):
        yield f"{path} = {text}", setting(files, GARAGE, [(path, text)])


def test_each_refusal_is_told_whole(tmp_path: Path) -> None:
    told = "".join(f"{asked}\n  {sentence(found)}\n" for asked, found in refused(garage_of(tmp_path)))

    if os.environ.get("REFUSALS"):
        TOLD.write_text(told, encoding="utf-8")
    assert told == TOLD.read_text(encoding="utf-8")
