"""Acts on whole records and on entries of tables: new, drop, retire, duplicate, rename, profiles."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.desk.edits.tables import adding, dropping, wanted
from paddock_tui.desk.files.names import ASKED, id_of, naming
from paddock_tui.desk.files.records import bringing_back, duplicating, renaming, retiring
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.desk.sessions.profiles import profiles_for, saving_as, taking
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import Create, Rename, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS, Path, Ref
from paddock_tui.screens.question import Question

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


def new(screen: "MainScreen") -> None:
    """Make what is new here: a record of the section, an entry of the table, or the next session."""
    row = screen.board.cursor_row
    if screen.place.room == "garage":
        kind = row.adds[0] if row is not None and row.adds else row.ref.kind if row and row.ref else "session"
        if kind == "session" and row is not None and row.kind == "link" and row.ref is not None:
            _next_session(screen, row.ref)
        else:
            _new_record(screen, kind)
    elif row is not None and row.adds and row.ref is not None and (row.kind == "add" or _on_record(screen)):
        _new_entry(screen, row.ref, row.adds)
    elif (
        screen.place.subject is not None and screen.place.subject.kind == "session" and not _on_record(screen)
    ):
        _next_session(screen, screen.place.subject)
    else:
        screen.board.say("nothing can be added to this section")


def drop(screen: "MainScreen") -> None:
    """Drop the entry under the cursor; on the garage page retire the record, or bring it back."""
    row = screen.board.cursor_row
    if row is None or row.ref is None:
        screen.board.say("there is nothing to drop here")
    elif screen.place.room == "garage":
        back = "retired" in screen.desk.files.data(row.ref)
        step = bringing_back(screen.desk.files, row.ref) if back else None
        screen.attempt(step or retiring(screen.desk.files, row.ref, screen.desk.now().date()))
    elif row.drops:
        screen.attempt(dropping(screen.desk.files, row.ref, row.drops))
    else:
        screen.board.say("this row is no entry of a table: backspace clears a value")


def duplicate(screen: "MainScreen") -> None:
    """Copy the record under the cursor, or the one shown, to another name."""
    ref = _about(screen)
    if ref is None:
        screen.board.say("there is no record here to copy")
        return

    def answered(text: str) -> str:
        return _made(screen, Ref(ref.kind, id_of(text)), duplicating(screen.desk.files, ref, id_of(text)))

    screen.ask(Question(f"name of the copy of {ref.id}", answered))


def rename(screen: "MainScreen") -> None:
    """Return the record under the cursor, or the one shown, another id; references follow."""
    ref = _about(screen)
    if ref is None:
        screen.board.say("there is no record here to rename")
        return

    def answered(text: str) -> str:
        if "/" in text:
            return InputError(f'"{text}"', "a name without slashes").sentence()
        return _made(screen, Ref(ref.kind, id_of(text)), renaming(screen.desk.files, ref, id_of(text)))

    screen.ask(Question(f"new name of {ref}", answered))


def show_retired(screen: "MainScreen") -> None:
    """Show retired records on the garage page, or hide them again."""
    screen.go(attrs.evolve(screen.place, room="garage", retired=not screen.place.retired))


def take(screen: "MainScreen") -> None:
    """Take a profile's set-up over into the session."""
    session = screen.place.subject
    if session is None or session.kind != "session":
        return
    known = profiles_for(screen.desk.files, session)
    if not known:
        screen.board.say("there is no profile for this bike")
        return
    names = [ref.id for ref in known]

    def answered(text: str) -> str:
        found = [ref for ref in known if ref.id == text.strip()] or [
            ref for ref in known if text.strip() and ref.id.startswith(text.strip())
        ]
        if len(found) != 1:
            return f"one of: {', '.join(names)}"
        step = taking(screen.desk.files, session, found[0])
        if isinstance(step, InputError):
            return step.sentence()
        screen.attempt(step)
        return ""

    screen.ask(Question(f"profile ({', '.join(names)})", answered))


def save(screen: "MainScreen") -> None:
    """Save the session's set-up as a profile."""
    session = screen.place.subject
    if session is None or session.kind != "session":
        return

    def answered(text: str) -> str:
        new_id = id_of(text)
        return _made(
            screen, Ref("profile", new_id), saving_as(screen.desk.files, session, new_id, text.strip())
        )

    screen.ask(Question("name of the new profile", answered))


def _next_session(screen: "MainScreen", source: Ref) -> None:
    ref, step = next_session(screen.desk.files, source, screen.desk.now())
    if isinstance(step, InputError):
        screen.board.say(step.sentence())
        return
    screen.desk.do(step)
    screen.open(ref)
    screen.board.say(f"{step.label}, u undoes")

    def answered(text: str) -> str:
        return screen.set_text(ref, ("surface",), text) if text.strip() else ""

    screen.ask(Question("surface: dry, damp, drying, wet, standing water?", answered))


def _new_record(screen: "MainScreen", kind: str) -> None:
    venues = screen.desk.files.listing("venue")
    words = ASKED[kind].format(venue=venues[0].id if venues else "venue")

    def answered(text: str) -> str:
        ref, step = naming(screen.desk.files, kind, text, screen.desk.now().date())
        return _made(screen, ref, step)

    screen.ask(Question(words, answered))


def _new_entry(screen: "MainScreen", ref: Ref, table: Path) -> None:
    asks = wanted(ref, table)
    if asks is None:
        screen.board.say("nothing can be added to this section")
        return

    def answered(text: str) -> str:
        step = adding(screen.desk.files, ref, table, text, screen.units(ref))
        if isinstance(step, InputError):
            return step.sentence()
        screen.attempt(step)
        path = _added(step)
        rows = [
            row for row in screen.board.page.rows() if row.path[: len(path)] == path and row.kind == "field"
        ]
        if rows:
            screen.board.go(rows[0].identity)
        return ""

    if not asks.words:
        wrong = answered("")
        screen.board.say(wrong or "added, u undoes")
        return
    screen.ask(Question(asks.words, answered))


def _added(step: Step) -> Path:
    for change in step.changes:
        if not isinstance(change, Create | Rename) and hasattr(change, "edits"):
            return change.edits[0].path
    return ()


def _made(screen: "MainScreen", ref: Ref, step: Step | InputError) -> str:
    """Do a step that makes a record and open it; gives what is wrong, or nothing."""
    if isinstance(step, InputError):
        return step.sentence()
    screen.desk.do(step)
    if screen.desk.files.path_of(ref) is None:
        screen.draw()
        return ""
    screen.open(ref)
    screen.board.say(f"{step.label}, u undoes")
    return ""


def _about(screen: "MainScreen") -> Ref | None:
    """Return the record that an act is about: in the garage the one under the cursor, else the one shown."""
    row: Row | None = screen.board.cursor_row
    if screen.place.room == "garage":
        found = row.ref if row is not None else None
    else:
        found = screen.place.record if _on_record(screen) else screen.place.subject
    return found if found is not None and found.kind in FOLDERS else None


def _on_record(screen: "MainScreen") -> bool:
    return screen.place.room == "record"
