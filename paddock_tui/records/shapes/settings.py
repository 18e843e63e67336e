"""Values of controls: a level, a word, a speed or a state, depending on the control."""

from paddock_tui import quantities
from paddock_tui.quantities import Quantity
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import SOME, JsonSchema, Shape, found_words
from paddock_tui.records.shapes.numbers import read_number
from paddock_tui.records.shapes.texts import one_of

Setting = int | str
"""What a control is set to: a level as a number, everything else as the word or speed that was written."""

OFF = "off"


class AnySetting(Shape[Setting]):
    """A control's value while the bike is not known: a whole number or a word."""

    expected = "a level (a whole number) or a word in quotes"

    def schema(self) -> JsonSchema:
        # A whole number of fewer than ten digits, or any word; which of them a bike has is in its record.
        level = {"type": "integer", "exclusiveMinimum": -(10**9), "exclusiveMaximum": 10**9}
        return {"anyOf": [level, {"type": "string", "pattern": SOME}]}

    def load(self, raw: object) -> Setting | InputError:
        if isinstance(raw, bool):
            return self.wrong(raw, 'write "on" or "off"')
        if isinstance(raw, int) and abs(raw) < 10**9:
            return raw
        if isinstance(raw, str) and raw.strip():
            return raw
        return self.wrong(raw)

    def read(self, text: str) -> Setting | InputError:
        number = read_number(text)
        return self.load(number if isinstance(number, int) else text.strip())

    def dump(self, value: Setting) -> Setting:
        return value

    def example(self) -> Setting:
        return 3


class LevelSetting(AnySetting):
    """A level of a counted control. A level outside the range is kept: a rule judges it."""

    def __init__(self, low: int, high: int, *, can_be_off: bool) -> None:
        self.low, self.high, self.can_be_off = low, high, can_be_off

    @property
    def expected(self) -> str:  # type: ignore[override]
        return f"a level from {self.low} to {self.high}{', or off' if self.can_be_off else ''}"

    def load(self, raw: object) -> Setting | InputError:
        if isinstance(raw, str) and raw != OFF:
            number = read_number(raw)
            return self.wrong(raw, f"write {number}, without quotes" if isinstance(number, int) else "")
        return super().load(raw)

    def read(self, text: str) -> Setting | InputError:
        typed = text.strip().casefold()
        if typed == OFF:
            return OFF
        number = read_number(typed)
        return self.load(number) if isinstance(number, int) else self.wrong(text)

    def example(self) -> Setting:
        return self.low

    def step(self, value: Setting, by: int) -> Setting:
        if not isinstance(value, int):
            return self.low if by > 0 else value
        return max(self.low, min(self.high, value + by))

    def words(self) -> tuple[str, ...]:
        return (OFF,) if self.can_be_off else ()


class WordSetting(AnySetting):
    """A control whose value is one of the bike's own words, in the bike's order."""

    def __init__(self, *choices: str) -> None:
        self.choices = choices

    @property
    def expected(self) -> str:  # type: ignore[override]
        return one_of(self.choices)

    def load(self, raw: object) -> Setting | InputError:
        return raw if isinstance(raw, str) and raw.strip() else self.wrong(raw)

    def read(self, text: str) -> Setting | InputError:
        typed = text.strip().casefold()
        same = [word for word in self.choices if word.casefold() == typed]
        starts = [word for word in self.choices if typed and word.casefold().startswith(typed)]
        found = same or starts
        return found[0] if len(found) == 1 else self.wrong(text)

    def example(self) -> Setting:
        return self.choices[0]

    def step(self, value: Setting, by: int) -> Setting:
        if value not in self.choices:
            return self.choices[0]
        at = self.choices.index(str(value)) + by
        return self.choices[max(0, min(len(self.choices) - 1, at))]

    def words(self) -> tuple[str, ...]:
        return self.choices


class SpeedSetting(AnySetting):
    """A speed that the electronics hold, such as a pit-lane limit; off where the control can be off."""

    def __init__(self, speeds: tuple[str, ...], *, can_be_off: bool) -> None:
        self.speeds, self.can_be_off = speeds, can_be_off

    @property
    def expected(self) -> str:  # type: ignore[override]
        offered = f" ({', '.join(self.speeds)})" if self.speeds else ", e.g. 60 km/h"
        return f"a speed with its unit{offered}{', or off' if self.can_be_off else ''}"

    def load(self, raw: object) -> Setting | InputError:
        if raw == OFF:
            return OFF
        if not isinstance(raw, str):
            return self.wrong(raw, f'write "{found_words(raw)} km/h"' if type(raw) is int else "")
        return self._speed(quantities.parse(raw), raw)

    def read(self, text: str) -> Setting | InputError:
        if text.strip().casefold() == OFF:
            return OFF
        return self._speed(quantities.parse_typed(text, self._unit()), text)

    def example(self) -> Setting:
        return self.speeds[0] if self.speeds else "60 km/h"

    def step(self, value: Setting, by: int) -> Setting | None:
        choices = self.words()
        if not self.speeds or value not in choices:
            return self.speeds[0] if self.speeds else None
        at = choices.index(str(value)) + by
        return choices[max(0, min(len(choices) - 1, at))]

    def words(self) -> tuple[str, ...]:
        return ((OFF,) if self.can_be_off else ()) + self.speeds

    def _unit(self) -> str | None:
        found = quantities.parse(self.speeds[0]) if self.speeds else None
        return found.unit if isinstance(found, Quantity) else None

    def _speed(self, found: object, text: str) -> Setting | InputError:
        if not isinstance(found, Quantity) or found.dimension != "speed":
            mend = getattr(found, "mend", "")
            return self.wrong(text, mend)
        return str(found)
