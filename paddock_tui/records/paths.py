"""Addresses: which record, and which value inside it."""

import functools
import itertools
import re
from collections.abc import Iterable
from typing import NamedTuple

Path = tuple[str, ...]
"""The keys that lead to a value inside one record, outermost first."""

FOLDERS = {
    "bike": "bikes",
    "rider": "riders",
    "venue": "venues",
    "tyres": "tyres",
    "profile": "profiles",
    "checklist": "checklists",
    "day": "days",
    "session": "sessions",
}
"""The kinds of record that have files of their own, and the folder of each kind."""

ANY = "*"
"""Stands in a declared path for a key that the owner chooses."""

KINDS = ("garage", *FOLDERS)

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_PIECE = re.compile(r'"((?:[^"\\]|\\.)*)"|([^."]+)')


class Ref(NamedTuple):
    """One record of the garage: its kind and its id (the stem of its file)."""

    kind: str
    id: str

    def __str__(self) -> str:
        return self.kind if self.kind == "garage" else f"{self.kind}/{self.id}"


GARAGE = Ref("garage", "garage")


def refs(kind: str, names: Iterable[str]) -> tuple[Ref, ...]:
    """Return records of a kind by their ids, of which there may be thousands."""
    return tuple(map(_REF, zip(itertools.repeat(kind), names)))


_REF = functools.partial(tuple.__new__, Ref)


def spell(path: Path) -> str:
    """Write a path with dots, quoting a key that is not bare, as TOML does."""
    return ".".join(key if _BARE.fullmatch(key) else _quoted(key) for key in path)


def parse(text: str) -> Path | None:
    """Read a path spelled with dots; None where the text is not one."""
    keys: list[str] = []
    at = 0
    while True:
        piece = _PIECE.match(text, at)
        if piece is None:
            return None
        quoted, bare = piece.groups()
        key = re.sub(r"\\(.)", r"\1", quoted) if quoted is not None else bare.strip()
        if not key and quoted is None:
            return None
        keys.append(key)
        at = piece.end()
        if at == len(text):
            return tuple(keys)
        if text[at] != ".":
            return None
        at += 1


def _quoted(key: str) -> str:
    escaped = key.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
