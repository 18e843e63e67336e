"""All kinds of matters, registered: once this is loaded what is open is walked through, never by some."""

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
from paddock_tui.matters.core import COMPLETE, KINDS
from paddock_tui.matters.fold import advance, matters

__all__ = ["KINDS", "advance", "matters"]

COMPLETE.set()
