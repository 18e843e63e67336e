"""What a next change offers to take, and what no offer may be; read from the records alone."""

from collections.abc import Iterator

from paddock_tui.advice.about import About
from paddock_tui.advice.next_change import Advised
from paddock_tui.facts.core import ABSENT, NotKnown
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Path
from paddock_tui.records.setup import SetUp

Offer = dict[Path, object]

DANGEROUS = ("front locks", "rear locks", "bars wobble", "weaves", "tucks")
OPEN = ("bars-shake-or-weave", "front-wheel-locked", "tuck-or-rear-lock")
FREE = 0.05
"""What a change of preload for a sag leaves of the range at each end."""


def offers(found: Advised) -> list[Offer]:
    """List what the page offers to take, each as the values that it sets."""
    every = (found.proposal, *found.waiting)
    return [{one.path: one.value for one in each.move.puts} for each in every if each.move is not None]


def offered(found: Advised) -> list[tuple[Path, object]]:
    """List every value that the page offers to take."""
    return [pair for each in offers(found) for pair in each.items()]


def broken(given: About, found: Advised) -> list[str]:
    """List what the page offers although it is out of range, closed, fixed, or less help in danger."""
    bike, danger = given.situation.bike or Bike(), in_danger(given)
    wrong: list[str] = []
    own = offers(found)[:1] if found.proposal.move is not None else []
    for each in offers(found):
        # What waits is for what was felt, and may go to the end of a range.
        for_sag = found.cause == "sag" and each in own
        for (_, table, *name), value in each.items():
            key = name[0] if name else table
            if table == "adjusters":
                wrong += _adjuster(bike, given.setup, each, key, value, for_sag)
            elif table == "offsets":
                wrong += _offset(bike, given.setup, key, value)
            elif table == "controls":
                wrong += _level(bike, given.setup, key, value, danger)
            elif table in ("fork_height", "rear_height"):
                wrong += _height(bike, given.setup, key, value)
    return [*wrong, *_against_the_sag(bike, found)]


def _against_the_sag(bike: Bike, found: Advised) -> Iterator[str]:
    """Name preload that waits for a feel beside what the sag of that end says of it."""
    if found.cause != "sag":
        return
    said = found.proposal.why + found.proposal.text
    for each in found.waiting:
        for kind, name in each.move.about if each.move is not None else ():
            adjuster = bike.adjusters.get(name) if kind == "adjusters" else None
            if adjuster is not None and adjuster.what == "preload" and str(adjuster.end) in said:
                yield f"{name} waits beside: {found.proposal.text}"


def in_danger(given: About) -> bool:
    """Return whether something that has a rider down was felt, or is open from before."""
    held = given.situation.facts().get("open_matters")
    kinds = () if held is ABSENT or isinstance(held, NotKnown) else tuple(one.kind for one in held)
    felt = (one.what for one in given.session.symptoms.values())
    return any(one in DANGEROUS for one in felt) or any(one in OPEN for one in kinds)


def _adjuster(
    bike: Bike, setup: SetUp, offer: Offer, name: str, value: object, for_sag: bool
) -> Iterator[str]:
    adjuster = bike.adjusters[name]
    low, high = sorted(adjuster.range or (0.0, 0.0))
    free = FREE * (high - low) if for_sag else 0.0
    if not isinstance(value, int | float) or not low + free <= value <= high - free:
        yield f"{name} {value} is out of its range"
    mode = bike.damping.get(str(offer.get(("setup", "damping"), setup.damping)))
    if mode is not None and mode.closes.get(name):
        yield f"{name} is closed"


def _offset(bike: Bike, setup: SetUp, name: str, value: object) -> Iterator[str]:
    mode = bike.damping.get(setup.damping or "")
    low, high = sorted((mode.offsets[name].range if mode is not None else None) or (0.0, 0.0))
    if not isinstance(value, int | float) or not low <= value <= high:
        yield f"offset {name} {value} is out of its range"


def _level(bike: Bike, setup: SetUp, name: str, value: object, danger: bool) -> Iterator[str]:
    control, mode = bike.controls[name], bike.modes.get(setup.mode or "")
    first, last = control.levels or (0, 0)
    if not isinstance(value, int) or not min(first, last) <= value <= max(first, last):
        yield f"{name} {value} is not one of its levels"
    if mode is not None and name in mode.fixes:
        yield f"{name} is fixed by the riding mode"
    held, most = setup.controls.get(name), control.most_help
    if not danger or not (isinstance(held, int) and isinstance(value, int) and isinstance(most, int)):
        return
    if abs(value - most) > abs(held - most):
        yield f"{name} {held} -> {value} is less help in danger"


def _height(bike: Bike, setup: SetUp, key: str, value: object) -> Iterator[str]:
    clear = (bike.front if key == "fork_height" else bike.rear).highest_clear
    old, new = getattr(setup, key), parse(str(value))
    assert isinstance(new, Quantity)
    up = old is None or new.to("mm") > old.to("mm")
    if new.to("mm") < 0.0 or (up and (clear is None or new.to("mm") > clear.to("mm"))):
        yield f"{key} {value} is not clear"
