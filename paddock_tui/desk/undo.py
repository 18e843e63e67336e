"""The steps of this run and of earlier ones: what undo takes back next, and what redo does again."""

import datetime as dt
from pathlib import Path as FilePath

import attrs

from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.journal import JournalEntry, JournalNote, What, entries, has_lines_of_others, new_id
from paddock_tui.store.outcomes import NotSaved, Outcome, Saved
from paddock_tui.store.undo_history import undo_history


@attrs.define(eq=False)
class Done:
    """A step as it was done, and once it is kept the step that takes it back.

    Of an undo or a redo: what it takes back, and the place in the history from which that was taken. `aside`
    is what could be done again before it, `when` says of an earlier run's step when it was done, `elsewhere`
    where the record was written that could not be kept.
    """

    step: Step
    what: What = "do"
    id: str = ""
    outcome: Outcome | None = None
    of: "Done | None" = None
    came_from: "tuple[list[Done], int] | None" = None
    aside: "tuple[Done, ...]" = ()
    when: str = ""
    elsewhere: str = ""

    @property
    def label(self) -> str:
        """What the last line calls it."""
        return f"{self.step.label} ({self.when})" if self.when else self.step.label

    @property
    def refs(self) -> tuple[Ref, ...]:
        """The records that it is about."""
        return tuple(dict.fromkeys(change.ref for change in self.step.changes))

    @property
    def unkept(self) -> bool:
        """Whether it shows on the screen and is not on disk, though it may be tried again."""
        return self.what == "do" and isinstance(self.outcome, NotSaved) and self.outcome.again


class Timeline:
    """One history: own steps, and below them what the journal tells of earlier runs."""

    def __init__(self, root: FilePath) -> None:
        self.run = new_id()
        self.done: list[Done] = []
        self.undone: list[Done] = []
        self.remembered = False
        self.of_others = False
        """Whether the journal holds steps of others, or from before steps were marked."""
        self.newest: dt.datetime | None = None
        """When the last step of earlier runs was noted, as the clock said."""
        self._root = root

    def note(self, done: Done, *, doubtful: bool = False) -> JournalNote:
        """Return what the journal is to say of a step; `doubtful` says that of its time."""
        return JournalNote(self.run, done.what, done.id, doubtful)

    def begin(self, step: Step) -> Done:
        """Begin a new step; what was taken back before can be done again only if this one fails."""
        done = Done(step, aside=tuple(self.undone))
        self.undone.clear()
        self.done.append(done)
        return done

    def move(self, source: list[Done], target: list[Done], done: Done, undo: Step) -> Done:
        """Begin to take the last step of `source` back, which was just removed from it."""
        what: What = "undo" if source is self.done else "redo"
        step = attrs.evolve(undo, label=done.step.label)
        moved = Done(step, what, done.id, of=done, came_from=(source, len(source)), when=done.when)
        target.append(moved)
        return moved

    def landed(self, done: Done, outcome: Outcome) -> None:
        """Take in what became of a step.

        An undo or redo that may be tried again, once what keeps the file from being written is mended, goes
        back to where it was; one that clashes never could be, and would bar what is older. A new step that
        may be tried again stays, as what it is: not kept.
        """
        first, done.outcome = done.outcome is None, outcome
        if isinstance(outcome, Saved):
            done.id = outcome.id
            if not first:
                self.undone.clear()
            return
        if first and done.what == "do":
            self.undone[:0] = done.aside
        if done.unkept:
            return
        self.forget(done)
        if isinstance(outcome, NotSaved) and outcome.again and done.of is not None and done.came_from:
            history, place = done.came_from
            history.insert(place, done.of)

    def forget(self, done: Done) -> None:
        """Take a step out of the history."""
        for history in (self.done, self.undone):
            if done in history:
                history.remove(done)

    def unkept(self) -> tuple[Done, ...]:
        """List the steps that are not kept and may be tried again, in the order they were made."""
        return tuple(done for done in self.done if done.unkept)

    def remember(self) -> None:
        """Put what the journal tells of other runs below the steps of this one; once."""
        if self.remembered:
            return
        self.remembered = True
        self.of_others = has_lines_of_others(self._root)
        lines = entries(self._root)
        self.newest = lines[-1].at if lines else None
        past = undo_history(lines)
        self.done[:0] = [_of_past(one) for one in past.done if one.run != self.run]
        self.undone[:0] = [_of_past(one) for one in past.undone if one.run != self.run]


def _of_past(entry: JournalEntry) -> Done:
    at = f"of {entry.at.day} {entry.at:%b %H:%M}"
    return Done(entry.step, entry.what, entry.id, Saved(entry.undo, entry.id), when=at)
