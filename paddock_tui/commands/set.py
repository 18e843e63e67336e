"""`set`: one or more values of one record, as one step."""

import sys
from collections.abc import Sequence
from pathlib import Path

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
from paddock_tui.commands.keeping import NOTHING, asked_about, keep_and_say
from paddock_tui.desk import Desk, setting
from paddock_tui.desk.edits.values import said
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref, spell
from paddock_tui.store.foreign import MOST_BYTES, foreign_text
from paddock_tui.text import as_read, fold, printable


def set_values(folder: str, wanted: str, assignments: Sequence[str], *, yes: bool = False) -> int:
    """Set PATH=VALUE pairs; an empty value clears. Nothing is changed unless all of them can be read."""
    if not assignments:
        raise CommandStopped(USAGE, "nothing to set: PATH=VALUE, as in setup.mode=soaring, or --from FILE")
    pairs: list[tuple[str, str]] = []
    for assignment in assignments:
        path, equals, value = assignment.partition("=")
        if not equals or not path.strip():
            raise CommandStopped(
                USAGE, f'"{printable(assignment)}" is not PATH=VALUE, as in setup.mode=soaring'
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
        return _refused(step)
    asked = [] if yes else asked_about(desk, ref, step)
    return _refused(asked) if asked else keep_and_say(desk, step, _said(desk, ref, step))


def set_from(folder: str, wanted: str, file: str, *, preview: bool = False, yes: bool = False) -> int:
    """Give a session or a profile the set-up of a JSON file; - is standard input. A preview only says so."""
    from paddock_tui.desk.sessions.from_json import set_up_from_json

    desk = open_desk(folder)
    ref = find_ref(desk, wanted, ("session", "profile"))
    text = sys.stdin.read(MOST_BYTES) if file == "-" else foreign_text(file, Path.cwd(), "a set-up as JSON")
    step = [text] if isinstance(text, InputError) else set_up_from_json(desk.files, ref, text)
    if not isinstance(step, Step):
        return _refused(step)
    lines = _said(desk, ref, step)
    if preview:
        say(
            part
            for line in lines or ("nothing differs",)
            for part in fold(as_read(printable(line)), columns())
        )
        return OK
    asked = [] if yes else asked_about(desk, ref, step)
    return _refused(asked) if asked else keep_and_say(desk, step, lines or ("nothing differs",))


def _said(desk: Desk, ref: Ref, step: Step) -> list[str]:
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    return said(desk.files, ref, edits)


def _refused(problems: Sequence[InputError]) -> int:
    for problem in problems:
        place = f"{spell(problem.path)}: " if problem.path else ""
        lines = sentences(problem)
        complain((place + lines[0], *lines[1:]))
    complain((NOTHING,))
    return NOT_DONE
