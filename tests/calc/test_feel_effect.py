"""Feel is counted in pairs, exactly; under five pairs it says nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.calc.feel_effect import LOOKS, felt_effect, moments_felt
from tests.every import every
from tests.examples import examples
from tests.later import Later

stats = Later("scipy.stats")


@examples(60)
@given(st.lists(st.sampled_from([-1, 0, 1]), max_size=40))
def test_the_chance_is_that_of_the_sign_test(pairs: list[int]) -> None:
    found = felt_effect(pairs)
    better, worse = pairs.count(1), pairs.count(-1)

    assert (found.better, found.worse, found.alike, found.pairs) == (
        better,
        worse,
        pairs.count(0),
        len(pairs),
    )
    if better + worse == 0:
        assert found.chance is None
    else:
        wanted = stats.binomtest(max(better, worse), better + worse, 0.5, "greater").pvalue
        assert found.chance == pytest.approx(wanted, rel=1e-12)


@examples(40)
@given(st.lists(st.sampled_from([-1, 0, 1]), max_size=20))
def test_what_is_felt_the_other_way_is_judged_the_other_way(pairs: list[int]) -> None:
    opposite = {"helped": "made it worse", "made it worse": "helped"}
    verdict = felt_effect(pairs).verdict

    assert felt_effect([-one for one in pairs]).verdict == opposite.get(verdict, verdict)


@every(
    ("pairs", "verdict"),
    [
        ([1] * 4, "cannot tell yet"),
        ([1] * 4 + [0], "cannot tell yet"),
        ([1] * 5, "helped"),
        ([1] * 5 + [0] * 9, "helped"),
        ([-1] * 5, "made it worse"),
        ([1] * 5 + [-1], "helped"),
        ([-1] + [1] * 6, "cannot tell yet"),
        ([1] * 5 + [-1] * 5, "cannot tell yet"),
        ([-1] + [1] * 9, "helped"),
        ([-1] + [1] * 8, "cannot tell yet"),
        ([-1, 1, 1] * 10, "cannot tell yet"),
        ([-1, 1, 1, 1] * 10, "helped"),
        ([], "cannot tell yet"),
    ],
)
def test_feel_alone_says_helped_from_five_pairs_on_at_its_level(pairs: list[int], verdict: str) -> None:
    assert felt_effect(pairs).verdict == verdict


def test_all_looks_together_keep_the_rate_and_none_comes_before_five_pairs() -> None:
    attained = [
        max(p for k in range(n + 1) if (p := stats.binom.sf(k - 1, n, 0.5)) <= level) for n, level in LOOKS
    ]

    assert min(count for count, _ in LOOKS) == 5
    assert sum(attained) <= 0.05
    assert attained[0] == pytest.approx(1 / 32)


@every(
    ("before", "after", "sign"),
    [
        ((3, 3, 3, 3, 3), (4, 3, 3, 3, 3), 1),
        ((3, 3, 3, 3, 3), (4, 2, 3, 3, 3), 0),
        ((3, 3, 3, 3, 3), (5, 2, 2, 3, 3), -1),
        ((None, 3, None, None, None), (5, 2, None, None, None), -1),
        ((None, 3, None, None, None), (5, None, None, None, None), None),
    ],
)
def test_an_outing_is_felt_by_at_how_many_moments_it_was_better(
    before: tuple[int | None, ...], after: tuple[int | None, ...], sign: int | None
) -> None:
    assert moments_felt(before, after) == sign
