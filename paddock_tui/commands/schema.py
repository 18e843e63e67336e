"""`schema`: the form of the records as JSON Schema, for editors and for programs that read a garage."""

import json

from paddock_tui.commands.common import OK, USAGE, CommandStopped, say
from paddock_tui.records.json_schema import DIALECT, record_schema
from paddock_tui.records.kinds import CLASSES
from paddock_tui.text import printable


def schema(kind: str | None) -> int:
    """Print the schema of one kind of record, or of all kinds under `$defs`."""
    if kind is not None and kind not in CLASSES:
        said = f'there is no kind of record called "{printable(kind)}"'
        raise CommandStopped(USAGE, said, f"  one of {', '.join(CLASSES)}")
    if kind is not None:
        say((schema_text(kind),))
        return OK
    every = {"$schema": DIALECT, "title": "garage records", "$defs": {}}
    every["$defs"] = {name: _part(name) for name in CLASSES}
    say((json.dumps(every, indent=2, ensure_ascii=False),))
    return OK


def schema_text(kind: str) -> str:
    """Write the schema of one kind of record."""
    return json.dumps(record_schema(kind), indent=2, ensure_ascii=False)


def _part(kind: str) -> dict[str, object]:
    return {key: value for key, value in record_schema(kind).items() if key != "$schema"}
