"""Time zones by the names of the open time zone database."""

import re

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema
from paddock_tui.records.shapes.texts import Text

_NAME = r"^[A-Z][A-Za-z_+-]*(/[A-Za-z0-9_+-]+)+$"


class TimeZoneName(Text):
    """The name of a time zone that this computer knows."""

    expected = "a time zone, e.g. Europe/Lisbon"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": _NAME}

    def load(self, raw: object) -> str | InputError:
        found = super().load(raw)
        if isinstance(found, InputError):
            return found
        if not re.search(_NAME, found):
            return self.wrong(raw)
        from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

        try:
            ZoneInfo(found)
        except (ZoneInfoNotFoundError, ValueError, OSError):
            return self.wrong(raw, "write area and place as the time zone database does: Area/Place")
        return found

    def example(self) -> str:
        return "Europe/Lisbon"
