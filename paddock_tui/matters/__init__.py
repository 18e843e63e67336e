"""What was once written down stays open until it is answered: the fold of a record into open matters."""

from paddock_tui.matters import (  # noqa: F401 - register their kinds
    behaviour,
    brakes,
    chain,
    checks,
    falls,
    head,
    leaks,
    machine,
    organiser,
    rider,
    tyres,
    warning_lights,
    work,
)
from paddock_tui.matters.core import KINDS, Matter, MatterKind, Opened, Outing, Present
from paddock_tui.matters.fold import Folded, MatterHistory, advance, matters

__all__ = [
    "KINDS",
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
