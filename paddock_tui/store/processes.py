"""Processes of this computer."""

import os


def is_alive(process: int) -> bool:
    """Return whether a process of this computer still runs."""
    if process <= 0:
        return False
    try:
        os.kill(process, 0)
    except (ProcessLookupError, OverflowError):
        return False
    except OSError:
        return True
    return True
