"""Whether a step was cut short: the file that tells of it is there."""

from pathlib import Path

from paddock_tui.store.private import private

INTENT = "intent"


def declared(root: Path) -> bool:
    """Return whether a step is being written, or was cut short."""
    try:
        with private(root) as folder:
            return folder.has(INTENT)
    except OSError:
        return False
