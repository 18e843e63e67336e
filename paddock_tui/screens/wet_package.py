"""The wet package as an act of the palette: previewed, then one step."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.advice.wet_package import wet_package
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.screens.comparing import previewed

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


def take(screen: "MainScreen") -> None:
    """Offer the wet package, or the way back to the dry, as one step, with what it would change."""
    subject = screen.place.subject
    if subject is None:
        return
    found = wet_package(screen.desk.about(subject))
    if isinstance(found, str):
        screen.board.say(found)
        return
    step = offering(screen.desk.files, subject, found.puts)
    if isinstance(step, str):
        screen.board.say(step)
        return
    rest = tuple(f"not set by it: {one}" for one in found.not_set)
    previewed(screen, attrs.evolve(step, label=f"{found.name}: {step.label}"), subject, rest)
