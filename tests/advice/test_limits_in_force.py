"""Bench, next change and review read the same limits: what the owner sets is the figure of all of them."""

import re
from decimal import Decimal

import pytest

from paddock_tui.advice import fuel as bench_fuel
from paddock_tui.advice import sag as bench_sag
from paddock_tui.advice.about import About
from paddock_tui.advice.brake_pads import pads
from paddock_tui.advice.calculators import Calculator
from paddock_tui.advice.levels import levels
from paddock_tui.advice.next_change.gate import looked_at
from paddock_tui.advice.noise import noise
from paddock_tui.facts.situation import Situation
from paddock_tui.quantities import Quantity
from paddock_tui.rules import Finding, review
from tests.advice.next_change import cases as next_change_cases
from tests.every import every
from tests.rules.cases.aids import WET
from tests.rules.cases.event import LIMIT
from tests.rules.cases.event import noise as read_at
from tests.rules.cases.fuel import LEARNT, tank
from tests.rules.cases.suspension import NO_TOP_OUT, sag
from tests.rules.situations import Change, at, files, put, situation

RESERVE, SAG, NOISE = "fuel-short-at-the-flag", "rider-sag-out-of-its-window", "noise-near-the-limit"


def set_to(rule: str, name: str, value: object) -> Change:
    return put("garage", f"limits.{rule}.{name}", value)


def made(*changes: Change) -> About:
    found = situation(files(*changes))
    return About(found, found.history)


def raised(found: Situation, rule: str) -> list[Finding]:
    return [one for one in review(found).findings if one.rule == rule]


def answer(calculator: Calculator, about: About, key: str, **typed: object) -> str:
    return next(one.text for one in calculator.answers(about.units, typed) if one.key == key)


def to_add(about: About) -> str:
    """What the bench says is to be added, to a tank that would hold it."""
    return answer(bench_fuel.fuel(about), about, "add", capacity=Quantity(Decimal(30), "l"))


def brimmed(about: About) -> str:
    """What the bench says is to be added to the tank as it is."""
    return answer(bench_fuel.fuel(about), about, "add")


@every("reserve", ["1.5 l", "2 l", "5 l", "7.3 l"])
@every("own", [None, "1 l", "4 l"])
@every("share", [0.15, 0.4])
def test_review_and_bench_ask_for_the_same_litres(reserve: str, own: str | None, share: float) -> None:
    limits = set_to(RESERVE, "reserve", reserve), set_to(RESERVE, "share", share)
    about = made(tank(6), put("rider", "limits.fuel_reserve", own), *limits)
    (one,) = raised(about.situation, RESERVE)
    asked = re.search(r"Brim it, and ([\d.]+ l) is still missing: plan fewer laps", one.remedy.text)

    assert asked is not None
    assert f"and {asked[1]} is still missing: plan fewer laps" in brimmed(about)


def test_with_a_reserve_of_five_litres_both_ask_for_five_and_a_half() -> None:
    """6.4 l are needed, 6 l are in the tank, 5 l should be left: 5.4 l, to the next half."""
    about = made(tank(6), set_to(RESERVE, "reserve", "5 l"))

    assert to_add(about).startswith("5.5 l more")
    assert "Brim it, and 5.4 l is still missing" in raised(about.situation, RESERVE)[0].remedy.text


def test_a_tank_that_holds_more_is_filled_by_what_is_missing() -> None:
    """0.5 l were added to a tank of 14 l, brimmed before 40 km at 16 l/100 km: 8.1 l are in it."""
    more = (tank(14), put("session", "filled_to_brim", None), put("session", "fuel_added", "0.5 l"))
    found = situation(files(*more, set_to(RESERVE, "reserve", "5 l")), history=LEARNT)

    assert "Fill 3.5 l or more" in raised(found, RESERVE)[0].remedy.text


def test_the_least_pad_on_the_bench_is_the_limits() -> None:
    about = made(set_to("pads-below-the-least", "millimetres", "2.2 mm"))

    assert str(pads(about, "front").filled["least"].value) == "2.2 mm"


@every("within", ["1 dB(A)", "2 dB(A)", "3 dB(A)"])
@every("reading", [98.9, 99, 99.5, 100, 100.5, 101, 102])
def test_close_to_the_noise_limit_means_the_same_to_rule_and_bench(within: str, reading: float) -> None:
    about = made(LIMIT, read_at(f"{reading} dB(A)"), set_to(NOISE, "within", within))

    assert bool(raised(about.situation, NOISE)) == ("close" in answer(noise(about), about, "margin"))


@pytest.mark.parametrize(("below", "word", "cold"), [("18 C", "17 C", True), ("16 C", "17 C", False)])
def test_a_track_is_as_cold_to_the_starting_levels_as_to_the_rules(below: str, word: str, cold: bool) -> None:
    limit, track = set_to("race-tyres-without-heat", "cold_below", below), put("session", "track", word)
    about, warm = made(limit, track), made(put("session", "track", "24 C"))

    assert about.situation.facts().get("cold_track") is cold
    differs = answer(levels(about), about, "traction") != answer(levels(warm), warm, "traction")
    assert differs is cold


@every(("word", "cold"), [("cold", True), ("mild", False), ("hot", False)])
@every("below", ["5 C", "30 C"])
def test_a_word_for_the_track_means_what_it_says_whatever_counts_as_cold(
    word: str, cold: bool, below: str
) -> None:
    """A mild track is not a cold one; where cold and warm leave nothing between, it is neither."""
    limits = (
        set_to("race-tyres-without-heat", "cold_below", below),
        set_to("race-tyres-without-heat", "warm_over", "30 C"),
    )
    about = made(put("session", "track", word), *limits)

    assert about.situation.facts().get("cold_track") is cold


@every("travel", ["120 mm", "200 mm"])
@every("changed", [(), (("track_most", "30 mm"), ("track_most_percent", "20 %"))])
@every("mm", [24, 26, 31, 36, 42, 50])
def test_sag_in_its_window_means_the_same_to_rule_and_bench(
    travel: str, changed: tuple[tuple[str, str], ...], mm: float
) -> None:
    about = made(
        NO_TOP_OUT,
        sag(mm, preload=6.5),
        put("bike", "front.travel", travel),
        put("bike", "front.preload_per_turn", "1 mm"),
        put("bike", "adjusters.front-preload.what", "preload"),
        put("bike", "adjusters.front-preload.counted_from", "open"),
        *(set_to(SAG, name, value) for name, value in changed),
    )
    said = answer(bench_sag.sag(about, "front"), about, "preload")

    assert bool(raised(about.situation, SAG)) != said.startswith("nothing to turn")


@pytest.mark.parametrize(("caution", "right"), [("0.14 bar", False), ("0.2 bar", True)])
def test_a_pressure_is_off_its_target_to_the_next_change_where_the_rule_says_so(
    caution: str, right: bool
) -> None:
    limit = set_to("hot-pressure-off-its-target", "caution_over", caution)
    about = next_change_cases.about(next_change_cases.hot("2.57 bar", "2.20 bar"), limit)

    assert looked_at(about)[0].right is right


def test_what_is_brought_back_is_no_little_help_to_the_other_rules() -> None:
    limit = set_to("little-traction-help-in-the-wet", "novice_below", 0.9)
    (one,) = raised(made(WET, at("traction", "off"), limit).situation, "aid-off-in-the-wet")

    assert one.remedy.puts[0].value == 9


@pytest.mark.parametrize(("share", "left"), [(0.1, False), (0.4, True)])
def test_the_next_change_leaves_the_ends_of_a_range_alone_that_the_rule_names(
    share: float, left: bool
) -> None:
    limit = set_to("damping-near-its-end", "share", share)
    symptom = next_change_cases.felt("harsh on a series", "creeps", end="front")
    found = next_change_cases.advised(symptom, put("session", "setup.adjusters.front-rebound", 14), limit)

    assert ("last clicks" in repr(found)) is left
