"""Whether the terminal takes more than ASCII."""

import os
import sys

PLAIN = "PADDOCK_PLAIN"
"""The variable of the environment that asks for ASCII: where block signs are two cells wide, or not there."""

_NO_BLOCKS = ("dumb", "linux")
"""Terminals without signs for it: the console of Linux lacks some in its fonts of 256 signs."""


def ascii_only() -> bool:
    """Return whether only ASCII is safe: it was asked for, the terminal has no such signs, or not UTF-8."""
    if os.environ.get(PLAIN, "") not in ("", "0") or os.environ.get("TERM") in _NO_BLOCKS:
        return True
    if _names_ascii():
        return True
    encoding = getattr(sys.__stdout__, "encoding", None) or "ascii"
    return encoding.lower().replace("-", "") not in ("utf8", "utf8sig")


def _names_ascii() -> bool:
    """Return whether the locale is named C or POSIX; where none is named the terminal may well have UTF-8.

    Python writes UTF-8 in such a locale, and puts C.UTF-8 into LC_CTYPE itself; UTF-8 mode tells that from
    one that the user named.
    """
    own = "" if sys.flags.utf8_mode else os.environ.get("LC_CTYPE", "")
    named = os.environ.get("LC_ALL") or own or os.environ.get("LANG", "")
    return named in ("C", "POSIX")
