"""Dates and clock times, TOML's own; lap times, which TOML has no form for."""

import datetime as dt
import re
from decimal import Decimal

import attrs

from paddock_tui.records.shapes.base import Shape, found_words
from paddock_tui.records.trouble import Trouble

_CLOCK = re.compile(r"(\d{1,2})[:.](\d{2})(?:[:.](\d{2}))?")
_FOUR = re.compile(r"(\d{1,2})(\d{2})")
_DATE = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_LAP = re.compile(r"(?:(\d{1,2}):)?(\d{1,3})(?:\.(\d{1,4}))?")

MARKS = ("out", "in", "traffic")
"""What may be said of a lap that is not a clean one: left the pits, came in, held up."""


class Day(Shape[dt.date]):
    """A calendar date."""

    expected = "a date, such as 2026-05-16"

    def load(self, raw: object) -> dt.date | Trouble:
        if isinstance(raw, dt.datetime) or not isinstance(raw, dt.date):
            return self.wrong(raw, "write it as 2026-05-16, without quotes")
        return raw

    def read(self, text: str) -> dt.date | Trouble:
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


class Clock(Shape[dt.time]):
    """A time of day, local, without zone."""

    expected = "a time of day, such as 10:40"

    def load(self, raw: object) -> dt.time | Trouble:
        if not isinstance(raw, dt.time) or raw.tzinfo is not None:
            return self.wrong(raw, "write it as 10:40:00, without quotes")
        return raw

    def read(self, text: str) -> dt.time | Trouble:
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


@attrs.frozen
class Lap:
    """One lap: its time in seconds as typed, and what marks it as not a clean one ("" where nothing does)."""

    seconds: Decimal
    mark: str = ""

    def __str__(self) -> str:
        minutes, seconds = divmod(self.seconds, 60)
        whole, point, fraction = str(seconds).partition(".")
        shown = f"{int(minutes)}:{whole:0>2}{point}{fraction}" if minutes else str(seconds)
        return f"{shown} {self.mark}".strip()


class LapTime(Shape[Lap]):
    """A lap time, minutes and seconds, with a mark behind it where it was not a clean lap."""

    expected = "a lap time, such as 1:44.310, and out, in or traffic behind it where it applies"

    def load(self, raw: object) -> Lap | Trouble:
        if not isinstance(raw, str):
            number = isinstance(raw, int | float) and not isinstance(raw, bool)
            return self.wrong(raw, f'write "{found_words(raw)}"' if number else "")
        time, _, mark = raw.strip().partition(" ")
        mark = mark.strip()
        found = _LAP.fullmatch(time)
        if found is None or (mark and mark not in MARKS):
            return self.wrong(raw, 'write "1:44.310"' if "," in raw else "")
        minutes, seconds, fraction = found.groups()
        total = Decimal(f"{seconds}.{fraction}") if fraction else Decimal(seconds)
        if minutes is not None and total >= 60:
            return self.wrong(raw, "seconds go to 59")
        total += 60 * int(minutes or 0)
        return self.wrong(raw) if total <= 0 else Lap(total, mark)

    def read(self, text: str) -> Lap | Trouble:
        return self.load(re.sub(r"(?<=\d),(?=\d)", ".", text.casefold()))

    def dump(self, value: Lap) -> str:
        return str(value)

    def example(self) -> Lap:
        return Lap(Decimal("104.31"))


class DateCode(Shape[str]):
    """The week and year moulded on a tyre: four digits, week first (49 CFR 574.5)."""

    expected = "four digits, week then year, such as 2623"

    def load(self, raw: object) -> str | Trouble:
        if isinstance(raw, int) and not isinstance(raw, bool):
            return self.wrong(raw, f'write "{raw:04d}", in quotes' if 0 < raw < 10_000 else "")
        if not isinstance(raw, str) or not re.fullmatch(r"[0-9]{4}", raw):
            return self.wrong(raw)
        if not 1 <= int(raw[:2]) <= 53:
            return self.wrong(raw, "the week goes from 01 to 53")
        return raw

    def read(self, text: str) -> str | Trouble:
        return self.load(text.strip())

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return "2623"
