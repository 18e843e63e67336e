"""Three texts to one, line by line: theirs where only they touched the lines, ours everywhere else."""

from collections.abc import Sequence
from difflib import SequenceMatcher

import attrs


@attrs.frozen
class _Hunk:
    """Lines of the base that were replaced: from `start` up to `stop`, by these."""

    start: int
    stop: int
    lines: tuple[str, ...]


def merged_lines(base: Sequence[str], ours: Sequence[str], theirs: Sequence[str]) -> list[str]:
    """Return ours with those hunks of theirs that neither overlap a hunk of ours nor touch one."""
    mine, other = _hunks(base, ours), _hunks(base, theirs)
    taken = [hunk for hunk in other if not any(_meet(hunk, one) for one in mine)]
    found: list[str] = []
    at = 0
    for hunk in sorted((*mine, *taken), key=lambda one: (one.start, one.stop)):
        found += [*base[at : hunk.start], *hunk.lines]
        at = hunk.stop
    return [*found, *base[at:]]


def _hunks(base: Sequence[str], side: Sequence[str]) -> list[_Hunk]:
    matcher = SequenceMatcher(None, base, side, autojunk=False)
    return [
        _Hunk(start, stop, tuple(side[low:high]))
        for tag, start, stop, low, high in matcher.get_opcodes()
        if tag != "equal"
    ]


def _meet(one: _Hunk, other: _Hunk) -> bool:
    return one.start <= other.stop and other.start <= one.stop
