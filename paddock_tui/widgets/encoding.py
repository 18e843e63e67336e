"""Whether the terminal takes more than ASCII."""

import os
import sys

from paddock_tui.text import ascii_asked

_NO_BLOCKS = ("dumb", "linux")
"""Terminals without signs for it: the console of Linux lacks some in its fonts of 256 signs."""


def ascii_only() -> bool:
    """Return whether only ASCII is safe: it was asked for, the terminal has no such signs, or not UTF-8."""
    if os.environ.get("TERM") in _NO_BLOCKS or ascii_asked():
        return True
    encoding = getattr(sys.__stdout__, "encoding", None) or "ascii"
    return encoding.lower().replace("-", "") not in ("utf8", "utf8sig")
