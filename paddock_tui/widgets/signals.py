"""Leaving when the link goes: hang-up and termination wait for a thread, not for a loop that may be stuck.

Handlers of the event loop never run while a frozen link blocks the loop's writes. So both signals are
blocked before any thread starts; a thread waits for them, asks the loop to leave, and where it does not,
saves what must be saved itself and ends the process.
"""

import errno
import os
import select
import shutil
import signal
import sys
import threading
from collections.abc import Callable, Sequence
from pathlib import Path

INTERRUPTED = 130
"""Exit code of a shell for a program that ctrl+c ended: 128 and the number of SIGINT."""

SAVED_WITHIN = 2.0
"""Seconds that saving may take where the program is left without its loop."""

LEAVING = (signal.SIGHUP, signal.SIGTERM)


def block() -> frozenset[signal.Signals]:
    """Hold back the signals that mean leaving; return those held. Call before any thread is started.

    A signal that whoever started us has had ignored (as nohup does) stays ignored.
    """
    held = frozenset(number for number in LEAVING if signal.getsignal(number) is not signal.SIG_IGN)
    signal.pthread_sigmask(signal.SIG_BLOCK, held)
    return held


def run_child(command: Sequence[str]) -> int:
    """Run a program that may be ended by signals as usual; return its exit code, below zero for a signal.

    It is looked for in the absolute folders of PATH alone: never in the folder that this was started from.
    Raises OSError where it cannot be started. Blocked signals are inherited, hence not `subprocess`.
    """
    path = os.pathsep.join(one for one in os.get_exec_path() if Path(one).is_absolute())
    program = shutil.which(command[0], path=path)
    if program is None:
        raise FileNotFoundError(errno.ENOENT, "there is no such program", command[0])
    child = os.posix_spawn(Path(program).absolute(), list(command), os.environ, setsigmask=[])
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


class Leaver:
    """Waits for a signal or for the terminal to go, and sees to it that the process leaves.

    `ask` is called in the waiting thread with the signal's number: it hands the wish to the loop
    (`loop.call_soon_threadsafe`) and returns. `save` must be safe to call from any thread, without
    the loop, and twice. The process ends with 128 and the number where the loop has not answered
    within `patience` seconds, or has answered and not finished within `finish` more.
    """

    def __init__(
        self,
        ask: Callable[[int], None],
        save: Callable[[], None],
        patience: float = 0.3,
        finish: float = 0.5,
    ) -> None:
        self._ask = ask
        self._save = save
        self._patience = patience
        self._finish = finish
        self._answered = threading.Event()
        self._finished = threading.Event()
        self._once = threading.Lock()
        self.number: int | None = None

    def start(self, held: frozenset[signal.Signals], terminal: int = 0) -> None:
        """Return start waiting for the signals held back by `block`, and for `terminal` to be gone."""
        if held:
            threading.Thread(target=self._wait, args=(held,), name="signals", daemon=True).start()
        threading.Thread(target=self._watch, args=(terminal,), name="terminal", daemon=True).start()

    def answered(self) -> None:
        """Say from the loop that it is leaving."""
        self._answered.set()

    def finished(self) -> None:
        """Say after the app has ended that nothing is left to do."""
        self._finished.set()

    @property
    def exit_code(self) -> int:
        """128 and the number of the signal that asked to leave; 0 where none did."""
        return 0 if self.number is None else 128 + self.number

    def leave(self, number: int) -> None:
        """Ask the loop to leave; where it does not, save and end the process. Only the first call acts."""
        if not self._once.acquire(blocking=False) or self._finished.is_set():
            return
        self.number = number
        try:
            self._ask(number)
        except RuntimeError:  # the loop has closed already
            self._answered.set()
        if self._finished.wait(self._patience):
            return
        if self._answered.is_set() and self._finished.wait(self._finish):
            return
        try:
            self._save()
        finally:
            os._exit(128 + number)

    def abandon(self, restore: Callable[[], None], status: int = INTERRUPTED) -> None:
        """Save and end the process without the loop, which does not answer; called after ctrl+c."""
        if not self._once.acquire(blocking=False) or self._finished.is_set():
            return
        # In a thread of its own: a disk that does not answer must not keep the process.
        saving = threading.Thread(target=self._save, name="last save", daemon=True)
        saving.start()
        saving.join(SAVED_WITHIN)
        try:
            restore()
        finally:
            os._exit(status)

    def _wait(self, held: frozenset[signal.Signals]) -> None:
        self.leave(int(signal.sigwait(held)))

    def _watch(self, terminal: int) -> None:
        if terminal_gone(terminal):
            self.leave(int(signal.SIGHUP))


def terminal_gone(descriptor: int) -> bool:
    """Wait, without waking up, until a terminal is gone; False where this cannot be watched."""
    if sys.platform == "darwin":  # poll does not serve terminals there (poll(2), from memory)
        return False
    poll = select.poll()
    poll.register(descriptor, 0)
    try:
        events = poll.poll()
    except OSError:
        return False
    return any(event & (select.POLLHUP | select.POLLERR) for _, event in events)
