"""A step kept by a command: what it would be asked about, and what became of it."""

from collections.abc import Sequence

from paddock_tui.commands.common import NOT_DONE, OK, columns, complain, say
from paddock_tui.desk import Desk
from paddock_tui.desk.debrief.lap_timing import is_lap
from paddock_tui.desk.edits.questions import questions
from paddock_tui.desk.edits.taken_out import taken_out
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref, spell
from paddock_tui.store.saving import Clash, NotSaved, Outcome, Saved
from paddock_tui.text import as_read, fold, printable

NOTHING = "nothing was changed"


def asked_about(desk: Desk, ref: Ref, step: Step) -> list[InputError]:
    """List what a step would be asked about on the screen; where nobody can be asked that refuses it."""
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    of_laps = _about_laps(desk, ref, step) if any(is_lap(edit.path) for edit in edits) else []
    out = taken_out(desk.files, step)
    gone = [InputError(f"takes out: {out}", "an answer", "--yes takes it out")] if out else []
    return [*questions(ref, desk.files.data(ref), edits), *of_laps, *gone]


def _about_laps(desk: Desk, ref: Ref, step: Step) -> list[InputError]:
    from paddock_tui.desk.debrief.lap_doubts import LAPS, lap_doubts

    doubts = lap_doubts(desk, ref, step)
    return [InputError(said, "an answer", "--yes takes it as it is", path=(LAPS,)) for said in doubts]


def keep_and_say(desk: Desk, step: Step, lines: Sequence[str] = ()) -> int:
    """Do a step, wait until it is on disk, and say what became of it, in these lines or its label."""
    desk.do(step)
    return settle_and_say(desk, lines or (step.label,))


def settle_and_say(desk: Desk, lines: Sequence[str]) -> int:
    """Wait until what was done is on disk; say these lines, or why it is not kept."""
    outcomes = desk.settled()
    desk.close()
    for outcome in outcomes:
        refusal = _refusal(outcome)
        if refusal:
            complain(refusal)
            return NOT_DONE
        if isinstance(outcome, Saved) and outcome.unnoted:
            complain((f"saved, but not noted for undo: {outcome.unnoted}",))
    say(part for line in lines for part in fold(as_read(printable(line)), columns()))
    return OK


def _refusal(outcome: Outcome) -> tuple[str, ...]:
    if isinstance(outcome, Clash):
        from paddock_tui.desk.edits.values import shown

        place = f"{outcome.ref} {spell(outcome.edit.path)}"
        return (
            f"not saved: {place} was changed meanwhile to {printable(shown(outcome.found))}",
            "  look at it, and set it again",
        )
    if isinstance(outcome, NotSaved):
        first = f"not saved: {printable(outcome.reason)}"
        return (first, f"  {printable(outcome.mend)}") if outcome.mend else (first,)
    return ()
