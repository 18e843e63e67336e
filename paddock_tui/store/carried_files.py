"""What was worked out of bygone seasons, in the user's cache folder beside the index: a few files a bike.

It is JSON, holds no verdict and no words of a rider, and is never in the garage. It counts only as this very
program wrote it. Whatever is wrong with it makes the files be read.
"""

import contextlib
import hashlib
import json
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.program import program

_LARGEST = 16_000_000
_VERSION = 2


class Carried(NamedTuple):
    """What a file holds, and what tells that from anything else."""

    body: dict[str, Any]
    digest: str


def read_carried(real: Path, name: str) -> Carried | None:
    """Read what is carried under a name for a garage; None where there is nothing that counts."""
    try:
        text, _ = read_cached(folder_of(real), _file(name), _LARGEST)
        first, _, body = text.partition(b"\n")
        head = _head(body)
        if json.loads(first) != head:
            return None
        found = json.loads(body)
    except (*CACHE_TROUBLES, RuntimeError):
        return None
    return Carried(found, head[-1]) if isinstance(found, dict) else None


def write_carried(real: Path, name: str, found: dict[str, Any]) -> None:
    """Write what is carried under a name for a garage; that it cannot be written is no harm."""
    with contextlib.suppress(RuntimeError):
        body = json.dumps(found, separators=(",", ":"), ensure_ascii=True, allow_nan=False).encode()
        if len(body) < _LARGEST // 2:
            head = json.dumps(_head(body), separators=(",", ":")).encode()
            write_cached(folder_of(real), _file(name), head + b"\n" + body)


def _file(name: str) -> str:
    return f"{name}.json"


def _head(body: bytes) -> list[Any]:
    return [_VERSION, program(*_LEARNT_BY), hashlib.sha256(body).hexdigest()]


_LEARNT_BY = ("calc", "facts", "limits", "matters", "quantities", "records", "store")
"""The parts of this program by which the past is read and walked."""
