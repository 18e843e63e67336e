"""The entry line on the screen: one typed line, its preview while it is typed, and the step it becomes."""

import attrs

from paddock_tui.desk.edits.entry_line import entering, entry_context
from paddock_tui.desk.edits.values import field_of, moved
from paddock_tui.entry import LineContext, TypedLine, completed, read_line
from paddock_tui.pages.message_line import message_line
from paddock_tui.records.edits import Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens import timetable
from paddock_tui.screens.host import Host
from paddock_tui.screens.lap_question import keep_laps
from paddock_tui.screens.question import ENTRY_WORDS, Question
from paddock_tui.store.data import lookup
from paddock_tui.text import printable


@attrs.define
class EnteredLines:
    """The lines that were entered in this run, to be called back."""

    lines: list[str] = attrs.field(factory=list)


def enter(host: Host) -> None:
    """Ask for an entry line about the session or profile looked at; on a day's page about the day."""
    if host.place.room == "record" and host.place.record is not None and host.place.record.kind == "day":
        timetable.enter(host, host.place.record)
        return
    ref = host.place.subject
    context = entry_context(host.desk, ref) if ref is not None else None
    if ref is None or context is None:
        host.board.say("there is no session or profile here that can be read: g, then enter on one")
        return

    def answered(text: str) -> str:
        shifted = timetable.late(host, ref, text)
        if shifted is not None:
            return shifted.sentence() if isinstance(shifted, InputError) else _done(host, shifted)
        line = read_line(text, context)
        wrong = _wrong(line)
        if wrong:
            return wrong
        step = entering(host.desk.files, ref, line)
        if not isinstance(step, Step):
            return step[0].sentence()
        if text.strip():
            host.state.of(EnteredLines).lines.append(text)
        keep_laps(host, ref, step, host.attempt, None)
        return ""

    def typed(text: str) -> None:
        host.board.preview(*_preview(host, ref, context, text))

    def complete(text: str) -> str:
        return completed(text, context)

    host.ask(Question(ENTRY_WORDS, answered, typed, complete, tuple(host.state.of(EnteredLines).lines)))


def _done(host: Host, step: Step) -> str:
    host.do(step)
    return ""


def _wrong(line: TypedLine) -> str:
    """Say what keeps a line from being applied; empty where nothing does."""
    for error in line.errors:
        piece = line.text[error.start : error.end] or "at the end"
        mend = f"; {error.mend}" if error.mend else ""
        return printable(f'"{piece}": {error.message}{mend}')
    for question in line.questions:
        choices = ", ".join(f"{choice.text} ({choice.label})" for choice in question.choices)
        return printable(f"{question.ask} {choices}")
    return ""


def _preview(host: Host, ref: Ref, context: LineContext, text: str) -> list[str]:
    """Say what a line would set, what is wrong with it, and which findings would come and go."""
    shifted = timetable.late(host, ref, text)
    if shifted is not None:
        return [printable(shifted.sentence() if isinstance(shifted, InputError) else shifted.label)]
    line = read_line(text, context)
    said = []
    for piece in line.pieces:
        edit = Edit(piece.path, lookup(context.data, piece.path), piece.value)
        words = moved(edit, field_of(host.desk.files, ref, piece.path))
        said.append(printable(f"{piece.label} {words}"))
    wrong = _wrong(line)
    if wrong:
        return [wrong, *said]
    step = entering(host.desk.files, ref, line)
    if not isinstance(step, Step):
        return [step[0].sentence(), *said]
    if not step.changes:
        return said
    after = host.desk.previewed(step, ref)
    goes = [f"goes: {one.severity}, {message_line(one)}" for one in after.goes]
    comes = [f"comes: {one.severity}, {message_line(one)}" for one in after.comes]
    return ["; ".join(said), *comes, *goes]
