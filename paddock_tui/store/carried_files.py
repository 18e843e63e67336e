"""What was worked out of bygone seasons, in the user's cache folder beside the index: a few files a bike.

It is JSON, holds no verdict and no words of a rider, and is never in the garage. It counts only as this very
program wrote it. Whatever is wrong with it makes the files be read.
"""

import contextlib
import json
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from paddock_tui.store.cached import CACHE_TROUBLES, folder_of, read_cached, write_cached
from paddock_tui.store.digests import digest
from paddock_tui.store.program import program

_LARGEST = 16_000_000
_VERSION = 3


class Carried(NamedTuple):
    """What a file holds: its body and further parts, each read when it is asked for; and what tells both
    from anything else.
    """

    body: dict[str, Any]
    parts: Sequence[bytes]
    digest: str


def read_carried(real: Path, name: str) -> Carried | None:
    """Read what is carried under a name for a garage; None where there is nothing that counts."""
    try:
        text, _ = read_cached(folder_of(real), _file(name), _LARGEST)
        first, _, held = text.partition(b"\n")
        head = _head(held)
        if json.loads(first) != head:
            return None
        body, *parts = held.split(b"\n")
        found = json.loads(body)
    except (*CACHE_TROUBLES, RuntimeError):
        return None
    return Carried(found, parts, head[-1]) if isinstance(found, dict) else None


def write_carried(real: Path, name: str, body: dict[str, Any], parts: Iterable[bytes]) -> None:
    """Write what is carried under a name for a garage; that it cannot be written is no harm."""
    with contextlib.suppress(RuntimeError):
        held = b"\n".join((as_part(body), *parts))
        if len(held) < _LARGEST // 2:
            head = json.dumps(_head(held), separators=(",", ":")).encode()
            write_cached(folder_of(real), _file(name), head + b"\n" + held)


def as_part(found: object) -> bytes:
    """Return a plain value as a part of such a file."""
    return json.dumps(found, separators=(",", ":"), ensure_ascii=True, allow_nan=False).encode()


def part_of(text: bytes) -> Any:
    """Return the plain value that is such a part."""
    return json.loads(text)


def _file(name: str) -> str:
    return f"{name}.json"


def _head(held: bytes) -> list[Any]:
    return [_VERSION, program(*_LEARNT_BY), digest(held)]


_LEARNT_BY = ("calc", "facts", "limits", "matters", "quantities", "records", "store")
"""The parts of this program by which the past is read and walked."""
