"""What takes a while, worked out in a thread of its own over the garage as it reads at one moment.

An answer stands while the garage is of the generation that it was worked out of, and for the moment that it
was asked for: any other is never shown. Where nobody listens, as in a command, it is worked out at once.
"""

import threading
from collections import deque
from collections.abc import Callable, Hashable
from typing import Any, NamedTuple, TypeVar

from paddock_tui.desk.looking import LooksAt
from paddock_tui.store.aside import Dropped, Snapshot, snapshot

AT_ONCE_S = 0.05
"""Seconds for which an answer is waited for before the page is shown without it."""

MANY_UNREAD = 100
"""More earlier sessions than these are read in a thread of its own, and the page is shown meanwhile."""

AsideAnswer = TypeVar("AsideAnswer")
AsideWork = Callable[[LooksAt], AsideAnswer]


class Reading(NamedTuple):
    """How far the work on an answer has come: so many sessions of so many were read."""

    done: int
    of: int

    def words(self) -> str:
        """Say so."""
        return f"reading {self.done} of {self.of}"


class _Kept(NamedTuple):
    generation: int
    at: Hashable
    found: Any


class _Running:
    """One piece of work in its thread: what it found, or what it failed with."""

    def __init__(self, looks: LooksAt, files: Snapshot, at: Hashable) -> None:
        self.files, self.histories, self.at = files, looks.histories, at
        self.ended = threading.Event()
        self.looks: LooksAt | None = None
        self.found: Any = None
        self.failed: BaseException | None = None


class Answers:
    """Answers by a name for what was asked. All but the work belongs to the thread that made the desk."""

    def __init__(self, desk: LooksAt) -> None:
        self._desk = desk
        self.listener: Callable[[], None] | None = None
        """Called in the thread of the work once there is an answer; without one all is worked out at once."""
        self._kept: dict[Hashable, _Kept] = {}
        self._running: dict[Hashable, _Running] = {}
        self._landed: deque[tuple[Hashable, _Running]] = deque()

    def of(
        self, asked: Hashable, of: int, work: "AsideWork[AsideAnswer]", at: Hashable = None
    ) -> "AsideAnswer | Reading":
        """Return the answer to what is asked, or how far the reading of `of` sessions for it is.

        The work is begun where that is not done. It may rest on nothing but what it is given to look at; `at`
        is the moment that the answer goes by, where it goes by one.
        """
        self.take_over()
        generation = self._desk.files.generation
        known = self._standing(asked, at)
        if known is not None:
            found: AsideAnswer = known.found
            return found
        if self.listener is None:
            found = work(self._desk)
            self._kept[asked] = _Kept(self._desk.files.generation, at, found)
            return found
        # Work for an earlier moment goes on: what it reads is taken over, and the next begins there.
        running = self._running.get(asked)
        if running is not None and running.files.of_generation != generation:
            running.files.dropped = True
            running = None
        if running is None:
            running = self._running[asked] = self._begin(asked, at, work)
            running.ended.wait(AT_ONCE_S)
            self.take_over()
            known = self._standing(asked, at)
            if known is not None:
                again: AsideAnswer = known.found
                return again
        done = running.files.read_of("session") + running.histories.read_later
        return Reading(min(done, of), of)

    @property
    def are_awaited(self) -> bool:
        """Whether some work goes on, or ended and is not taken over yet."""
        return bool(self._running)

    def _standing(self, asked: Hashable, at: Hashable) -> _Kept | None:
        known = self._kept.get(asked)
        stands = known is not None and (known.generation, known.at) == (self._desk.files.generation, at)
        return known if stands else None

    def take_over(self) -> None:
        """Take over what ended, and what was read for it, where the garage is as it was then.

        Raises what the work failed with, unless the garage changed under it.
        """
        while self._landed:
            asked, running = self._landed.popleft()
            if self._running.get(asked) is not running:
                continue
            del self._running[asked]
            if not running.files.agrees_with(self._desk.files):
                continue
            if running.failed is not None:
                raise running.failed
            if running.looks is None:
                continue
            self._kept[asked] = _Kept(running.files.of_generation, running.at, running.found)
            running.files.give_to(self._desk.files)
            self._desk.histories.take(running.looks.histories, self._desk.files)

    def _begin(self, asked: Hashable, at: Hashable, work: "AsideWork[Any]") -> _Running:
        now = self._desk.now()
        files = snapshot(self._desk.files)
        looks = LooksAt(files, lambda: now)
        looks.histories = self._desk.histories.aside()
        running = _Running(looks, files, at)

        def run() -> None:
            to_keep: list[Callable[[], None]] = []
            try:
                running.found = work(looks)
                to_keep = looks.histories.to_keep(files)
                running.looks = looks
            except Dropped:
                pass
            except Exception as error:
                running.failed = error
            self._landed.append((asked, running))
            running.ended.set()
            if self.listener is not None:
                self.listener()
            # From here on the histories may be another thread's: what is kept was put together before.
            for keep in to_keep:
                keep()

        threading.Thread(target=run, name="answer", daemon=True).start()
        return running
