"""The comment line by which editors that know TOML find the form of a record's kind."""

from pathlib import Path

SCHEMAS = "schemas"
"""The folder of the schemas, which the first line of each file names."""

_UP = {"session": "../..", "garage": "."}
"""How far up the garage is from a record: sessions stand in a folder of their year."""


def schema_line(kind: str) -> str:
    """Return the first line of a record of a kind."""
    return f"#:schema {_UP.get(kind, '..')}/{SCHEMAS}/{kind}.json\n"


def schema_line_here(root: Path, kind: str) -> str:
    """Return that line where the garage has the schema that it names; empty where it has none."""
    return schema_line(kind) if (root / SCHEMAS / f"{kind}.json").is_file() else ""
