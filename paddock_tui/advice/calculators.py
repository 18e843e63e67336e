"""Calculators: inputs that are declared as records declare values, and answers that show their working."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.tyre_size import UnreadableSize
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.common import Units
from paddock_tui.records.shapes import Number, Shape, Whole
from paddock_tui.rules.core import SetValue

START: str = "a starting point; the bike's manual and the tyre vendor come first"
"""Said beside what could be taken for a recommendation."""

_LONGEST = 24


@attrs.frozen
class Input:
    """One input of a calculator: its shape reads, steps and shows it. `name` stands after "needs the"."""

    key: str
    label: str
    shape: Shape[Any]
    help: str = ""
    name: str = attrs.field()

    @name.default
    def _as_label(self) -> str:
        return self.label

    @property
    def unit(self) -> str:
        """The unit that a bare number of this input is in; empty where the value carries its own."""
        return self.shape.unit if isinstance(self.shape, Number | Whole) else ""

    def show(self, value: Any) -> str:
        """Write a value with its unit."""
        return " ".join(filter(None, (self.shape.show(value), self.unit)))


@attrs.frozen
class FilledInput:
    """The value of an input, where it comes from, in words, and whether it was taken at another time."""

    value: Any
    origin: str
    earlier: bool = False


@attrs.frozen
class Method:
    """How an answer is found: formula, what it assumes, where it holds, and whose it is."""

    formula: str
    assumes: str
    holds: str
    source: str

    def lines(self) -> tuple[str, ...]:
        """Say it line by line."""
        return (
            f"formula: {self.formula}",
            f"assumes: {self.assumes}",
            f"holds: {self.holds}",
            f"source: {self.source}",
        )


@attrs.frozen
class Answered:
    """What a calculation found: one line, a few words for a row, values to take over, further lines.

    `steps` are its formula with the numbers put in, line by line; the last ends in the figure of `text`.
    """

    text: str
    short: str = ""
    puts: tuple[SetValue, ...] = ()
    more: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()


@attrs.frozen
class Answer:
    """One answer. `text` is one line; `short` fits beside a row, empty where nothing is to be said there.

    `puts` are values to take over. `missing` names every fact that is needed and not known; then, and
    where the calculation refuses its figures, `known` is false and `text` says so in a sentence. `steps`
    are those of its working that put the numbers in.
    """

    key: str
    label: str
    text: str
    working: tuple[str, ...]
    short: str = ""
    puts: tuple[SetValue, ...] = ()
    missing: tuple[str, ...] = ()
    known: bool = True
    steps: tuple[str, ...] = ()


class Inputs:
    """The inputs of one calculation; what is asked for is remembered, so that the working can show it."""

    def __init__(
        self,
        declared: Iterable[Input],
        filled: Mapping[str, FilledInput],
        units: Units,
        limits: Limits | None = None,
    ) -> None:
        self._declared = {one.key: one for one in declared}
        self._filled = filled
        self.units = units
        self.limits = limits or Limits()

    def known(self, *keys: str) -> bool:
        """Return whether all of these inputs are known."""
        return not self.missing(keys)

    def missing(self, keys: Iterable[str]) -> tuple[str, ...]:
        """Name those of these inputs that are not known, each once."""
        lost = (self._declared[key].name for key in keys if key not in self._filled)
        return tuple(dict.fromkeys(lost))

    def value(self, key: str) -> Any:
        """Return the value of an input as records hold it; None where it is not known."""
        found = self._filled.get(key)
        return None if found is None else found.value

    def origin(self, key: str) -> str:
        """Say where an input comes from; empty where it is not known."""
        found = self._filled.get(key)
        return "" if found is None else found.origin

    def is_earlier(self, key: str) -> bool:
        """Return whether an input was taken at another time of the day."""
        found = self._filled.get(key)
        return found is not None and found.earlier

    def amount(self, key: str, unit: str) -> float:
        """Return an amount in a unit; what is not known has to be asked for before."""
        value = self._filled[key].value
        return value.to(unit) if isinstance(value, Quantity) else float(value)

    def amount_or(self, key: str, unit: str, otherwise: float) -> float:
        """Return an amount in a unit, or a stated figure where it is not known."""
        return self.amount(key, unit) if key in self._filled else otherwise

    def number(self, key: str) -> float:
        """Return a bare number."""
        return float(self._filled[key].value)

    def beyond(self, keys: Iterable[str]) -> str:
        """Say of the first of these inputs that cannot be so which it is, by its own band; empty: none."""
        for key in dict.fromkeys(keys):
            found, declared = self._filled.get(key), self._declared[key]
            band = declared.shape.band()
            if found is None or band is None or not isinstance(found.value, Quantity | int | float):
                continue
            low, high, unit = band
            number = found.value.to(unit) if isinstance(found.value, Quantity) else float(found.value)
            if not low <= number <= high:
                shown = declared.show(found.value)
                shown = shown if len(shown) <= _LONGEST else f"{number:g} {unit}".strip()
                ends = f"{low:g} to {high:g} {unit}".strip()
                return f"{declared.label}: {shown} is outside the range here, {ends}"
        return ""

    def lines(self, keys: Iterable[str]) -> Iterator[str]:
        """Say each of these inputs: what it is, its value and where that comes from."""
        for key in dict.fromkeys(keys):
            declared, found = self._declared[key], self._filled.get(key)
            if found is None:
                yield f"{declared.label}: not known"
            else:
                yield f"{declared.label}: {declared.show(found.value)} ({found.origin})"


@attrs.frozen
class Calculator:
    """A calculator: inputs, how they are filled from what is known, and the answers they lead to."""

    id: str
    title: str
    inputs: tuple[Input, ...]
    filled: Mapping[str, FilledInput]
    compute: Callable[[Inputs], Iterable[Answer]]
    limits: Limits = attrs.field(factory=Limits)

    def answers(self, units: Units, typed: Mapping[str, Any] | None = None) -> tuple[Answer, ...]:
        """Compute; `typed` are values tried instead of those filled in, None for 'not known'."""
        return tuple(self.compute(Inputs(self.inputs, self.with_typed(typed or {}), units, self.limits)))

    def with_typed(self, typed: Mapping[str, Any]) -> Mapping[str, FilledInput]:
        """Return the inputs as they are with what was typed in their place."""
        tried = {key: FilledInput(value, "tried here") for key, value in typed.items() if value is not None}
        kept = {key: one for key, one in self.filled.items() if key not in typed}
        return kept | tried

    def input(self, key: str) -> Input | None:
        """Return an input by its key."""
        return next((one for one in self.inputs if one.key == key), None)


def told(
    inputs: Inputs,
    key: str,
    label: str,
    needs: Iterable[str],
    method: Method,
    make: Callable[[], Answered],
    uses: Iterable[str] = (),
) -> Answer:
    """Return an answer, or what it needs, or why its figures are refused.

    `needs` are the inputs without which nothing can be said, `uses` further ones that it looks at.
    """
    needs, uses = tuple(needs), tuple(uses)
    used = tuple(inputs.lines((*needs, *uses)))

    def refused(said: str, missing: tuple[str, ...] = ()) -> Answer:
        return Answer(key, label, said, (said, *used, *method.lines()), missing=missing, known=False)

    missing = inputs.missing(needs)
    if missing:
        return refused(f"needs {', '.join(f'the {one}' for one in missing)}", missing)
    beyond = inputs.beyond((*needs, *uses))
    if beyond:
        return refused(beyond)
    try:
        found = make()
    except (OutOfRange, Inconsistent, UnreadableSize) as error:
        return refused(error.sentence())
    except ArithmeticError:
        return refused("one of the figures is far too large or too small")
    formula, *others = method.lines()
    working = (found.text, *found.more, formula, *found.steps, *used, *others)
    return Answer(key, label, found.text, working, found.short, found.puts, steps=found.steps)


def filled(**given: FilledInput | None) -> dict[str, FilledInput]:
    """Return the inputs that are known out of those named."""
    return {key: one for key, one in given.items() if one is not None}


def if_known(value: Any, origin: str) -> FilledInput | None:
    """Return a value with its origin; None where it is not known."""
    return None if value is None else FilledInput(value, origin)


__all__ = [
    "START",
    "Answer",
    "Answered",
    "Calculator",
    "FilledInput",
    "Input",
    "Inputs",
    "Method",
    "filled",
    "if_known",
    "told",
]
