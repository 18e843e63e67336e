"""The laps of a session in words: which are clean, best, usual, spread, fall-off, how many more it takes."""

from collections.abc import Iterator, Mapping

from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.laps_needed import LEVEL, POWER, laps_to_see
from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.calc.stint import FACTOR, Stint, TimedLap, stint
from paddock_tui.quantities import rounded
from paddock_tui.records.session import Session

WANTED_S = 0.3
"""The difference that a rider would like to see, in s. Common practice, no source."""

MOST_MORE = 60
"""More laps than this nobody rides to find out. Common practice, no source."""

RULE = (
    f"laps marked out, in or traffic, and those over the median by more than {FACTOR:g} times the spread "
    "(the robust one, at least a thousandth of the median)"
)


def stint_of(session: Session) -> Stint:
    """Part the clean laps of a session from the others; none where a time cannot be."""
    numbered = ((key, lap) for key, lap in session.laps.items() if key.isdigit())
    try:
        return stint(TimedLap(int(key), float(lap.seconds), lap.mark) for key, lap in numbered)
    except OutOfRange:
        return Stint(())


def lap_words(seconds: float, digits: int = 2) -> str:
    """Write a lap time, minutes and seconds."""
    whole = rounded(seconds, digits)
    minutes, rest = divmod(float(whole), 60.0)
    if minutes < 1:
        return whole
    cells = digits + 3 if digits else 2
    return f"{int(minutes)}:{rest:0{cells}.{digits}f}"


def shift_words(seconds: float) -> str:
    """Write a difference of laps with its sign: below zero is faster."""
    text = rounded(abs(seconds), 2)
    if float(text) == 0.0:
        return "0.00 s"
    return f"{'-' if seconds < 0 else '+'}{text} s"


def more_laps(found: Stint, wanted_s: float = WANTED_S) -> int | None:
    """Return how many more clean laps it takes to see a difference against as many; None with fewer than
    three.
    """
    scatter = found.deviation_s
    if scatter is None or len(found.clean) < FEWEST:
        return None
    return max(0, laps_to_see(wanted_s, scatter) - len(found.clean))


def usual_words(found: Stint) -> str:
    """Say the usual lap, of how many, and how they spread; empty without a clean lap."""
    if found.usual_s is None:
        return "no clean lap" if found.aside else ""
    count = len(found.clean)
    laps = "1 clean lap" if count == 1 else f"{count} clean laps"
    spread = f", spread {rounded(found.spread_s, 2)} s" if found.spread_s is not None else ""
    return f"usual {lap_words(found.usual_s)} of {laps}{spread}"


def fall_words(found: Stint) -> str:
    """Say how laps fall off along the session; empty where there are too few."""
    slope = found.fall_off
    if slope is None:
        return ""
    said = f"{shift_words(slope.slope)} a lap"
    if slope.low is None or slope.high is None:
        return said
    within = f"{shift_words(slope.low)} to {shift_words(slope.high)}"
    return f"{said} ({within}{', so none that can be told' if slope.low <= 0.0 <= slope.high else ''})"


def needs_words(found: Stint) -> str:
    """Say how many more laps it would take; empty where it cannot be said."""
    more = more_laps(found)
    if more is None:
        short = FEWEST - len(found.clean)
        return f"needs {short} more clean lap{'s' if short > 1 else ''} to be compared" if found.aside else ""
    if more > MOST_MORE:
        return f"{WANTED_S:g} s cannot be told by these laps: they scatter too much"
    if more == 0:
        return f"laps enough to see {WANTED_S:g} s"
    return f"needs {more} more clean lap{'s' if more > 1 else ''} to see {WANTED_S:g} s"


def working(found: Stint) -> Iterator[str]:
    """Say everything about the laps of a session, line by line."""
    yield usual_words(found) or "no lap is timed"
    if found.best_s is not None:
        yield f"best: {lap_words(found.best_s, 3)}"
    if found.usual_s is not None:
        yield f"usual: {lap_words(found.usual_s, 3)}, the median clean lap"
    if found.spread_s is not None:
        yield f"spread: {rounded(found.spread_s, 3)} s either way, as far as laps lie from their median"
    if fall_words(found):
        yield f"fall-off: {fall_words(found)}; the median slope of all pairs of laps, 95 %"
    for one in found.aside:
        yield f"left out: lap {one.lap.number}, {one.why}"
    yield f"which are left out: {RULE}; paddock practice, unpublished"
    if needs_words(found):
        yield f"how many laps: {needs_words(found)}, against a session with as many"
        yield (
            f"assumes: level {LEVEL:.0%} two-sided, power {POWER:.0%}; the luck of a whole session comes on "
            "top, and no number of laps averages it out"
        )


def left_out(found: Stint) -> Mapping[str, str]:
    """Say beside each lap that does not count why not; a mark says it already."""
    return {str(one.lap.number): one.why for one in found.aside if not one.lap.mark}
