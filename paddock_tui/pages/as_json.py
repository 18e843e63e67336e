"""Pages and records as plain data for JSON: stable keys, dates as ISO writes them, nothing about drawing."""

import datetime as dt
import math
from collections.abc import Mapping
from typing import Any

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import spell
from paddock_tui.store.garage import Loaded


def page_as_dict(page: Page) -> dict[str, Any]:
    """Return a page as plain data, in the order in which it is read."""
    return {
        "heading": page.heading,
        "verdict": page.verdict or None,
        "sections": [_section(one) for one in page.sections],
        "findings": [_row(one) for one in page.findings],
        "caution": page.caution or None,
    }


def record_as_dict(loaded: Loaded, data: Mapping[str, Any]) -> dict[str, Any]:
    """Return a record as it stands in its file, and what of it cannot be read or is not declared."""
    return {
        "kind": loaded.ref.kind,
        "id": loaded.ref.id,
        "data": plain(data),
        "problems": [problem_as_dict(one) for one in (*loaded.troubles, *loaded.unknown)],
    }


def plain(value: Any) -> Any:
    """Return data of a TOML file as JSON can hold it."""
    if isinstance(value, Mapping):
        return {str(key): plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [plain(inner) for inner in value]
    if isinstance(value, float) and not math.isfinite(value):
        return str(value)
    return value.isoformat() if isinstance(value, dt.date | dt.time) else value


def problem_as_dict(problem: InputError) -> dict[str, Any]:
    """Return a problem as plain data: where, what was found and expected, and how to mend it."""
    return {
        "file": problem.file,
        "line": problem.line,
        "path": spell(problem.path),
        "found": problem.found,
        "expected": problem.expected,
        "mend": problem.mend,
    }


def _section(section: Section) -> dict[str, Any]:
    rows = [_row(row) for row in section.rows if row.kind != "add"]
    return {"title": section.title, "note": section.note or None, "rows": rows}


def _row(row: Row) -> dict[str, Any]:
    return {
        "label": row.label or None,
        "value": row.value if row.known else None,
        "range": row.range or None,
        "aside": row.aside or None,
        "severity": row.severity or None,
        "record": str(row.ref or row.opens or "") or None,
        "path": spell(row.path) or None,
        "problem": row.trouble or None,
        "working": list(row.working),
    }
