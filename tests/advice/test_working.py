"""The working behind every figure: formula, the numbers put in with their units, the figure of the row."""

import functools
import re
from decimal import Decimal
from typing import Any

import pytest

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.calculators import Answer, Calculator
from paddock_tui.quantities import Quantity
from paddock_tui.records.shapes import Amount, AmountOrWord, Flag, Number, Series, Shape, Whole
from tests.advice.given import BAR, sample
from tests.every import every

SESSIONS = ("2026-05-16-3-magpie", "2026-05-16-5-magpie", "2026-06-20-4-magpie", "2026-05-16-2-otter")
IN_WORDS = {"levels": "a table by group, surface and tyre, and no formula"}
"""Calculators whose answers are no figures of a formula, and why."""
WORDS = {"verdict"}
"""Answers that are a judgement in words."""


def likely(shape: Shape[Any]) -> Any:
    """Return a value that can be, for an input that nothing fills."""
    if isinstance(shape, AmountOrWord):
        return likely(shape.amount)
    if isinstance(shape, Amount):
        return Quantity(Decimal(str(round(shape.low + (shape.high - shape.low) / 3, 1))), shape.unit)
    if isinstance(shape, Number | Whole):
        middle = shape.low + (shape.high - shape.low) / 3
        return int(middle) if isinstance(shape, Whole) else round(middle, 2)
    if isinstance(shape, Flag | Series):
        return shape.example()
    return shape.example()


TYPED = {
    "extended": 700,
    "alone_pushed": 680,
    "alone_lifted": 684,
    "rider_extended": 700,
    "rider_pushed": 666,
    "rider_lifted": 670,
    "wheelbase": 1430,
    "height": 650,
    "ahead": 710,
    "crown": 90,
    "first": 40,
    "last": 6,
    "free": 200,
    "length": 150,
    "length2": 120,
    "inside": 312,
    "outside": 328,
    "rider_height": 950,
    "rider_ahead": 600,
    "trail": 98,
    "radius": 60,
    "swingarm": 580,
    "pivot_height": 390,
    "gearbox_ahead": 80,
    "gearbox_height": 425,
    "front_radius": 300,
    "rear_radius": 316,
    "centre": 640,
}
"""Lengths in mm (a radius of a corner in m) that go together where nothing fills them."""


LEFT_OUT = {("stopping", "rate"), ("pressures", "gas_now")}
"""Inputs that stand in place of others, which are tried instead."""


def filled_up(calculator: Calculator) -> dict[str, Any]:
    """Return something likely for each input that is empty."""
    found = {}
    for one in calculator.inputs:
        if one.key in calculator.filled or (calculator.id, one.key) in LEFT_OUT:
            continue
        unit = "m" if one.key == "radius" else "mm"
        length = isinstance(one.shape, Amount) and one.shape.dimension == "length"
        known = TYPED.get(one.key) if length else None
        found[one.key] = likely(one.shape) if known is None else Quantity(Decimal(known), unit)
    return found


@functools.cache
def every_answer() -> list[Any]:
    """List every answer that says something, of sessions as they are and with every input filled."""
    found: dict[tuple[str, str, bool], Answer] = {}
    for name in SESSIONS:
        about = sample("session", name)
        for calculator in calculators(about):
            for typed in ({}, filled_up(calculator)):
                for one in calculator.answers(BAR, typed):
                    if one.known and calculator.id not in IN_WORDS and one.key not in WORDS:
                        found.setdefault((calculator.id, one.key, bool(typed)), one)
    return [pytest.param(one, id=f"{id_} {key} {full}") for (id_, key, full), one in sorted(found.items())]


OTHER_POWERS = re.compile(r"\*\*|[²³]|(?<![\w/])(?:v|g|h|t|mu|pi|tan|cos|sin)[23]\b|\)[23]\b")
"""A power that is not written with ^; m2 and m/s2 are units as the table of units spells them."""


@every("answer", every_answer)
def test_the_numbers_are_put_in_and_end_in_the_figure_of_the_row(answer: Answer) -> None:
    assert answer.steps, answer.text
    last = re.split(r"(?:= |: )", answer.steps[-1])[-1].strip()

    assert last in answer.text


@every("answer", every_answer)
def test_powers_are_written_in_one_way(answer: Answer) -> None:
    assert [line for line in answer.working if OTHER_POWERS.search(line)] == []


def test_nearly_every_answer_of_the_bench_is_looked_at() -> None:
    seen = {(str(param.id).rsplit(" ", 1)[0]) for param in every_answer()}
    every = {
        f"{calculator.id} {one.key}"
        for calculator in calculators(sample("session", SESSIONS[1]))
        for one in calculator.answers(BAR)
        if calculator.id not in IN_WORDS and one.key not in WORDS
    }

    assert len(every - seen) <= len(every) // 20, every - seen
