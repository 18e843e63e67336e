"""Facts that two laptops changed differently, as a record keeps them until somebody decides."""

from collections.abc import Iterator, Mapping
from typing import Any, Final

import attrs

from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import Path, parse

CONFLICT: Final = "conflict"
"""The table of a record that holds them, each under the path of its fact."""

SIDES: Final = ("base", "ours", "theirs")


@attrs.frozen
class Dispute:
    """One disputed fact: its path, the key it is kept under, and what each side says; MISSING: nothing."""

    path: Path
    key: str
    base: Value | Missing
    ours: Value | Missing
    theirs: Value | Missing

    def side(self, name: str) -> Value | Missing:
        """Return what one side says."""
        found: Value | Missing = getattr(self, name)
        return found

    @property
    def happened(self) -> bool:
        """Whether it is about a check, an incident or an answer: the worse of both stands meanwhile."""
        return self.path[0] in ("checks", "incidents", "answers", "work") or "checks" in self.path


def held_disputes(data: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return the table of disputes as it stands in a record's data; empty where there is none."""
    found = data.get(CONFLICT, {})
    return found if isinstance(found, Mapping) else {}


def disputes(data: Mapping[str, Any]) -> Iterator[Dispute]:
    """List the disputes of a record; what is no dispute is left to be noted as not known."""
    for key, held in held_disputes(data).items():
        path = parse(key)
        if path is not None and is_dispute(held):
            yield Dispute(path, key, *(held.get(side, MISSING) for side in SIDES))


def is_dispute(held: object) -> bool:
    """Return whether a table holds what two sides say, and nothing else."""
    return isinstance(held, Mapping) and bool(held) and set(held) <= set(SIDES)
