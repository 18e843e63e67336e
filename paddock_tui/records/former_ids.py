"""The ids that a record had before it was renamed, as its file keeps them."""

from collections.abc import Mapping
from typing import Any, Final

from paddock_tui.records.ids import is_id

FORMER: Final = "was"
"""The key of a record that holds them: what was written elsewhere under an old id still means this record."""


def former_ids(data: Mapping[str, Any]) -> tuple[str, ...]:
    """Return the ids that a record had before; none where what stands there is no list of ids."""
    found = data.get(FORMER)
    return tuple(found) if isinstance(found, list) and are_former_ids(found) else ()


def are_former_ids(value: object) -> bool:
    """Return whether a value is a list of ids."""
    return isinstance(value, list) and all(isinstance(one, str) and is_id(one) for one in value)
