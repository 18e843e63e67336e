"""The form of each kind of record as a JSON Schema (2020-12), made from the declarations of its fields."""

from typing import Any

from paddock_tui.records.disputes import CONFLICT, SIDES
from paddock_tui.records.fields import Spec, specs
from paddock_tui.records.former_ids import FORMER
from paddock_tui.records.ids import LONGEST, PATTERN
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.shapes.base import JsonSchema

DIALECT = "https://json-schema.org/draft/2020-12/schema"


_DISPUTES: JsonSchema = {
    "title": "disputed facts",
    "description": "what two laptops say of a fact that both changed, until one is taken",
    "type": "object",
    "additionalProperties": {
        "type": "object",
        "properties": {side: {} for side in SIDES},
        "additionalProperties": False,
        "minProperties": 1,
    },
}


_FORMER_IDS: JsonSchema = {
    "title": "former ids",
    "description": "what the record was called before it was renamed; references to that still mean it",
    "type": "array",
    "items": {"type": "string", "pattern": f"^{PATTERN}$", "maxLength": LONGEST},
}


def record_schema(kind: str) -> JsonSchema:
    """Return the schema of one kind of record; a key that is left out is a fact that is not known."""
    made: JsonSchema = {"$schema": DIALECT, "title": kind} | _table(CLASSES[kind])
    made["properties"][CONFLICT] = _DISPUTES
    made["properties"][FORMER] = _FORMER_IDS
    return made


def _table(record: type) -> JsonSchema:
    doc = (record.__doc__ or "").strip().split("\n")[0]
    return {
        "type": "object",
        "description": doc,
        "properties": {key: _value(spec) for key, (_, spec) in specs(record).items()},
        "additionalProperties": False,
    }


def _value(spec: Spec) -> JsonSchema:
    inner: JsonSchema = spec.shape.schema() if spec.shape is not None else _table(spec.record or object)
    for rule in reversed(spec.keys):
        inner = {
            "type": "object",
            "patternProperties": {f"^({rule})$": inner},
            "additionalProperties": False,
        }
    said: dict[str, Any] = {"title": spec.label}
    if spec.help:
        said["description"] = spec.help
    return said | {key: value for key, value in inner.items() if key != "description" or not spec.help}
