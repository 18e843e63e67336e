"""Dates and clock times, TOML's own, and the date moulded on a tyre."""

import datetime as dt
import re

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape

_CLOCK = re.compile(r"(\d{1,2})[:.](\d{2})(?:[:.](\d{2}))?")
_FOUR = re.compile(r"(\d{1,2})(\d{2})")
_DATE = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")


class Day(Shape[dt.date]):
    """A calendar date."""

    expected = "a date, e.g. 2026-05-16"

    def schema(self) -> JsonSchema:
        return {"type": "string", "format": "date", "pattern": r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}

    def load(self, raw: object) -> dt.date | InputError:
        if isinstance(raw, dt.datetime) or not isinstance(raw, dt.date):
            return self.wrong(raw, "write it as 2026-05-16, without quotes")
        return raw

    def read(self, text: str) -> dt.date | InputError:
        found = _DATE.fullmatch(text.strip())
        if found is None:
            return self.wrong(text)
        try:
            return dt.date(int(found[1]), int(found[2]), int(found[3]))
        except ValueError:
            return self.wrong(text, "there is no such day")

    def dump(self, value: dt.date) -> dt.date:
        return value

    def example(self) -> dt.date:
        return dt.date(2026, 5, 16)

    def show(self, value: dt.date) -> str:
        return value.isoformat()

    def step(self, value: dt.date, by: int) -> dt.date | None:
        try:
            return value + dt.timedelta(days=by)
        except OverflowError:
            return None


class TimeOfDay(Shape[dt.time]):
    """A time of day, local, without zone."""

    expected = "a time of day, e.g. 10:40"

    def schema(self) -> JsonSchema:
        # "format": "time" of JSON Schema wants a zone, which a time of day here never has.
        return {"type": "string", "pattern": r"^([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9](\.[0-9]+)?)?$"}

    def load(self, raw: object) -> dt.time | InputError:
        if not isinstance(raw, dt.time) or raw.tzinfo is not None:
            return self.wrong(raw, "write it as 10:40:00, without quotes")
        return raw

    def read(self, text: str) -> dt.time | InputError:
        typed = text.strip()
        found = _CLOCK.fullmatch(typed) or _FOUR.fullmatch(typed)
        if found is None:
            return self.wrong(text)
        hour, minute, second = [int(group or 0) for group in (*found.groups(), "0")][:3]
        try:
            return dt.time(hour, minute, second)
        except ValueError:
            return self.wrong(text, "hours go to 23, minutes and seconds to 59")

    def dump(self, value: dt.time) -> dt.time:
        return value

    def example(self) -> dt.time:
        return dt.time(10, 40)

    def show(self, value: dt.time) -> str:
        return value.strftime("%H:%M") if value.second == 0 else value.strftime("%H:%M:%S")

    def step(self, value: dt.time, by: int) -> dt.time:
        minutes = max(0, min(24 * 60 - 1, value.hour * 60 + value.minute + by))
        return dt.time(minutes // 60, minutes % 60)


class DateCode(Shape[str]):
    """The week and year moulded on a tyre: four digits, week first (49 CFR 574.5)."""

    expected = "four digits, week then year, e.g. 2623"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": "^(0[1-9]|[1-4][0-9]|5[0-3])[0-9]{2}$"}

    def load(self, raw: object) -> str | InputError:
        if isinstance(raw, int) and not isinstance(raw, bool):
            return self.wrong(raw, f'write "{raw:04d}", in quotes' if 0 < raw < 10_000 else "")
        if not isinstance(raw, str) or not re.fullmatch(r"[0-9]{4}", raw):
            return self.wrong(raw)
        if not 1 <= int(raw[:2]) <= 53:
            return self.wrong(raw, "the week goes from 01 to 53")
        return raw

    def read(self, text: str) -> str | InputError:
        return self.load(text.strip())

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return "2623"
