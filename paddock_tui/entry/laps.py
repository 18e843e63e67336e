"""A run of lap times: typed one by one, or pasted as a row or a column, with or without headings."""

import itertools
import re
import statistics
from collections.abc import Iterator, Sequence
from decimal import Decimal

import attrs

from paddock_tui.entry.scanner import Token
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Lap, LapTime
from paddock_tui.records.shapes.laps import FAR_S, MARKS

HEADINGS = ("lap", "laps", "time", "times", "laptime", "lap-time", "lap_time", "no", "no.", "nr", "#", "mark")
"""Words that stand above a pasted column and are no lap times."""

_LAP = LapTime()
_COUNTED = re.compile(r"([1-9]\d{0,2})[x×](.+)")
_NUMBER = re.compile(r"\d{1,3}")
_LEAST_CLOCK = 3
_SHORT = 3
"""Digits of a lap in the short form, minutes left out: alone before one time they are no lap number."""
_RUN = re.compile(r"(?:[0-9]{3}){2,}")
_FEW = 2
"""Of so many laps none can be told to be the odd one."""


@attrs.frozen
class TypedLap:
    """One lap of a run, and where it stands in the text."""

    start: int
    end: int
    lap: Lap


@attrs.frozen
class Wrong:
    """What keeps a run of laps from being taken, and where it stands."""

    start: int
    end: int
    message: str
    mend: str = ""


@attrs.frozen
class Run:
    """Laps in the order ridden and how many pieces they took; or a count of laps with the best one.

    `wrong` says what cannot be taken: then nothing of the run may be.
    """

    used: int
    laps: tuple[TypedLap, ...] = ()
    count: int | None = None
    best: TypedLap | None = None
    wrong: Wrong | None = None


def read_laps(tokens: Sequence[Token], usual_s: float | None = None) -> Run:
    """Read lap times while pieces read as laps or marks; `usual_s` is the usual lap, where one is known."""
    skipped = _headings(tokens)
    if _begins_with_out(tokens[skipped:]):
        # Before the first time "out" can only be of that lap, and is read as behind it.
        tokens = [*tokens[:skipped], tokens[skipped + 1], tokens[skipped], *tokens[skipped + 2 :]]
    end = skipped
    while end < len(tokens) and (tokens[end].figure or (end > skipped and tokens[end].folded in MARKS)):
        end += 1
    pieces = list(_one_by_one(tokens[skipped:end], usual_s))
    if not pieces:
        return Run(0)
    counted = _COUNTED.fullmatch(pieces[0].folded)
    if counted is not None:
        return _best(pieces, end, counted[1], counted[2], usual_s)
    timed = _with_marks(pieces)
    numbers, times = _numbered(timed)
    wrong = _out_of_order(numbers)
    laps: list[TypedLap] = []
    for time, mark in times if wrong is None else ():
        found = _read(time, mark, usual_s if usual_s is not None else _usual_of(laps))
        if isinstance(found, Wrong):
            return Run(end, tuple(laps), wrong=found)
        laps.append(found)
    wrong = wrong or _running_clock(laps)
    if len(numbers) > 1 and int(numbers[0].text) > int(numbers[-1].text):
        laps.reverse()
    return Run(end, tuple(laps), wrong=wrong)


def _begins_with_out(tokens: Sequence[Token]) -> bool:
    return len(tokens) > 1 and tokens[0].folded == MARKS[0] and tokens[1].figure


def _one_by_one(tokens: Sequence[Token], usual_s: float | None) -> Iterator[Token]:
    """Part laps of three digits that were typed without anything between them: 423418 is 423 418.

    Digits alone are laps only beside a usual one: known before, or typed before them.
    """
    for place, token in enumerate(tokens):
        run = _RUN.fullmatch(token.text) if usual_s is not None or place else None
        if run is None:
            yield token
            continue
        for at in range(0, len(token.text), 3):
            text = token.text[at : at + 3]
            yield attrs.evolve(token, text=text, start=token.start + at, end=token.start + at + 3)


def _usual_of(laps: Sequence[TypedLap]) -> float | None:
    """Return the lap beside which the digits of the next one are read: the last clean one, else the last."""
    clean = [one.lap.seconds for one in laps if not one.lap.mark] or [one.lap.seconds for one in laps]
    return float(clean[-1]) if clean else None


def far_lap(laps: Sequence[Lap], usual_s: float | None = None, *, slower_is_usual: bool = False) -> str:
    """Say which clean lap is far from the others, or from the usual one in s, in words; empty: none is.

    Of two laps neither can be told to be the odd one, unless one is not half of the other. Where
    `slower_is_usual`, as in the wet, being slower than the usual lap is nothing to ask about.
    """
    clean = [(number, one.seconds) for number, one in enumerate(laps, 1) if not one.mark]
    for number, seconds in clean:
        others = [other for at, other in clean if at != number]
        middle = statistics.median_low(others) if others else seconds
        few = len(clean) <= _FEW
        if (abs(seconds - middle) > FAR_S and not few) or seconds * 2 < middle:
            return f"lap {number}, {Lap(seconds)}, is far from the others, about {Lap(middle)}"
    if usual_s is None or not clean:
        return ""
    middle = statistics.median_low([seconds for _, seconds in clean])
    by = float(middle) - usual_s
    if by < -FAR_S or (by > FAR_S and not slower_is_usual):
        what = (
            f"lap {clean[0][0]}, {Lap(middle)}, is" if len(clean) == 1 else f"laps of about {Lap(middle)} are"
        )
        return f"{what} far from the usual {Lap(Decimal(f'{usual_s:.1f}'))}"
    return ""


def _headings(tokens: Sequence[Token]) -> int:
    """Count the heading words before the first figure; none where no figure follows them."""
    count = 0
    while count < len(tokens) and tokens[count].folded in HEADINGS:
        count += 1
    return count if count < len(tokens) and tokens[count].figure else 0


def _with_marks(pieces: Sequence[Token]) -> list[tuple[Token, Token | None]]:
    """Pair each time with the mark behind it."""
    found: list[tuple[Token, Token | None]] = []
    for piece in pieces:
        if piece.folded not in MARKS:
            found.append((piece, None))
        elif found:
            found[-1] = (found[-1][0], piece)
    return found


def _numbered(
    timed: list[tuple[Token, Token | None]],
) -> tuple[list[Token], list[tuple[Token, Token | None]]]:
    """Part a column of lap numbers from the column of times beside it; no numbers where there is none."""
    firsts, seconds = timed[::2], timed[1::2]
    paired = bool(seconds) and len(firsts) == len(seconds)
    numbers = [piece for piece, mark in firsts if mark is None and _NUMBER.fullmatch(piece.text)]
    short_form = len(firsts) == 1 and len(firsts[0][0].text) == _SHORT
    if not paired or len(numbers) != len(firsts) or short_form:
        return [], timed
    if all(_NUMBER.fullmatch(piece.text) for piece, _ in seconds):
        return [], timed
    return numbers, seconds


def _out_of_order(numbers: Sequence[Token]) -> Wrong | None:
    """Point at the first lap number that does not go on from the one before it, up or down."""
    values = [int(one.text) for one in numbers]
    by = -1 if len(values) > 1 and values[1] < values[0] else 1
    for place in range(1, len(values)):
        if values[place] != values[place - 1] + by:
            here = numbers[place]
            message = f"lap number {values[place]} behind {values[place - 1]}"
            return Wrong(here.start, here.end, message, "paste the times alone, in the order ridden")
    return None


def _running_clock(laps: Sequence[TypedLap]) -> Wrong | None:
    """Tell times that only ever grow by about a lap: a clock that ran through, not lap times."""
    values = [float(one.lap.seconds) for one in laps]
    grows = all(after - before >= 0.5 * values[0] for before, after in itertools.pairwise(values))
    if len(values) < _LEAST_CLOCK or not grows:
        return None
    here = laps[1]
    said = "each time is a lap later than the one before: a running clock"
    return Wrong(here.start, here.end, said, "paste the times of the laps themselves")


def _best(pieces: Sequence[Token], end: int, count: str, text: str, usual_s: float | None) -> Run:
    first = pieces[0]
    found = _LAP.read_beside(text, usual_s)
    if isinstance(found, InputError):
        return Run(end, wrong=_no_lap(first, found))
    if len(pieces) > 1:
        other = pieces[1]
        said = "a count with the best lap stands by itself"
        return Run(end, wrong=Wrong(other.start, other.end, said, "or write every lap"))
    return Run(end, count=int(count), best=TypedLap(first.start, first.end, found))


def _read(time: Token, mark: Token | None, usual_s: float | None) -> TypedLap | Wrong:
    found = _LAP.read_beside(f"{time.text} {mark.folded if mark is not None else ''}", usual_s)
    if isinstance(found, InputError):
        return _no_lap(time, found)
    return TypedLap(time.start, mark.end if mark is not None else time.end, found)


def _no_lap(token: Token, trouble: InputError) -> Wrong:
    mend = trouble.mend or f"expected {LapTime.expected}"
    return Wrong(token.start, token.end, f"{token.text} is no lap time", mend)
