"""What was worked out of bygone seasons, in the user's cache folder beside the index: a file a bike.

It is JSON, holds no verdict and no words of a rider, and is never in the garage. It counts only as this very
program wrote it. Whatever is wrong with it makes the files be read.
"""

import contextlib
import functools
import hashlib
import json
import os
import sys
from pathlib import Path
from typing import Any

import paddock_tui
from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached

_LARGEST = 16_000_000
_VERSION = 1


def read_carried(real: Path, bike: str) -> dict[str, Any] | None:
    """Read what is carried for a bike of a garage; None where there is nothing that counts."""
    try:
        text, _ = read_cached(folder_of(real), _name(bike), _LARGEST)
        head, _, body = text.partition(b"\n")
        if json.loads(head) != _head(body):
            return None
        found = json.loads(body)
    except (*CACHE_TROUBLES, RuntimeError):
        return None
    return found if isinstance(found, dict) else None


def write_carried(real: Path, bike: str, found: dict[str, Any]) -> None:
    """Write what is carried for a bike of a garage; that it cannot be written is no harm."""
    with contextlib.suppress(RuntimeError):
        body = json.dumps(found, separators=(",", ":"), ensure_ascii=True, allow_nan=False).encode()
        if len(body) < _LARGEST // 2:
            head = json.dumps(_head(body), separators=(",", ":")).encode()
            write_cached(folder_of(real), _name(bike), head + b"\n" + body)


def _name(bike: str) -> str:
    return f"before-{bike}.json"


def _head(body: bytes) -> list[Any]:
    return [_VERSION, program(), hashlib.sha256(body).hexdigest()]


@functools.cache
def program() -> str:
    """Return what tells this program from any other, an edited one too: its files, their sizes and times."""
    found = hashlib.sha256(f"{paddock_tui.__version__} {sys.version}".encode())
    for folder in sorted({Path(one) for one in paddock_tui.__path__}):
        for name in _LEARNT_BY:
            for path, size, changed in sorted(_sources(folder / name)):
                found.update(f"{path} {size} {changed}\n".encode())
    return found.hexdigest()


_LEARNT_BY = ("calc", "facts", "limits", "matters", "quantities", "records", "store")
"""The parts of this program by which the past is read and walked."""


def _sources(folder: Path) -> list[tuple[str, int, int]]:
    """List the sources below a folder; those that are no plain files are known by the version alone."""
    found: list[tuple[str, int, int]] = []
    with contextlib.suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                found += _sources(Path(entry.path))
            elif entry.name.endswith(".py"):
                status = entry.stat()
                found.append((entry.path, status.st_size, status.st_mtime_ns))
    return found
