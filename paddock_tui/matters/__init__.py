"""What was once written down stays open until it is answered: the fold of a record into open matters."""

from paddock_tui.matters import (  # noqa: F401 - register their kinds
    air,
    behaviour,
    brakes,
    chain,
    checks,
    falls,
    head,
    helping,
    hot,
    leaks,
    machine,
    oil,
    organiser,
    rider,
    standing,
    tyres,
    warning_lights,
    wear,
    work,
)
from paddock_tui.matters.core import KINDS, AidHelp, Matter, MatterKind, Opened, Outing, Present
from paddock_tui.matters.fold import Folded, MatterHistory, advance, matters

__all__ = [
    "KINDS",
    "AidHelp",
    "Folded",
    "Matter",
    "MatterHistory",
    "MatterKind",
    "Opened",
    "Outing",
    "Present",
    "advance",
    "matters",
]
