"""What a calculation refuses, in words that a screen can show."""

import math

import attrs


@attrs.frozen
class OutOfRange(ValueError):
    """A figure lies outside the range for which a formula holds. `low` or `high` None: open at that end."""

    what: str
    value: float
    low: float | None = None
    high: float | None = None
    unit: str = ""

    def sentence(self) -> str:
        """Say it in one line: what was given, and the range in which the calculation holds."""
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.what}: {_figure(self.value)}{unit} is outside the range here, {self._range()}{unit}"

    def _range(self) -> str:
        if self.low is None:
            return "any figure" if self.high is None else f"at most {_figure(self.high)}"
        if self.high is None:
            return f"at least {_figure(self.low)}"
        return f"{_figure(self.low)} to {_figure(self.high)}"

    def __str__(self) -> str:
        return self.sentence()


@attrs.frozen
class Inconsistent(ValueError):
    """Something given does not fit together, whatever its size."""

    what: str
    why: str

    def sentence(self) -> str:
        """Say it in one line."""
        return f"{self.what}: {self.why}"

    def __str__(self) -> str:
        return self.sentence()


def within(what: str, value: float, low: float | None, high: float | None, unit: str = "") -> float:
    """Return the value back, or raise OutOfRange where it is outside [low, high] or not a finite number."""
    too_low = low is not None and value < low
    too_high = high is not None and value > high
    if too_low or too_high or not math.isfinite(value):
        raise OutOfRange(what, value, low, high, unit)
    return value


def above(what: str, value: float, floor: float, high: float | None, unit: str = "") -> float:
    """Return the value back, or raise OutOfRange where it is not greater than `floor` (or above `high`)."""
    if not value > floor:
        raise OutOfRange(f"{what} (must be more than {_figure(floor)})", value, floor, high, unit)
    return within(what, value, floor, high, unit)


def _figure(value: float) -> str:
    return f"{value:.6g}"
