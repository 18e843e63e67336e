"""Which declared values refer to other records."""

from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.shapes.references import Reference


def reference_fields(kind: str) -> tuple[tuple[tuple[str, ...], str], ...]:
    """List the declared paths of a kind that refer to another record, with the kind they refer to."""
    return tuple(
        (one.path, one.shape.kind) for one in declared(CLASSES[kind]) if isinstance(one.shape, Reference)
    )
