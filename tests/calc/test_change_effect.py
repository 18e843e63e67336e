"""Judging a change: sessions count, going back tells, and the stated rate of false praise holds."""

import itertools
import math
from typing import TYPE_CHECKING

import pytest

from paddock_tui.calc.change_effect import RATE, Judgement, LoneChange, judged
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.session_luck import Ridden, record_of
from tests.every import every
from tests.later import Later

if TYPE_CHECKING:
    from tests.bench._histories import Design

# With arrays, which take long to load.
np, histories, judged_many = (
    Later("numpy"),
    Later("tests.bench._histories"),
    Later("tests.bench._judged_many"),
)
bench, power = Later("tests.bench.laps"), Later("tests.bench.power_bounds")

OFF = (-0.2, -0.1, 0.0, 0.0, 0.1, 0.2)


def ridden(key: str, usual_s: float, count: int = 6, opens_day: bool = False) -> Ridden:
    return Ridden(key, tuple(usual_s + off for off in OFF[:count]), opens_day)


def steps(*usual_s: float) -> list[LoneChange]:
    """A, B, A, B ... with these usual laps, as steps there and back."""
    sessions = [ridden(str(place), one, opens_day=place == 0) for place, one in enumerate(usual_s)]
    pairs = itertools.pairwise(sessions)
    return [LoneChange(before, after, back=bool(place % 2)) for place, (before, after) in enumerate(pairs)]


def test_going_back_tells_a_help_and_a_harm() -> None:
    assert judged(steps(105.0, 104.0, 105.1)).verdict == "helped"
    assert judged(steps(105.0, 106.0, 104.9)).verdict == "made it worse"


def test_the_same_steps_seen_from_the_way_back_say_the_opposite() -> None:
    there = steps(105.0, 104.0, 105.1)
    back = [LoneChange(one.before, one.after, not one.back) for one in there]

    assert judged(back).verdict == "made it worse"
    assert judged(back).gain_s == pytest.approx(-(judged(there).gain_s or 0.0))


def test_one_pair_never_says_more_than_that_the_laps_differ() -> None:
    for usual_s in (100.0, 103.0, 104.5):
        assert judged(steps(105.0, usual_s)).verdict == "faster, cause not known"
    assert judged(steps(105.0, 109.0)).verdict == "slower, cause not known"
    found = judged(steps(105.0, 105.02))
    assert (found.verdict, found.needs) == ("cannot tell yet", "going back once")


def test_times_that_only_fall_help_no_change_however_much_they_fall() -> None:
    found = judged(steps(110.0, 104.0, 103.9))

    assert found.verdict == "cannot tell yet"
    assert "same way there and back" in found.why


def test_a_little_each_way_is_not_told_from_luck() -> None:
    found = judged(steps(105.0, 104.9, 105.0))

    assert found.verdict == "cannot tell yet"
    assert found.needs == "once more there and back, or more clean laps"
    assert found.chance is not None
    assert found.chance > RATE


def three(gain_s: float, opens_day: bool = False) -> list[LoneChange]:
    return [
        LoneChange(ridden(f"{day}1", 105.0, opens_day=opens_day), ridden(f"{day}2", 105.0 + gain_s))
        for day in "abc"
    ]


def test_three_pairs_help_where_they_beat_what_learning_may_do() -> None:
    assert judged(three(-1.0)).verdict == "helped"
    assert judged(three(+1.0)).verdict == "made it worse"
    assert judged(three(-0.3)).verdict == "cannot tell yet"
    assert judged(three(-1.0)[:2]).verdict == "faster, cause not known"


def test_pairs_that_leave_the_first_session_of_a_day_do_not_make_three() -> None:
    assert judged(three(-1.0, opens_day=True)).verdict == "faster, cause not known"


@every("count", [0, 1, 2])
def test_without_three_clean_laps_on_both_sides_nothing_can_be_told(count: int) -> None:
    found = judged([LoneChange(ridden("a", 105.0), ridden("b", 103.0, count))])

    assert found.verdict == "cannot tell yet"
    assert found.needs == "3 clean laps before and after it"
    assert found.gain_s is None


def test_without_any_step_a_session_to_compare_with_is_asked_for() -> None:
    assert judged([]).needs == "a session before it to compare with"


def test_laps_that_are_all_alike_divide_nothing_by_zero() -> None:
    same = [Ridden(str(place), (100.0,) * 5) for place in range(3)]
    found = judged([LoneChange(same[0], same[1]), LoneChange(same[1], same[2], True)])

    assert found.verdict == "cannot tell yet"
    assert found.gain_s == 0.0


def test_what_luck_and_a_setting_never_bring_in_one_way_is_not_laid_to_the_change() -> None:
    """Tyres that were gone whenever it was on are as likely: 4 s is more than 2 % of a lap."""
    found = judged(three(+4.0))

    assert found.verdict == "slower, cause not known"
    assert found.needs == "going back once"
    assert judged(three(-4.0)).verdict == "faster, cause not known"


def test_a_lap_of_no_time_is_refused() -> None:
    bad = Ridden("a", (0.0, 100.0, 101.0))

    with pytest.raises(OutOfRange):
        judged([LoneChange(bad, ridden("b", 100.0))])


def at_most(rate: float, histories: int) -> float:
    """Three standard errors of so many histories above a rate."""
    return rate + 3.0 * math.sqrt(rate * (1.0 - rate) / histories)


@every("shape", lambda: histories.SHAPES)
def test_a_change_that_does_nothing_is_called_a_help_no_oftener_than_stated(shape: str) -> None:
    """A short draw of what `python -m tests.bench laps` counts in full."""
    found = bench.rates("A-B-A", shape, 1.5, 0.0, 500)

    assert found["helped"] <= at_most(RATE, 500)
    assert found["made it worse"] <= at_most(RATE, 500)


@every("design", ["three A-B pairs", "A-B-A-B-A-B-A, each time", "A-B-A, a season known"])
def test_other_ways_of_trying_keep_the_rate_while_one_learns(design: str) -> None:
    assert bench.rates(design, "learning, up to 1.5 s", 1.5, 0.0, 1000)["helped"] <= at_most(RATE, 1000)


def test_twice_the_luck_keeps_the_rate_once_six_repeats_are_on_record() -> None:
    found = bench.rates("A-B-A, six repeats known", "learnt in one session, 4 s", 2.0, 0.0, 1000)
    assert found["helped"] <= at_most(RATE, 1000)


@every("shape", lambda: [one for one in histories.SHAPES if not one.startswith("tyres gone")])
def test_with_a_season_on_record_a_large_help_is_found(shape: str) -> None:
    """Three times in ten by going back once, seven by three pairs; less three standard errors."""
    for design, share in (("A-B-A, a season known", 0.30), ("three pairs, season known", 0.70)):
        error = math.sqrt(share * (1.0 - share) / 300)
        assert bench.rates(design, shape, 1.0, bench.TRUE_S, 300)["helped"] >= share - 3.0 * error, design


def test_a_large_help_is_found_more_often_than_a_small_one_and_more_often_with_more_on_record() -> None:
    shape = "learnt in one session, 4 s"
    small, large = (bench.rates("A-B-A", shape, 1.0, one, 1000)["helped"] for one in (-0.2, bench.TRUE_S))
    repeats = bench.rates("A-B-A, six repeats known", shape, 1.0, bench.TRUE_S, 1000)["helped"]
    season = bench.rates("A-B-A, a season known", shape, 1.0, bench.TRUE_S, 1000)["helped"]

    assert small + 0.1 < large < repeats - 0.05 < season - 0.05


def one_by_one(design: "Design", laps: list[list[tuple[float, ...]]]) -> list[list[Judgement]]:
    """Judge histories as the program does."""
    found = []
    for history in laps:
        ridden_ = [Ridden(str(place), one) for place, one in enumerate(history)]
        looks = []
        for look in design.looks:
            steps_ = [LoneChange(ridden_[a], ridden_[b], back) for a, b, back in design.steps[:look]]
            judged_ = [one for step in steps_ for one in (step.before, step.after)]
            record = record_of(
                [*judged_, *ridden_[design.judged :]],
                [[ridden_[place] for place in run] for run in design.runs],
            )
            looks.append(judged(steps_, record))
        found.append(looks)
    return found


@every("name", lambda: histories.DESIGNS)
def test_histories_judged_at_once_are_judged_as_the_program_judges_them(name: str) -> None:
    design, draw = histories.DESIGNS[name], np.random.default_rng(7)
    helped = 0
    for shape in ("learnt in one session, 4 s", "two laps of warm-up", "three or four laps"):
        laps = histories.drawn(design, histories.SHAPES[shape], 1.0, -1.2, 8, draw)
        each = [[tuple(one[np.isfinite(one)]) for one in history] for history in laps]
        for look, at_once in enumerate(judged_many.verdicts(design, laps)):
            for place, looks in enumerate(one_by_one(design, each)):
                said = {word for word, of in at_once.items() if of[place]}
                assert said == {looks[look].verdict} & {"helped", "made it worse"}
                helped += "helped" in said
    assert helped > 0


def test_no_test_finds_more_with_nothing_on_record_than_the_most_powerful_one() -> None:
    """The bound lies over what is found, and under three times in ten while tyres fade."""
    shape = "fading tyres, to 0.4 s each"

    assert bench.rates("A-B-A", shape, 1.0, bench.TRUE_S, 1000)["helped"] < power.bound(shape, 0.15) < 0.30
    assert bench.rates("three A-B pairs", shape, 1.0, bench.TRUE_S, 1000)["helped"] < power.bound_of_pairs(
        shape, "track comes in, to 0.4 s each", histories=5000
    )
