"""The board: one widget that draws all rows of a page, keeps its own cursor and its own editor."""

from collections.abc import Callable

import attrs
from textual import events

from paddock_tui.pages.layout import Editor, Prompt
from paddock_tui.pages.rows import FOLD, Page, Row
from paddock_tui.widgets import look, messages
from paddock_tui.widgets.cursor import Identity, filtered, found, moved, named, stops, told
from paddock_tui.widgets.drawn import DrawnPage
from paddock_tui.widgets.editing import pressed, starting, typed
from paddock_tui.widgets.encoding import ascii_only
from paddock_tui.widgets.opened import OpenedSections
from paddock_tui.widgets.row_keys import AfterDigits, Escaped, asked_of, goes_on, letter_on
from paddock_tui.widgets.typed_run import PASTE_LASTS, TYPED_AHEAD, TypedRun, key_of


class Board(DrawnPage, can_focus=True):
    """Draws a page, moves over its rows, and says what was asked of them to its `listener`.

    Only cells that changed are sent. Each key is done with before the next one; letters
    go to `letter`, or on to the screen's bindings, unless something is being typed.
    """

    ALLOW_SELECT = False
    DEFAULT_CSS = look.CSS

    def __init__(self, *, plain: bool | None = None, name: str | None = None) -> None:
        """Make an empty board; `plain` draws in ASCII alone (default: as the output's encoding asks)."""
        super().__init__(plain=ascii_only() if plain is None else plain, name=name)
        self._whole = self._filtered = self._page
        self._opened = OpenedSections()
        self._words = ""
        self._identity: Identity | None = None
        self._drafts: dict[Identity, str] = {}
        self._said_before_key = False
        self._stays = False
        self._waiting = ""
        self._pasted_until = 0.0
        self._escaped = Escaped()
        self._after = AfterDigits()
        self.pressed_at = 0.0
        """When the last key came, in s of the clock that events carry."""
        self.listener: Callable[[messages.BoardMessage], None] = lambda _: None
        """Hears messages at once, before the next key: keys that were typed ahead, or come in one piece over
        a slow link, must find the page and the editor that the ones before them brought."""
        self.with_keys: Callable[[str], str] = str
        """Writes a message with the keys that actions have here."""
        self.letter: Callable[[str], bool] = lambda _: False
        """Acts on a key that means nothing to the board, as soon; whether it did."""

    @property
    def is_typing(self) -> bool:
        """Whether an editor or a question is open."""
        return self._view.editor is not None or self._view.prompt is not None

    @property
    def has_second(self) -> bool:
        """Whether a digit is being typed that a second one may follow, or has followed."""
        return self._view.editor is not None and self._view.editor.second

    @property
    def half_typed(self) -> tuple[Row | None, str] | None:
        """What is being typed and not yet kept: the row (None: the question) and the text."""
        if self._view.prompt:
            return None, self._view.prompt.editor.text
        return (self.cursor_row, self._view.editor.text) if self._view.editor else None

    @property
    def page(self) -> Page:
        """The page shown, without the rows that the filter hides, and with those that are folded away."""
        return self._filtered

    @property
    def drawn(self) -> Page:
        """The page as it is drawn."""
        return self._page

    def show(self, page: Page) -> None:
        """Show a page; the cursor stays on its row, and so does what is being typed there."""
        self._whole = page
        words = self._words
        self._filtered = told(filtered(page, words), words) if words.strip() else page
        self._page = self._opened.shown(self._filtered)
        self._place(found(self._page, self._identity, self._view.cursor))
        self._fade()
        self.relay()

    def filter(self, words: str) -> None:
        """Show only the rows that hold every one of these words, the cursor on the likeliest; all without."""
        before, self._words = self._words, words
        if not (before.strip() or words.strip()):
            return
        self.show(self._whole)
        if words.strip() and (likely := named(self._page, words)) is not None:
            self._place(likely)
            self.relay()

    def top(self) -> None:
        """Put the cursor on the first row that it stops at."""
        self._place(next(iter(stops(self._page)), None))
        self.relay()

    def go(self, identity: Identity) -> bool:
        """Put the cursor on a row; False where the page has none of this identity."""
        if self._opened.open_for(self._filtered, identity):
            self.show(self._whole)
        at = found(self._page, identity, None)
        if at is None or self._page.rows()[at].identity != identity:
            return False
        self._place(at)
        self.relay()
        return True

    def say(self, text: str, *, stays: bool = False) -> None:
        """Say something in the last line until the next key; what `stays` no note replaces until then."""
        self._said_before_key, self._stays, self._waiting = False, stays, ""
        self.change(last=self.with_keys(text))

    def note(self, text: str) -> None:
        """Say what no key asked for; behind something that stays it waits for the next key."""
        if self._stays:
            self._waiting = text
        else:
            self.say(text)

    def hint(self, *hints: str) -> None:
        """Say which keys act, at the right of the last line; the first are dropped first."""
        self.change(hints=hints)

    def edit(self, text: str = "", *, second: bool = False) -> None:
        """Open the editor of the cursor's row: with this text, else what was left there or is its own.

        Typing replaces the latter. `second`: a second digit may follow; any other key accepts the first."""
        row = self.cursor_row
        if row is None:
            return
        if row.shut:
            self.say(row.shut)
            return
        left = text or self._drafts.get(row.identity, row.edit)
        self.change(editor=starting(left, offered=not text, second=second), prompt=None)

    def ask(self, label: str, text: str = "", *, offered: bool = False) -> None:
        """Ask for a line of text in the last line; a text that is `offered` is replaced by typing."""
        self.change(prompt=Prompt(self.with_keys(label), starting(text, offered=offered)), editor=None)

    def answer(self, text: str) -> None:
        """Put text in place of what is being typed in answer to the question."""
        if self._view.prompt:
            self._typing(starting(text))

    def preview(self, *lines: str) -> None:
        """Say above the question what its answer would do."""
        if self._view.prompt:
            self.change(prompt=attrs.evolve(self._view.prompt, more=tuple(map(self.with_keys, lines))))

    def refuse(self, why: str) -> None:
        """Keep open what is being typed and say what is wrong with it."""
        why = self.with_keys(why)
        if self._view.prompt:
            self._typing(attrs.evolve(self._view.prompt.editor, error=why))
        elif self._view.editor:
            self._typing(attrs.evolve(self._view.editor, error=why))

    def offer(self, row: Row, text: str) -> None:
        """Keep text for the next time that a row's editor opens, as leaving the editor does."""
        self._drafts[row.identity] = text

    def done(self) -> None:
        """Close the editor or the question: its text was taken."""
        if self._view.editor and (row := self.cursor_row):
            self._drafts.pop(row.identity, None)
        self.change(editor=None, prompt=None)

    def on_key(self, event: events.Key) -> None:
        """Take the keys that mean something here; leave all others to the screen."""
        self._said_before_key, self._stays = bool(self._view.last), False
        self.pressed_at = event.time
        before = self.cursor_row, (self.half_typed or (None, ""))[1]
        if self.has_second and not goes_on(event.key, event.character or ""):
            taken = self._ended(event)
        elif self._goes_on_with_unit(event.character or ""):
            taken = True
        else:
            taken = self._key_in_text(event) if self.is_typing else self._key_outside(event)
        self._after.note(event.character or "", before, self._identity, typing=self.is_typing)
        if not taken and event.key == "ctrl+c":
            self.say("ctrl+c leaves nothing: q leaves paddock-tui")
            taken = True
        if taken:
            event.stop()
            event.prevent_default()

    def on_paste(self, event: events.Paste) -> None:
        """Put pasted text into what is being typed, opening the row's editor for it."""
        event.stop()
        editor = self._view.prompt.editor if self._view.prompt else self._view.editor
        if editor:
            self._typing(typed(editor, event.text))
        elif (row := self.cursor_row) and row.kind in ("field", "ask"):
            self.edit(typed(Editor(), event.text).text)
            if self._view.editor:
                self.listener(messages.Editing(row, self._view.editor.text))

    def on_typed_run(self, event: TypedRun) -> None:
        """Take many characters that came at once: into a question as a whole, elsewhere key by key.

        A row's editor may go on to the next row after any key. What is too long to have been typed is put
        into the editor that is open as it is, and where there is none it is pasted text that no row takes.
        """
        event.stop()
        pasted = len(event.text) > TYPED_AHEAD or event.time < self._pasted_until
        for place, character in enumerate(event.text):
            editor = self._view.prompt.editor if self._view.prompt else self._view.editor
            if editor and (self._view.prompt or pasted):
                self._typing(typed(editor, event.text[place:]))
                return
            if pasted:
                self._pasted_until = event.time + PASTE_LASTS
                self.say("pasted text: open a row or the entry line first, and paste it there")
                return
            self.on_key(events.Key(key_of(character), character))

    def _goes_on_with_unit(self, character: str) -> bool:
        """Take a unit behind digits that were whole: it is text, so their row is opened again with it."""
        found = None if self.is_typing else self._after.with_unit(self._page, character)
        if found is None:
            return False
        self.go(found[0])
        self.edit(found[1])
        return True

    def _key_outside(self, event: events.Key) -> bool:
        """Take a key while nothing is typed. On a row that takes letters a command is escape and a letter."""
        row, character = self.cursor_row, event.character or ""
        takes = row is not None and row.takes_letters
        part = self._escaped.part(event.key, character, arms=takes)
        if part == "command":
            self._fade()
            self.relay()
            return self.letter(event.key)
        if part == "armed":
            self.say("now a letter is a command, as with alt; escape again goes back")
        typed_or_answered = not part and row is not None and takes and self._letter_on_row(row, character)
        return bool(part) or typed_or_answered or self._key_on_row(event) or self.letter(event.key)

    def _letter_on_row(self, row: Row, character: str) -> bool:
        """Begin the text of a row with a letter or a sign, or answer yes or no with it."""
        meant = letter_on(row, character)
        if meant == "types":
            self._fade()
            self.edit(character)
            if self._view.editor:
                self.listener(messages.Editing(row, character))
        elif meant == "neither":
            self.say("yes or no: y, n or space; alt and a letter is a command")
        elif meant:
            self.listener(messages.Accepted(row, meant))
        return bool(meant)

    def _key_in_text(self, event: events.Key) -> bool:
        editor = self._view.prompt.editor if self._view.prompt else self._view.editor
        assert editor is not None
        if event.key == "enter":
            row = self.cursor_row
            if self._view.prompt:
                self.listener(messages.Answered(editor.text))
            elif row:
                self.listener(messages.Accepted(row, editor.text))
        elif event.key == "escape":
            self._leave(editor)
        elif event.key == "ctrl+c":
            self.say("escape leaves the editor")
        elif after := pressed(editor, event.key, event.character):
            self._typing(after)
        else:
            return self._move_in_text(event, editor)
        return True

    def _move_in_text(self, event: events.Key, editor: Editor) -> bool:
        if self._view.prompt and event.key == "tab":
            self.listener(messages.Completed(editor.text))
        elif event.key in ("up", "down") and self._view.prompt:
            self.listener(messages.Recalled(-1 if event.key == "up" else 1))
        elif event.key in ("up", "down"):
            self._move_on(event, editor)
        else:
            return event.key in ("pageup", "pagedown", "tab", "shift+tab")
        return True

    def _ended(self, event: events.Key) -> bool:
        """Accept the digit that no second one followed, and do what the key means on the row."""
        row, editor = self.cursor_row, self._view.editor
        if row and editor:
            self.listener(messages.Accepted(row, editor.text))
        if self.is_typing:
            return True
        if row and editor:
            self.go(row.identity)
            self._after.digits = row.identity, editor.text
        return self._goes_on_with_unit(event.character or "") or self._key_outside(event)

    def _move_on(self, event: events.Key, editor: Editor) -> None:
        """Accept what was typed where it is complete, and move by a row from there."""
        row = self.cursor_row
        if row is None:
            return
        if editor.offered or not editor.text.strip() or editor.text == row.edit:
            self._leave(editor)
        else:
            self.listener(messages.Accepted(row, editor.text))
            if self.is_typing:
                return
            self.go(row.identity)
        self._key_on_row(event)

    def _leave(self, editor: Editor) -> None:
        if self._view.prompt:
            self.change(prompt=None)
            self.listener(messages.Declined(editor.text))
            return
        if (row := self.cursor_row) and editor.text != row.edit:
            self._drafts[row.identity] = editor.text
        self.change(editor=None)

    def _key_on_row(self, event: events.Key) -> bool:
        row, at = self.cursor_row, self._view.cursor
        if row is None or at is None:
            return False
        to = moved(self._page, at, event.key, self.laid.body)
        if to is not None:
            self._fade()
            opened, by_row = self._view.opened, event.key in ("up", "down")
            self._place(to)
            if by_row:
                self.leave_open(at if opened is None else opened)
            if event.key in ("tab", "shift+tab") and self._opened.peek(self._whole, self.cursor_row):
                self.show(self._whole)
            self.relay()
            if to != at and (row := self.cursor_row):
                self.listener(messages.Moved(row))
            return True
        if event.key == "enter":
            self._enter(row)
            return True
        asked = asked_of(row, event.key, event.character or "")
        if asked is None:
            # A letter acts on the screen, and what was said before it is over.
            self._fade()
            self.relay()
            return False
        if row.shut:
            self.say(row.shut)
        else:
            self.listener(asked)
        return True

    def _enter(self, row: Row) -> None:
        """Open or fold a section, type on a row with a value, or ask for what opens elsewhere."""
        if row.kind == FOLD:
            self._opened.toggle(self._whole, row)
            self.show(self._whole)
        elif row.opens or row.kind != "field":
            self.listener(messages.Chosen(row))
        elif not self._after.is_done(self._identity):
            self.edit()

    def _place(self, at: int | None) -> None:
        """Put the cursor on a row by number; an editor whose row is gone leaves its text to be offered."""
        editor, before = self._view.editor, self._identity
        self._view = attrs.evolve(self._view, cursor=at, opened=None)
        row = self.cursor_row
        self._identity = row.identity if row else None
        if editor and self._identity != before:
            if before is not None:
                self._drafts[before] = editor.text
            self._view = attrs.evolve(self._view, editor=None)

    def _typing(self, editor: Editor) -> None:
        if not self._view.prompt:
            changed = self._view.editor is None or editor.text != self._view.editor.text
            self.change(editor=editor)
            if changed and (row := self.cursor_row):
                self.listener(messages.Editing(row, editor.text))
            return
        changed = editor.text != self._view.prompt.editor.text
        self.change(prompt=attrs.evolve(self._view.prompt, editor=editor))
        if changed:
            self.listener(messages.Typed(editor.text))

    def _fade(self) -> None:
        if self._said_before_key:
            self._said_before_key = False
            self._view = attrs.evolve(self._view, last=self._waiting)
            self._waiting = ""
