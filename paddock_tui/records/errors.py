"""The one error for text that cannot be read, in a file and at the keyboard."""

import attrs

from paddock_tui.records.paths import Path


@attrs.frozen
class InputError:
    """What was found, what was expected and how to mend it. `line` is 1-based; None at the keyboard."""

    found: str
    expected: str
    mend: str = ""
    path: Path = ()
    line: int | None = None
    file: str = ""

    def sentence(self) -> str:
        """Say it in one line, without the place."""
        mend = f"; {self.mend}" if self.mend else ""
        return f"{self.found}: expected {self.expected}{mend}"
