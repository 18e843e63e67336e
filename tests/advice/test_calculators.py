"""Answers: what is missing is named, what is refused is a sentence, the working shows every input."""

from decimal import Decimal

from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    FilledInput,
    Input,
    Inputs,
    Method,
    told,
)
from paddock_tui.calc.errors import within
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.common import Units

METHOD = Method("a + b", "nothing", "always", "elementary")
INPUTS = (
    Input("a", "length", c.TRAVEL),
    Input("b", "other length", c.TRAVEL, "", "other length of the two"),
)


def add(inputs: Inputs) -> list[Answer]:
    def make() -> Answered:
        both = within("length", inputs.amount("a", "mm"), 0.0, 100.0, "mm") + inputs.amount("b", "mm")
        return Answered(f"{both:g} mm", "short")

    return [told(inputs, "sum", "sum", ("a", "b"), METHOD, make)]


def mm(number: float) -> FilledInput:
    return FilledInput(Quantity(Decimal(str(number)), "mm"), "measured")


def test_every_missing_fact_is_named_in_the_words_of_its_input() -> None:
    (found,) = Calculator("add", "add", INPUTS, {}, add).answers(Units())

    assert not found.known
    assert found.text == "needs the length, the other length of the two"
    assert found.missing == ("length", "other length of the two")


def test_the_working_says_the_formula_each_input_with_its_origin_then_the_method() -> None:
    (found,) = Calculator("add", "add", INPUTS, {"a": mm(3), "b": mm(4)}, add).answers(Units())

    assert found.known
    assert found.working == (
        "7 mm",
        "formula: a + b",
        "length: 3 mm (measured)",
        "other length: 4 mm (measured)",
        "assumes: nothing",
        "holds: always",
        "source: elementary",
    )


def test_a_figure_outside_the_range_becomes_a_sentence_with_the_range() -> None:
    (found,) = Calculator("add", "add", INPUTS, {"a": mm(300), "b": mm(4)}, add).answers(Units())

    assert not found.known
    assert found.text == "length: 300 mm is outside the range here, 0 to 100 mm"


def test_what_is_typed_stands_in_place_of_what_was_filled_and_none_clears_it() -> None:
    calculator = Calculator("add", "add", INPUTS, {"a": mm(3), "b": mm(4)}, add)

    (tried,) = calculator.answers(Units(), {"a": Quantity(Decimal(1), "in")})
    (cleared,) = calculator.answers(Units(), {"a": None})

    assert tried.text == "29.4 mm"
    assert "length: 1 in (tried here)" in tried.working
    assert cleared.missing == ("length",)
