"""What a rider comes from: another bike, or this one as it was set then; and what is new here."""

from collections.abc import Iterator

import attrs

from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import control_difference
from paddock_tui.records.electronics import HELP_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of


@attrs.frozen
class CameFrom:
    """The bike that somebody rode last and how it was set: `place` says where that is from."""

    name: str
    bike: Bike
    setup: SetUp
    same_bike: bool
    place: str


def new_here(came: CameFrom | None, setup: SetUp, bike: Bike, name: str) -> tuple[str, ...]:
    """Say what is new to a rider who comes from there; what turns the other way round comes first."""
    if came is None:
        return ("Nothing that you rode before is in this garage: take everything here as new.",)
    if came.same_bike:
        found = tuple(_since(came, setup, bike))
        return found or (f"All that is known to be set stands as in {came.place}.",)
    return (*_directions(came, bike, name), *_other(came, bike), f"You come from {came.name}, {came.place}.")


def _since(came: CameFrom, setup: SetUp, bike: Bike) -> Iterator[str]:
    moved = []
    for name in bike.controls:
        before, now = value_in_force(name, came.setup, bike), value_in_force(name, setup, bike)
        if before is not None and now is not None and before != now:
            moved.append(str(control_difference(name, before, now, bike)))
    if moved:
        yield f"Since {came.place}: {', '.join(moved)}."


def _by_function(bike: Bike) -> dict[str, tuple[str, Control]]:
    found = {function_of(name, control): (name, control) for name, control in bike.controls.items()}
    return {function: one for function, one in found.items() if function != "other"}


def _directions(came: CameFrom, bike: Bike, name: str) -> Iterator[str]:
    """Say which scales run the other way on the two bikes, and which nobody knows of one of them."""
    theirs, ours = _by_function(came.bike), _by_function(bike)
    turned, unknown = [], []
    for function in (*HELP_FUNCTIONS, "engine-braking"):
        if function not in theirs or function not in ours:
            continue
        there, here = _end(*theirs[function]), _end(*ours[function])
        label = label_of(ours[function][0])
        if there is None or here is None:
            unknown += [label] if there != here else []
        elif there[0] != here[0]:
            word = "brakes least" if function == "engine-braking" else "helps most"
            turned.append(f"{label}, where {here[1]} {word}")
    if turned:
        yield f"{came.name} counts the other way for {'; '.join(turned)}."
    if unknown:
        yield f"Which end is which is known for one of {came.name} and {name} only: {', '.join(unknown)}."


def _end(name: str, control: Control) -> tuple[str, str] | None:
    """Return which way a control counts, and the level at its named end; None while that is not known."""
    levels = levels_of(name, control)
    scale = levels.scale_if_known() if levels is not None else None
    if scale is None or levels is None or len(scale.on) < 2:
        return None
    return ("up" if scale.most == levels.values[-1] else "down"), str(scale.most)


def _other(came: CameFrom, bike: Bike) -> Iterator[str]:
    """Say what only one of the two bikes has."""
    theirs, ours = _by_function(came.bike), _by_function(bike)
    new = [label_of(name) for function, (name, _) in ours.items() if not _has(function, theirs)]
    gone = [label_of(name) for function, (name, _) in theirs.items() if not _has(function, ours)]
    if new and len(new) == len(ours):
        yield f"{came.name} has none of these: feel what each does before you lean on it."
    elif new:
        yield f"{came.name} has no {', '.join(new)}: feel what they do before you lean on them."
    if gone:
        yield f"Here there is no {', '.join(gone)}: nothing does that for you."


def _has(function: str, there: dict[str, tuple[str, Control]]) -> bool:
    """Tell whether a bike has a function; ABS in one stands for either wheel's, and the other way round."""
    if function in ("front-abs", "rear-abs"):
        return function in there or "abs" in there
    return function in there or (function == "abs" and "front-abs" in there)
