"""Whether the terminal takes more than ASCII."""

import sys


def ascii_only() -> bool:
    """Return whether the terminal's encoding is not UTF-8, so that only ASCII is safe."""
    encoding = getattr(sys.__stdout__, "encoding", None) or "ascii"
    return encoding.lower().replace("-", "") not in ("utf8", "utf8sig")
