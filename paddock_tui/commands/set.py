"""`set`: one or more values of one record, as one step."""

from collections.abc import Sequence

from paddock_tui.commands.common import (
    NOT_DONE,
    OK,
    USAGE,
    CommandStopped,
    columns,
    complain,
    find_ref,
    open_desk,
    say,
    sentences,
)
from paddock_tui.desk import Desk, setting
from paddock_tui.desk.edits.values import said, shown
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import spell
from paddock_tui.store.saving import Clash, NotSaved, Outcome, Saved
from paddock_tui.text import fold, printable

NOTHING = "nothing was changed"


def set_values(folder: str, wanted: str, assignments: Sequence[str]) -> int:
    """Set PATH=VALUE pairs; an empty value clears. Nothing is changed unless all of them can be read."""
    pairs: list[tuple[str, str]] = []
    for assignment in assignments:
        path, equals, value = assignment.partition("=")
        if not equals or not path.strip():
            raise CommandStopped(
                USAGE, f'"{printable(assignment)}" is not PATH=VALUE, as in setup.mode=lapping'
            )
        pairs.append((path.strip(), value))
    desk = open_desk(folder)
    ref = find_ref(desk, wanted)
    loaded = desk.files.read(ref)
    if loaded is None or loaded.record is None:
        complain(line for trouble in (loaded.troubles if loaded else ()) for line in sentences(trouble))
        complain((NOTHING,))
        return NOT_DONE
    rider = getattr(loaded.record, "rider", None)
    step = setting(desk.files, ref, pairs, desk.units(rider if isinstance(rider, str) else None))
    if not isinstance(step, Step):
        for trouble in step:
            place = f"{spell(trouble.path)}: " if trouble.path else ""
            lines = sentences(trouble)
            complain((place + lines[0], *lines[1:]))
        complain((NOTHING,))
        return NOT_DONE
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    return keep_and_say(desk, step, said(desk.files, ref, edits))


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
            complain((f"kept, but not noted for undo: {outcome.unnoted}",))
    say(part for line in lines for part in fold(printable(line), columns()))
    return OK


def _refusal(outcome: Outcome) -> tuple[str, ...]:
    if isinstance(outcome, Clash):
        place = f"{outcome.ref} {spell(outcome.edit.path)}"
        return (
            f"not kept: {place} was changed meanwhile to {printable(shown(outcome.found))}",
            "  look at it, and set it again",
        )
    if isinstance(outcome, NotSaved):
        first = f"not kept: {printable(outcome.reason)}"
        return (first, f"  {printable(outcome.mend)}") if outcome.mend else (first,)
    return ()
