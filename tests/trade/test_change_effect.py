"""Judging a change: sessions count, going back tells, and the stated rate of false praise holds."""

import itertools
import math

import pytest

from paddock_tui.trade.change_effect import RATE, LoneChange, Ridden, judged, luck_of
from paddock_tui.trade.errors import OutOfRange
from tests.bench.laps import DESIGNS, SHAPES, TRUE_S, one_pair, rates

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


@pytest.mark.parametrize("count", [0, 1, 2])
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


def test_luck_is_the_scatter_of_laps_at_least_a_share_of_one_until_repeats_are_enough() -> None:
    sessions = [ridden("a", 100.0), ridden("b", 100.0)]
    assumed = luck_of(sessions)
    assert (round(assumed.sd_s, 3), assumed.freedom, assumed.learnt) == (0.198, 10, False)

    assert luck_of(sessions, [[100.0, 100.9]]).sd_s == pytest.approx(0.9 / 2**0.5)
    assert luck_of(sessions, [[100.0, 100.1], [104.0, 104.1]]).sd_s == assumed.sd_s
    learnt = luck_of(sessions, [[100.0, 100.1, 99.9], [104.0, 104.1], [90.0, 90.2], [7.0]])
    assert (round(learnt.sd_s, 3), learnt.freedom, learnt.learnt) == (0.106, 4, True)


def test_a_lap_of_no_time_is_refused() -> None:
    bad = Ridden("a", (0.0, 100.0, 101.0))

    with pytest.raises(OutOfRange):
        judged([LoneChange(bad, ridden("b", 100.0))])


def at_most(rate: float, histories: int) -> float:
    """Three standard errors of so many histories above a rate."""
    return rate + 3.0 * math.sqrt(rate * (1.0 - rate) / histories)


@pytest.mark.parametrize("shape", SHAPES)
def test_a_change_that_does_nothing_is_called_a_help_no_oftener_than_stated(shape: str) -> None:
    """A short draw of what `python -m tests.bench laps` counts in full."""
    found = rates(DESIGNS["A-B-A"], shape, 1.5, 0.0, 250)

    assert found.get("helped", 0.0) <= at_most(RATE, 250)
    assert found.get("made it worse", 0.0) <= at_most(RATE, 250)
    assert found["cannot tell yet"] > 0.5


@pytest.mark.parametrize("design", ["three A-B pairs", "A-B-A-B-A-B-A, each time"])
def test_other_ways_of_trying_keep_the_rate_while_one_learns(design: str) -> None:
    found = rates(DESIGNS[design], "learning, up to 1.5 s", 1.5, 0.0, 250)
    assert found.get("helped", 0.0) <= at_most(RATE, 250)


def test_twice_the_luck_keeps_the_rate_once_six_repeats_are_on_record() -> None:
    found = rates(DESIGNS["A-B-A, six repeats known"], "learnt in one session, 4 s", 2.0, 0.0, 250)
    assert found.get("helped", 0.0) <= at_most(RATE, 250)


def test_a_large_help_is_found_more_often_than_a_small_one_and_more_often_with_repeats_on_record() -> None:
    shape = "learnt in one session, 4 s"
    small, large = (rates(DESIGNS["A-B-A"], shape, 1.0, one, 250).get("helped", 0) for one in (-0.2, TRUE_S))
    known = rates(DESIGNS["A-B-A, six repeats known"], shape, 1.0, TRUE_S, 250)["helped"]

    assert large > small + 0.1
    assert known > large + 0.05


def test_one_pair_says_helped_in_no_history_at_all() -> None:
    for effect in (0.0, -0.4):
        found = rates(one_pair, "learning, up to 1.5 s", 1.0, effect, 30)
        assert not {"helped", "made it worse"} & set(found)
