"""Limits at the keyboard: a bare number is in the limit's own unit, and what does not fit is refused."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from paddock_tui import quantities
from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import GARAGE, Path, Ref
from paddock_tui.records.shapes.limits import LimitValue
from paddock_tui.records.shapes.numbers import show_number

if TYPE_CHECKING:
    from paddock_tui.limits import Limit

_SHAPE = LimitValue()

NO_SUCH = "no rule has such a threshold"


def limit_at(ref: Ref, path: Path) -> "Limit | None":
    """Return the limit that stands at a path of the garage's file; None where there is none."""
    if ref != GARAGE or len(path) != 3 or path[0] != "limits":
        return None
    from paddock_tui.limits import LIMITS

    return LIMITS.get((path[1], path[2]))


def declared_words(ref: Ref, path: Path) -> str:
    """Write the declared value of a limit, which holds where the file has none; empty for anything else."""
    wanted = limit_at(ref, path)
    return f"{show_number(wanted.value)} {wanted.unit}".strip() if wanted is not None else ""


def with_unit(ref: Ref, path: Path, text: str) -> str:
    """Return what was typed with the limit's unit after a bare number; as it is anywhere else."""
    wanted = limit_at(ref, path)
    if wanted is None or not wanted.unit:
        return text
    bare = not isinstance(quantities.parse_typed(text, None), quantities.Quantity)
    number = _SHAPE.read(text)
    return f"{text.strip()} {wanted.unit}" if bare and isinstance(number, int | float) else text


def ill_fitting(ref: Ref, edits: Sequence[Edit]) -> list[InputError]:
    """List the limits that no rule has, and the values outside what a limit may be."""
    found: list[InputError] = []
    of_limits = [
        one for one in edits if one.path[:1] == ("limits",) and len(one.path) == 3 and one.new is not MISSING
    ]
    if ref != GARAGE or not of_limits:
        return found
    from paddock_tui.limits import fitting

    for edit in of_limits:
        wanted = limit_at(ref, edit.path)
        if wanted is None:
            found.append(
                InputError(
                    NO_SUCH, "a threshold of the thresholds page", "m, thresholds shows them", path=edit.path
                )
            )
        elif fitting(_SHAPE.load(edit.new), wanted) is None:
            expected = f"{wanted.low:g} to {wanted.high:g} {wanted.unit}".strip()
            found.append(InputError(f'"{edit.new}"', expected, path=edit.path))
    return found
