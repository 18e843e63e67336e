"""What could not be kept: tried again, or written elsewhere."""

from pathlib import Path as FilePath

from paddock_tui.pages.actions import ActionContext
from paddock_tui.records.paths import Ref
from paddock_tui.screens.action import Action
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.tree import outside
from paddock_tui.text import printable

_NOT_KEPT = "all that was entered is saved"


def _try_again(host: Host) -> None:
    """Have what could not be kept tried again."""
    host.desk.try_again()
    host.draw()
    host.board.say("trying again")


def _write_elsewhere(host: Host) -> None:
    """Ask for a file, and write the whole text of a record that could not be kept to it."""
    ref = _about(host)
    if ref is None:
        host.board.say(_NOT_KEPT)
        return

    usual = f"~/unsaved-{ref.id}.toml"

    def answered(text: str) -> str:
        try:
            path = FilePath(text.strip() or usual).expanduser()
            replace_durably(outside(path), path, host.desk.text_with(ref), create=True)
        except NotWritten as error:
            return printable(f"{path}: {error.reason}")
        except RuntimeError as error:
            return printable(f"{error}: name a file that is not there yet, e.g. /tmp/session.toml")
        for done in host.desk.unkept():
            if ref in done.refs:
                done.elsewhere = str(path)
        host.draw()
        host.board.say(printable(f"{ref} with what is not saved: written to {path}"))
        return ""

    host.ask(Question(f"file to write {ref} to (enter: {usual})", answered, declined="not written"))


def _about(host: Host) -> Ref | None:
    """Return the record to write: the one under the cursor where it has something unkept, else the last
    one.
    """
    unkept = [ref for done in host.desk.unkept() for ref in done.refs]
    row = host.board.cursor_row
    if row is not None and row.ref in unkept:
        return row.ref
    return unkept[-1] if unkept else None


def _off(context: ActionContext) -> str:
    return "" if context.unkept else _NOT_KEPT


AGAIN = Action(
    "again",
    "",
    "try again",
    "save what could not be saved, once it can be",
    _off,
    do=_try_again,
    unjudged=True,
)

ELSEWHERE = Action(
    "elsewhere",
    "",
    "save to another file",
    "what could not be saved, to another file",
    _off,
    do=_write_elsewhere,
    unjudged=True,
)
