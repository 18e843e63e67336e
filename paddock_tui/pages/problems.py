"""Problems of what was read, as rows."""

from collections.abc import Iterable, Iterator

from paddock_tui.pages.rows import Row
from paddock_tui.records.errors import InputError
from paddock_tui.text import printable


def problem_rows(troubles: Iterable[InputError]) -> Iterator[Row]:
    """Make a row of each problem: where, what was found, what was expected, the mend."""
    for trouble in troubles:
        place = f"{trouble.file}:{trouble.line}" if trouble.line else trouble.file
        yield Row(
            label=printable(place),
            value=printable(trouble.sentence()),
            kind="text",
            path=trouble.path,
            severity="trouble",
            file=trouble.file,
            line=trouble.line or 1,
            key=f"{place}:{'.'.join(trouble.path)}",
        )
