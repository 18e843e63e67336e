"""Laps that are asked about before they are kept: far ones, those of nobody out, a list typed again."""

from collections.abc import Callable

from paddock_tui.desk.debrief.lap_doubts import held_laps, lap_doubts, laps_words, replacing
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.text import printable

Left = Callable[[], None]


def keep_laps(host: Host, session: Ref, step: Step, do: Callable[[Step], None], left: Left | None) -> None:
    """Keep laps with `do`, asking first where they are doubtful; `left` is done where they are not kept."""
    doubts = lap_doubts(host.desk.files, session, step, host.desk.now())
    if not doubts:
        do(step)
        return

    def answered(_: str) -> str:
        do(step)
        return ""

    words = "enter keeps the laps all the same, escape leaves"
    said = tuple(printable(one) for one in doubts)
    host.ask(Question(words, answered, declined="no lap was kept", said=said, left=left, confirms=True))


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
    host.ask(Question(words, answered, declined="no lap was kept", said=said, left=left, offered=False))
