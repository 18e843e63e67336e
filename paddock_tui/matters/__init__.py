"""What was once written down stays open until it is answered: the fold of a record into open matters."""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
    from paddock_tui.matters.core import AidHelp, Matter, MatterKind, Opened, Outing, Present
    from paddock_tui.matters.fold import Folded, MatterHistory
    from paddock_tui.matters.registered import KINDS, advance, matters

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

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "KINDS": "registered",
            "AidHelp": "core",
            "Folded": "fold",
            "Matter": "core",
            "MatterHistory": "fold",
            "MatterKind": "core",
            "Opened": "core",
            "Outing": "core",
            "Present": "core",
            "advance": "registered",
            "matters": "registered",
        },
    )
