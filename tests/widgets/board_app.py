"""A small app around a board, as a screen would use it: driven by tests here and at the end of a wire."""

from typing import ClassVar

import attrs
from textual.app import App, ComposeResult
from textual.binding import BindingType

from paddock_tui.pages.rows import Bar, Page, Row, Section
from paddock_tui.widgets import messages
from paddock_tui.widgets.base import QuietScreen, repaint_on_resume
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.sparing import ShownCells


def level(name: str, value: int) -> Row:
    bar = Bar(value / 10, steps=11)
    return Row(name, str(value), "of 0-10", bar=bar, path=("setup", "controls", name), edit=str(value))


NAMES = ("traction", "wheelie", "slide", "throttle", "power", "launch help")


def page(values: dict[str, int], findings: int = 2) -> Page:
    controls = tuple(level(name, value) for name, value in values.items())
    others = tuple(
        Row(f"front {part}", "10 clicks", "of 24", "assumed", path=("setup", part), edit="10")
        for part in ("preload", "rebound", "compression")
    )
    fixed = Row("front ABS", "2", "of 1-4", path=("setup", "abs"), shut="fixed by the riding mode")
    link = Row("tyres", "the second set", kind="link", path=("tyres",))
    found = [("caution", f"Little traction help for a damp track: {values.get('traction')} of 0-10.")]
    found += [("note", "Rear pressure was read six minutes after parking: warm, not hot.")]
    return Page(
        "session 3 · Sat 16 May 10:40 · north loop",
        (Section("controls", (*controls, fixed)), Section("suspension", others), Section("also", (link,))),
        "CARE 1 (0 to answer) · 5 not assessed",
        tuple(Row(words, kind="finding", severity=severity) for severity, words in found[:findings]),
    )


class Bench(QuietScreen[None]):
    """Sets what the board asks for, and notes every message."""

    BINDINGS: ClassVar[list[BindingType]] = [
        ("w", "note('w')"),
        ("q", "app.quit"),
        ("ctrl+z", "app.suspend_process"),
    ]
    AUTO_FOCUS = "Board"

    def __init__(self) -> None:
        super().__init__()
        self.values = dict.fromkeys(NAMES, 4)
        self.heard: list[tuple[object, ...]] = []
        self.board = Board(plain=False)
        self.board.listener = self._hear

    def compose(self) -> ComposeResult:
        yield self.board

    def on_mount(self) -> None:
        self.board.hint("e entry", "w why", "r review", "? help")
        self.board.show(page(self.values))

    def _hear(self, message: messages.BoardMessage) -> None:
        handler = getattr(self, f"on_board_{type(message).__name__.casefold()}", None)
        if handler is not None:
            handler(message)

    def action_note(self, letter: str) -> None:
        self.heard.append(("letter", letter))

    def on_board_digit(self, event: messages.Digit) -> None:
        self.heard.append(("digit", event.row.label, event.text))
        old = self.values[event.row.label]
        self.values[event.row.label] = int(event.text)
        self.board.show(page(self.values))
        self.board.say(f"{event.row.label} {old} -> {event.text}, u undoes")

    def on_board_accepted(self, event: messages.Accepted) -> None:
        self.heard.append(("accepted", event.row.label, event.text))
        if event.text.isdigit():
            self.board.done()
        else:
            self.board.refuse(f"{event.text} is not a number")

    def on_board_stepped(self, event: messages.Stepped) -> None:
        self.heard.append(("stepped", event.row.label, event.by, event.more_help))

    def on_board_cleared(self, event: messages.Cleared) -> None:
        self.heard.append(("cleared", event.row.label))

    def on_board_toggled(self, event: messages.Toggled) -> None:
        self.heard.append(("toggled", event.row.label))

    def on_board_chosen(self, event: messages.Chosen) -> None:
        self.heard.append(("chosen", event.row.label))

    def on_board_answered(self, event: messages.Answered) -> None:
        self.heard.append(("answered", event.text))
        self.board.done()

    def on_board_typed(self, event: messages.Typed) -> None:
        self.board.preview(f"would do: {event.text}")


class BoardApp(App[None]):
    """The bench as an app."""

    ENABLE_COMMAND_PALETTE = False

    def on_mount(self) -> None:
        shown = ShownCells()
        repaint_on_resume(self, shown)
        self.bench = Bench()
        self.bench.share(shown)
        self.push_screen(self.bench)


def without(row_label: str, shown: Page) -> Page:
    """The page without one row."""
    return attrs.evolve(
        shown,
        sections=tuple(
            attrs.evolve(part, rows=tuple(row for row in part.rows if row.label != row_label))
            for part in shown.sections
        ),
    )
