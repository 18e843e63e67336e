"""A rider's emergency page: read, changed a value at a time, and what has to be said of it before a day."""

import datetime as dt
from pathlib import Path
from typing import Any

from paddock_tui.records.emergency import EmergencyRead, is_due, read_emergency, shapes
from paddock_tui.store.emergency import NotThisFile, changed, parsed, read_text, write_text

AGREES_FIRST = "first the rider agrees: y on that row"
CANNOT = "the file cannot be changed here: correct it in an editor"


def emergency(root: Path, rider: str) -> EmergencyRead | None:
    """Return what stands on a rider's page; None where it is not on this laptop. Raises NotThisFile."""
    text = read_text(root, rider)
    return None if text is None else read_emergency(parsed(text, rider))


def emergency_standing(root: Path, rider: str, today: dt.date) -> str:
    """Say in a few words how a rider's page stands, such as that it is not on this laptop, or a year old."""
    try:
        found = emergency(root, rider)
    except NotThisFile as error:
        return str(error)
    if found is None:
        return "not on this laptop"
    if found.known.consent is None:
        return "the rider has not agreed"
    if found.known.call_first is None:
        return "nobody to call"
    if is_due(found.known, today):
        said = f"last read through on {found.known.as_of}" if found.known.as_of else "never read through"
        return f"{said}: does all of it still hold?"
    return f"as of {found.known.as_of}"


def put(root: Path, rider: str, key: str, value: Any) -> tuple[str | None, str | None]:
    """Set a value, or take it out with None; gives the texts before and after. Raises NotThisFile.

    Nothing stands there before the rider agreed; who takes that back takes all of it back.
    """
    before = read_text(root, rider)
    agreed = before is not None and parsed(before, rider).get("consent") is not None
    if key != "consent" and not agreed:
        raise NotThisFile(AGREES_FIRST)
    shape = shapes()[key][2]
    after = None
    if key != "consent" or value is not None:
        after = changed(before, key, None if value is None else shape.dump(value))
        if after is None:
            raise NotThisFile(CANNOT)
    write_text(root, rider, before, after)
    return before, after
