"""Whole records and entries of tables: new, drop, retire, duplicate, rename."""

import attrs

from paddock_tui.desk.edits.tables import adding, dropping, wanted
from paddock_tui.desk.files.names import ASKED, naming
from paddock_tui.desk.files.preset_names import preset_at, renaming_preset
from paddock_tui.desk.files.records import bringing_back, duplicating, renaming, retiring
from paddock_tui.desk.sessions.next_session import next_session
from paddock_tui.pages.rows import Row
from paddock_tui.records.edits import Create, Rename, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of
from paddock_tui.records.paths import FOLDERS, Path, Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.new_record import made
from paddock_tui.screens.question import Question


def add_new(host: Host) -> None:
    """Make what is new here: a record of the section, an entry of the table, or the next session."""
    row = host.board.cursor_row
    if host.place.room == "garage":
        kind = row.adds[0] if row is not None and row.adds else row.ref.kind if row and row.ref else "session"
        if kind == "session" and row is not None and row.kind == "link" and row.ref is not None:
            _next_session(host, row.ref)
        else:
            _new_record(host, kind)
    elif row is not None and row.adds and row.ref is not None and (row.kind == "add" or _on_record(host)):
        _new_entry(host, row.ref, row.adds)
    elif host.place.subject is not None and host.place.subject.kind == "session" and not _on_record(host):
        _next_session(host, host.place.subject)
    else:
        host.board.say("nothing can be added to this section: m shows all actions")


def drop(host: Host) -> None:
    """Drop the entry under the cursor; on the garage page retire the record, or bring it back."""
    row = host.board.cursor_row
    if row is None or row.ref is None:
        host.board.say("there is nothing to delete here: x is for an entry or a record")
    elif host.place.room == "garage":
        back = "retired" in host.desk.files.data(row.ref)
        step = bringing_back(host.desk.files, row.ref) if back else None
        host.attempt(step or retiring(host.desk.files, row.ref, host.desk.now().date()))
    elif row.drops:
        host.attempt(dropping(host.desk.files, row.ref, row.drops))
    else:
        host.board.say("this row is no entry of a table: backspace clears a value")


def duplicate(host: Host) -> None:
    """Copy the record under the cursor, or the one shown, to another name."""
    ref = _about(host)
    if ref is None:
        host.board.say("there is no record here to copy: g, then put the cursor on one")
        return

    def answered(text: str) -> str:
        return made(host, Ref(ref.kind, id_of(text)), duplicating(host.desk.files, ref, id_of(text)))

    host.ask(Question(f"name of the copy of {ref.id}", answered))


def rename(host: Host) -> None:
    """Give the record under the cursor, or the one shown, another id; references follow."""
    row = host.board.cursor_row
    preset = preset_at(row.path) if row is not None and row.ref is not None and _on_record(host) else None
    if preset is not None and row is not None and row.ref is not None:
        _rename_preset(host, row.ref, *preset)
        return
    ref = _about(host)
    if ref is None:
        host.board.say("there is no record here to rename: g, then put the cursor on one")
        return

    def answered(text: str) -> str:
        if "/" in text:
            return InputError(f'"{text}"', "a name without slashes").sentence()
        return made(host, Ref(ref.kind, id_of(text)), renaming(host.desk.files, ref, id_of(text)))

    host.ask(Question(f"new name of {ref}", answered))


def _rename_preset(host: Host, bike: Ref, damping: str, old: str) -> None:
    """Give a preset another name; its values and the set-ups of the bike follow."""

    def answered(text: str) -> str:
        step = renaming_preset(host.desk.files, bike, damping, old, text)
        if isinstance(step, InputError):
            return step.sentence()
        host.do(step)
        return ""

    host.ask(Question(f"new name of preset {old}", answered))


def show_retired(host: Host) -> None:
    """Show retired records on the garage page, or hide them again."""
    host.go(attrs.evolve(host.place, room="garage", retired=not host.place.retired))


def _next_session(host: Host, source: Ref) -> None:
    ref, step = next_session(host.desk.files, source, host.desk.now())
    if isinstance(step, InputError):
        host.board.say(step.sentence())
        return
    host.desk.do(step)
    host.open(ref)
    host.board.say(f"{step.label}, u undoes")

    def answered(text: str) -> str:
        return host.set_text(ref, ("surface",), text) if text.strip() else ""

    host.ask(Question("surface: dry, damp, drying, wet, standing water?", answered))


def _new_record(host: Host, kind: str) -> None:
    venues = host.desk.files.listing("venue")
    words = ASKED[kind].format(venue=venues[0].id if venues else "venue")

    def answered(text: str) -> str:
        ref, step = naming(host.desk.files, kind, text, host.desk.now().date())
        return made(host, ref, step)

    host.ask(Question(words, answered))


def _new_entry(host: Host, ref: Ref, table: Path) -> None:
    asks = wanted(ref, table)
    if asks is None:
        host.board.say("nothing can be added to this section: m shows all actions")
        return

    def answered(text: str) -> str:
        step = adding(host.desk.files, ref, table, text, host.units(ref))
        if isinstance(step, InputError):
            return step.sentence()
        host.attempt(step)
        path = _added(step)
        rows = [
            row for row in host.board.page.rows() if row.path[: len(path)] == path and row.kind == "field"
        ]
        if rows:
            host.board.go(rows[0].identity)
        return ""

    if not asks.words:
        wrong = answered("")
        host.board.say(wrong or "added, u undoes")
        return
    host.ask(Question(asks.words, answered))


def _added(step: Step) -> Path:
    for change in step.changes:
        if not isinstance(change, Create | Rename) and hasattr(change, "edits"):
            return change.edits[0].path
    return ()


def _about(host: Host) -> Ref | None:
    """Return the record that an act is about: in the garage the one under the cursor, else the one shown."""
    row: Row | None = host.board.cursor_row
    if host.place.room == "garage":
        found = row.ref if row is not None else None
    else:
        found = host.place.record if _on_record(host) else host.place.subject
    return found if found is not None and found.kind in FOLDERS else None


def _on_record(host: Host) -> bool:
    return host.place.room == "record"


def note_incident(host: Host) -> None:
    """Go to the incidents of the session, and ask for a new one."""
    subject = host.place.subject
    if subject is not None:
        host.jump(subject, ("happened",))
        _new_entry(host, subject, ("incidents",))
