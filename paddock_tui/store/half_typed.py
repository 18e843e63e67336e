"""What was being typed when the program had to leave: saved in the private folder, offered again later."""

import contextlib
import json
from pathlib import Path as FilePath
from typing import Any

import attrs

from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.guarded import NotRead
from paddock_tui.store.private import private
from paddock_tui.store.signing import garage_id, signed, user_key, verifies
from paddock_tui.store.steps_as_json import checked_ref

_NAME = "half-typed"
_LONGEST = 1_000_000


@attrs.frozen
class HalfTyped:
    """Text in an editor that nobody had saved yet: on which value of which record."""

    ref: Ref
    path: Path
    text: str


def save(root: FilePath, half: HalfTyped) -> None:
    """Save half-typed text. Never raises: it is called while the program is leaving in a hurry."""
    about = {"kind": half.ref.kind, "id": half.ref.id, "path": list(half.path), "text": half.text}
    with contextlib.suppress(OSError, NotRead, ValueError):
        line = json.dumps(about, ensure_ascii=False).encode("utf-8")
        with private(root, make=True) as folder:
            whole = signed(user_key(), garage_id(folder, make=True), _NAME.encode(), line)
            folder.put(_NAME, whole, own=True)


def take(root: FilePath) -> HalfTyped | None:
    """Return what was saved, and forget it; None where there is nothing that this user's program saved."""
    try:
        with private(root) as folder:
            try:
                line = folder.read(_NAME, _LONGEST)
            finally:
                folder.remove(_NAME)
            if not verifies(user_key(), garage_id(folder), _NAME.encode(), line):
                return None
    except (OSError, NotRead):
        return None
    return _read(line)


def _read(line: bytes) -> HalfTyped | None:
    try:
        given: Any = json.loads(line)
        path, text = given["path"], given["text"]
        ref = checked_ref(given["kind"], given["id"])
    except (ValueError, KeyError, TypeError, RecursionError):
        return None
    if not isinstance(text, str) or not path or not all(isinstance(key, str) for key in path):
        return None
    return HalfTyped(ref, tuple(path), text)
