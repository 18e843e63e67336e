"""What was being typed when the program had to leave: saved in the private folder, offered again later."""

import contextlib
import tomllib
from pathlib import Path as FilePath

import attrs

from paddock_tui.records.paths import Path, Ref, parse, spell
from paddock_tui.store.lock import PRIVATE, private_folder
from paddock_tui.store.render import CannotWrite, render_line

_NAME = "half-typed"


@attrs.frozen
class HalfTyped:
    """Text in an editor that nobody had saved yet: on which value of which record."""

    ref: Ref
    path: Path
    text: str


def save(root: FilePath, half: HalfTyped) -> None:
    """Save half-typed text. Never raises: it is called while the program is leaving in a hurry."""
    values = {"kind": half.ref.kind, "id": half.ref.id, "path": spell(half.path), "text": half.text}
    with contextlib.suppress(OSError, CannotWrite, UnicodeEncodeError):
        lines = [render_line((key,), value) for key, value in values.items()]
        (private_folder(root) / _NAME).write_text("\n".join(lines) + "\n", encoding="utf-8")


def take(root: FilePath) -> HalfTyped | None:
    """Return what was saved, and forget it; None where there is nothing, or nothing that can be read."""
    file = root / PRIVATE / _NAME
    try:
        held = file.read_bytes()
        file.unlink()
        found = tomllib.loads(held.decode("utf-8"))
    except (OSError, ValueError):
        return None
    words = [found.get(key) for key in ("kind", "id", "path", "text")]
    if not all(isinstance(word, str) for word in words):
        return None
    kind, name, spelled, text = (str(word) for word in words)
    path = parse(spelled)
    return HalfTyped(Ref(kind, name), path, text) if path is not None else None
