"""The desk: one garage in hand, what is reviewed, done, undone, and told when something changes."""

import datetime as dt
from collections import Counter, deque
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from pathlib import Path as FilePath

import attrs

from paddock_tui.advice.history import About
from paddock_tui.desk.assembling import Assembled, assemble
from paddock_tui.desk.finding import session_in_hand
from paddock_tui.desk.history import Histories
from paddock_tui.desk.mending import Preview, compared
from paddock_tui.facts import Situation
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING, Change, Step
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.rules import Review, review
from paddock_tui.store.data import after, blocked
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.keeping import Kept, NotKept, Outcome, keep


@attrs.frozen
class Told:
    """What the desk tells those who listen: the records that may read differently now, and an outcome."""

    refs: tuple[Ref, ...]
    outcome: Outcome | None = None
    step: Step | None = None


@attrs.define(eq=False)
class _Done:
    """A step of this run: as it was done, and once it is kept the step that takes it back.

    Of an undo or a redo: what it takes back, and the place in the history from which that was taken.
    """

    step: Step
    outcome: Outcome | None = None
    of: "_Done | None" = None
    came_from: "tuple[list[_Done], int] | None" = None


@attrs.frozen
class _Landed:
    """What the writer thread hands back: a step that is kept, or is known not to be."""

    done: _Done
    refs: tuple[Ref, ...]
    outcome: Outcome


class Desk:
    """One garage in hand. Edits show at once and are written by one thread, in the order they were made.

    All methods belong to the thread that made the desk; listeners may be called from the writer's.
    """

    def __init__(self, root: FilePath, now: Callable[[], dt.datetime] = dt.datetime.now) -> None:
        self._files = GarageFiles(root)
        self._histories = Histories()
        self.now = now
        self.on_change: list[Callable[[Told], None]] = []
        self._done: list[_Done] = []
        self._undone: list[_Done] = []
        self._writer = ThreadPoolExecutor(max_workers=1, thread_name_prefix="keep")
        self._running: list[Future[None]] = []
        self._landed: deque[_Landed] = deque()
        self._pending: Counter[Ref] = Counter()
        self._outcomes: deque[Outcome] = deque(maxlen=1000)

    @property
    def root(self) -> FilePath:
        """The folder of the garage."""
        return self._files.root

    @property
    def files(self) -> GarageFiles:
        """The files of the garage, edits that are not on disk yet included."""
        self._land()
        return self._files

    def session_in_hand(self) -> Ref | None:
        """Give the session that everything is about when nobody says otherwise."""
        return session_in_hand(self.files, self.now())

    def assembled(self, ref: Ref, going_out: bool = False) -> Assembled:
        """Give the situation of a session or a profile, with what could not be read."""
        return assemble(self.files, ref, self.now(), going_out, self._histories)

    def about(self, ref: Ref | None, assembled: Assembled | None = None) -> About:
        """Give what advice may look at: a situation, this bike's sessions before it, the rider's units."""
        if ref is None:
            return About(Situation(now=self.now()), units=self.units())
        situation = (assembled or self.assembled(ref)).situation
        rider = situation.refs.get("rider")
        units = self.units(rider.id if rider is not None else None)
        return About(situation, situation.history, units)

    def review(self, ref: Ref | None = None, going_out: bool = False) -> Review:
        """Judge a session (the one in hand) or a profile, whole."""
        about = ref or self.session_in_hand()
        if about is None:
            return Review(about_a_session=False)
        return review(self.assembled(about, going_out).situation)

    def units(self, rider: str | None = None) -> Units:
        """Give the units of bare numbers: a rider's own where they have some, over the garage's."""
        own = Units()
        loaded = self.files.read(Ref("rider", rider)) if rider is not None else None
        if loaded is not None and isinstance(loaded.record, Rider):
            own = loaded.record.units
        base = self.files.garage().units
        return Units(*(getattr(own, one.name) or getattr(base, one.name) for one in attrs.fields(Units)))

    def previewed(self, step: Step, subject: Ref, before: Review | None = None) -> Preview:
        """Tell what a step would do to the review of a session or profile; nothing is changed.

        `before` is the review as it is, where it is at hand.
        """
        files, now = self.files.aside(), self.now()
        if before is None:
            before = review(assemble(files, subject, now, histories=self._histories).situation)
        _stage(files, step)
        after_ = assemble(files, subject, now, histories=self._histories).situation
        return compared(step.label, before, review(after_))

    def do(self, step: Step) -> None:
        """Do a step: it shows at once, and is kept by the writer thread."""
        if not step.changes:
            return
        self._land()
        done = _Done(step)
        self._done.append(done)
        self._undone.clear()
        self._start(done)

    def undo(self) -> str | None:
        """Take the last step of this run back; gives its label, or None where there is none."""
        return self._move(self._done, self._undone)

    def redo(self) -> str | None:
        """Do the step again that was last taken back; gives its label, or None where there is none."""
        return self._move(self._undone, self._done)

    def can_undo(self) -> str | None:
        """Give the label of the step that undo would take back."""
        return self._done[-1].step.label if self._done else None

    def can_redo(self) -> str | None:
        """Give the label of the step that redo would do again."""
        return self._undone[-1].step.label if self._undone else None

    def wait(self) -> None:
        """Wait until everything done so far is written; safe from any thread, and changes nothing here."""
        wait(list(self._running), timeout=5)

    def settled(self) -> tuple[Outcome, ...]:
        """Wait until everything done so far is kept, or is known not to be.

        Gives what became of it, each outcome once; of many that nobody asked about the last ones.
        """
        self._wait()
        outcomes = tuple(self._outcomes)
        self._outcomes.clear()
        return outcomes

    def pending(self, ref: Ref) -> bool:
        """Tell whether a record has edits that are not on disk yet."""
        self._land()
        return self._pending[ref] > 0

    def poll(self) -> tuple[Ref, ...]:
        """Look whether others changed files in memory; tells the listeners, and gives what changed."""
        self.files.forget_listing()
        changed = self.files.changed()
        if changed:
            self._tell(Told(changed))
        return changed

    def close(self) -> None:
        """Wait for the writer and let it go."""
        self.settled()
        self._writer.shutdown()

    def _move(self, source: list[_Done], target: list[_Done]) -> str | None:
        if any(done.outcome is None for done in source[-1:]):
            self._wait()
        if not source:
            return None
        done = source.pop()
        if not isinstance(done.outcome, Kept):
            return self._move(source, target)
        undo = attrs.evolve(done.outcome.undo, label=done.step.label)
        moved = _Done(undo, of=done, came_from=(source, len(source)))
        target.append(moved)
        self._start(moved)
        return done.step.label

    def _start(self, done: _Done) -> None:
        refs = _refs(done.step)
        plain = all(isinstance(change, Change) for change in done.step.changes)
        if plain:
            _stage(self._files, done.step)
        self._pending.update(refs)
        self._running.append(self._writer.submit(self._keep, done, refs))
        if not plain:
            self._wait()
        self._tell(Told(refs))

    def _keep(self, done: _Done, refs: tuple[Ref, ...]) -> None:
        outcome: Outcome = NotKept("an unexpected error")
        try:
            outcome = keep(self._files, done.step, self.now())
        finally:
            self._landed.append(_Landed(done, refs, outcome))
            self._tell(Told(refs, outcome, done.step))

    def _wait(self) -> None:
        wait(list(self._running))
        self._land()

    def _land(self) -> None:
        """Take over what the writer finished: records are read from their files again."""
        while self._landed:
            one = self._landed.popleft()
            one.done.outcome = one.outcome
            self._outcomes.append(one.outcome)
            self._pending.subtract(one.refs)
            for ref in one.refs:
                if not self._pending[ref]:
                    self._files.unstage(ref)
            if not all(isinstance(change, Change) for change in one.done.step.changes):
                self._files.forget_listing()
            if not isinstance(one.outcome, Kept):
                self._never_happened(one.done, one.outcome)
        self._running = [future for future in self._running if not future.done()]

    def _never_happened(self, done: _Done, outcome: Outcome) -> None:
        """Take a step that was not kept out of the history.

        An undo or redo that may be tried again, once what keeps the file from being written is
        mended, goes back to where it was; one that clashes never could be, and would bar what is older.
        """
        for history in (self._done, self._undone):
            if done in history:
                history.remove(done)
        if isinstance(outcome, NotKept) and done.of is not None and done.came_from is not None:
            history, place = done.came_from
            history.insert(place, done.of)

    def _tell(self, told: Told) -> None:
        for listener in list(self.on_change):
            listener(told)


def _refs(step: Step) -> tuple[Ref, ...]:
    return tuple(dict.fromkeys(change.ref for change in step.changes))


def _stage(files: GarageFiles, step: Step) -> None:
    """Let the records read as they will stand; what a clash will refuse is left as it is."""
    for change in step.changes:
        if isinstance(change, Change):
            data = dict(files.data(change.ref))
            for edit in change.edits:
                if blocked(data, edit.path) is MISSING:
                    data = after(data, edit, lambda _: True)
            files.stage(change.ref, data)
