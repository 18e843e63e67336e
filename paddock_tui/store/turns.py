"""Which of many records are compared with their files at each look for what others changed."""

from collections.abc import Iterable

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
        self.watched: frozenset[Ref] = frozenset()
        self.edited: set[Ref] = set()

    def next(self, refs: Iterable[Ref]) -> list[Ref]:
        """List the records whose turn it is."""
        self._turn += 1
        by_kind: dict[str, list[Ref]] = {}
        found: list[Ref] = []
        for ref in refs:
            by_kind.setdefault(ref.kind, []).append(ref)
            if ref in self.watched or ref in self.edited:
                found.append(ref)
        for several in by_kind.values():
            if len(several) > LATEST:
                several.sort(key=_named, reverse=True)
            found += several[:LATEST]
            turns = min(TURNS, -(-(len(several) - LATEST) // SHARE))
            if turns > 0:
                found += several[LATEST + self._turn % turns :: turns]
        return found


def _named(ref: Ref) -> str:
    return ref.id
