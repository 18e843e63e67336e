"""`check --all`: everything is read, every session and profile judged, and a line said of each."""

import datetime as dt
import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from paddock_tui.commands.common import NOT_DONE, OK, counted, open_to_read, say
from paddock_tui.commands.printing import CheckForm, lines_of, print_dict
from paddock_tui.commands.shared_out import pieces, processors, shared_out
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.lookup import by_bike
from paddock_tui.pages.as_json import problem_as_dict
from paddock_tui.pages.garage import garage_heading
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.review import verdict_line
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.rules import NOTE, Review, review
from paddock_tui.rules.core import COMPLETE
from paddock_tui.store.passing import PassingFiles

_JUDGED = ("session", "profile")

FEW = 150
"""So many are judged in one process before another is worth its beginning."""


class _Seen(NamedTuple):
    """What is said of a record: its verdict and lines where it is judged, and what cannot be read of it.

    The review itself is gone by then: of many seasons there are thousands.
    """

    verdict: str | None = None
    lines: tuple[str, ...] = ()
    problems: tuple[InputError, ...] = ()
    lost: bool = False


_Look = Callable[[Iterable[Ref]], Iterator[tuple[Ref, _Seen | None]]]


def judge_all(folder: str, at: dt.datetime | None, form: CheckForm) -> int:
    """Read and review everything; status 0, or 3 where a file or a value could not be read."""
    files = PassingFiles(Path(folder))
    desk = open_to_read(folder, at, files=files)
    problems: list[InputError] = [*files.strays(), *files.former.troubles(files.name_of)]
    refs = list(files.all())
    seen = _seen(desk, files, refs)
    lost = bool(problems) or any(one.lost for one in seen.values())
    problems += [trouble for ref in refs if ref in seen for trouble in seen[ref].problems]
    judged = [(ref, seen[ref]) for ref in refs if ref in seen and seen[ref].verdict is not None]
    if form == "json":
        rows = [{"session": str(ref), "verdict": one.verdict} for ref, one in judged]
        print_dict({"verdicts": rows, "problems": [problem_as_dict(trouble) for trouble in problems]})
    else:
        say(lines_of(_everything(garage_heading(desk), judged, problems), form))
        say(("", f"{counted(len(refs), 'record')} read, {counted(len(problems), 'problem')}"))
    return NOT_DONE if lost else OK


def _seen(desk: LooksAt, files: PassingFiles, refs: list[Ref]) -> dict[Ref, _Seen]:
    """Look at every record that is there: at those that are judged bike by bike."""
    found: dict[Ref, _Seen | None] = {}

    def look(wanted: Iterable[Ref]) -> Iterator[tuple[Ref, _Seen | None]]:
        with files.looked_at_only():
            for ref in wanted:
                with files.once.each():
                    yield ref, _look_at(desk, ref)

    def take(told: Iterable[tuple[Ref, _Seen | None]]) -> None:
        for ref, one in told:
            found[ref] = one
            _progress(len(found), len(refs))

    take(look(ref for ref in refs if ref.kind not in _JUDGED))
    with files.looked_at_only():
        lines = _lines_of(files, [ref for ref in refs if ref.kind in _JUDGED])
    take(_elsewhere(look, lines))
    take(look(ref for line in lines for ref in line if ref not in found))
    return {ref: one for ref, one in found.items() if one is not None}


def _lines_of(files: PassingFiles, judged: list[Ref]) -> list[list[Ref]]:
    """Put what is judged into an order of its own for each bike: before a session went all those of its bike
    that are earlier, which are at hand as long as each is looked at soon after the one before, and before a
    profile all of them.
    """
    lines = {bike: [ref for _, ref in placed] for bike, placed in by_bike(files).items()}
    placed = {ref for line in lines.values() for ref in line}
    for ref in judged:
        if ref not in placed:
            named = files.data(ref).get("bike")
            lines.setdefault(named if isinstance(named, str) else "", []).append(ref)
    return list(lines.values())


def _elsewhere(look: _Look, lines: list[list[Ref]]) -> Iterator[tuple[Ref, _Seen | None]]:
    """Look at many in processes beside this one; give what these tell, nothing where there are few."""
    ordered = [ref for line in lines for ref in line]
    ways = min(processors(), len(ordered) // FEW)
    if ways < 2:
        return iter(())
    # What all of them need is read by then: the order of the sessions, and the rules.
    COMPLETE.require()
    among = pieces([len(line) for line in lines], ways)
    return shared_out(lambda piece: look(ordered[piece.start : piece.stop]), among)


def _look_at(desk: LooksAt, ref: Ref) -> _Seen | None:
    loaded = desk.files.read(ref)
    if loaded is None:
        return None
    problems, lost = (*loaded.troubles, *loaded.unknown), bool(loaded.troubles)
    if ref.kind not in _JUDGED or loaded.record is None:
        return _Seen(problems=problems, lost=lost)
    found = review(desk.assembled(ref).situation)
    return _Seen(found.verdict, tuple(_lines(ref, found)), problems, lost)


def _lines(ref: Ref, found: Review) -> Iterable[str]:
    """Say a session's verdict; of a profile what is wrong in it."""
    if ref.kind == "session":
        return (verdict_line(found),)
    return (f"{one.severity}: {message_line(one)}" for one in found.findings if one.severity > NOTE)


def _everything(heading: str, judged: list[tuple[Ref, _Seen]], problems: list[InputError]) -> Page:
    """Make the page of everything: a verdict for each session, what is wrong in profiles, problems."""
    sessions, profiles = (
        tuple(Row(ref.id, line, kind="text") for ref, one in judged if ref.kind == kind for line in one.lines)
        for kind in _JUDGED
    )
    sections = [Section("sessions", sessions, "" if sessions else "none yet")]
    if profiles:
        sections.append(Section("profiles", profiles))
    if problems:
        sections.append(Section("problems", tuple(problem_rows(problems))))
    return Page(heading, tuple(sections))


def _progress(done: int, of: int) -> None:
    if sys.stderr.isatty() and of > 50:
        sys.stderr.write(f"\r{done} of {of}" + ("\n" if done == of else ""))
        sys.stderr.flush()
