"""The topics by name, read from the package when they are first asked for."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from paddock_tui.help.reading import Topic, read_topic

_FOLDER = Path(__file__).parent / "topics"

WORDS = "words"
"""The topic that explains words: each row is one."""

_FIRST = ("guide", "cautions", "screens", "keys", "return", "commands", "words")
"""The topics that are named first; the others follow by name."""


_CALLED = {
    "calculators": "bench",
    "change log": "ledger",
    "debrief": "return",
    "debrief sheet": "slip",
    "set up": "setup",
    "thresholds": "limits",
}
"""Topics by what the screens call their page."""

_SHOWN = {name: called for called, name in _CALLED.items()}


def called(name: str) -> str:
    """Return what the screens call the page of a topic: under that it is shown, and found by both."""
    return _SHOWN.get(name, name)


def names() -> tuple[str, ...]:
    """Name every topic, those for a first look first."""
    found = {file.stem for file in _FOLDER.glob("*.md")}
    first = [name for name in _FIRST if name in found]
    return (*first, *sorted(found - set(first)))


@cache
def topic(name: str) -> Topic:
    """Return a topic by its whole name. Raises KeyError where there is none."""
    if name not in names():
        raise KeyError(name)
    return read_topic((_FOLDER / f"{name}.md").read_text(encoding="utf-8"))


def topics() -> tuple[Topic, ...]:
    """Return every topic, in the order of `names`."""
    return tuple(topic(name) for name in names())


@cache
def words() -> Mapping[str, str]:
    """Return what each word means."""
    return {entry.label: entry.text for part in topic(WORDS).parts for entry in part.entries if entry.label}


def find(asked: str) -> tuple[Topic | str, ...]:
    """Return the topics and words that are meant: the one of this name, else those that begin so.

    A word stands for itself. Nothing: there is none.
    """
    wanted = " ".join(asked.casefold().replace("_", " ").split())
    if wanted not in words():
        wanted = _CALLED.get(wanted.replace("-", " "), wanted)
    whole = [topic(wanted)] if wanted in names() else []
    said = [wanted] if wanted in words() else []
    if whole or said:
        return (*whole, *said)
    if not wanted:
        return ()
    begun = [topic(name) for name in names() if name.startswith(wanted) or called(name).startswith(wanted)]
    return (*begun, *(word for word in words() if word.startswith(wanted)))
