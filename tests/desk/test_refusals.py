"""What the keyboard refuses that can be read: a reference to nothing, a record at odds with itself."""

from pathlib import Path

import pytest

from paddock_tui.__main__ import main
from paddock_tui.commands.common import NOT_DONE
from paddock_tui.desk.edits.refusals import refusals
from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.paths import Ref
from tests.desk.opened import NEXT, at_desk, refused, typed
from tests.small import BIKE, session, snapshot, write

BIKE_REF, DAY, A = Ref("bike", "plain"), Ref("day", "d"), Ref("session", "a")

TIMES = """date = 2026-05-16

[timetable.slow.1]
from = 09:00:00
to = 09:20:00

[timetable.slow.2]
from = 10:00:00
to = 10:20:00

[timetable.quick.1]
from = 09:10:00
to = 09:30:00
"""

REST = """
[controls.rear-abs]
kind = "level"
levels = [0, 3]
most_help = 3
off = 0

[controls.throttle]
kind = "choice"
choices = ["sharp", "soft"]

[adjusters.rebound]
range = [0, 20]

[modes.wet]
use = "wet"

[damping.live.offsets.braking]
range = [-3, 3]
"""


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write(tmp_path, bikes__plain=BIKE + REST, days__d=TIMES, sessions__a=session())


REFUSED = [
    # references
    (A, "bike=ghost", 'there is no bike "ghost": expected one of: plain'),
    (A, "rider=bob", 'there is no rider "bob": expected one of: ann'),
    (A, "tyres=set", 'there is no tyre set "set": expected one of: none yet'),
    (A, "day=2026-05-17-fen", 'there is no day "2026-05-17-fen": expected one of: d'),
    (A, "copied_from=b", 'there is no session "b": expected one of: a'),
    (A, "taken_from=p", 'there is no profile "p": expected one of: none yet'),
    (DAY, "venue=fen", 'there is no venue "fen": expected one of: none yet'),
    (DAY, "entries.bob.plain.signed_on=yes", 'there is no rider "bob": expected one of: ann'),
    (DAY, "entries.ann.ghost.signed_on=yes", 'there is no bike "ghost": expected one of: plain'),
    # controls
    (BIKE_REF, "controls.traction.levels=8 2", "traction: levels 8 to 2 are no range: expected lowest first"),
    (
        BIKE_REF,
        "controls.traction.most_help=5",
        "traction: 5 is not an end of its range: expected 0 or 10, or left out while not known",
    ),
    (
        BIKE_REF,
        "controls.rear-abs.most_help=0",
        "rear ABS: 0 is not an end of its range: expected 1 or 3, or left out while not known",
    ),
    (
        BIKE_REF,
        "controls.rear-abs.off=7",
        "rear ABS: 7 means off and is not one of its levels: "
        "expected a level or word that it has, or yes or no",
    ),
    (BIKE_REF, "controls.throttle.choices=off", "throttle: no choice but off"),
    (BIKE_REF, "controls.throttle.most_help=even", "throttle: even is not an end of its range"),
    # suspension and modes
    (BIKE_REF, "adjusters.rebound.range=20 0", "rebound: 20 to 0 is no range"),
    (BIKE_REF, "adjusters.rebound.range=3 3", "rebound: 3 to 3 is no range"),
    (BIKE_REF, "damping.live.offsets.braking.range=2 2", "braking: an offset without a range"),
    (BIKE_REF, "damping.live.closes.ghost=yes", "damping live closes ghost, which the bike does not have"),
    (BIKE_REF, "modes.wet.fixes.launch=3", "riding mode wet fixes launch, which the bike does not have"),
    (BIKE_REF, "modes.wet.limits.launch=1 3", "riding mode wet limits launch, which the bike does not have"),
    (BIKE_REF, "modes.wet.off_allowed=launch", "riding mode wet lets launch be off"),
    # timetable
    (
        DAY,
        "timetable.slow.2.from=9:10",
        "slow: numbers 1 and 2 overlap: expected a start at 09:20 or later",
    ),
    (DAY, "timetable.slow.1.to=10:10", "slow: numbers 1 and 2 overlap"),
    (DAY, "timetable.slow.1.to=9:00", "slow: number 1 ends before it starts"),
    # the order of a session
    (A, "parked=9:00", "parked before it went out"),
]


@pytest.mark.parametrize(("ref", "wanted", "said"), REFUSED, ids=[wanted for _, wanted, _ in REFUSED])
def test_it_is_refused_at_the_keyboard_and_through_set_and_nothing_changes(
    root: Path, ref: Ref, wanted: str, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    if ref == A:
        file = root / "sessions" / "a.toml"
        file.write_text("went_out = 10:00:00\n" + file.read_text())
    before = snapshot(root)
    path, _, text = wanted.partition("=")

    (sentence,) = refused(at_desk(root), ref, (path, text))

    assert sentence.startswith(said)
    assert main(["set", str(root), str(ref), wanted]) == NOT_DONE
    printed = " ".join(capsys.readouterr().err.split())
    assert " ".join(said.split(": expected")[0].split()) in printed
    assert "nothing was changed" in printed
    assert snapshot(root) == before


TAKEN = [
    (A, ("copied_from", "a")),
    (A, ("rider", "")),
    (BIKE_REF, ("controls.traction.most_help", "0")),
    (BIKE_REF, ("controls.traction.most_help", "")),
    (BIKE_REF, ("controls.rear-abs.most_help", "1")),
    (BIKE_REF, ("controls.rear-abs.off", "yes")),
    (BIKE_REF, ("controls.throttle.most_help", "soft")),
    (BIKE_REF, ("modes.wet.fixes.traction", "9")),
    (DAY, ("timetable.slow.1.to", "10:00")),
    (DAY, ("timetable.slow.3.from", "9:10")),
    (DAY, ("timetable.other.1.from", "9:10")),
    (DAY, ("entries.ann.plain.signed_on", "yes")),
]


@pytest.mark.parametrize(("ref", "pair"), TAKEN)
def test_what_fits_is_taken(root: Path, ref: Ref, pair: tuple[str, str]) -> None:
    assert typed(at_desk(root), ref, pair).changes


def test_a_range_and_its_end_may_change_together_where_one_alone_may_not(root: Path) -> None:
    desk = at_desk(root)
    levels, end = ("controls.traction.levels", "1 8"), ("controls.traction.most_help", "8")

    assert "10 is not an end" in refused(desk, BIKE_REF, levels)[0]
    assert "8 is not an end" in refused(desk, BIKE_REF, end)[0]
    assert typed(desk, BIKE_REF, levels, end).changes


def test_two_lines_that_overlap_each_other_are_refused_together(root: Path) -> None:
    pairs = [
        ("timetable.new.1.from", "9:00"),
        ("timetable.new.1.to", "9:30"),
        ("timetable.new.2.from", "9:20"),
        ("timetable.new.2.to", "9:50"),
    ]

    assert refused(at_desk(root), DAY, *pairs)[0].startswith("new: numbers 1 and 2 overlap")


def test_what_was_wrong_before_does_not_stand_in_the_way(tmp_path: Path) -> None:
    bad = BIKE.replace("most_help = 10", "most_help = 5")
    root = write(tmp_path, bikes__plain=bad, sessions__a=session(rider='"ghost"', tyres='"gone"'))
    desk = at_desk(root)

    assert typed(desk, BIKE_REF, ("wet_mass", "190 kg")).changes
    assert typed(desk, A, ("aim", "smooth")).changes
    # Another mistake of the same kind is a new one.
    assert "6 is not an end" in refused(desk, BIKE_REF, ("controls.traction.most_help", "6"))[0]


def test_a_long_list_of_what_there_is_is_cut(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(), **{f"riders__r{number}": "" for number in range(9)})

    (sentence,) = refused(at_desk(root), A, ("rider", "bob"))

    assert sentence == 'there is no rider "bob": expected one of: ann, r0, r1, r2, r3, r4, r5, r6 ...'


def test_an_entry_that_stands_there_already_is_not_asked_about_again(tmp_path: Path) -> None:
    day = "date = 2026-05-16\n[entries.ghost.gone]\nsigned_on = true\n"

    assert typed(at_desk(write(tmp_path, days__d=day)), DAY, ("entries.ghost.gone.briefing", "yes")).changes


def test_clearing_or_dropping_is_never_a_reference(garage: Path) -> None:
    desk = at_desk(garage)
    edits = [Edit(("rider",), "ines", MISSING), Edit(("tyres",), "magpie-trackday-2", MISSING)]

    assert refusals(desk.files, NEXT, edits) == []


def test_a_value_in_the_way_is_left_to_the_edit_itself(tmp_path: Path) -> None:
    root = write(tmp_path, bikes__plain='name = "x"\ncontrols = 3\n')
    edit = Edit(("controls", "traction", "most_help"), MISSING, 5)

    assert refusals(at_desk(root).files, BIKE_REF, [edit]) == []
