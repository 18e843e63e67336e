"""`git split`: two new sessions that got one name on two laptops: theirs gets the next number."""

import datetime as dt
import re
import tomllib
from pathlib import Path

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, open_desk, say
from paddock_tui.desk import Desk
from paddock_tui.desk.sessions.numbers import free_session, next_number
from paddock_tui.records.edits import Edit
from paddock_tui.records.paths import FOLDERS
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.git import GitFailed, git
from paddock_tui.store.patch import Patched, patch
from paddock_tui.text import printable

_STAGED = re.compile(rb"[0-7]{6} ([0-9a-f]{40,64}) ([123])\t(.+)", re.DOTALL)


def split(garage: str) -> int:
    """Write theirs of every session that both sides made anew under the next number; ours stays."""
    desk = open_desk(garage)
    try:
        pairs = _pairs(desk.root)
        if not pairs:
            say(("no session is in conflict with a new one of the same name",))
            return OK
        for name, (ours, theirs) in sorted(pairs.items()):
            made = _apart(desk, name, ours, theirs)
            git(desk.root, "add", "--", f":(literal){name}", f":(literal){made}")
            say((printable(f"{name}: ours stays, theirs is {made}"),))
    except GitFailed as error:
        raise CommandStopped(NOT_DONE, f"git: {printable(str(error))}") from error
    except NotWritten as error:
        raise CommandStopped(NOT_DONE, error.reason) from error
    return OK


def _pairs(root: Path) -> dict[str, tuple[bytes, bytes]]:
    """Return the blobs of both sides of each session file that has no base, by its name below the garage."""
    found: dict[str, dict[bytes, bytes]] = {}
    for entry in git(root, "ls-files", "--unmerged", "-z", "--", FOLDERS["session"]).split(b"\0"):
        staged = _STAGED.fullmatch(entry)
        if staged is not None:
            found.setdefault(staged[3].decode("utf-8", "surrogateescape"), {})[staged[2]] = staged[1]
    both = {name: sides for name, sides in found.items() if set(sides) == {b"2", b"3"}}
    return {name: (_blob(root, sides[b"2"]), _blob(root, sides[b"3"])) for name, sides in both.items()}


def _blob(root: Path, name: bytes) -> bytes:
    return git(root, "cat-file", "blob", name.decode())


def _apart(desk: Desk, name: str, ours: bytes, theirs: bytes) -> str:
    """Put ours in its place again, and theirs beside it under the next number; return its name."""
    try:
        text, mine = theirs.decode("utf-8"), ours.decode("utf-8")
        data = tomllib.loads(text.removeprefix("\ufeff"))
    except ValueError:
        said = f"theirs of {printable(name)} is no TOML"
        raise CommandStopped(NOT_DONE, said, "  correct it on the laptop that it comes from") from None
    date, was, bike = data.get("date"), data.get("number"), data.get("bike")
    if not isinstance(date, dt.date) or type(was) is not int:
        said = f"theirs of {printable(name)} has no date and number"
        raise CommandStopped(NOT_DONE, said, "  enter them on the laptop that it comes from")
    replace_durably(desk.files.tree, desk.root / name, mine)
    desk.files.forget_listing()
    bike = bike if isinstance(bike, str) else None
    number = next_number(desk.files, date, bike, was)
    made = patch(text, [Edit(("number",), was, number)])
    if not isinstance(made, Patched):
        raise CommandStopped(NOT_DONE, f"{printable(name)}: {made.reason}")
    there = desk.files.path_for(free_session(desk.files, date, number, bike))
    replace_durably(desk.files.tree, there, made.text, create=True)
    return str(there.relative_to(desk.root))
