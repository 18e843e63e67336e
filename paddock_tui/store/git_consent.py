"""Where this user agreed that git is run: noted outside every garage, so that none agrees for them."""

import hashlib
import os
from pathlib import Path

from paddock_tui.store.signing import user_folder


def _note(root: Path) -> Path:
    name = hashlib.sha256(os.fsencode(root.resolve())).hexdigest()
    return user_folder() / "git" / name


def allow(root: Path) -> None:
    """Note that git may be run on the repository of a garage."""
    note = _note(root)
    note.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    note.write_bytes(os.fsencode(root.resolve()) + b"\n")


def forbid(root: Path) -> None:
    """Take that back."""
    _note(root).unlink(missing_ok=True)


def allowed(root: Path) -> bool:
    """Return whether this user agreed."""
    return _note(root).is_file()
