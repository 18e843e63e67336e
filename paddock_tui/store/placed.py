"""What is wrong in a record, with its file and line."""

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import spell
from paddock_tui.records.reading import RecordRead
from paddock_tui.store.lines import scan


def placed(found: RecordRead, name: str, text: str) -> tuple[tuple[InputError, ...], tuple[InputError, ...]]:
    """Return the troubles of a reading their file and line, and word the keys that nobody declared."""
    if not found.troubles and not found.unknown:
        return (), ()
    layout = scan(text)
    placed = tuple(
        sorted(
            (
                attrs.evolve(trouble, file=name, line=layout.line_of(trouble.path))
                for trouble in found.troubles
            ),
            key=lambda trouble: trouble.line or 0,
        )
    )
    unknown = tuple(
        InputError(
            f"{spell(path)}, a key that this program does not know",
            "one of the format's keys",
            "check its spelling; it is kept as it is",
            path,
            layout.line_of(path),
            name,
        )
        for path in found.unknown
    )
    return placed, unknown
