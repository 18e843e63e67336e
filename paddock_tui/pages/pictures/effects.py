"""What changes did to the usual lap: the interval of each with its whiskers, beside no effect."""

import math
from collections.abc import Sequence

import attrs

from paddock_tui.advice.session_laps import shift_words
from paddock_tui.pages.pictures.data import NOW, Lane, Lanes, Mark, Stretch

LEGEND = "█ tells  o cannot tell yet"
ENDS = ("faster", "slower")

_UNSURE = "o"


@attrs.frozen
class ShownEffect:
    """What one change did, in s (below zero faster), its interval, its verdict and its needs.

    `tells` says that the verdict names an effect. The interval is of the laps of the two sessions.
    """

    label: str
    shift: float
    low: float | None
    high: float | None
    verdict: str
    tells: bool
    needs: str = ""


def effect_lanes(effects: Sequence[ShownEffect]) -> Lanes | None:
    """Draw each effect on one scale of seconds, no effect in its middle; None without one."""
    if not effects:
        return None
    far = max(abs(edge) for one in effects for edge in (one.shift, one.low or 0.0, one.high or 0.0))
    step = next((step for step in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0) if far <= 3 * step), 10.0)
    reach = step * max(math.ceil(far / step - 1e-9), 1)
    return Lanes(
        -reach,
        reach,
        tuple(_lane(one) for one in effects),
        "; ".join(_said(one) for one in effects),
        ticks=((-reach, f"-{reach:g}"), (0.0, "0"), (reach, f"+{reach:g}")),
        zero=0.0,
        ends=ENDS,
        heads=("change", "did", "from", "to", "so"),
        table=tuple(_row(one) for one in effects),
    )


def _lane(one: ShownEffect) -> Lane:
    known = one.low is not None and one.high is not None
    return Lane(
        one.label,
        (Mark(NOW if one.tells else _UNSURE, one.shift, "what it did"),),
        "",
        one.verdict,
        reach=Stretch(one.low, one.high) if known and one.low is not None and one.high is not None else None,
    )


def _said(one: ShownEffect) -> str:
    within = ""
    if one.low is not None and one.high is not None:
        within = f", {shift_words(one.low)} to {shift_words(one.high)}"
    needs = f"; it needs {one.needs}" if one.needs else ""
    return f"{one.label}: {shift_words(one.shift)}{within}, {one.verdict}{needs}"


def _row(one: ShownEffect) -> tuple[str, ...]:
    edges = tuple("not known" if edge is None else shift_words(edge) for edge in (one.low, one.high))
    return (one.label, shift_words(one.shift), *edges, one.verdict)
