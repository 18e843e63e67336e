"""What undoes a value that was set: a riding mode that fixes it, a damping mode in which it does nothing."""

from paddock_tui.records.bike import Bike
from paddock_tui.records.fields_of_record import SET_UP
from paddock_tui.records.in_force import closed_by, control_in_force
from paddock_tui.records.paths import Path
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import BY_HAND


def modes_that_free(name: str, bike: Bike) -> tuple[str, ...]:
    """List the riding modes that leave a control free, in the order of the bike's file."""
    return tuple(key for key, mode in bike.modes.items() if name not in mode.fixes)


def damping_that_frees(name: str, bike: Bike) -> tuple[str, ...]:
    """List the damping modes in which an adjuster works; by hand always is one."""
    others = (key for key, one in bike.damping.items() if key != BY_HAND and not one.closes.get(name))
    return (BY_HAND, *others)


def undone_by(path: Path, setup: SetUp, bike: Bike | None) -> tuple[str, str]:
    """Say what keeps a value of a set-up from doing anything, and what frees it; empty where it acts."""
    if bike is None or len(path) != 3 or path[0] != SET_UP:
        return "", ""
    table, name = path[1], path[2]
    label = label_of(name)
    if table == "controls":
        fixed = control_in_force(name, setup, bike).fixed
        if fixed is None:
            return "", ""
        free = _listed(modes_that_free(name, bike), "riding mode")
        return f"riding mode {setup.mode} fixes {label} at {fixed}", free
    if table == "adjusters" and closed_by(name, setup, bike):
        free = _listed(damping_that_frees(name, bike), "damping mode")
        return f"{label} does nothing in damping mode {setup.damping}", free
    if table == "offsets" and setup.damping is not None:
        mode = bike.damping.get(setup.damping)
        having = tuple(key for key, one in bike.damping.items() if name in one.offsets)
        if having and (mode is None or name not in mode.offsets):
            does = f"{label} does nothing in damping mode {setup.damping}"
            return does, _listed(having, "damping mode")
    return "", ""


def _listed(modes: tuple[str, ...], what: str) -> str:
    return f"{what} {' or '.join(modes)} frees it" if modes else f"no {what} frees it"
