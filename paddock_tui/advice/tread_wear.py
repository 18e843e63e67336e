"""Tread: what a session takes off a tyre, and how soon its own worn depth may come."""

import functools
from collections.abc import Iterable, Iterator

from paddock_tui.advice.about import About, End
from paddock_tui.advice.calculators import (
    Answer,
    Answered,
    Calculator,
    Input,
    Inputs,
    Method,
    filled,
    if_known,
    told,
)
from paddock_tui.advice.ridden_so_far import so_far
from paddock_tui.advice.wear_words import wear_in_words
from paddock_tui.calc.wear import WearReading
from paddock_tui.facts.past import sets_with
from paddock_tui.records import common as c

METHOD = Method(
    "median of the loss a session between all pairs of readings; soonest = (last - worn at) / the "
    "fastest loss",
    "the thinnest place each time, by one gauge; similar sessions: a hot track takes much more",
    "a tyre goes off, ages or cords long before a depth says so: look at it before each session",
    "median slopes after Theil and Sen; the vendor's figure and the law's come first",
)
INPUTS = (Input("worn_at", "counts as worn at", c.TREAD),)


def tread(about: About, end: End) -> Calculator:
    """Return the wear of the tread at one end, over the sessions on that tyre."""
    tyre = about.tyre(end)
    found = filled(worn_at=if_known(tyre.worn_at, f"tyre set {about.id_of('tyres')}"))
    readings, ridden = _readings(about, end)
    compute = functools.partial(_compute, end, readings, ridden)
    return Calculator(f"{end} tread", f"{end} tread", INPUTS, found, compute)


def _readings(about: About, end: End) -> tuple[tuple[WearReading, ...], float]:
    """Return the depths that were read, by how many sessions this tyre had then been ridden, and those."""
    history, own = so_far(about), about.id_of("tyres")
    if own is None:
        return (), 0.0
    sets = {own, *sets_with(history, own, end)}
    used = history.sets_used
    since = min((used[name][0] for name in sets if name in used), default=len(history.past))

    def walk() -> Iterator[tuple[float, WearReading | None]]:
        ridden = 0
        for one in history.past[since:]:
            if one.tyres not in sets:
                continue
            ridden += one.ridden
            depth = one.session.front_tread if end == "front" else one.session.rear_tread
            yield ridden, None if depth is None else WearReading(float(ridden), depth.to("mm"))

    seen = tuple(walk())
    return tuple(one for _, one in seen if one is not None), seen[-1][0] if seen else 0.0


def _compute(end: End, readings: tuple[WearReading, ...], ridden: float, inputs: Inputs) -> Iterable[Answer]:
    def make() -> Answered:
        return wear_in_words(f"{end} tread", readings, inputs.amount("worn_at", "mm"), ridden)

    return (told(inputs, "tread", f"{end} tread", ("worn_at",), METHOD, make),)
