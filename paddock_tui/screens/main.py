"""The one screen: it draws the page of a room on the board, and turns keys and answers into steps."""

from collections.abc import Callable
from contextlib import AbstractContextManager

import attrs
from textual.app import ComposeResult

from paddock_tui.desk import Desk
from paddock_tui.desk.day.afterwards import said_of_times
from paddock_tui.desk.lookup import glance
from paddock_tui.desk.venue_clock import read_here
from paddock_tui.entry.key_repeat import AT_ONCE_S
from paddock_tui.on_demand import Later, soon
from paddock_tui.pages.actions import ActionContext, hints
from paddock_tui.pages.rows import Row, Section
from paddock_tui.records.common import Units
from paddock_tui.records.disputes import CONFLICT
from paddock_tui.records.edits import MISSING, Change, Step, Value
from paddock_tui.records.paths import Path, Ref, spell
from paddock_tui.screens import half_typed
from paddock_tui.screens.actions.editor import problem
from paddock_tui.screens.folds import Folds
from paddock_tui.screens.follower import DeskFollower
from paddock_tui.screens.judged_page import JudgedPage, context_of, judged_page
from paddock_tui.screens.own_settings import OwnSettings
from paddock_tui.screens.panel import SidePanel
from paddock_tui.screens.place import Place, PlaceKey
from paddock_tui.screens.question import Question
from paddock_tui.screens.question_line import QuestionLine
from paddock_tui.screens.registry import ABOUT_SUBJECT, action_of, place_showing, room_of, waits_for_verdict
from paddock_tui.screens.room import Room
from paddock_tui.screens.run_state import RunState
from paddock_tui.screens.subject import session_named
from paddock_tui.text import clip
from paddock_tui.widgets import messages
from paddock_tui.widgets.cursor import Identity, next_open
from paddock_tui.widgets.keeping import KeepingScreen
from paddock_tui.widgets.shown import copied

clearing, field_of, setting = soon("paddock_tui.desk.edits.values", "clearing", "field_of", "setting")
stepping, toggling, value_on = soon("paddock_tui.desk.edits.keys", "stepping", "toggling", "value_on")
chosen, is_whole = soon("paddock_tui.entry.typing_kinds", "chosen", "is_whole")
begun, followed = soon("paddock_tui.screens.digits", "begun", "followed")
asked_before = Later("paddock_tui.desk.edits.taken_out")("asked_before")
deciding = Later("paddock_tui.desk.edits.disputes")("deciding")
keep_laps = Later("paddock_tui.screens.lap_question")("keep_laps")
may_mend = Later("paddock_tui.screens.return_state")("may_mend")
work_ahead = Later("paddock_tui.screens.ahead")("begin")
"""What keys do is loaded once the first page with a verdict stands."""


class MainScreen(KeepingScreen):
    """Shows rooms on one board."""

    def __init__(self, desk: Desk, place: Place | None = None, own: OwnSettings | None = None) -> None:
        super().__init__()
        self.desk = desk
        self.own = own or OwnSettings()
        self.place = place or Place()
        self.state = RunState()
        self.question_line = QuestionLine(self.board)
        self.follower = DeskFollower(self, self.set_interval, self.call_later)
        self._seen: JudgedPage | None = None
        self._done = Step("", ())
        self._back: list[Place] = []
        self.board.listener = self._hear
        self.board.letter = self._letter
        self.board.with_keys = lambda text: self.own.in_text(text, self._seen.quoted if self._seen else ())
        self.board.beside = self._beside
        self._panel = SidePanel(desk)
        self._cursors: dict[PlaceKey, Identity] = {}
        self._ridden_too: set[Ref] = set()
        self._left: tuple[Place, Identity | None, float] | None = None
        self._last_on: dict[tuple[Ref, Path], Value] = {}

    def compose(self) -> ComposeResult:
        """Return the board is all there is."""
        yield self.board

    def is_drawn(self) -> bool:
        """Return whether a page is laid out."""
        return bool(self.board.laid.lines)

    def on_mount(self) -> None:
        """Draw, listen to the desk, and look at the files and the clock from time to time."""
        read_here(self.desk.now)
        self.follower.start()
        self.draw()
        self.board.focus()
        self.board.say(self.own.said)
        half_typed.offer(self, self.question_line)
        self.set_interval(20.0, self.draw)
        self.set_timer(1.0, lambda: work_ahead(self, self.set_timer, lambda: not self._is_reading))

    def on_unmount(self) -> None:
        """Stop listening."""
        self.follower.stop()

    def aside(self, work: Callable[[], object], then: Callable[[], None]) -> None:
        """Do what takes a while in a thread of its own, and then something in the one that draws."""
        self.follower.aside(work, then)

    # What is shown.

    def context(self) -> ActionContext:
        """Return what actions look at to tell whether they can act."""
        judged = self._seen.review if self._seen is not None else None
        return context_of(self.desk, self.place, self.board.cursor_row, judged)

    @property
    def _room(self) -> Room:
        return room_of(self.place.room)

    def draw(self) -> None:
        """Make the page anew and show it; the board sends only what changed.

        What shows without a mark is on disk.
        """
        self.desk.take_over()
        self.state.of(Folds).fit(*self.app.size)
        with self.desk.files.once.each():
            self._seen = judged_page(self.desk, self.place, self.context(), self.state, self.own.actions)
        self.place = self._seen.place
        self.desk.watch(self._seen.shows)
        self.board.show(self.follower.with_marks(self._seen.page))
        self.board.hint(*hints(self.own.actions, self.context()))
        if self.keeps and not self._is_reading:
            self.go_on()

    def _wait(self, what: str, act: Callable[[], object]) -> bool:
        """Keep what rests on a verdict until there is one; whether it waits."""
        if self._is_reading:
            self.keep(act, what)
        return self._is_reading

    @property
    def _is_reading(self) -> bool:
        return self._seen is not None and self._seen.is_reading

    def _beside(self, row: Row | None) -> tuple[Section, ...] | None:
        """Return what stands beside a row on a wide screen."""
        if self._seen is None or self._is_reading or not self._room.panel:
            return None
        return self._panel.beside(self._seen.review, row, self._seen.page)

    def go(self, place: Place, row: Identity | None = None) -> None:
        """Go to another place: to a row of it, else to where the cursor stood there, else to its top."""
        if not room_of(place.room).unjudged and self._wait(f"page {place.room}", lambda: self.go(place, row)):
            return
        if room_of(place.room).stands_alone and self._room.stands_alone and self._back:
            self.place = self._back.pop()
        if place.key != self.place.key:
            self._back.append(self.place)
        self._arrive(place, row)

    def jump(self, ref: Ref, path: Path) -> None:
        """Go to the row of a value, in the room that shows it."""
        self.go(place_showing(self.place, ref, path), (str(ref), *path, ""))

    def open(self, ref: Ref) -> None:
        """Go to the room of a record: sessions and profiles have rooms of their own."""
        self.go(place_showing(self.place, ref, ()))

    def _arrive(self, place: Place, row: Identity | None = None) -> None:
        if self.board.cursor_row is not None:
            self._cursors[self.place.key] = self.board.cursor_row.identity
        if place.key != self.place.key:
            self.state.of(Folds).forget(place.key)
            # A filter is about the page that it was typed on: elsewhere it would hide what was asked for.
            self.board.filter("")
        self.place = place
        self.draw()
        wanted = row or self._cursors.get(self.place.key)
        if wanted is None or not self.board.go(wanted):
            self.board.top()
        self.board.hint(*hints(self.own.actions, self.context()))

    # Steps.

    def ask(self, question: Question) -> None:
        """Ask for an answer in the last line."""
        self.question_line.ask(question)

    def units(self, ref: Ref | None) -> Units:
        """Return the units of bare numbers on a record: its rider's, else the garage's."""
        rider = self.desk.files.data(ref).get("rider") if ref is not None else None
        return self.desk.units(rider if isinstance(rider, str) else None)

    def set_text(self, ref: Ref, path: Path, text: str) -> str:
        """Set a value from text; gives what is wrong with it, or nothing."""
        step = setting(self.desk.files, ref, [(spell(path), text)], self.units(ref), of_row=True)
        if not isinstance(step, Step):
            wrong: str = step[0].sentence()
            return wrong
        row = self.board.cursor_row if self.board.is_typing else None
        self.board.done()
        left = (lambda: self.board.offer(row, text)) if row is not None else None
        keep_laps(self, ref, step, lambda step: self.attempt(step, left), left)
        return ""

    def attempt(self, step: Step | str, left: Callable[[], None] | None = None) -> None:
        """Do a step, asking first where it changes what is known of a session that was ridden.

        `left` is done where the rider does not want that.
        """
        if isinstance(step, str):
            self.board.say(step)
            return
        with self.desk.files.once.each():
            step = said_of_times(self.desk.files, step, self.desk.now(), in_doubt=self.desk.clock_in_doubt)
            ridden = [one.ref for one in step.changes if isinstance(one, Change) and self._asks(one)]
            words = asked_before(self.desk.files, step, ridden=bool(ridden))
        if not words:
            self.do(step)
            return

        def answered(_: str) -> str:
            self._ridden_too.update(ridden)
            self.do(step)
            return ""

        self.ask(Question(words, answered, declined="nothing was changed", left=left, confirms=True))

    def do(self, step: Step) -> None:
        """Do a step and say so."""
        self.desk.do(step)
        self.draw()
        self._done = step
        self.say_done()

    def say_done(self) -> None:
        """Say what was done last, and with which key it is undone on the row under the cursor."""
        row, step = self.board.cursor_row, self._done
        alt = "alt+" if row is not None and row.takes_letters else ""
        undoes = f", {alt}u undoes" if step.changes else ""
        self.board.say(f"{clip(step.label, max(self.size.width - len(undoes), 12))}{undoes}")

    def _asks(self, change: Change) -> bool:
        unasked = change.ref in self._ridden_too or may_mend(self, change)
        if change.ref.kind != "session" or unasked:
            return False
        seen = glance(change.ref, self.desk.files.data(change.ref))
        return seen is not None and seen.ridden and any(edit.old is not MISSING for edit in change.edits)

    # Keys.

    def _hear(self, message: messages.BoardMessage) -> None:
        """Do what the board asks for, before the next key: the room is asked first."""
        self.desk.take_over()
        if self.keeps:
            self.keep(lambda: self._hear(message))
            return
        heard = isinstance(message, messages.RowMessage) and self._room.hears(self, message)
        if heard or self.question_line.hears(message):
            return
        getattr(self, f"on_board_{type(message).__name__.casefold()}")(message)

    def _letter(self, key: str) -> bool:
        """Do what a key stands for that the board has no use for; whether it stands for something."""
        self.desk.take_over()
        if self.keeps:
            self.keep(lambda: self._letter(key))
            return True
        if self._room.letters(self, key):
            return True
        left, self._left = self._left, None
        if key == "escape":
            self.back()
        elif key in self.own.letters:
            if left is not None and self.board.pressed_at - left[2] < AT_ONCE_S:
                # Alt and a letter send escape and the letter in one piece: meant here, not behind.
                self.go(left[0], left[1])
            self.act(self.own.letters[key])
        return key == "escape" or key in self.own.letters

    def act(self, name: str) -> None:
        """Do an action by its id as it is meant in this room, or say why it cannot act."""
        if self.board.is_typing:
            return
        action = action_of(name)
        if waits_for_verdict(name) and self._wait(action.label, lambda: self.act(name)):
            return
        named = session_named(self.board.cursor_row)
        if named is not None and name in ABOUT_SUBJECT and not self._room.names_subject:
            self.place = attrs.evolve(self.place, subject=named)
        off = action.why_off(self.context())
        if off:
            self.board.say(off)
        else:
            self._room.own.get(name, action.do)(self)

    def back(self) -> None:
        """Go back from a page that stands by itself; elsewhere a split arrow key must do nothing."""
        if self._back and (self._room.stands_alone or self._room.escapes):
            row = self.board.cursor_row
            self._left = self.place, row.identity if row is not None else None, self.board.pressed_at
            self._arrive(self._back.pop())

    def suspended(self) -> AbstractContextManager[None]:
        """Give the terminal to another program for a while."""
        return self.app.suspend()

    def copy(self, whole: bool) -> None:
        """Give the terminal the row or the page that is shown, where the settings allow it."""
        self.board.say(copied(self.app, self.board, whole, self.own.settings.copy))

    def leave(self, status: int) -> None:
        """End the program."""
        self.app.exit(return_code=status)

    def on_board_accepted(self, message: messages.Accepted) -> None:
        """Keep what was typed on a row, and where that was open go on to the next one that is."""
        self._keep_and_go_on(message.row, message.text)

    def _keep_and_go_on(self, row: Row, text: str) -> None:
        if not self._keep(row, text) or row.known or not text.strip():
            return
        rows = self.board.page.rows()
        at = next((place for place, one in enumerate(rows) if one.identity == row.identity), len(rows))
        if (to := next_open(self.board.page, at)) is not None:
            self.board.go(rows[to].identity)
            self.say_done()

    def _keep(self, row: Row, text: str) -> bool:
        """Keep what was typed on a row, or say what is wrong with it; whether nothing is asked any more."""
        if row.ref is None or not row.path:
            self.board.done()
            return False
        wrong = self.set_text(row.ref, row.path, chosen(row.choices, text))
        if wrong and self.board.is_typing:
            self.board.refuse(wrong)
        elif wrong:
            self.board.say(wrong)
        return not self.board.is_typing

    def on_board_editing(self, message: messages.Editing) -> None:
        """Keep what has a fixed length once it is whole; what else is typed is read once enter keeps it."""
        followed(self, message.row, message.text, self._keep_whole)

    def _keep_whole(self, row: Row, text: str) -> None:
        """Keep what was whole by itself; what has a fixed length goes on, a level stays to be looked at."""
        keep = self._keep_and_go_on if row.typing == "score" or is_whole(row.typing, text) else self._keep
        keep(row, text)

    def on_board_stepped(self, message: messages.Stepped) -> None:
        """Step the value under the cursor."""
        row = message.row
        if row.ref is not None and row.kind == "field":
            sizes = self.own.settings.steps
            self.attempt(stepping(self.desk.files, row.ref, row.path, message.by, message.more_help, sizes))

    def on_board_toggled(self, message: messages.Toggled) -> None:
        """Toggle the value under the cursor."""
        row = message.row
        if row.ref is None or row.kind != "field":
            return
        on = value_on(self.desk.files, row.ref, row.path)
        step = toggling(self.desk.files, row.ref, row.path, self._last_on)
        if on is not None:
            self._last_on[row.ref, row.path] = on
        self.attempt(step)

    def on_board_cleared(self, message: messages.Cleared) -> None:
        """Clear the value under the cursor to 'not known'."""
        row = message.row
        if row.ref is not None and row.kind == "field":
            step = clearing(self.desk.files, row.ref, row.path)
            self.attempt(step if step.changes else f"{row.label} is not known already")

    def on_board_digit(self, message: messages.Digit) -> None:
        """Set a digit at once where it is the whole answer; else start the editor with it."""
        row = message.row
        if row.ref is None or row.kind != "field":
            return
        field = field_of(self.desk.files, row.ref, row.path)
        begun(self, row, field.shape if field is not None else None, message.text, self._keep_whole)

    def on_board_chosen(self, message: messages.Chosen) -> None:
        """Open what a row names, add where it says so, or go to the row that a finding is about."""
        row = message.row
        if row.kind == "add":
            self.act("new")
        elif row.file:
            problem(self, row)
        elif row.opens is not None:
            self.open(row.opens)
        elif row.path[:1] == (CONFLICT,) and row.kind == "link" and row.ref is not None:
            step = deciding(self.desk.files, row.ref, *row.path[1:])
            self.attempt(step if isinstance(step, Step) else step.sentence())
        elif row.ref is not None and row.path:
            self.jump(row.ref, row.path)
        elif row.working:
            self.act("why")
        else:
            self.board.say("nothing opens here: w says what the row is")

    def on_board_moved(self, _: messages.Moved) -> None:
        """Tell again which keys act: some depend on the row."""
        self.board.hint(*hints(self.own.actions, self.context()))
