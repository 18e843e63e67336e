"""Which commit last changed the line of a value: read from what git stores, never from the working files.

Nothing of the repository runs: filters work on working files, which are not asked of git, and the text in
the commit is read raw.
"""

import datetime as dt
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.records.paths import Path as ValuePath
from paddock_tui.store.git import GitFailed, git, top_of
from paddock_tui.store.git_consent import allowed
from paddock_tui.store.lines import scan
from paddock_tui.store.reading import loads

NOT_COMMITTED = "not committed"
_LARGEST = 4_000_000


@attrs.frozen
class Commit:
    """Who committed a line, and when."""

    author: str
    on: dt.date

    def __str__(self) -> str:
        return f"{self.author}, {self.on.isoformat()}"


def last_commit(root: Path, file: Path, path: ValuePath, value: Any) -> Commit | str | None:
    """Return the commit that last changed a value, or that it is not committed as it stands.

    None where the user did not agree that git runs here, or git has no answer. It may take a moment: not to
    be called where the screen is drawn.
    """
    if not allowed(root):
        return None
    try:
        top = top_of(root)
        name = file.resolve().relative_to(top.resolve()).as_posix()
        committed = git(root, "cat-file", "blob", f"HEAD:{name}")
    except (GitFailed, ValueError, OSError):
        return NOT_COMMITTED if _tracked(root) else None
    if len(committed) > _LARGEST:
        return None
    try:
        text = committed.decode("utf-8")
        data = loads(text)
        if not isinstance(data, dict) or _value(data, path) != value:
            return NOT_COMMITTED
        line = scan(text).line_of(path)
        if line is None:
            return None
        said = git(root, "blame", "--porcelain", "--no-textconv", "-L", f"{line},{line}", "HEAD", "--", name)
    except (GitFailed, ValueError):
        return None
    return _commit(said.decode("utf-8", "replace"))


def _tracked(root: Path) -> bool:
    """Return whether there is a commit at all."""
    try:
        git(root, "rev-parse", "--verify", "HEAD^{commit}")
    except GitFailed:
        return False
    return True


def _value(data: Any, path: ValuePath) -> Any:
    for key in path:
        data = data.get(key) if isinstance(data, dict) else None
    return data


def _commit(said: str) -> Commit | None:
    found = dict(line.split(" ", 1) for line in said.splitlines()[1:] if " " in line and line[0] != "\t")
    try:
        when = dt.datetime.fromtimestamp(int(found["author-time"]), dt.UTC).astimezone()
        return Commit(found["author"][:60], when.date())
    except (KeyError, ValueError, OverflowError, OSError):
        return None
