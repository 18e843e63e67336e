"""Every calculator over its bands and beyond: finite inside, refused outside, monotone as physics is."""

import re
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.calculators import Calculator, Input
from paddock_tui.quantities import Quantity
from paddock_tui.records.shapes import Amount, AmountOrWord, Whole
from tests.advice.given import BAR, PSI, sample
from tests.advice.test_working import filled_up
from tests.every import every
from tests.examples import examples

BENCH = {one.id: one for one in calculators(sample("session", "2026-05-16-5-magpie"))}
NO_NUMBER = re.compile(r"\b(?:nan|inf)\b|\de[+-]?\d\d", re.IGNORECASE)


def at(declared: Input, share: float) -> Any:
    """Return a value so far along the band of an input, beyond it below 0 and above 1; None without one."""
    band = declared.shape.band()
    if band is None:
        return None
    low, high, unit = band
    number = low + (high - low) * share
    shape = declared.shape.amount if isinstance(declared.shape, AmountOrWord) else declared.shape
    if isinstance(shape, Amount):
        return Quantity(Decimal(f"{number:.3f}"), unit)
    return round(number) if isinstance(shape, Whole) else round(number, 3)


@examples(20)
@given(st.sampled_from(sorted(BENCH)), st.data(), st.sampled_from([BAR, PSI]))
def test_inside_the_bands_every_figure_is_finite_or_refused_in_a_sentence(
    name: str, data: st.DataObject, units: Any
) -> None:
    calculator = BENCH[name]
    shares = st.floats(0.0, 1.0, width=32)
    typed = filled_up(calculator) | {
        one.key: at(one, data.draw(shares)) for one in calculator.inputs if one.shape.band() is not None
    }

    for one in calculator.answers(units, typed):
        assert one.text
        said = (one.text, *one.steps) if one.known else ()
        assert not [line for line in said if NO_NUMBER.search(line)]
        assert one.known or not (one.puts or one.short)


BANDED = [
    pytest.param(calculator, one, id=f"{calculator.id} {one.key}")
    for calculator in BENCH.values()
    for one in calculator.inputs
    if one.shape.band() is not None
]


@every(("calculator", "declared"), BANDED)
def test_beyond_its_band_an_input_is_refused_by_name_wherever_it_counts(
    calculator: Calculator, declared: Input
) -> None:
    for share in (-0.02, 1.02):
        value = at(declared, share)
        if isinstance(declared.shape, Whole):
            value = declared.shape.low - 1 if share < 0 else declared.shape.high + 1
        answers = calculator.answers(BAR, filled_up(calculator) | {declared.key: value})
        counting = [
            one
            for one in answers
            if any("(tried here)" in line and line.startswith(f"{declared.label}: ") for line in one.working)
        ]

        assert counting or (calculator.id, declared.key) in OTHERWISE
        assert not [one.text for one in counting if one.known]


OTHERWISE = {("fuel", "minutes"), *(("chain-wear", key) for key in ("inside", "outside", "rear", "general"))}
"""Inputs that count only where another one is left out."""

GROWS = [
    # calculator, answer, input, from, to, and whether the figure grows with it.
    ("stopping", "stop", "speed", "80 km/h", "200 km/h", True),
    ("stopping", "stop", "friction", 0.5, 0.9, False),
    ("stopping", "stop", "slope", -5.0, 5.0, False),
    ("stopping", "room", "room", "60 m", "150 m", True),
    ("lean", "lean", "speed", "40 km/h", "80 km/h", True),
    ("lean", "speed", "lean", 30.0, 50.0, True),
    ("lean", "speed", "crown", "40 mm", "120 mm", False),
    ("lean", "left", "lean", 10.0, 30.0, False),
    ("lean", "most", "friction", 0.5, 1.2, True),
    ("sag-rear", "wheel_rate", "rate", "60 N/mm", "120 N/mm", True),
    ("sag-rear", "frequency", "load", "100 kg", "160 kg", False),
    ("sag-rear", "damping", "swings", 1.0, 4.0, False),
    ("gearing", "limiter", "limit", "9000 rpm", "14000 rpm", True),
    ("shift-points", "powered", "drag", 0.28, 0.5, False),
    ("shift-points", "powered", "headwind", -20.0, 20.0, False),
    ("shift-points", "wanted", "revs", "9000 rpm", "13000 rpm", True),
    ("chain-pull", "squat", "pivot_height", "380 mm", "400 mm", True),
    ("chain-pull", "pull", "thrust", 1000.0, 3000.0, True),
    ("chain-wear", "grown", "length", "317.5 mm", "322 mm", True),
    ("weighing", "height", "reading", "110 kg", "119 kg", True),
    ("warmers", "front_set", "warm_at", "40 C", "80 C", True),
    ("warmers", "front_set", "front_gas", "60 C", "95 C", False),
    ("pressures", "front_start", "front_gas", "50 C", "95 C", False),
    ("pressures", "front_expected", "front_cold", "1.8 bar", "2.3 bar", True),
    ("fuel", "tank_laps", "tank", "6 l", "15 l", True),
    ("fuel", "home", "road_rate", "4 l/100km", "8 l/100km", False),
    ("fuel", "needed", "laps", 5.0, 20.0, True),
    ("air", "density", "air_pressure", "900 hPa", "1030 hPa", True),
    ("air", "density", "air", "5 C", "35 C", False),
    ("air", "dew", "humidity", "40 %", "95 %", True),
    ("noise", "distance", "wanted_at", "1 m", "20 m", False),
    ("spring-test", "raked", "rake", 20.0, 30.0, True),
]


def figure(text: str) -> float:
    """Return the first figure of an answer."""
    found = re.search(r"-?\d+(?:\.\d+)?", text)
    assert found is not None, text
    return float(found[0])


def worth(value: float | str) -> Any:
    if isinstance(value, float):
        return value
    number, _, unit = value.partition(" ")
    return Quantity(Decimal(number), unit)


@every(("name", "key", "moved", "low", "high", "grows"), GROWS)
def test_a_figure_goes_the_way_that_physics_does(
    name: str, key: str, moved: str, low: float | str, high: float | str, grows: bool
) -> None:
    calculator = BENCH[name]
    # A forecast of some third of its band is none, and is not what moves here.
    typed = filled_up(calculator) | {"reduced": None, "front_hot": worth("2.4 bar"), "warm_at": worth("60 C")}

    def said(value: float | str) -> float:
        answers = {one.key: one for one in calculator.answers(BAR, typed | {moved: worth(value)})}
        assert answers[key].known, answers[key].text
        return figure(answers[key].text)

    small, large = (said(value) for value in (low, high))
    assert small < large if grows else small > large
