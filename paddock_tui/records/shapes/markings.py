"""The size marking on a tyre."""

import re

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape

_MARKING = re.compile(
    # Metric, with the aspect ratio or (slicks) the overall diameter; in inches; and by letters.
    r"(?:\d{2,3}/\d{2,3} ?-? ?(?:[VHW]?Z?R|B)? ?|\d\.\d{2} ?(?:-|[HSVR]R?) ?|M[A-Z]\d{2} ?(?:-|B) ?)"
    r"\d{2,3}(?: M/C)?"
    r"(?: (?:\d{2}[A-Z]|\(\d{2}[A-Z]\)|\d{2}\([A-Z]\)))?(?: T[LT])?",
    re.IGNORECASE,
)

_SCHEMA = (
    r"^\s*[0-9]{2,3}/[0-9]{2,3} ?-? ?([Zz]?[Rr]|[Bb])? ?[0-9]{2}( [Mm]/[Cc])?"
    r"( ([0-9]{2}[A-Za-z]|\([0-9]{2}[A-Za-z]\)|[0-9]{2}\([A-Za-z]\)))?( [Tt][Ll])?\s*$"
)
"""The same without flags, which a JSON Schema does not have."""


class TyreSizeMarking(Shape[str]):
    """A tyre size with its full marking, as moulded on the side wall (UN R75 2.24)."""

    expected = "a tyre size as marked, e.g. 190/55 ZR17 M/C (75W)"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": _SCHEMA}

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
