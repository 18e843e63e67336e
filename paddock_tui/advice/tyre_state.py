"""What the record left of each tyre, beside the rows where it is read and looked at again."""

from collections.abc import Iterator

from paddock_tui.advice.about import ENDS, About
from paddock_tui.calc.errors import OutOfRange
from paddock_tui.calc.outside_pressure import AirMoves
from paddock_tui.facts.past import End
from paddock_tui.facts.tyre_state import AirLeft, cold_left, last_look
from paddock_tui.records.paths import Path
from paddock_tui.records.session import is_ridden
from paddock_tui.records.shapes_of_bike import label_of

Words = tuple[Path, str, str]
"""A row, a few words beside it, and the whole of it."""


def tyre_state_words(about: About) -> Iterator[Words]:
    """Return what was last read cold and seen on each tyre, before both are done for this outing."""
    session = about.session
    if session.tyres is None or is_ridden(session):
        return
    for end in ENDS:
        left = cold_left(about.history, session.tyres, end)
        if left is not None:
            yield ("pressures", "cold", end), f"was {left.read.left_at}", _air(left, end, about)
        look = last_look(about.history, session.tyres, end)
        if look is not None:
            seen = ", ".join(label_of(one) for one in look.looks)
            yield (
                ("look", end, "seen"),
                f"was {seen}",
                f"{end} tyre last seen: {seen}, session {look.past.id}",
            )


def _air(left: AirLeft, end: End, about: About) -> str:
    moves = AirMoves.of(about.situation.limits)
    at = f" at {left.read.celsius:g} C" if left.read.celsius is not None else ""
    let = "; air was let out or put in since" if left.let else ""
    begin = f"{end} tyre left with {left.read.left_at} cold{at}, session {left.past.id}{let}"
    try:
        bar = left.absolute_kpa(moves) / 100
        return f"{begin}; {bar:.2f} bar absolute, outside {left.outside(moves).words()}"
    except OutOfRange:
        return begin
