"""Laps from a file: its path is asked for, then the column, with a preview; all of it is one step."""

from pathlib import Path

import attrs

from paddock_tui.desk.edits.entry_line import entering, entry_context
from paddock_tui.entry import LineContext, read_line
from paddock_tui.entry.builtin import LAPS
from paddock_tui.entry.laps import Run
from paddock_tui.entry.tables import ReadTable, laps_of, read_table
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.lap_question import put_laps
from paddock_tui.screens.question import Question
from paddock_tui.store.foreign import foreign_text
from paddock_tui.text import clip, printable

_CELLS = 3
_MOST_COLUMNS = 9


def ask_for_file(host: Host) -> None:
    """Ask for a file of lap times and take one column of it into the session looked at."""
    session = host.place.subject
    context = entry_context(host.desk, session) if session is not None else None
    if session is None or context is None:
        host.board.say("there is no session here that can be read: g, then enter on one")
        return
    if context.no_laps is not None:
        host.board.say("; ".join(context.no_laps))
        return

    def answered(name: str) -> str:
        text = foreign_text(name, Path.cwd())
        table = text if isinstance(text, InputError) else read_table(text)
        if isinstance(table, InputError):
            return printable(table.sentence())
        host.ask(_column(host, session, context, table))
        return ""

    host.ask(Question("file of lap times (its path)", answered, declined="nothing was imported"))


def _column(host: Host, session: Ref, context: LineContext, table: ReadTable) -> Question:
    """Ask which column holds the lap times."""
    likely = table.likely(context.usual_s)

    def chosen(text: str) -> Run | InputError:
        place = text.strip() or str(likely or "")
        if not place.isdecimal() or not 1 <= int(place) <= len(table.columns):
            return InputError(f'"{text}"', f"a number from 1 to {len(table.columns)}")
        return laps_of(table, int(place), context.usual_s)

    def answered(text: str) -> str:
        run = chosen(text)
        if isinstance(run, InputError):
            return printable(run.sentence())
        step = _taking(host, session, context, run)
        if not isinstance(step, Step):
            return printable(step)
        put_laps(host, session, step, host.attempt, None)
        return ""

    def typed(text: str) -> None:
        run = chosen(text)
        said = run.sentence() if isinstance(run, InputError) else _said(run)
        host.board.preview(printable(said), *shown)

    shown = tuple(_shown(table, place) for place in range(min(len(table.columns), _MOST_COLUMNS)))
    first = chosen("")
    lead = first.sentence() if isinstance(first, InputError) else f"{likely}: {_said(first)}"
    words = f"column of the lap times (enter: {likely})" if likely else "column of the lap times"
    return Question(words, answered, typed, declined="nothing was imported", said=(printable(lead), *shown))


def _taking(host: Host, session: Ref, context: LineContext, run: Run) -> Step | str:
    """Make the one step that adds the laps after those that are there."""
    line = read_line(f"{LAPS} {' '.join(str(one.lap) for one in run.laps)}", context)
    if not line.clear:
        return line.errors[0].message if line.errors else "the laps cannot be read"
    step = entering(host.desk.files, session, line)
    if not isinstance(step, Step):
        return step[0].sentence()
    return attrs.evolve(step, label=f"{len(run.laps)} laps imported")


def _said(run: Run) -> str:
    times = ", ".join(str(one.lap) for one in run.laps)
    return f"{len(run.laps)} laps: {times}"


def _shown(table: ReadTable, place: int) -> str:
    column = table.columns[place]
    cells = ", ".join(cell or "-" for cell in column.cells[:_CELLS])
    heading = f" {column.heading}" if column.heading else ""
    return clip(printable(f"{place + 1}{heading}: {cells} ..."), 76)
