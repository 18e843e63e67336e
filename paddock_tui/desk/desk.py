"""The desk: one garage in hand, what is reviewed, done, undone, and told when something changes."""

import datetime as dt
from collections import Counter, deque
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path as FilePath

import attrs

from paddock_tui.desk.answers import Answers
from paddock_tui.desk.clock_watch import ClockWatch
from paddock_tui.desk.looking import LooksAt, Now
from paddock_tui.desk.set_clock import SetClock
from paddock_tui.desk.undo import Done, Timeline
from paddock_tui.desk.unsaved import Marks, as_they_read, marks, stage, whole_text
from paddock_tui.desk.venue_clock import VenueClock
from paddock_tui.desk.writer import Writer
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.crash import report
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.journal import JournalEntry, entries_of
from paddock_tui.store.outcomes import may_be_later
from paddock_tui.store.saving import NotSaved, Outcome, Saved, cut_short, pass_over, repair, save


@attrs.frozen
class DeskChange:
    """What the desk tells those who listen: the records that may read differently now, and an outcome."""

    refs: tuple[Ref, ...]
    outcome: Outcome | None = None
    step: Step | None = None


@attrs.frozen
class _Landed:
    """What the writer thread hands back: a step that is kept, or is known not to be.

    `again` says that it had landed before, not kept, and was tried once more.
    """

    done: Done
    outcome: Outcome
    again: bool = False


_AHEAD = dt.timedelta(hours=12)
"""A last change that is further ahead was made under a clock that was wrong, then or now."""

PAINT_WAITS = 0.05
"""Seconds that an edit may take until it is on disk, before it is painted; its value is marked then."""


class Desk(LooksAt):
    """One garage in hand. Edits show as soon as they are on disk, or after a moment, marked as not yet there.

    They are written by one thread, in the order they were made.

    All methods belong to the thread that made the desk; listeners may be called from the writer's.
    """

    def __init__(self, root: FilePath, now: Now = dt.datetime.now, files: GarageFiles | None = None) -> None:
        """Take a garage in hand; `files` are its files where some of them were read already."""
        opened = files or GarageFiles(root)
        super().__init__(opened, VenueClock(opened) if now == dt.datetime.now else now)
        self.answers = Answers(self)
        self.on_change: list[Callable[[DeskChange], None]] = []
        self._history = Timeline(root)
        self._writer = Writer()
        self._clock = ClockWatch()
        self._said_of_future = False
        self._landed: deque[_Landed] = deque()
        self._pending: Counter[Ref] = Counter()
        self._outcomes: deque[Outcome] = deque(maxlen=1000)
        self._stuck: list[Done] = []
        """The writer's own list of steps that are not kept and may be tried again."""
        self._bases: dict[Ref, object] = {}
        """What their files were like when such steps were last put on top of them."""

    def do(self, step: Step) -> None:
        """Do a step: the writer thread keeps it; it shows at once, or after a moment where that is slow."""
        if not step.changes:
            return
        self._start(self._history.begin(step))

    def undo(self) -> str | None:
        """Take the last step back, of earlier runs too; gives its label, or None where there is none."""
        return self._move(self._history.done, self._history.undone)

    def redo(self) -> str | None:
        """Do the step again that was last taken back; gives its label, or None where there is none."""
        return self._move(self._history.undone, self._history.done)

    def can_undo(self) -> str | None:
        """Return the label of the step that undo would take back."""
        self._remember()
        return self._history.done[-1].label if self._history.done else None

    def can_redo(self) -> str | None:
        """Return the label of the step that redo would do again."""
        self._remember()
        return self._history.undone[-1].label if self._history.undone else None

    def mend(self) -> str:
        """Complete, or put back, what an earlier run was cut short in; gives what to say about it."""
        said = repair(self.files, self.now())
        if said:
            self.files.forget_listing()
        return said

    def has_history_of_others(self) -> bool:
        """Return whether the journal holds steps that undo does not take back: they bear no mark of ours."""
        self._remember()
        return self._history.of_others

    def cut_short(self) -> str:
        """Return what to say of a step that was cut short, which is left as it is."""
        return cut_short(self.files)

    def changed_on(self, day: dt.date) -> list[JournalEntry]:
        """List what the journal says was kept, undone and done again on a day, oldest first."""
        return entries_of(self.root, day)

    # What is not kept.

    def unkept(self) -> tuple[Done, ...]:
        """List the steps that show and are not on disk, though they may be tried again."""
        return self._history.unkept()

    def marks(self) -> Marks:
        """Say of each value that shows and is not on disk whether it waits, or why it is not kept."""
        return marks((*self._history.done, *self._history.undone))

    def try_again(self) -> None:
        """Have the writer try again what could not be kept, in the order it was made."""
        self._writer.submit(self._keep_all)

    def text_with(self, ref: Ref) -> str:
        """Write a record's whole text with what could not be kept in it."""
        return whole_text(self.files, ref, self.unkept())

    def wait(self) -> None:
        """Wait until everything done so far is written; safe from any thread, and changes nothing here."""
        self._writer.wait(timeout=5)

    def settled(self) -> tuple[Outcome, ...]:
        """Wait until everything done so far is kept, or is known not to be.

        Gives what became of it, each outcome once; of many that nobody asked about the last ones.
        """
        self._wait()
        outcomes = tuple(self._outcomes)
        self._outcomes.clear()
        return outcomes

    def pending(self, ref: Ref) -> bool:
        """Return whether a record has edits that are not on disk yet."""
        return self._pending[ref] > 0

    def poll(self) -> tuple[Ref, ...]:
        """Look whether others changed files in memory; tells the listeners, and gives what changed."""
        self.take_over()
        changed = self.files.changed({ref for ref, count in self._pending.items() if count})
        waiting = {ref for done in self._history.unkept() for ref in done.refs}
        for ref in waiting:
            if not self._pending[ref] and self.files.stamp(ref) != self._bases.get(ref):
                self._put_on_top(ref)
                changed = (*changed, ref)
        if changed:
            self._tell(DeskChange(changed))
        return changed

    def watch(self, refs: Iterable[Ref]) -> None:
        """Let each look for changes of others look at these records, which are shown."""
        self.files.watch(refs)

    @property
    def came_in(self) -> int:
        """How many values others changed, as the last look found them in the records that were in memory."""
        return self.files.came_in

    def clock_doubt(self) -> str:
        """Return what to say of a clock that jumped, or that is behind the last change; empty otherwise."""
        jumped = self._clock.jump()
        newest = self._history.newest
        if jumped or self._said_of_future or newest is None or not self._behind(newest):
            return jumped
        self._said_of_future = True
        return f"the last change was noted at {newest:%d %b %Y %H:%M}, after now: check the laptop's time"

    @property
    def clock_in_doubt(self) -> bool:
        """Return whether the clock jumped in this run, or is behind the last change."""
        newest = self._history.newest
        return self._clock.doubtful or (newest is not None and self._behind(newest))

    def _behind(self, newest: dt.datetime) -> bool:
        # A clock that was set on purpose is behind because somebody wants it to be.
        return newest > self.now() + _AHEAD and not isinstance(self.now, SetClock)

    def close(self) -> None:
        """Wait for the writer and let it go."""
        self.settled()
        self._writer.close()

    def _remember(self) -> None:
        """Learn what earlier runs did, from the journal; own steps have to be in it by then."""
        if not self._history.remembered:
            self._wait()
            self._history.remember()

    def _move(self, source: list[Done], target: list[Done]) -> str | None:
        self._remember()
        if any(not isinstance(done.outcome, Saved) for done in source[-1:]):
            self._wait()
        if not source:
            return None
        done = source.pop()
        if done.unkept:
            return self._give_up(done)
        if not isinstance(done.outcome, Saved):
            return self._move(source, target)
        self._start(self._history.move(source, target, done, done.outcome.undo))
        return done.label

    def _give_up(self, done: Done) -> str:
        """Take a step back that never was on disk: it only has to show no more. The writer is at rest."""
        self._stuck.remove(done)
        for ref in done.refs:
            self._put_on_top(ref)
        self._tell(DeskChange(done.refs))
        return done.label

    def _start(self, done: Done) -> None:
        plain = all(isinstance(change, Change) for change in done.step.changes)
        before = as_they_read(self.files, done.step)
        self._pending.update(done.refs)
        self._writer.submit(partial(self._keep, done))
        self._writer.wait(PAINT_WAITS if plain else -1)
        if plain:
            # What the page shows until the file is read again, made of what was there before it was written.
            stage(self.files, done.step, before)
        self.take_over()
        self._tell(DeskChange(done.refs))

    def _keep(self, done: Done) -> None:
        """Keep a step, in the writer's thread: first what it stands on and could not be kept before."""
        barred = self._keep_stuck(done.refs)
        outcome = barred if barred is not None else self._try(done)
        if done.what == "do" and isinstance(outcome, NotSaved) and outcome.again:
            self._stuck.append(done)
        elif done.what != "do" and not may_be_later(outcome):
            self._pass_over(done)
        self._landed.append(_Landed(done, outcome))
        self._tell(DeskChange(done.refs, outcome, done.step))

    def _keep_all(self) -> None:
        self._keep_stuck()

    def _keep_stuck(self, refs: tuple[Ref, ...] | None = None) -> NotSaved | None:
        """Try again what could not be kept, all or of these records; gives why it still cannot."""
        barred: NotSaved | None = None
        for done in list(self._stuck):
            if refs is not None and not set(refs) & set(done.refs):
                continue
            outcome = self._try(done)
            if isinstance(outcome, NotSaved) and outcome.again:
                barred = outcome
            else:
                self._stuck.remove(done)
            self._landed.append(_Landed(done, outcome, again=True))
            self._tell(DeskChange(done.refs, outcome, done.step))
        return barred

    def _try(self, done: Done) -> Outcome:
        try:
            note = self._history.note(done, doubtful=self.clock_in_doubt)
            return save(self.files, done.step, self.now(), note)
        except Exception as error:
            where = report(error)
            return NotSaved("an unexpected error", f"a report is in {where}" if where else "")

    def _pass_over(self, done: Done) -> None:
        entry = JournalEntry(done.id, self.now(), self._history.run, "passed", done.step, done.step)
        pass_over(self.files, entry, self.now())

    def _wait(self) -> None:
        self._writer.wait()
        self.take_over()

    def take_over(self) -> None:
        """Take over what the writer finished: records are read from their files again.

        This alone lets what the other thread did change what is read here: at the start of a key, of a look
        for what others changed, and after waiting for the writer.
        """
        while self._landed:
            one = self._landed.popleft()
            self._history.landed(one.done, one.outcome)
            self._outcomes.append(one.outcome)
            if not one.again:
                self._pending.subtract(one.done.refs)
            if not all(isinstance(change, Change) for change in one.done.step.changes):
                self.files.forget_listing()
            for ref in one.done.refs:
                if not self._pending[ref]:
                    self._put_on_top(ref, saved=isinstance(one.outcome, Saved))

    def _put_on_top(self, ref: Ref, *, saved: bool = False) -> None:
        """Read a record from its file again, and let what could not be kept show over it."""
        self.files.unstage(ref, saved=saved)
        over = [done.step for done in self._history.unkept() if ref in done.refs]
        if over:
            self._bases[ref] = self.files.stamp(ref)
        for step in over:
            stage(self.files, Step(step.label, tuple(one for one in step.changes if one.ref == ref)))

    def _tell(self, told: DeskChange) -> None:
        for listener in list(self.on_change):
            listener(told)
