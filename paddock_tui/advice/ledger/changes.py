"""Changes of a set-up as the ledger tells them apart: their reasons, what is one change, the way back."""

from collections.abc import Iterable, Iterator
from typing import Any

from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference
from paddock_tui.records.fields_of_record import SET_UP
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Because


def because_of(session: Session, change: SetUpDifference) -> Because | None:
    """Return why something was changed, as the session says it; None where it does not."""
    kind, key = change.about
    return session.because.get(kind, {}).get(key)


def bundles(changes: Iterable[SetUpDifference], bike: Bike | None) -> Iterator[tuple[SetUpDifference, ...]]:
    """Put together what is one change: both legs of a fork moved alike."""
    left = list(changes)
    while left:
        first = left.pop(0)
        same = [one for one in left if _other_leg(first, one, bike)]
        left = [one for one in left if one not in same]
        yield (first, *same)


def key_of(changes: Iterable[tuple[Path, Any, Any]]) -> frozenset[tuple[Path, str, str]]:
    """Return what tells one way of changing something, as places with old and new, from all others."""
    return frozenset((path, _plain(old), _plain(new)) for path, old, new in changes)


def reversed_key(key: frozenset[tuple[Path, str, str]]) -> frozenset[tuple[Path, str, str]]:
    """Return the key of the same thing taken back."""
    return frozenset((path, new, old) for path, old, new in key)


def _plain(value: Any) -> str:
    """Write a value so that the same amount reads the same in any unit and any spelling."""
    if isinstance(value, Quantity):
        base = {"pressure": "kPa", "length": "mm", "spring rate": "N/mm"}.get(value.dimension, value.unit)
        return f"{value.to(base):.6g} {base}"
    return f"{value:.9g}" if isinstance(value, int | float) else str(value)


def _other_leg(one: SetUpDifference, other: SetUpDifference, bike: Bike | None) -> bool:
    if bike is None or one.path[:2] != (SET_UP, "adjusters") or other.path[:2] != one.path[:2]:
        return False
    legs = [bike.adjusters.get(each.path[2]) for each in (one, other)]
    first, second = legs
    if first is None or second is None or first.leg is None or second.leg is None:
        return False
    alike = (first.end, first.what) == (second.end, second.what) and first.leg != second.leg
    return alike and (one.old, one.new) == (other.old, other.new)
