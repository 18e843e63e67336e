"""Laps that are asked about before they are kept: far ones, those of nobody out, a list typed again."""

from collections.abc import Callable

from paddock_tui.desk.debrief.lap_doubts import held_laps, lap_doubts, laps_words, replacing, typed_laps
from paddock_tui.desk.edits.entry_line import entering, entry_context
from paddock_tui.entry import read_line
from paddock_tui.entry.builtin import LAPS
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host, refuse
from paddock_tui.screens.question import Question
from paddock_tui.text import printable

Left = Callable[[], None]


def take_laps(host: Host, text: str, do: Callable[[Step], None]) -> None:
    """Keep a run of laps that was typed or pasted on its row, whole or not at all, with `do`."""
    session = host.place.subject
    context = entry_context(host.desk, session) if session is not None else None
    if session is None or context is None:
        return
    line = read_line(f"{LAPS} {text}", context)
    for error in line.errors:
        refuse(host, f'"{line.text[error.start : error.end]}": {error.message}; {error.mend}')
        return
    step = entering(host.desk.files, session, line) if line.clear else []
    if not isinstance(step, Step):
        refuse(host, step[0].sentence() if step else "write the laps alone")
        return
    row = host.board.cursor_row
    host.board.done()
    left = (lambda: host.board.offer(row, text)) if row is not None else None
    put_laps(host, session, step, do, left)


def put_laps(host: Host, session: Ref, step: Step, do: Callable[[Step], None], left: Left | None) -> None:
    """Keep a list of laps with `do`, asking what is doubtful and whether it takes another's place."""
    if typed_laps(step) and held_laps(host.desk.files, session):
        replace_laps(host, session, step, do, left)
    else:
        keep_laps(host, session, step, do, left)


def keep_laps(host: Host, session: Ref, step: Step, do: Callable[[Step], None], left: Left | None) -> None:
    """Keep laps with `do`, asking first where they are doubtful; `left` is done where they are not kept."""
    doubts = lap_doubts(host.desk, session, step)
    if not doubts:
        do(step)
        return

    def answered(_: str) -> str:
        do(step)
        return ""

    words = "enter saves the laps all the same, escape leaves"
    said = tuple(printable(one) for one in doubts)
    host.ask(Question(words, answered, declined="no lap was saved", said=said, left=left, confirms=True))


def replace_laps(host: Host, session: Ref, step: Step, do: Callable[[Step], None], left: Left | None) -> None:
    """Put a list of laps in place of the one that stands, which is said in the question; "add" adds it."""
    files = host.desk.files
    held = held_laps(files, session)

    def answered(text: str) -> str:
        if text.strip() and not "add".startswith(text.strip().casefold()):
            return "enter alone replaces the laps, add and enter puts these behind them"
        keep_laps(host, session, step if text.strip() else replacing(files, session, step), do, left)
        return ""

    said = (printable(f"{len(held)} laps stand: {laps_words(held)}"),)
    words = "enter replaces them, add adds"
    host.ask(Question(words, answered, declined="no lap was saved", said=said, left=left, offered=False))
