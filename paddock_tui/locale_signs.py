"""Whether the user asks for ASCII alone: on screens, and where commands print."""

import os
import sys

PLAIN = "PADDOCK_PLAIN"
"""The variable of the environment that asks for ASCII: where block signs are two cells wide, or not there."""


def ascii_asked() -> bool:
    """Return whether ASCII alone is asked for: by the variable, or by a locale named C or POSIX.

    Where no locale is named the terminal may well have UTF-8. In those two Python writes UTF-8 all the same,
    and puts C.UTF-8 into LC_CTYPE itself; its UTF-8 mode tells that from one that the user named.
    """
    if os.environ.get(PLAIN, "") not in ("", "0"):
        return True
    own = "" if sys.flags.utf8_mode else os.environ.get("LC_CTYPE", "")
    return (os.environ.get("LC_ALL") or own or os.environ.get("LANG", "")) in ("C", "POSIX")
