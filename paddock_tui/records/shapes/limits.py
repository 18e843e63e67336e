"""A limit that the owner overrides: a number, or an amount with its unit."""

from paddock_tui import quantities
from paddock_tui.quantities import Quantity, pattern_of
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape
from paddock_tui.records.shapes.numbers import Number, read_number, show_number

_NUMBER = Number(-1e9, 1e9)


class LimitValue(Shape[float | Quantity]):
    """A limit is a bare number (help, clicks, counts) or an amount with its unit."""

    expected = "a number, or an amount with its unit in quotes"

    def schema(self) -> JsonSchema:
        return {"anyOf": [_NUMBER.schema(), {"type": "string", "pattern": pattern_of()}]}

    def load(self, raw: object) -> float | Quantity | InputError:
        if isinstance(raw, str):
            found = quantities.parse(raw)
            return found if isinstance(found, Quantity) else self.wrong(raw, found.mend)
        number = _NUMBER.load(raw)
        return self.wrong(raw) if isinstance(number, InputError) else number

    def read(self, text: str) -> float | Quantity | InputError:
        number = read_number(text)
        if number is not None:
            return self.load(number)
        found = quantities.parse_typed(text, None)
        return found if isinstance(found, Quantity) else self.wrong(text, found.mend)

    def dump(self, value: float | Quantity) -> str | float:
        return str(value) if isinstance(value, Quantity) else value

    def example(self) -> float | Quantity:
        return 0.3

    def show(self, value: float | Quantity) -> str:
        return str(value) if isinstance(value, Quantity) else show_number(value)
