"""Which of many records are compared with their files at each look for what others changed."""

import itertools
from collections.abc import Collection, Iterable

from paddock_tui.records.paths import Ref
from paddock_tui.store.listing import Listing, beside_what_moved

LATEST = 50
TURNS = 60
SHARE = 200
"""How many records of a kind are compared with their files each time, and in how many times all others.

No more times than it takes with so many at once: all records of a few seasons are compared in four looks.
What is put in place of a file shows in its folder at once: in its turn is found what was written in place.
"""

_ANEW = TURNS
"""So many looks after which it is looked anew at which records there are, if not before."""


class Turns:
    """Gives the latest records of each kind, and a share of all others; names begin with their dates.

    Those in `watched`, which somebody looks at, and those `edited` in this run are given each time.
    """

    def __init__(self) -> None:
        self._turn = 0
        self._counts: tuple[int, ...] = ()
        self._latest: list[Ref] = []
        self._others: list[Ref] = []
        self._listing: Listing | None = None
        self.watched: frozenset[Ref] = frozenset()
        self.edited: set[Ref] = set()

    def next(self, *among: Collection[Ref], listing: Listing | None = None) -> list[Ref]:
        """List the records whose turn it is, and those in folders of a listing in which names changed.

        Which there are is looked at when their number changed, and once all had their turn.
        """
        self._turn += 1
        counts = tuple(map(len, among))
        if counts != self._counts or self._turn % _ANEW == 0:
            self._counts = counts
            self._arrange(among)
        every = self.watched | self.edited
        found = [ref for ref in every if any(ref in refs for refs in among)]
        found += self._latest
        if listing is not None and listing is not self._listing:
            if self._listing is not None:
                near = beside_what_moved(self._listing, listing)
                found += [ref for ref in near if any(ref in refs for refs in among)]
            self._listing = listing
        turns = min(TURNS, -(-len(self._others) // SHARE))
        return found + self._others[self._turn % turns :: turns] if turns else found

    def _arrange(self, among: Iterable[Collection[Ref]]) -> None:
        by_kind: dict[str, list[Ref]] = {}
        for ref in dict.fromkeys(itertools.chain(*among)):
            by_kind.setdefault(ref.kind, []).append(ref)
        self._latest, self._others = [], []
        for several in by_kind.values():
            if len(several) > LATEST:
                several.sort(key=_named, reverse=True)
            self._latest += several[:LATEST]
            self._others += several[LATEST:]


def _named(ref: Ref) -> str:
    return ref.id
