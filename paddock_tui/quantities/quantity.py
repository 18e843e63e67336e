"""A number with its unit, kept exactly as it was written."""

from decimal import ROUND_HALF_UP, Context, Decimal

import attrs

from paddock_tui.quantities.lookup import known
from paddock_tui.quantities.units import change

# Wide enough for the longest number of the longest unit; rounds as people do by hand.
_HAND = Context(prec=100, rounding=ROUND_HALF_UP)


@attrs.frozen
class Quantity:
    """A measured number and its unit.

    `number` keeps its trailing zeros, `unit` is the one spelling of the unit, `text` is what was
    written and what `str` gives back. Equal means written alike; for equal in size see `same`.
    Every conversion raises ValueError for an unknown unit and between dimensions.
    """

    number: Decimal
    unit: str
    text: str = attrs.field(kw_only=True)
    _last: tuple[str, float] | None = attrs.field(default=None, init=False, eq=False, repr=False)
    """The last conversion that was asked for: most are asked for one unit again and again."""

    @text.default
    def _as_usual(self) -> str:
        return f"{self.number:f} {self.unit}"

    def __str__(self) -> str:
        return self.text

    @property
    def dimension(self) -> str:
        """What is measured: "pressure", "mass", "length" ..."""
        return known(self.unit).dimension

    def to(self, unit: str) -> float:
        """Return the number in another unit of the same dimension, rounded once to the nearest float."""
        last = self._last
        if last is None or last[0] != unit:
            last = (unit, change(self.number, known(self.unit), known(unit)))
            object.__setattr__(self, "_last", last)
        return last[1]

    def as_difference(self, unit: str) -> float:
        """Return the number in another unit where it is the difference of two readings: no offset."""
        return change(self.number, known(self.unit), known(unit), difference=True)

    def same(self, other: "Quantity") -> bool:
        """Return whether both are equally large, in whatever units they were written."""
        return self.dimension == other.dimension and other.to(self.unit) == float(self.number)

    def show(self, unit: str | None = None) -> str:
        """Write it as it was written, or in another unit with the decimal places of everyday use."""
        if unit is None or known(unit) is known(self.unit):
            return self.text
        return self.shown_in(unit, known(unit).digits)

    def shown_in(self, unit: str, digits: int) -> str:
        """Write it in a unit with so many decimal places, halves rounded away from zero."""
        return f"{rounded(self.to(unit), digits)} {unit}"


def rounded(number: float, digits: int) -> str:
    """Write a number with so many decimal places, halves rounded away from zero; never "-0"."""
    # repr is the shortest text of the float, so that 2.675 rounds as it reads.
    step = Decimal(1).scaleb(-digits)
    short = Decimal(repr(float(number))).quantize(step, context=_HAND)
    return f"{abs(short) if short.is_zero() else short:f}"
