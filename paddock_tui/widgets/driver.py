"""The stock terminal driver, mended where a bad link makes it end the program, spin or wait.

- Escape and the key typed after it, in one piece, are two keys; the stock driver makes one of them.
- A byte that is no UTF-8 (line noise, a Latin-1 terminal) becomes a stand-in; the stock driver ends the app.
- End of input, or an error from a terminal that is gone, asks the app to leave; the stock driver spins on it.
- The input thread sleeps until there is something to read and is woken to stop: no ten wake-ups a
  second, and leaving does not take 0.2 s of waiting.
- The terminal is not asked to report focus: each report would have the whole screen sent.
- A key is given to the app's loop as it is, without a task of its own.
- An update does not end with a move of the hidden cursor.

Where the stock driver has changed, `driver_class` says None and the stock one is used.
"""

import contextlib
import os
import re
import select
import selectors
import sys
import termios
from codecs import getincrementaldecoder
from collections.abc import Callable, Iterable, Iterator, Sequence
from threading import Event, Thread
from typing import TYPE_CHECKING, Any

from textual import events
from textual._xterm_parser import XTermParser
from textual.driver import Driver
from textual.message import Message

from paddock_tui.widgets.escapes import Escapes
from paddock_tui.widgets.typed_run import TypedRun, key_of

if TYPE_CHECKING or sys.platform != "win32":
    from textual.drivers.linux_driver import LinuxDriver

HANGUP_CODE = 129
"""Exit code of a shell for a program that a hang-up ended: 128 and the number of SIGHUP."""

_ESCAPE_WAIT = 0.1
"""Seconds after which an escape that nothing follows is the key itself, as the stock driver has it."""

_INTERRUPT = b"\x03"

ANSWER_WITHIN = 1.0
"""Seconds that the loop has to answer after ctrl+c, before the program is left without it."""

_AS_IT_WAS = b"\x1b[?2004l\x1b[?1004l\x1b[?7h\x1b[?25h\x1b[?1049l\x1b[0m\r\n"
"""No pastes, no reports of focus, lines wrapped, a cursor, the screen of before, plain text."""

_HOME = "\x1b[1;1H"
"""What the framework ends each update with, to put a cursor where it wants one."""

_LONG = 16
_RUN = re.compile(r"([^\x00-\x1f\x7f-\x9f]{16,})")

_NEEDED = (
    "_run_input_thread",
    "run_input_thread",
    "start_application_mode",
    "disable_input",
    "process_message",
    "send_message",
    "write",
    "close",
)


class WakingEvent(Event):
    """An event that makes a file descriptor readable as well when it is set."""

    def __init__(self) -> None:
        super().__init__()
        self.awake, self._wake = os.pipe()
        os.set_blocking(self.awake, False)

    def set(self) -> None:
        """Set the event and wake whoever waits for the descriptor."""
        super().set()
        os.write(self._wake, b".")

    def clear(self) -> None:
        """Clear the event and the descriptor."""
        super().clear()
        try:
            os.read(self.awake, 4096)
        except BlockingIOError:
            return


class LinkDriver(LinuxDriver):
    """The stock driver with an input thread of our own."""

    def __init__(self, app: Any, **options: Any) -> None:
        super().__init__(app, **options)
        self.exit_event: WakingEvent = WakingEvent()

    def start_application_mode(self) -> None:
        """Start as the stock driver does, then have focus not reported, and begin on a blank screen."""
        super().start_application_mode()  # type: ignore[no-untyped-call]
        if self._writer_thread is not None:
            self.write("\x1b[?1004l\x1b[0m\x1b[H\x1b[J")
            shown = getattr(self._app, "shown", None)
            if shown is not None:
                shown.cleared()

    def write(self, data: str) -> None:
        """Send it, without the move to the first cell that ends each update: the cursor is hidden."""
        super().write(data.removesuffix(_HOME))

    def send_message(self, message: Message) -> None:
        """Give the app a message, in its loop: a task made there for each key would only do the same."""
        self._loop.call_soon_threadsafe(self._app.post_message, message)

    def _run_input_thread(self) -> None:
        """Have an error in this thread end the app as any other does, instead of printing its traceback."""
        try:
            self.run_input_thread()
        except Exception as error:
            self._app.call_later(self._app._handle_exception, error)

    def run_input_thread(self) -> None:
        """Read, decode and pass on what is typed until told to stop or hung up."""
        parser, escapes = XTermParser(self._debug), Escapes()
        decode = getincrementaldecoder("utf-8")("replace").decode
        with selectors.DefaultSelector() as selector:
            try:
                selector.register(self.fileno, selectors.EVENT_READ)
            except (OSError, ValueError):  # not something that can be waited for
                self._hung_up()
                return
            selector.register(self.exit_event.awake, selectors.EVENT_READ)
            while not self.exit_event.is_set():
                ready = selector.select(_ESCAPE_WAIT if escapes.waits or _waits(parser) else None)
                if any(key.fd == self.fileno for key, _ in ready):
                    data = self._read()
                    if not data:
                        self._hung_up()
                        return
                    if _INTERRUPT in data and not escapes.pasting:
                        self._see_to_answer()
                    pieces = escapes.split(decode(data))
                    self._feed(parser, pieces if escapes.pasting or _waits(parser) else [*runs(pieces)])
                elif not ready:
                    self._feed(parser, [escapes.release()])
                self._pass_on(parser.tick())

    def _feed(self, parser: XTermParser, pieces: Sequence[str] | Sequence[str | TypedRun]) -> None:
        """Have text made into keys; an escape that stands alone is the key itself."""
        for piece in pieces:
            if isinstance(piece, TypedRun):
                self._pass_on([piece])
                continue
            if not piece:
                continue
            if len(piece) > 1 or _waits(parser):
                self._pass_on(parser.feed(piece))
            elif piece == "\x1b":
                self._pass_on([events.Key("escape", piece)])
            elif piece.isascii() and piece.isprintable():
                self._pass_on([events.Key(key_of(piece), piece)])
            else:
                self._pass_on(parser.feed(piece))

    def _read(self) -> bytes:
        try:
            return os.read(self.fileno, 4096)
        except InterruptedError:  # pragma: no cover - Python retries by itself
            return b""
        except OSError:
            return b""

    def _pass_on(self, messages: Iterable[Message]) -> None:
        for message in messages:
            self.process_message(message)

    def _see_to_answer(self) -> None:
        """Have the app left where its loop does not answer for a while; called on ctrl+c."""
        answered = Event()
        stuck = getattr(self._app, "on_stuck", None)
        if stuck is None:
            return
        with contextlib.suppress(RuntimeError):  # the loop has closed: the app is leaving
            self._loop.call_soon_threadsafe(answered.set)
            Thread(target=self._watch_answer, args=(answered, stuck), name="answer", daemon=True).start()

    def _watch_answer(self, answered: Event, stuck: Callable[[Callable[[], None]], None]) -> None:
        if not answered.wait(ANSWER_WITHIN):
            stuck(self.restore_terminal)

    def restore_terminal(self) -> None:
        """Give the terminal back as it was, without the loop; never waits for a link that is frozen."""
        if self.attrs_before is not None:
            with contextlib.suppress(termios.error, OSError):
                termios.tcsetattr(self.fileno, termios.TCSANOW, self.attrs_before)
        if self._file is None:
            return
        with contextlib.suppress(OSError, ValueError):
            out = self._file.fileno()
            if select.select([], [out], [], 0.2)[1]:
                os.write(out, _AS_IT_WAS)

    def _hung_up(self) -> None:
        """Ask the app to leave: from this thread, through its loop."""
        self._app.call_later(self._app.exit, None, HANGUP_CODE)


def runs(pieces: Iterable[str]) -> Iterator[str | TypedRun]:
    """Take long runs of characters, typed ahead or pasted, out of text without escape sequences."""
    for piece in pieces:
        if "\x1b" in piece or len(piece) < _LONG:
            yield piece
            continue
        for part in _RUN.split(piece):
            yield TypedRun(part) if len(part) >= _LONG and _RUN.fullmatch(part) else part


def _waits(parser: XTermParser) -> bool:
    """Return whether the parser has begun a sequence and wants to be asked again soon."""
    return parser._timeout_time is not None


def driver_class() -> type[Driver] | None:
    """Return our driver where the stock one is as it was when this was written; None: use the stock one."""
    try:
        whole = all(callable(getattr(LinuxDriver, name)) for name in _NEEDED)
        fresh = XTermParser(False)
        known = fresh._timeout_time is None and callable(fresh.feed) and callable(fresh.tick)
    except (AttributeError, NameError, TypeError):
        return None
    return LinkDriver if whole and known else None
