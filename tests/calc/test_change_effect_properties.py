"""Judging a change: closed forms, levels against the stated rate, and what scaling and shifting leave alone.

Quantiles and chances of Student's distribution are scipy's; the formulas are written out here again.
"""

import itertools
import math
import random
from collections.abc import Callable, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.change_effect import RATE, Judgement, LoneChange, judged
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.session_comparison import compared
from paddock_tui.calc.session_luck import Ridden, record_of
from tests.every import every
from tests.examples import examples
from tests.later import Later

stats = Later("scipy.stats")

OFF = (-0.4, -0.2, 0.0, 0.0, 0.2, 0.4)
VARIANCE = sum(one * one for one in OFF) / (len(OFF) - 1)
FACTOR = 1.8
"""The luck that is assumed, over the scatter of the laps."""


def ridden(key: str, usual_s: float, scatter: float = 1.0) -> Ridden:
    return Ridden(key, tuple(usual_s + scatter * off for off in OFF))


def there_and_back(
    times: int, gain_s: float, base_s: float = 105.0, scatter: float = 1.0
) -> list[LoneChange]:
    """A to B and back to A, that often, each time in sessions of its own."""
    found = []
    for at in range(times):
        a, b, c = (ridden(f"{at}{key}", base_s + (gain_s if key == "b" else 0.0), scatter) for key in "abc")
        found += [LoneChange(a, b), LoneChange(b, c, back=True)]
    return found


def pairs(count: int, gain_s: float, base_s: float = 105.0, scatter: float = 1.0) -> list[LoneChange]:
    return [
        LoneChange(ridden(f"{at}a", base_s, scatter), ridden(f"{at}b", base_s + gain_s, scatter))
        for at in range(count)
    ]


def chance(found: Judgement) -> float:
    assert found.chance is not None
    return found.chance


def turning_point(design: Callable[[float], list[LoneChange]], wanted: str, far_s: float) -> float:
    """Find the chance by luck at the gain where the verdict turns."""
    near_s = 0.0
    assert judged(design(far_s)).verdict == wanted
    assert judged(design(near_s)).verdict != wanted
    for _ in range(60):
        middle = (near_s + far_s) / 2.0
        if judged(design(middle)).verdict == wanted:
            far_s = middle
        else:
            near_s = middle
    return chance(judged(design(far_s)))


LEVELS = (0.0475, 0.00125, 0.000625, 0.0003125, 0.00015625)


@pytest.mark.parametrize(("wanted", "far_s"), [("helped", -30.0), ("made it worse", 30.0)])
def test_each_further_look_has_a_level_of_its_own_and_all_of_them_keep_the_rate(
    wanted: str, far_s: float
) -> None:
    both = [turning_point(lambda g, n=n: there_and_back(n, g), wanted, far_s) for n in range(1, 6)]  # type: ignore[misc]
    lone = [turning_point(lambda g, n=n: pairs(n, g), wanted, far_s / 15.0) for n in range(3, 8)]  # type: ignore[misc]

    assert both == pytest.approx(LEVELS, rel=1e-6)
    assert lone == pytest.approx(LEVELS, rel=1e-6)
    # Each level beyond those found is half of the one before it: together they come to the last one again.
    assert math.fsum(both) + both[-1] <= RATE + 1e-9
    assert math.fsum(lone) + lone[-1] <= RATE + 1e-9


def test_the_level_is_that_of_the_way_that_was_ridden_less_often() -> None:
    """Once back among many times there is a first look, not a late one."""

    def once_back(gain_s: float) -> list[LoneChange]:
        steps = there_and_back(3, gain_s)
        return [one for at, one in enumerate(steps) if not one.back or at == 1]

    assert judged(once_back(-1.0)).steps == (3, 1)
    assert turning_point(once_back, "helped", -30.0) == pytest.approx(LEVELS[0], rel=1e-6)


@every("gain_s", [-1.0, -0.3, 0.2, 0.9])
def test_one_way_there_and_one_back_is_the_worse_of_two_tests_of_one_step(gain_s: float) -> None:
    found = judged(there_and_back(1, gain_s))
    sd = math.sqrt(VARIANCE) * math.sqrt(2.0 * (FACTOR**2 + 1.0 / len(OFF)))

    assert found.luck is not None
    assert found.luck.sd_s == pytest.approx(FACTOR * math.sqrt(VARIANCE))
    assert found.luck.scatter_s == pytest.approx(math.sqrt(VARIANCE))
    assert found.luck.freedom == 3 * (len(OFF) - 1)
    assert found.gain_s == pytest.approx(gain_s)
    assert found.steps == (1, 1)
    assert chance(found) == pytest.approx(stats.t.sf(abs(gain_s) / sd, found.luck.freedom), rel=1e-6)


def test_where_there_and_back_differ_the_weaker_one_counts_and_the_gain_is_their_mean() -> None:
    a, b, c = ridden("a", 105.0), ridden("b", 103.0), ridden("c", 103.4)
    found = judged([LoneChange(a, b), LoneChange(b, c, back=True)])
    sd = math.sqrt(VARIANCE) * math.sqrt(2.0 * (FACTOR**2 + 1.0 / len(OFF)))

    assert found.gain_s == pytest.approx((-2.0 - 0.4) / 2.0)
    assert chance(found) == pytest.approx(stats.t.sf(0.4 / sd, 3 * (len(OFF) - 1)), rel=1e-6)


WEIGHTS: dict[str, tuple[Sequence[tuple[str, str]], float]] = {
    "apart": ([("a", "b"), ("c", "d")], 4 * 0.25),
    "one session left twice": ([("a", "b"), ("a", "c")], 1.0 + 2 * 0.25),
    "one session come to twice": ([("a", "c"), ("b", "c")], 1.0 + 2 * 0.25),
    "one after the other": ([("a", "b"), ("b", "c")], 2 * 0.25),
}


@every("shape", WEIGHTS)
def test_a_session_that_several_steps_share_counts_as_often_as_it_weighs(shape: str) -> None:
    ways, squares = WEIGHTS[shape]
    usual = {"a": 105.0, "b": 104.6, "c": 104.2, "d": 104.6}
    sessions = {key: ridden(key, usual_s) for key, usual_s in usual.items()}
    found = judged([LoneChange(sessions[one], sessions[two]) for one, two in ways])
    used = {key for way in ways for key in way}
    gain_s = sum(usual[two] - usual[one] for one, two in ways) / len(ways)
    sd = math.sqrt(VARIANCE * squares * (FACTOR**2 + 1.0 / len(OFF)))

    assert found.gain_s == pytest.approx(gain_s)
    assert chance(found) == pytest.approx(stats.t.sf(-gain_s / sd, len(used) * (len(OFF) - 1)), rel=1e-6)


@every("gain_s", [-1.5, -0.6, 1.2])
def test_pairs_alone_have_to_beat_an_allowance_for_learning_of_a_share_of_the_lap(gain_s: float) -> None:
    found = judged(pairs(3, gain_s))
    allowed_s = 0.002 * 105.0
    sd = math.sqrt(VARIANCE) * math.sqrt(6 / 9 * (FACTOR**2 + 1.0 / len(OFF)))

    assert found.steps == (3, 0)
    assert chance(found) == pytest.approx(stats.t.sf((abs(gain_s) - allowed_s) / sd, 6 * 5), rel=1e-6)


def test_pairs_that_were_taken_back_alone_are_counted_as_such() -> None:
    back = [LoneChange(one.after, one.before, back=True) for one in pairs(3, -1.5)]

    assert judged(back).steps == (0, 3)
    assert judged(back[:2]).steps == (0, 2)
    assert judged(back).verdict == "helped"
    assert judged(back[:2]).verdict == "faster, cause not known"
    # What was only ever taken back is tried again; what was only ever tried is taken back.
    assert judged(pairs(1, -0.01)).needs == "going back once"
    assert (
        judged([LoneChange(one.before, one.after, True) for one in pairs(1, -0.01)]).needs
        == "trying it again"
    )


gains = st.floats(-3.0, 3.0)
scatters = st.floats(0.8, 2.0)
designs = st.sampled_from(["there and back", "twice there and back", "three pairs", "a pair"])


def made(design: str, gain_s: float, base_s: float, scatter: float) -> list[LoneChange]:
    if design == "three pairs":
        return pairs(3, gain_s, base_s, scatter)
    if design == "a pair":
        return pairs(1, gain_s, base_s, scatter)
    return there_and_back(2 if design.startswith("twice") else 1, gain_s, base_s, scatter)


@examples(40)
@given(designs, gains, scatters, st.sampled_from([0.5, 2.0, 4.0]))
def test_another_unit_of_time_changes_no_verdict_and_no_chance(
    design: str, gain_s: float, scatter: float, scale: float
) -> None:
    one = judged(made(design, gain_s, 105.0, scatter))
    other = judged(made(design, gain_s * scale, 105.0 * scale, scatter * scale))

    # Halves and doubles are exact: so is the verdict.
    assert other.verdict == one.verdict
    assert chance(other) == pytest.approx(chance(one), rel=1e-6)
    assert other.gain_s == pytest.approx((one.gain_s or 0.0) * scale, abs=1e-9)


@examples(40)
@given(st.sampled_from(["there and back", "twice there and back", "a pair"]), gains, scatters)
def test_a_longer_lap_with_the_same_scatter_changes_no_chance(
    design: str, gain_s: float, scatter: float
) -> None:
    """As long as the scatter is above its floor, a share of the lap, and no learning is allowed for."""
    one, other = (judged(made(design, gain_s, base_s, scatter)) for base_s in (64.0, 128.0))

    assert chance(other) == pytest.approx(chance(one), rel=1e-5, abs=1e-12)
    assert other.gain_s == pytest.approx(one.gain_s or 0.0, abs=1e-9)


@examples(30)
@given(designs, st.floats(-3.0, -0.05), scatters)
def test_more_help_is_never_called_less_and_more_scatter_never_more(
    design: str, gain_s: float, scatter: float
) -> None:
    order = ("cannot tell yet", "faster, cause not known", "helped")
    # Pairs of one way further apart than luck and a setting bring them are laid to nothing.
    gain_s = max(gain_s, -1.3) if design == "three pairs" else gain_s
    less, more, noisier = (
        judged(made(design, gain_s * times, 105.0, scatter * spread))
        for times, spread in ((1.0, 1.0), (1.5, 1.0), (1.0, 1.5))
    )

    assert chance(more) <= chance(less)
    assert chance(noisier) >= chance(less) or chance(less) > 0.5
    assert order.index(more.verdict) >= order.index(less.verdict)
    assert order.index(noisier.verdict) <= order.index(less.verdict)


def test_a_session_with_more_laps_says_more() -> None:
    def seen(times: int) -> float:
        a, b, c = (
            Ridden(key, tuple(usual_s + off for off in OFF * times))
            for key, usual_s in (("a", 105.0), ("b", 104.5), ("c", 105.0))
        )
        return chance(judged([LoneChange(a, b), LoneChange(b, c, True)]))

    assert seen(3) < seen(1)


def test_every_order_of_sessions_of_another_day_gives_the_same() -> None:
    steps = there_and_back(2, -0.7)
    found = {
        (judged(list(order)).verdict, round(chance(judged(list(order))), 12))
        for order in itertools.permutations(steps)
    }

    assert len(found) == 1


@every(
    ("gain_s", "back_s", "why"),
    [
        (-0.1, 0.1, "faster with it both times, but luck alone does as much too often"),
        (0.1, -0.1, "slower with it both times, but luck alone does as much too often"),
        (-0.1, -0.1, "it went the same way there and back: learning, tyres or the track"),
        (-2.0, 2.0, "faster with it, slower without again"),
        (2.0, -2.0, "slower with it, faster without again"),
    ],
)
def test_the_reason_is_the_one_of_the_verdict(gain_s: float, back_s: float, why: str) -> None:
    a = ridden("a", 105.0)
    b = ridden("b", 105.0 + gain_s)
    c = ridden("c", 105.0 + gain_s + back_s)

    assert judged([LoneChange(a, b), LoneChange(b, c, True)]).why == why


@every(
    ("gain_s", "why"),
    [
        (-1.5, "faster in 3 pairs, by more than learning is allowed"),
        (1.5, "slower in 3 pairs, by more than learning is allowed"),
        (0.2, "3 pairs, but learning and luck may do as much"),
    ],
)
def test_the_reason_of_pairs_says_how_many_there_were(gain_s: float, why: str) -> None:
    found = judged(pairs(3, gain_s))

    assert found.why == why
    assert found.needs == ("going back once" if "but" in why else "")


def test_pairs_that_disagree_are_not_told_apart_from_luck_though_the_last_one_is_clear() -> None:
    a, b = ridden("a", 105.0), ridden("b", 105.5)
    c, d = ridden("c", 105.0), ridden("d", 103.0)
    found = judged([LoneChange(a, b), LoneChange(c, d)])

    assert (found.verdict, found.why) == ("cannot tell yet", "the laps hardly differ")
    assert judged([LoneChange(c, d)]).verdict == "faster, cause not known"
    why = "one session against another: learning, tyres, track or luck may be the cause"
    assert judged([LoneChange(c, d)]).why == why
    assert judged([LoneChange(c, d)]).steps == (1, 0)


def test_where_nothing_could_be_counted_it_says_so() -> None:
    found = judged([LoneChange(ridden("a", 105.0), Ridden("b", (104.0, 104.1)))])

    assert (found.why, found.steps) == ("there are too few clean laps", (0, 0))
    assert (found.gain_s, found.chance, found.luck) == (None, None, None)


def test_a_lap_may_be_as_short_as_one_likes_and_of_no_time_is_refused_by_name() -> None:
    assert record_of([Ridden("a", (0.5, 0.6, 0.7))]).scatter_s == pytest.approx(0.1)
    with pytest.raises(OutOfRange) as refused:
        record_of([Ridden("a", (0.0, 100.0, 101.0))])
    assert (refused.value.what, refused.value.unit) == ("lap (must be more than 0)", "s")


def test_one_pair_is_called_faster_where_its_laps_differ_by_a_chance_of_one_in_twenty() -> None:
    """Laps are drawn until chances a little below and a little above it have come up."""
    dice = random.Random(5)
    chances: list[float] = []
    for _ in range(200):
        a, b = (
            Ridden(key, tuple(usual_s + dice.gauss(0.0, 0.3) for _ in range(6)))
            for key, usual_s in (("a", 105.0), ("b", 104.65))
        )
        laps = compared(a.laps_s, b.laps_s)
        assert laps is not None
        chances.append(laps.chance)
        said = judged([LoneChange(a, b)]).verdict
        assert said in ("cannot tell yet", "faster, cause not known", "slower, cause not known")
        assert (said == "cannot tell yet") is (laps.chance > 0.05)
    assert any(0.04 < one < 0.05 for one in chances)
    assert any(0.05 < one < 0.065 for one in chances)


def test_the_rate_that_is_stated_is_one_in_twenty() -> None:
    assert pytest.approx(0.05) == RATE
