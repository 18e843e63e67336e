"""Many characters that came at once."""

import unicodedata

from textual import events
from textual.keys import KEY_NAME_REPLACEMENTS

TYPED_AHEAD = 200
"""Characters that may have been typed while the link stood still; more at once are a paste."""

PASTE_LASTS = 0.5
"""Seconds in which what follows belongs to the same paste."""


class TypedRun(events.Paste):
    """A run of printable characters that was read in one piece: typed ahead, or pasted without brackets."""


def key_of(character: str) -> str:
    """Return the name of the key that types a character, as the framework's own parser has it."""
    if character.isalnum():
        return character
    try:
        name = unicodedata.name(character).lower().replace("-", "_").replace(" ", "_")
    except ValueError:
        return character
    return KEY_NAME_REPLACEMENTS.get(name, name)
