"""`export`: the garage as tidy tables, in a folder of their own."""

import datetime as dt
import sys
from collections.abc import Sequence
from pathlib import Path

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, counted, find_ref, open_to_read, say
from paddock_tui.desk.looking import LooksAt
from paddock_tui.export.registry import PERSONAL
from paddock_tui.export.table import ExportScope
from paddock_tui.export.writing import Form, write_tables
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.passing import PassingFiles
from paddock_tui.text import printable


def export(
    garage: str,
    to: str,
    form: Form,
    *,
    since: dt.date | None = None,
    bike: str | None = None,
    rider: str | None = None,
    personal: Sequence[str] = (),
) -> int:
    """Write the tables, and say what was written and what was left out."""
    folder = Path(to)
    name = printable(to)
    if folder.is_symlink() or (folder.exists() and (not folder.is_dir() or any(folder.iterdir()))):
        raise CommandStopped(NOT_DONE, f"{name} is there already and not empty", "  name a new folder")
    desk = open_to_read(garage, files=PassingFiles(Path(garage)))
    wanted = ExportScope(since, _id(desk, bike, "bike"), _id(desk, rider, "rider"), frozenset(personal))
    try:
        written = write_tables(desk, folder, form, wanted, _progress)
    except OSError as error:
        raise CommandStopped(NOT_DONE, f"{name}: {in_plain_words(error)}", "  nothing was written") from error
    say(f"{file:<20} {counted(rows, 'row')}" for file, rows in written)
    left = [one for one in PERSONAL if one not in personal]
    if left:
        say(("", f"left out as personal: {', '.join(left)}; --with writes them"))
    if form == "csv":
        say(("a text that begins like a formula has an apostrophe before it",))
    return OK


def _id(desk: LooksAt, text: str | None, kind: str) -> str:
    return "" if text is None else find_ref(desk, text, (kind,)).id


def _progress(done: int, of: int, table: str) -> None:
    """Say on a terminal how far it is, on one line that is drawn again."""
    if sys.stderr.isatty():
        said = f"{done:,} of {counted(of, 'session')}" + (f", {table}" if table else "")
        end = "\n" if done == of and not table else ""
        sys.stderr.write(f"\r{said:<60}{end}")
        sys.stderr.flush()
