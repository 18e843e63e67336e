"""What was changed on a bike between two sessions, value by value, in the bike's own numbers."""

from collections.abc import Iterable, Iterator
from typing import Any

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import same_value
from paddock_tui.records.fields import value_at
from paddock_tui.records.fields_of_record import SET_UP, Field, fields
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Because
from paddock_tui.records.shapes import Number, Whole

TYRES: Path = ("tyres",)
_OF_BIKE = ("controls", "adjusters", "offsets")
UNKNOWN_WORD = "not known"


@attrs.frozen
class SetUpChange:
    """One value that differs: where it stands, what it is called, and what it was and is.

    `old` and `new` are None where not known. `listed` is whether the bike still has such a thing.
    """

    path: Path
    label: str
    old: Any
    new: Any
    old_text: str
    new_text: str
    unit: str = ""
    listed: bool = True

    @property
    def told(self) -> bool:
        """Whether it is known what it was and what it is."""
        return self.old is not None and self.new is not None

    @property
    def words(self) -> str:
        """Write old and new, the unit behind the last figure that is known."""
        last = self.old_text if self.new is None else self.new_text
        many = "s" if self.unit in ("click", "turn") and last != "1" else ""
        counted = f"{last} {self.unit}{many}".rstrip()
        return f"{counted} -> {self.new_text}" if self.new is None else f"{self.old_text} -> {counted}"

    @property
    def about(self) -> tuple[str, str]:
        """Return the two keys under which a session keeps the reason of this change."""
        inside = self.path[1:] if self.path[0] == SET_UP else self.path
        return (inside[0], inside[1]) if len(inside) == 2 else (SET_UP, inside[0])


def changes_between(before: Session, after: Session, bike: Bike | None) -> tuple[SetUpChange, ...]:
    """List every value of the set-up that differs, in the order of the set-up, and the tyre set."""
    both: dict[Path, Field] = {}
    for session in (before, after):
        for field in fields("session", session, bike):
            if field.path[0] == SET_UP or field.path == TYRES:
                both.setdefault(field.path, field)
    found = (_change(field, before, after, bike) for field in both.values())
    return tuple(one for one in found if one is not None)


def because_of(session: Session, change: SetUpChange) -> Because | None:
    """Return why something was changed, as the session says it; None where it does not."""
    kind, key = change.about
    return session.because.get(kind, {}).get(key)


def bundles(changes: Iterable[SetUpChange], bike: Bike | None) -> Iterator[tuple[SetUpChange, ...]]:
    """Put together what is one change: both legs of a fork moved alike."""
    left = list(changes)
    while left:
        first = left.pop(0)
        same = [one for one in left if _other_leg(first, one, bike)]
        left = [one for one in left if one not in same]
        yield (first, *same)


def key_of(changes: Iterable[SetUpChange]) -> frozenset[tuple[Path, str, str]]:
    """Return what tells one way of changing something from all others."""
    return frozenset((one.path, _plain(one.old), _plain(one.new)) for one in changes)


def reversed_key(key: frozenset[tuple[Path, str, str]]) -> frozenset[tuple[Path, str, str]]:
    """Return the key of the same thing taken back."""
    return frozenset((path, new, old) for path, old, new in key)


def _change(field: Field, before: Session, after: Session, bike: Bike | None) -> SetUpChange | None:
    old, new = value_at(before, field.path), value_at(after, field.path)
    if same_value(old, new):
        return None
    was, is_now = (UNKNOWN_WORD if one is None else field.shape.show(one) for one in (old, new))
    unit = field.shape.unit if isinstance(field.shape, Number | Whole) else ""
    label = "tyre set" if field.path == TYRES else field.label
    return SetUpChange(field.path, label, old, new, was, is_now, unit, _listed(field.path, bike))


def _listed(path: Path, bike: Bike | None) -> bool:
    if bike is None or len(path) < 3 or path[1] not in _OF_BIKE:
        return True
    if path[1] == "offsets":
        return any(path[2] in mode.offsets for mode in bike.damping.values())
    return path[2] in (bike.controls if path[1] == "controls" else bike.adjusters)


def _plain(value: Any) -> str:
    """Write a value so that the same amount reads the same in any unit and any spelling."""
    if isinstance(value, Quantity):
        base = {"pressure": "kPa", "length": "mm", "spring rate": "N/mm"}.get(value.dimension, value.unit)
        return f"{value.to(base):.6g} {base}"
    return f"{value:.9g}" if isinstance(value, int | float) else str(value)


def _other_leg(one: SetUpChange, other: SetUpChange, bike: Bike | None) -> bool:
    if bike is None or one.path[:2] != (SET_UP, "adjusters") or other.path[:2] != one.path[:2]:
        return False
    legs = [bike.adjusters.get(each.path[2]) for each in (one, other)]
    first, second = legs
    if first is None or second is None or first.leg is None or second.leg is None:
        return False
    alike = (first.end, first.what) == (second.end, second.what) and first.leg != second.leg
    return alike and (one.old, one.new) == (other.old, other.new)
