"""Which call or name a typed word is.

A whole call or name; else initials, where one field has them; else a start of three letters or more
that only one has; else all that it may be. What spells a unit in one or two letters is that.
"""

import difflib
from collections.abc import Iterable

import attrs

from paddock_tui.entry.builtin import Absent
from paddock_tui.entry.field_names import initials_of
from paddock_tui.entry.own_calls import UNIT_WORDS
from paddock_tui.entry.vocabulary import Target, Vocabulary

LEAST = 3
"""So many letters a start needs."""


@attrs.frozen
class Found:
    """What a word means: one target for sure; else those that it may be; or what this record has not."""

    one: Target | None = None
    maybe: tuple[Target, ...] = ()
    absent: Absent | None = None

    @property
    def known(self) -> bool:
        """Whether the word means anything at all."""
        return self.one is not None or bool(self.maybe) or self.absent is not None


def look_up(words: Vocabulary, typed: str) -> Found:
    """Find what a word means; nothing found gives an empty answer."""
    word = typed.casefold()
    exact = words.exact(word)
    if exact:
        return _found(exact)
    if word in words.absent:
        return Found(absent=words.absent[word])
    initials = [one for one in words.singles.values() if word and initials_of(one.label) == word]
    if len(initials) == 1:
        return Found(initials[0])
    if len(word) < LEAST and word in UNIT_WORDS:
        return Found(maybe=tuple(initials))
    starts = starting(words, word)
    return _found((*initials, *starts), len(word) >= LEAST)


def starting(words: Vocabulary, word: str) -> list[Target]:
    """List what has a call or a name that starts with a word."""
    if not word:
        return []
    called = [target for call, target in words.calls.items() if call.startswith(word)]
    named = [target for name, targets in words.names.items() if name.startswith(word) for target in targets]
    return _without_doubles((*called, *named))


def nearest(words: Vocabulary, typed: str) -> str:
    """Return the call or name most like a word; empty where none is near."""
    known = [*words.calls, *(name for name in words.names if " " not in name)]
    near = difflib.get_close_matches(typed.casefold()[:40], known, n=1, cutoff=0.7)
    return near[0] if near else ""


def _found(targets: Iterable[Target], sure: bool = True) -> Found:
    held = _without_doubles(targets)
    return Found(held[0]) if sure and len(held) == 1 else Found(maybe=tuple(held))


def _without_doubles(targets: Iterable[Target]) -> list[Target]:
    found: list[Target] = []
    for target in targets:
        if not any(target is held for held in found):
            found.append(target)
    return found
