"""Launch control: the level to begin with, where a start is what is wanted."""

from collections.abc import Iterator

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Answer
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.starting_levels import launch_to_start_with
from paddock_tui.facts.aids import STARTING
from paddock_tui.facts.launch_starts import starts_before
from paddock_tui.limits.core import COMMON
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.electronics import function_of
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.core import SetValue


def launch_answers(about: About) -> Iterator[Answer]:
    """Say for each launch control of the bike where to begin; nothing where nobody starts from a line."""
    bike, session = about.situation.bike, about.situation.session
    if bike is None or session is None or session.kind not in STARTING or session.rider is None:
        return
    made = starts_before(session.rider, bike, about.situation.history)
    for name, control in bike.controls.items():
        if function_of(name, control) != "launch":
            continue
        found = levels_of(name, control)
        if found is None:
            continue
        lines = (
            f"starts made with it: {made} on record of this rider on this bike",
            "caution: only for a race start or a declared practice; off is its state of rest",
            f"source: {COMMON}",
        )
        try:
            level = launch_to_start_with(found, made)
        except Inconsistent:
            text = "which of its levels is the gentlest is not known: the bike's file can say it"
            yield Answer(name, label_of(name), text, (text, *lines), missing=("gentlest level",), known=False)
            continue
        if level is None:
            text = "the level is the rider's own: starts with it are on record"
            yield Answer(name, label_of(name), text, (text, *lines))
            continue
        text = f'begin with "{level}", the gentlest: no start with it is on record'
        puts = (SetValue(("setup", "controls", name), level),)
        yield Answer(name, label_of(name), text, (text, *lines), f"usual {level}", puts)
