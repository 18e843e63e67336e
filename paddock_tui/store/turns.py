"""Which of many records are compared with their files at each look for what others changed."""

from collections.abc import Iterable

from paddock_tui.records.paths import Ref

LATEST = 100
TURNS = 10
"""How many records of a kind are compared with their files each time, and in how many times all others."""


class Turns:
    """Gives the latest records of each kind, and a share of all others; names begin with their dates.

    Those in `watched`, which somebody looks at, are given each time.
    """

    def __init__(self) -> None:
        self._turn = 0
        self.watched: frozenset[Ref] = frozenset()

    def next(self, refs: Iterable[Ref]) -> list[Ref]:
        """List the records whose turn it is."""
        self._turn = (self._turn + 1) % TURNS
        by_kind: dict[str, list[Ref]] = {}
        found: list[Ref] = []
        for ref in refs:
            by_kind.setdefault(ref.kind, []).append(ref)
            if ref in self.watched:
                found.append(ref)
        for several in by_kind.values():
            if len(several) > LATEST:
                several.sort(key=_named, reverse=True)
            found += several[:LATEST]
            found += several[LATEST + self._turn :: TURNS]
        return found


def _named(ref: Ref) -> str:
    return ref.id
