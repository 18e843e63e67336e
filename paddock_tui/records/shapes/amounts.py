"""Amounts: a number with its unit, kept as it was typed."""

from decimal import Decimal

from paddock_tui import quantities
from paddock_tui.quantities import EXAMPLE, Quantity, Unreadable, pattern_of
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape, article, found_words


class Amount(Shape[Quantity]):
    """A physical quantity of one dimension. `low` and `high`, in `unit`, bound what can be.

    A bare number at the keyboard is in the row's unit; a bare pressure in the unit whose band it fits.
    """

    def __init__(self, dimension: str, unit: str, low: float, high: float, *, step: float = 1.0) -> None:
        self.dimension, self.unit, self.low, self.high, self.increment = dimension, unit, low, high, step

    @property
    def expected(self) -> str:
        return f"{article(self.dimension)} with its unit, e.g. {self.example()}"

    def example(self) -> Quantity:
        """Return a figure of the right dimension, for messages."""
        middle = self.low + (self.high - self.low) / 4
        digits = 0 if middle >= 100 else 1
        return Quantity(Decimal(f"{middle:.{digits}f}"), self.unit)

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": pattern_of(self.dimension), "examples": [str(self.example())]}

    def load(self, raw: object) -> Quantity | InputError:
        if isinstance(raw, bool) or not isinstance(raw, str | int | float):
            return self.wrong(raw)
        if not isinstance(raw, str):
            guess = self.read(found_words(raw))
            shown = self.example() if isinstance(guess, InputError) else str(guess)
            return self.wrong(raw, f'write it with its unit, e.g. "{shown}"')
        return self._checked(quantities.parse(raw, None, self.dimension), raw)

    def read(self, text: str) -> Quantity | InputError:
        return self.read_in(text, self.unit)

    def read_in(self, text: str, bare_unit: str) -> Quantity | InputError:
        """Take what was typed; a bare number is in `bare_unit` (a bare pressure in the unit it fits)."""
        if self.dimension == "pressure" and self.unit == "bar":
            return self._checked(quantities.parse_pressure(text), text)
        return self._checked(quantities.parse_typed(text, bare_unit, self.dimension), text)

    def dump(self, value: Quantity) -> str:
        return str(value)

    def step(self, value: Quantity, by: int) -> Quantity | None:
        if value.unit != self.unit:
            return None
        # In decimals, so that what was measured more finely keeps its digits and 0.1 stays 0.1.
        low, high, step = (Decimal(str(figure)) for figure in (self.low, self.high, self.increment))
        return Quantity(max(low, min(high, value.number + by * step)), self.unit)

    def band(self) -> tuple[float, float, str]:
        return self.low, self.high, self.unit

    def _checked(self, found: Quantity | Unreadable, text: str) -> Quantity | InputError:
        if isinstance(found, Unreadable) and self._only_first(found.either):
            found = found.either[0]
        if isinstance(found, Unreadable):
            mend = found.mend.replace(f'e.g. "{EXAMPLE}"', f'e.g. "{self.example()}"')
            return InputError(found=f"{found_words(text)} ({found.why})", expected=self.expected, mend=mend)
        if found.dimension != self.dimension:
            likely = " or ".join(f'"{one}"' for one in quantities.meant(found, self.dimension))
            return InputError(
                found=f"{found_words(text)}, {article(found.dimension)}",
                expected=self.expected,
                mend=f"write {likely}" if likely else "",
            )
        return found

    def _only_first(self, either: tuple[Quantity, ...]) -> bool:
        """Return whether, of two readings of a comma, the decimal one can be here and thousands cannot."""
        if not either or either[0].dimension != self.dimension:
            return False
        first, thousands = (self.low <= one.to(self.unit) <= self.high for one in either)
        return first and not thousands


class AmountOrWord(Shape[Quantity | str]):
    """An amount where it was measured, else one of a few words."""

    def __init__(self, amount: Amount, *choices: str) -> None:
        self.amount, self.choices = amount, choices

    @property
    def expected(self) -> str:
        return f"{self.amount.expected}, or one of {', '.join(self.choices)}"

    def schema(self) -> JsonSchema:
        return {"anyOf": [{"enum": list(self.choices)}, self.amount.schema()]}

    def load(self, raw: object) -> Quantity | str | InputError:
        if isinstance(raw, str) and raw in self.choices:
            return raw
        found = self.amount.load(raw)
        return self._with_words(found)

    def read(self, text: str) -> Quantity | str | InputError:
        return self.read_in(text, self.amount.unit)

    def read_in(self, text: str, bare_unit: str) -> Quantity | str | InputError:
        """Take what was typed; a bare number is in `bare_unit`."""
        typed = text.strip().casefold()
        starts = [word for word in self.choices if typed and word.startswith(typed)]
        if len(starts) == 1:
            return starts[0]
        return self._with_words(self.amount.read_in(text, bare_unit))

    def dump(self, value: Quantity | str) -> str:
        return str(value)

    def example(self) -> Quantity | str:
        return self.amount.example()

    def step(self, value: Quantity | str, by: int) -> Quantity | str | None:
        return None if isinstance(value, str) else self.amount.step(value, by)

    def words(self) -> tuple[str, ...]:
        return self.choices

    def band(self) -> tuple[float, float, str]:
        return self.amount.band()

    def _with_words(self, found: Quantity | InputError) -> Quantity | str | InputError:
        if isinstance(found, InputError):
            return InputError(found=found.found, expected=self.expected, mend=found.mend)
        return found
