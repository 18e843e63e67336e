"""The size marking on a tyre."""

import re

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import Shape

_MARKING = re.compile(
    r"\d{2,3}/\d{2,3} ?-? ?(?:Z?R|B)? ?\d{2}(?: M/C)?"
    r"(?: (?:\d{2}[A-Z]|\(\d{2}[A-Z]\)|\d{2}\([A-Z]\)))?(?: TL)?",
    re.IGNORECASE,
)


class TyreSizeMarking(Shape[str]):
    """A tyre size with its full marking, as moulded on the side wall (UN R75 2.24)."""

    expected = "a tyre size as marked, such as 190/55 ZR17 M/C (75W)"

    def load(self, raw: object) -> str | InputError:
        if not isinstance(raw, str) or not _MARKING.fullmatch(raw.strip()):
            return self.wrong(raw)
        return raw.strip()

    def read(self, text: str) -> str | InputError:
        return self.load(" ".join(text.split()))

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return "190/55 ZR17 M/C (75W)"
