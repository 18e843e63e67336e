"""Which of many records are compared with their files at each look for what others changed."""

import itertools
from collections.abc import Collection, Iterable

from paddock_tui.records.paths import Ref

LATEST = 100
TURNS = 10
SHARE = 400
"""How many records of a kind are compared with their files each time, and in how many times all others.

No more times than it takes with so many at once: all records of a few seasons are compared in two looks.
"""


class Turns:
    """Gives the latest records of each kind, and a share of all others; names begin with their dates.

    Those in `watched`, which somebody looks at, and those `edited` in this run are given each time.
    """

    def __init__(self) -> None:
        self._turn = 0
        self._counts: tuple[int, ...] = ()
        self._by_kind: dict[str, list[Ref]] = {}
        self.watched: frozenset[Ref] = frozenset()
        self.edited: set[Ref] = set()

    def next(self, *among: Collection[Ref]) -> list[Ref]:
        """List the records whose turn it is; which there are is looked at when their number changed, and
        each tenth time.
        """
        self._turn += 1
        counts = tuple(map(len, among))
        if counts != self._counts or self._turn % TURNS == 0:
            self._counts = counts
            self._arrange(among)
        every = self.watched | self.edited
        found = [ref for ref in every if any(ref in refs for refs in among)]
        for several in self._by_kind.values():
            found += several[:LATEST]
            turns = min(TURNS, -(-(len(several) - LATEST) // SHARE))
            if turns > 0:
                found += several[LATEST + self._turn % turns :: turns]
        return found

    def _arrange(self, among: Iterable[Collection[Ref]]) -> None:
        self._by_kind = {}
        for ref in dict.fromkeys(itertools.chain(*among)):
            self._by_kind.setdefault(ref.kind, []).append(ref)
        for several in self._by_kind.values():
            if len(several) > LATEST:
                several.sort(key=_named, reverse=True)


def _named(ref: Ref) -> str:
    return ref.id
