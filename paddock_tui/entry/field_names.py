"""The names under which a field is found: its label in words or joined by hyphens, and its key."""

import re

from paddock_tui.records.fields import entry_of
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path

SET_UP = "setup"

_WORD = re.compile(r"[a-z0-9]+")
_TYPED_AT_ONCE = re.compile(r"[a-z]+(?:-[a-z0-9]+)*")


def has_a_word(kind: str, path: Path) -> bool:
    """Return whether a value is reached by a word; what grows (notes, incidents, checks) is by its path."""
    return path[:1] == (SET_UP,) or entry_of(CLASSES[kind], path) is None


def names_of(field: Field) -> tuple[str, ...]:
    """Return the names of a field, small letters: label, label with hyphens, key, also in words."""
    label = field.label.casefold()
    key = field.path[-1].casefold()
    return tuple(dict.fromkeys((label, hyphened(label), key.replace("_", " "), key.replace("_", "-"), key)))


def names_with_heading(field: Field) -> tuple[str, ...]:
    """Return the names that tell a field from others of the same label: the heading before the label."""
    heading = (field.section[-1] if field.section else field.path[0]).casefold()
    long = f"{heading} {field.label.casefold()}"
    return long, hyphened(long)


def said_label(kind: str, field: Field) -> str:
    """Return the label of a field as it is said alone: with its heading where others have the same label."""
    alone = has_a_word(kind, field.path) or not field.section
    return field.label if alone else f"{field.section[-1]} {field.label}"


def initials_of(label: str) -> str:
    """Return the first letters of the words of a label; empty where it has one word only."""
    words = _WORD.findall(label.casefold())
    return "".join(word[0] for word in words) if len(words) > 1 else ""


def hyphened(text: str) -> str:
    """Join the words of a text by hyphens, small letters and digits only."""
    return "-".join(_WORD.findall(text.casefold()))


def typed_at_once(word: str) -> bool:
    """Return whether a word is taken as one piece however it stands: letters first, digits after a hyphen."""
    return _TYPED_AT_ONCE.fullmatch(word) is not None
