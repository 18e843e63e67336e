"""`enter`: one typed line of calls and values, as one step of one record."""

import datetime as dt
from collections.abc import Iterator

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
)
from paddock_tui.commands.common import sentences as sentences_of
from paddock_tui.commands.keeping import NOTHING, asked_about, keep_and_say
from paddock_tui.desk import Desk
from paddock_tui.desk.day.late import delaying, late_minutes
from paddock_tui.desk.day.moving import moved_to, moving
from paddock_tui.desk.edits.entry_line import entered, entering, entry_context
from paddock_tui.entry import TypedLine, answered, read_line
from paddock_tui.entry.vocabulary import Vocabulary
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref, spell
from paddock_tui.text import as_read, fold, printable, width


def enter(
    folder: str,
    text: str | None,
    session: str | None,
    at: dt.datetime | None,
    *,
    preview: bool = False,
    yes: bool = False,
) -> int:
    """Apply a line to the session in hand, or to the record named; with `preview` only say what it sets.

    Nothing is changed unless every piece of it can be read and means one thing. Without a line the short
    names of that record are listed.
    """
    if text is not None and not text.strip():
        raise CommandStopped(USAGE, "an empty line", '  write what is to be set, e.g. "t4 hot 2.38 2.05"')
    desk = open_desk(folder, at)
    ref = find_ref(desk, session) if session is not None else desk.session_in_hand()
    if ref is None:
        raise CommandStopped(NOT_DONE, "there is no session to enter it in", "  name a record with --session")
    of_day = _of_day(desk, ref, text) if text is not None else None
    if of_day is not None:
        return _kept(desk, of_day, preview=preview)
    context = entry_context(desk, ref)
    if context is None:
        loaded = desk.files.read(ref)
        complain(said for one in (loaded.troubles if loaded else ()) for said in sentences_of(one))
        complain((NOTHING,))
        return NOT_DONE
    complain(said for trouble in context.words.problems for said in sentences_of(trouble))
    if text is None:
        say(_listed(context.words))
        return OK
    line = read_line(text, context)
    if not line.clear:
        complain((*_not_clear(line), NOTHING))
        return NOT_DONE
    return _apply(desk, ref, line, preview=preview, yes=yes)


def _listed(words: Vocabulary) -> Iterator[str]:
    """List every short name with what it sets; another word for the same stands behind it."""
    same: dict[str, list[str]] = {}
    for call in sorted(words.calls):
        same.setdefault(words.calls[call].label, []).append(call)
    for label, (first, *others) in same.items():
        also = f" (also {', '.join(others)})" if others else ""
        for place, part in enumerate(fold(printable(f"{label}{also}"), max(20, columns() - 18))):
            yield f"{first if place == 0 else '':18}{part}"


def _of_day(desk: Desk, ref: Ref, text: str) -> Step | InputError | None:
    """Make the step of a line about the day: it runs late, or the rider is moved; else None."""
    move, minutes = moved_to(text), late_minutes(text)
    if move is not None:
        return moving(desk.files, ref, *move, desk.now())
    if minutes is None:
        return None
    named = desk.files.data(ref).get("day")
    if not isinstance(named, str):
        raise CommandStopped(NOT_DONE, f"{ref} has no day", "  only a day has times that shift")
    return delaying(desk.files, Ref("day", named), minutes, desk.now())


def _kept(desk: Desk, step: Step | InputError, *, preview: bool) -> int:
    if not isinstance(step, Step):
        raise CommandStopped(NOT_DONE, *sentences_of(step), NOTHING)
    if preview:
        say((as_read(printable(step.label)),))
        return OK
    return keep_and_say(desk, step, [step.label])


def _apply(desk: Desk, ref: Ref, line: TypedLine, *, preview: bool, yes: bool) -> int:
    step = entering(desk.files, ref, line)
    asked = asked_about(desk, ref, step) if isinstance(step, Step) and not (preview or yes) else []
    if not isinstance(step, Step) or asked:
        for trouble in asked if isinstance(step, Step) else step:
            lines = sentences_of(trouble)
            complain((f"{spell(trouble.path)}: {lines[0]}", *lines[1:]))
        complain((NOTHING,))
        return NOT_DONE
    edits = [edit for change in step.changes if isinstance(change, Change) for edit in change.edits]
    told = entered(desk.files, ref, line, edits) or [step.label]
    if preview:
        say(part for one in told for part in fold(as_read(printable(one)), columns()))
        return OK
    return keep_and_say(desk, step, told)


def _not_clear(line: TypedLine) -> Iterator[str]:
    """Write the line with every piece that is wrong or asked about marked under it."""
    text = printable(line.text)
    wrong: list[tuple[int, int, str, tuple[str, ...]]] = [
        (one.start, one.end, one.message, (one.mend,)) for one in line.errors
    ]
    for one in line.questions:
        more = tuple(f"{each.label}: {answered(line.text, one, each)}" for each in one.choices)
        wrong.append((one.start, one.end, one.ask, more))
    for start, end, message, more in sorted(wrong):
        if width(text) <= columns():
            yield text
            yield f"{' ' * width(text[:start])}{'^' * max(1, width(text[start:end]))}"
        yield printable(message)
        yield from (f"  {printable(each)}" for each in more if each)
