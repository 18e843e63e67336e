"""What was changed since the session that this one was copied from, as one hand would count it."""

from collections.abc import Iterable, Mapping

import attrs

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.past import History
from paddock_tui.facts.suspension import damping_unused, what_of
from paddock_tui.records.bike import Bike
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import SetUpDifference, differences
from paddock_tui.records.electronics import HELP_FUNCTIONS, STATE_FUNCTIONS, Control, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.suspension import Adjuster
from paddock_tui.records.tyres import TyreSet

_PRESSURES = ("front_start", "rear_start")
_GEARING = ("front_sprocket", "rear_sprocket", "links")
_DAMPING = ("damping", "preset")
_RAIN = ("wet", "intermediate")


@attrs.frozen
class Changes:
    """What differs from the session before: independent units in words, and every difference."""

    units: tuple[str, ...]
    every: tuple[SetUpDifference, ...]


@fact("the changes since the session before", show=lambda found: "; ".join(found.units))
def changes(
    session: Session, setup: SetUp, source: Session | None, bike: Bike, learning_from: bool
) -> Changes:
    """Return what the rider changed for this session, what belongs together counted once.

    Starting pressures, states of launch, shifter and limiter, and aids that were given more help are no
    change to learn from.
    """
    assert source is not None
    every = tuple(one for one in differences(source.setup, setup, bike) if one.known)
    lowered = lowered_aids(source.setup, setup, bike)
    units: dict[str, str] = {}
    for one in every:
        unit = _unit(one, bike, lowered)
        if unit:
            units.setdefault(unit, str(one))
    if len(lowered) > 1:
        units["aids"] = f"less help from {len(lowered)} aids"
    return Changes(tuple(units.values()), every)


@fact("whether changes are there to learn from")
def learning_from(
    session: Session,
    setup: SetUp,
    source: Session | None,
    history: History,
    records: Mapping[str, Record],
) -> bool | Absent:
    """Absent where several changes at once are right: a saved set-up, a swap for the weather, a first day.

    So is another rider's set-up, and another riding mode: it changes many values by itself.
    """
    if source is None or session.taken_from is not None or source.rider != session.rider:
        return ABSENT
    if _swapped(session, source, history, records) or source.setup.mode != setup.mode:
        return ABSENT
    before = reversed(history.past)
    return True if any(one.date != session.date and one.ridden for one in before) else ABSENT


@fact("the aids that help less than in the session before")
def lowered(setup: SetUp, source: Session | None, bike: Bike, learning_from: bool) -> tuple[str, ...]:
    """Return the aids whose help came down, by name."""
    return lowered_aids(source.setup, setup, bike) if source is not None else ()


def lowered_aids(old: SetUp, new: SetUp, bike: Bike) -> tuple[str, ...]:
    """List the aids that help less in one set-up than in another, riding modes included."""
    found = []
    for name, control in bike.controls.items():
        before = _help(name, control, old, bike)
        after = _help(name, control, new, bike)
        if before is not None and after is not None and after < before:
            found.append(name)
    return tuple(found)


def _help(name: str, control: Control, setup: SetUp, bike: Bike) -> float | None:
    value = value_in_force(name, setup, bike)
    levels = levels_of(name, control) if function_of(name, control) in HELP_FUNCTIONS else None
    scale = levels.help_if_known() if levels is not None else None
    if scale is None or value is None:
        return None
    try:
        return scale.help_of(value)
    except (Inconsistent, OutOfRange):
        return None


def _unit(one: SetUpDifference, bike: Bike, lowered: Iterable[str]) -> str:
    """Name what a difference belongs to; empty where it is nothing to learn from."""
    if one.kind == "controls":
        return _control_unit(one.key, bike, tuple(lowered))
    if one.kind == "adjusters":
        return _adjuster_unit(one.key, bike)
    if one.key in _PRESSURES:
        return ""
    if one.key in _GEARING:
        return "gearing"
    return "damping mode" if one.key in _DAMPING else f"{one.kind} {one.key}"


def _control_unit(name: str, bike: Bike, lowered: tuple[str, ...]) -> str:
    function = function_of(name, bike.controls.get(name, Control()))
    if function in STATE_FUNCTIONS or (len(lowered) > 1 and name in lowered):
        return ""
    return "" if function in HELP_FUNCTIONS and name not in lowered else f"control {name}"


def _adjuster_unit(name: str, bike: Bike) -> str:
    """Take both legs of a fork together."""
    adjuster = bike.adjusters.get(name, Adjuster())
    if adjuster.leg in ("left", "right"):
        return f"adjuster {what_of(name, adjuster)}"
    return f"adjuster {name}"


def _swapped(session: Session, source: Session, history: History, records: Mapping[str, Record]) -> bool:
    """Return whether the weather asked for another set-up: dry, damp or wet, either way; rain tyres too."""
    ground = [COLUMN.get(one.surface or "") for one in (source, session)]
    if None not in ground and ground[0] != ground[1]:
        return True
    before, now = history.tyre_sets.get(source.tyres or ""), records.get("tyres")
    kinds = [one.rear.kind for one in (before, now) if isinstance(one, TyreSet)]
    return len(kinds) == 2 and None not in kinds and (kinds[0] in _RAIN) != (kinds[1] in _RAIN)


@fact("damping that was changed", show=lambda found: "; ".join(str(one) for one in found))
def damping_touched(changes: Changes, setup: SetUp, bike: Bike) -> tuple[SetUpDifference, ...] | Absent:
    """Return the damping adjusters that were changed and are in use; absent where none was."""
    found = tuple(
        one
        for one in changes.every
        if one.kind == "adjusters" and is_damping(one.key, bike) and not damping_unused(one.key, setup, bike)
    )
    return found or ABSENT


@fact("whether {subject} was changed", per="adjuster", show=str)
def adjuster_change(subject: str, changes: Changes, setup: SetUp, bike: Bike) -> SetUpDifference | Absent:
    """Return how an adjuster in use was changed since the session before; absent where it was not."""
    if damping_unused(subject, setup, bike):
        return ABSENT
    found = (one for one in changes.every if one.kind == "adjusters" and one.key == subject)
    return next(found, ABSENT)


def is_damping(name: str, bike: Bike) -> bool:
    """Return whether an adjuster is one of damping: rebound or compression."""
    adjuster = bike.adjusters.get(name)
    what = what_of(name, adjuster)[1] if adjuster is not None else ""
    return what.startswith(("rebound", "compression"))
