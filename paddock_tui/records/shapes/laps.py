"""Lap times, which TOML has no form for: as a file holds them, and as they are typed in a hurry."""

import functools
import math
import re
from decimal import Decimal

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape, found_words

MARKS = ("out", "in", "traffic")
"""What may be said of a lap that is not a clean one: left the pits, came in, held up."""

FAR_S = 20
"""A lap further than this from the usual one, or from the others, is asked about. Common practice."""

_LAP = re.compile(r"(?:(\d{1,2}):)?(\d{1,3})(?:\.(\d{1,4}))?")
_MINUTES = re.compile(r"(\d{1,2})(?::|'|’|\.(?=\d{2}[.\"”]))(\d{2})(?:[.\"”](\d{1,4}))?[\"”]?")
_HALF = re.compile(r"\d{1,2}[:'’](?:\d?|\d{2}[.\"”])")
_SECONDS = re.compile(r"(\d{1,3})\.(\d{1,4})|(\d{1,2})")
_DIGITS = re.compile(r"(\d{0,2})(\d{2})(\d)")
_CLOCK = re.compile(r"\d{1,2}:\d{2}:\d{2}(?:\.\d+)?")


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

    expected = "a lap time, e.g. 1:44.310, and out, in or traffic behind it where it applies"

    def schema(self) -> JsonSchema:
        seconds = r"([0-9]{1,2}:[0-5]?[0-9]|[0-9]{1,3})(\.[0-9]{1,4})?"
        zero = r"0{1,2}:0{1,2}(\.0{1,4})?|0{1,3}(\.0{1,4})?"
        marks = "|".join(MARKS)
        return {"type": "string", "pattern": rf"^\s*(?!({zero})(\s|$)){seconds}(\s+({marks}))?\s*$"}

    def load(self, raw: object) -> Lap | InputError:
        if not isinstance(raw, str):
            number = isinstance(raw, int | float) and not isinstance(raw, bool)
            return self.wrong(raw, f'write "{found_words(raw)}"' if number else "")
        return _written(self, raw)

    def _load(self, raw: str) -> Lap | InputError:
        time, _, mark = raw.strip().partition(" ")
        mark = mark.strip()
        found = _LAP.fullmatch(time)
        if found is None or (mark and mark not in MARKS):
            return self.wrong(raw, 'write "1:44.310"' if "," in raw else "")
        minutes, seconds, fraction = found.groups()
        return self._made(raw, minutes, seconds, fraction, mark)

    def read(self, text: str) -> Lap | InputError:
        return self.read_beside(text, None)

    def read_beside(self, text: str, usual_s: float | None) -> Lap | InputError:
        """Take what was typed beside the usual lap in s, None where none is known.

        Read are 1:42.3, 1.42.3, 1'42"3, 102.3; and, beside a usual lap, three or more digits alone, the
        last the tenths, the minute the nearest to the usual lap (never faster than it where a mark says
        that the lap was no clean one). A lap far from the usual one is read: whoever keeps it asks. Only one
        or two digits alone far from it are no whole lap.
        """
        typed = re.sub(r"(?<=\d),(?=\d)", ".", text.strip().casefold())
        time, _, mark = typed.partition(" ")
        mark = mark.strip()
        if mark and mark not in MARKS:
            return self.wrong(text)
        found = self._typed(time, mark, usual_s)
        if isinstance(found, InputError) or usual_s is None:
            return found
        seconds, begun = float(found.seconds), time.isdecimal() and len(time) < 3
        if not begun or (seconds * 2 >= usual_s and abs(seconds - usual_s) <= FAR_S):
            return found
        return self.wrong(text, f"half a lap time beside the usual {Lap(_tenths(usual_s))}: write it whole")

    def dump(self, value: Lap) -> str:
        return str(value)

    def example(self) -> Lap:
        return Lap(Decimal("104.31"))

    def _typed(self, time: str, mark: str, usual_s: float | None) -> Lap | InputError:
        whole = _MINUTES.fullmatch(time)
        if whole is not None:
            return self._made(time, whole[1], whole[2], whole[3], mark)
        short = _SECONDS.fullmatch(time)
        if short is not None:
            return self._made(time, None, short[1] or short[3], short[2], mark)
        if _DIGITS.fullmatch(time):
            return self._from_digits(time, mark, usual_s)
        if _CLOCK.fullmatch(time):
            return self.wrong(time, "this is a time of day or a running clock")
        return self.wrong(time, "half a lap time: seconds have two digits" if _HALF.fullmatch(time) else "")

    def _from_digits(self, time: str, mark: str, usual_s: float | None) -> Lap | InputError:
        """Read minutes, seconds and tenths written without anything between them."""
        if usual_s is None:
            return self.wrong(time, "digits alone need a usual lap here: write 1:42.3")
        minutes, seconds, tenths = _DIGITS.fullmatch(time).groups()  # type: ignore[union-attr]
        if int(seconds) >= 60:
            return self.wrong(time, "seconds go to 59; the last digit is the tenths")
        part = Decimal(f"{seconds}.{tenths}")
        if minutes:
            total = 60 * int(minutes) + part
        else:
            total = nearest_minute(part, Decimal(str(usual_s)), slower=bool(mark))
        return self.wrong(time) if total <= 0 else Lap(total, mark)

    def _made(
        self, raw: str, minutes: str | None, seconds: str, fraction: str | None, mark: str
    ) -> Lap | InputError:
        total = Decimal(f"{seconds}.{fraction}") if fraction else Decimal(seconds)
        if minutes is not None and total >= 60:
            return self.wrong(raw, "seconds go to 59")
        total += 60 * int(minutes or 0)
        return self.wrong(raw) if total <= 0 else Lap(total, mark)


@functools.lru_cache(maxsize=8192)
def _written(shape: LapTime, raw: str) -> Lap | InputError:
    """Read a lap as it is written; the same time of many sessions is one object."""
    return shape._load(raw)


def nearest_minute(seconds: Decimal, usual_s: Decimal, *, slower: bool) -> Decimal:
    """Return seconds within a minute the whole minutes that bring them nearest to the usual lap, in s.

    A lap that is known to be `slower` takes the first minute that is not faster than 95 % of it.
    """
    if slower:
        minutes = math.ceil((Decimal("0.95") * usual_s - seconds) / 60)
    else:
        minutes = round((usual_s - seconds) / 60)
    return seconds + 60 * max(0, minutes)


def _tenths(seconds: float) -> Decimal:
    return Decimal(f"{seconds:.1f}")
