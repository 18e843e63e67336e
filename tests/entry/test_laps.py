"""Lap times as they are typed in a hurry, beside the usual lap."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.entry.laps import far_lap, read_laps
from paddock_tui.entry.scanner import tokens
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Lap, LapTime
from paddock_tui.records.shapes.laps import MARKS, nearest_minute
from tests.every import every
from tests.examples import examples

USUAL_S = 104.0


@every(
    ("typed", "lap"),
    [
        ("423", "1:42.3"),
        ("418", "1:41.8"),
        ("002", "2:00.2"),
        ("1423", "1:42.3"),
        ("589 out", "1:58.9 out"),
        ("160 in", "2:16.0 in"),
        ("1:42.3", "1:42.3"),
        ("102.3", "1:42.3"),
        ("1.42.3", "1:42.3"),
        ("1'42\"3", "1:42.3"),
        ("1:42,317", "1:42.317"),
        ("1:42", "1:42"),
        ("104", "2:10.4"),
        ("42.3", "42.3"),
    ],
)
def test_digits_alone_take_the_minute_nearest_to_the_usual_lap(typed: str, lap: str) -> None:
    assert str(LapTime().read_beside(typed, USUAL_S)) == lap


@every(
    ("typed", "mend"),
    [
        ("613", "seconds go to 59; the last digit is the tenths"),
        ("61", "half a lap time beside the usual 1:44.0: write it whole"),
        ("1:4", "half a lap time: seconds have two digits"),
        ("1:42.", "half a lap time: seconds have two digits"),
        ("1:61.2", "seconds go to 59"),
        ("9:10:11", "this is a time of day or a running clock"),
    ],
)
def test_half_a_lap_time_and_seconds_beyond_59_are_refused_with_the_reason(typed: str, mend: str) -> None:
    found = LapTime().read_beside(typed, USUAL_S)

    assert isinstance(found, InputError)
    assert found.mend == mend


def test_digits_alone_need_a_usual_lap() -> None:
    found = LapTime().read("423")

    assert isinstance(found, InputError)
    assert "usual lap" in found.mend


laps = st.builds(
    Lap,
    st.integers(850, 1230).map(lambda tenths: Decimal(tenths) / 10),
    st.sampled_from(("", *MARKS)),
)


@examples(25)
@given(st.lists(laps, min_size=1, max_size=12), st.sampled_from((" ", ", ", "\n")))
def test_laps_read_back_from_every_form_in_which_they_are_written(held: list[Lap], between: str) -> None:
    colon = between.join(str(lap) for lap in held)
    seconds = between.join(f"{lap.seconds:.1f} {lap.mark}".strip() for lap in held)
    quotes = between.join(_quoted(lap) for lap in held)

    for text in (colon, seconds, quotes):
        run = read_laps(tokens(text), USUAL_S)
        assert run.wrong is None
        assert [(one.lap.seconds, one.lap.mark) for one in run.laps] == [
            (one.seconds, one.mark) for one in held
        ]


@examples(25)
@given(laps.filter(lambda lap: abs(float(lap.seconds) - USUAL_S) <= 18 and not lap.mark))
def test_three_digits_near_the_usual_lap_are_that_lap(lap: Lap) -> None:
    digits = f"{lap.seconds % 60 * 10:03.0f}"

    assert LapTime().read_beside(digits, USUAL_S) == lap


@examples(25)
@given(st.integers(0, 599), st.integers(300, 3000), st.booleans())
def test_the_minute_chosen_is_the_nearest_one(tenths: int, usual: int, slower: bool) -> None:
    part, usual_s = Decimal(tenths) / 10, Decimal(usual) / 10
    found = nearest_minute(part, usual_s, slower=slower)

    assert found % 60 == part
    if slower:
        assert found >= Decimal("0.95") * usual_s
        assert found < 60 or found - 60 < Decimal("0.95") * usual_s
    elif usual_s >= 60:
        assert abs(found - usual_s) <= 30


def _quoted(lap: Lap) -> str:
    minutes, seconds = divmod(lap.seconds, 60)
    whole, _, fraction = str(seconds).partition(".")
    return f"{int(minutes)}'{whole:0>2}\"{fraction or 0} {lap.mark}".strip() if minutes else str(lap)


def test_laps_of_three_digits_need_nothing_between_them_beside_a_usual_lap() -> None:
    assert [str(one.lap) for one in read_laps(tokens("423418416"), 102.0).laps] == [
        "1:42.3",
        "1:41.8",
        "1:41.6",
    ]


def test_the_short_form_works_from_the_second_lap_where_no_usual_one_is_known() -> None:
    run = read_laps(tokens("1:42.3 418 421419 out"))

    assert [str(one.lap) for one in run.laps] == ["1:42.3", "1:41.8", "1:42.1", "1:41.9 out"]
    assert read_laps(tokens("418 421")).wrong is not None


@every(
    ("laps", "said"),
    [
        (["106", "106.4", "45.1", "107"], "lap 3, 45.1, is far from the others, about 1:46.4"),
        (["106", "106.4", "118 out", "107"], ""),
        (["106", "45.1"], "lap 2, 45.1, is far from the others, about 1:46"),
        (["106", "60"], ""),
        (["106", "107", "126"], ""),
        (["106", "107", "127.5"], "lap 3, 2:07.5, is far from the others, about 1:46"),
    ],
)
def test_a_lap_far_from_the_others_is_said(laps: list[str], said: str) -> None:
    read = [Lap(Decimal(time.split(" ")[0]), time.partition(" ")[2]) for time in laps]

    assert far_lap(read) == said


@every(
    ("laps", "wet", "said"),
    [
        (["84.1"], False, ""),
        (["83.9"], False, "lap 1, 1:23.9, is far from the usual 1:44.0"),
        (["130.4"], False, "lap 1, 2:10.4, is far from the usual 1:44.0"),
        (["130.4"], True, ""),
        (["60.1"], True, "lap 1, 1:00.1, is far from the usual 1:44.0"),
        (["130.4", "131", "130.1"], False, "laps of about 2:10.4 are far from the usual 1:44.0"),
        (["130.4 out"], False, ""),
    ],
)
def test_laps_far_from_the_usual_one_are_said(laps: list[str], wet: bool, said: str) -> None:
    read = [Lap(Decimal(time.split(" ")[0]), time.partition(" ")[2]) for time in laps]

    assert far_lap(read, USUAL_S, slower_is_usual=wet) == said


def test_out_before_the_first_time_is_of_that_lap() -> None:
    run = read_laps(tokens("out 1:58.9 1:42.3 1:42.1 in"))

    assert [str(one.lap) for one in run.laps] == ["1:58.9 out", "1:42.3", "1:42.1 in"]
    assert run.used == 5
