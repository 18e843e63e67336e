"""What each action of the registry does on the screen."""

from collections.abc import Callable
from typing import TYPE_CHECKING

import attrs

from paddock_tui.desk import accepting, withdrawing
from paddock_tui.desk.edits.remedies import mending
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.pages.last_time import puts_of
from paddock_tui.pages.message_line import message_line
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.screens import (
    changing,
    checking,
    comparing,
    dashing,
    editing,
    entering,
    filing,
    importing,
    keeping,
    ledger,
    out,
    returning,
    wet_package,
)
from paddock_tui.screens.question import Question

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


def _to(room: str) -> Callable[["MainScreen"], None]:
    def go(screen: "MainScreen") -> None:
        screen.go(attrs.evolve(screen.place, room=room))

    return go


def _day(screen: "MainScreen") -> None:
    named = screen.desk.files.data(screen.place.subject).get("day") if screen.place.subject else None
    ref = Ref("day", named) if isinstance(named, str) else None
    if ref is None or screen.desk.files.path_of(ref) is None:
        screen.board.say("this session has no day yet: enter it on the session page")
        return
    screen.open(ref)


def _why(screen: "MainScreen") -> None:
    row = screen.board.cursor_row
    if row is None or (row.ref is None and not row.working):
        screen.board.say("nothing more is known about this row")
        return
    screen.go(attrs.evolve(screen.place, room="why", row=row))


def _filter(screen: "MainScreen") -> None:
    def answered(text: str) -> str:
        screen.board.filter(text)
        return ""

    screen.ask(Question("show rows with", answered, screen.board.filter, offered=False))


def _accept(screen: "MainScreen") -> None:
    finding, ref = screen.context().finding, screen.place.subject
    if finding is None or ref is None:
        return
    if finding.accepted is not None:
        back = withdrawing(screen.desk.files, ref, finding.rule, finding.subject)
        screen.attempt(back or "it was accepted in an earlier session of the day: take it back there")
        return

    def answered(text: str) -> str:
        if not text.strip():
            return "say why you ride with it, or escape"
        screen.do(accepting(screen.desk.files, ref, finding, text, screen.desk.now(), _initials(screen, ref)))
        return ""

    said = (f"{finding.severity}: {message_line(finding)}",)
    screen.ask(Question("why do you ride with it?", answered, declined="not accepted", said=said))


def _remedy(screen: "MainScreen") -> None:
    finding, ref = screen.context().finding, screen.place.subject
    if finding is not None and ref is not None:
        refs = screen.desk.assembled(ref).situation.refs
        screen.attempt(mending(screen.desk.files, finding, ref, refs) or "it stands so already")


def _offer(screen: "MainScreen") -> None:
    if changing.offers(screen):
        changing.take(screen)
        return
    row, subject = screen.board.cursor_row, screen.place.subject
    if row is not None and subject is not None:
        screen.attempt(offering(screen.desk.files, subject, row.offer))


def _take_last(screen: "MainScreen") -> None:
    if screen.place.room != "last":
        _to("last")(screen)
    subject, puts = screen.place.subject, puts_of(screen.board.page)
    if subject is None or not puts:
        screen.board.say("nothing of the set-up of last time differs")
        return
    step = offering(screen.desk.files, subject, puts)
    said = f"set-up of last time here: {len(puts)} values"
    screen.attempt(attrs.evolve(step, label=said) if isinstance(step, Step) else step)


def _initials(screen: "MainScreen", ref: Ref) -> str | None:
    named = screen.desk.files.data(ref).get("rider")
    loaded = screen.desk.files.read(Ref("rider", named)) if isinstance(named, str) else None
    return loaded.record.initials if loaded is not None and isinstance(loaded.record, Rider) else None


ACTS: dict[str, Callable[["MainScreen"], None]] = {
    "garage": _to("garage"),
    "setup": _to("setup"),
    "session": _to("session"),
    "checklist": checking.go,
    "review": _to("review"),
    "bench": _to("bench"),
    "help": _to("help"),
    "actions": _to("actions"),
    "dash": dashing.go,
    "in": returning.go,
    "out": out.go,
    "limits": _to("limits"),
    "next": changing.go,
    "start": comparing.start,
    "wet": wet_package.take,
    "profile_for": comparing.profile,
    "compare": comparing.compare,
    "laps": importing.laps,
    "last": _to("last"),
    "ledger": _to("ledger"),
    "try_back": ledger.try_back,
    "set_back": ledger.set_back,
    "slip": _to("slip"),
    "take_last": _take_last,
    "day": _day,
    "entry": entering.enter,
    "new": filing.new,
    "drop": filing.drop,
    "duplicate": filing.duplicate,
    "rename": filing.rename,
    "retired": filing.show_retired,
    "editor": editing.record,
    "take": filing.take,
    "save": filing.save,
    "accept": _accept,
    "remedy": _remedy,
    "why": _why,
    "offer": _offer,
    "undo": keeping.undo,
    "redo": keeping.redo,
    "filter": _filter,
    "quit": keeping.leave,
    "again": keeping.try_again,
    "elsewhere": keeping.write_elsewhere,
    "today": _to("today"),
}
"""The function of each action, by its id."""
