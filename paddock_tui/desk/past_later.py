"""Earlier sessions of a bike that are read when something of them is asked for, with those beside them."""

import threading
from collections.abc import Iterable

from paddock_tui.facts.past import PastSession
from paddock_tui.facts.unread_past import InShort, UnreadSession
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.later import LaterFiles

_MOST_AT_ONCE = 128


class PastLater:
    """The sessions of a bike that were not read, in their order. Whoever asks, in any thread, waits for it.

    Who asks for one after the other goes through all: the further they went, the more are read at once.
    """

    def __init__(self, files: LaterFiles, bike: str, known: Iterable[InShort]) -> None:
        self._files, self.bike = files, bike
        self._lock = threading.RLock()
        self._named: dict[Ref, Record | None] = {}
        self._done: set[int] = set()
        self._last, self._run = -2, 0
        self.sessions = UnreadSession.several(known, self._whole)
        self.places = {one.id: place for place, one in enumerate(self.sessions)}

    @property
    def read(self) -> int:
        """How many of them were read."""
        return len(self._done)

    def past(self, name: str) -> UnreadSession | None:
        """Return a session by its id; None where it is not among them."""
        at = self.places.get(name)
        return self.sessions[at] if at is not None else None

    def tyre_set(self, name: str) -> TyreSet | None:
        """Read a tyre set; None where it cannot be read by now."""
        with self._lock:
            found = self._record(Ref("tyres", name))
        return found if isinstance(found, TyreSet) else None

    def record(self, ref: Ref) -> Record | None:
        """Return any record that was not read, without what it names; None where it cannot be read by now."""
        with self._lock:
            at = self.places.get(ref.id, -1) if ref.kind == "session" else -1
            return self.sessions[at].session if at in self._done else self._record(ref)

    def _whole(self, name: str) -> PastSession:
        with self._lock:
            at = self.places[name]
            step = at - self._last
            self._run = self._run + 1 if abs(step) == 1 else 0
            wanted = self._next(at, step, min(1 << self._run, _MOST_AT_ONCE))
            refs = [Ref("session", self.sessions[place].id) for place in wanted]
            unread = [ref for ref in refs if ref not in self._named]
            read = dict(zip(unread, self._files.records(unread), strict=True))
            found = [read[ref] if ref in read else self._named.pop(ref) for ref in refs]
            wholes = {
                place: self._past(self.sessions[place], record)
                for place, record in zip(wanted, found, strict=True)
            }
            for place, whole in wholes.items():
                self.sessions[place].fill(whole)
            self._done.update(wholes)
            self._last = wanted[-1]
        return wholes[at]

    def _next(self, at: int, step: int, count: int) -> list[int]:
        """List the sessions to be read from one on, this way or that, up to one that was read."""
        way = -1 if step == -1 else 1
        found = [at]
        for place in range(at + way, at + way * count, way):
            if not 0 <= place < len(self.sessions) or place in self._done:
                break
            found.append(place)
        return found

    def _past(self, one: UnreadSession, record: Record | None) -> PastSession:
        session = record if isinstance(record, Session) else self._as_known(one)
        return PastSession.of(one.id, session, self._record)

    def _as_known(self, one: UnreadSession) -> Session:
        """Return what is known of a session whose file is another by now: who looks at the files finds it."""
        return Session(date=one.date, bike=self.bike, rider=one.rider, tyres=one.tyres)

    def _record(self, ref: Ref) -> Record | None:
        if ref not in self._named:
            self._named[ref] = self._files.records([ref])[0]
        return self._named[ref]
