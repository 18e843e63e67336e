"""After the day: steps home, counters, what is left to do; `v` saves a profile or notes a thing to do."""

from paddock_tui.desk.day.after import (
    TODOS,
    RodeThere,
    dated,
    day_over,
    done_todo,
    learnt_on,
    noting_missing,
    noting_todo,
    profile_of_day,
    road_step,
    who_rode,
)
from paddock_tui.desk.day.before import next_day
from paddock_tui.desk.day.checklist import ANSWERS
from paddock_tui.pages.after import MATTER, PROFILE_OF, AfterMemory, learnt_words
from paddock_tui.pages.rows import Page, Row
from paddock_tui.pages.todos import TODO_LABEL
from paddock_tui.records.day import RidingDay
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.packing import PACKING
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext
from paddock_tui.widgets import messages

_KEYS = "1 ok, 2 to fix, 3 not applicable, backspace: open again"
_TODO_KEYS = "1 is done, backspace opens it again"


def _named(record: Ref | None) -> Ref | None:
    return record if record is not None and record.kind == "day" else None


def make_page(asked: PageContext) -> Page:
    return asked.state.of(AfterMemory).page(asked.desk, _named(asked.place.record))


def _rode(host: Host) -> tuple[Ref | None, RidingDay | None, tuple[RodeThere, ...]]:
    desk = host.desk
    ref = day_over(desk, _named(host.place.record))
    loaded = desk.files.read(ref) if ref is not None else None
    day = loaded.possible if loaded is not None else None
    if ref is None or not isinstance(day, RidingDay):
        return ref, None, ()
    return ref, day, who_rode(desk, ref, day)


def offered(host: Host) -> None:
    """Save the day's set-up as a profile, or note what is open as something to do before the next day."""
    row = host.board.cursor_row
    ref, day, rode = _rode(host)
    if row is None or ref is None or day is None:
        host.board.say("nothing to save here: put the cursor on what is open, or on profile")
        return
    for one in rode:
        if row.key == f"{PROFILE_OF}{one.rider} {one.bike}":
            note = learnt_words(learnt_on(host.desk, ref, one))
            _, step = profile_of_day(host.desk, day, one, note)
            host.attempt(step.sentence() if isinstance(step, InputError) else step)
            return
        if row.key.startswith(f"{MATTER}{one.rider} {one.bike} "):
            today = host.desk.now().date()
            by = next_day(host.desk, day.date or today)
            host.attempt(
                noting_todo(host.desk.files, Ref("bike", one.bike), row.value, day.date or today, by)
            )
            return
    host.board.say("nothing to save here: put the cursor on what is open, or on profile")


def make_new(host: Host) -> None:
    """Ask what is to be done to the bike of the section, or what was missing on the day."""
    row = host.board.cursor_row
    adds = row.adds if row is not None else ()
    if row is None or row.ref is None or adds not in ((TODOS,), (PACKING,)):
        host.board.say("nothing can be added here: n on an add row, of what is to do or of the packing")
    elif adds == (TODOS,):
        _ask_todo(host, row.ref)
    else:
        _ask_missing(host, row.ref)


def _ask_todo(host: Host, bike: Ref) -> None:
    _, day, _ = _rode(host)
    since = day.date if day is not None and day.date is not None else host.desk.now().date()

    def answered(text: str) -> str:
        what, by = dated(text, next_day(host.desk, since))
        if not what:
            return "what is to be done, e.g. new rear pads 2026-07-18"
        host.attempt(noting_todo(host.desk.files, bike, what, since, by))
        return ""

    host.ask(Question("what is to be done, and by which date", answered, declined="nothing noted"))


def _ask_missing(host: Host, day: Ref) -> None:
    def answered(text: str) -> str:
        step = noting_missing(host.desk.files, day, text.strip())
        if isinstance(step, Step):
            host.attempt(step)
            return ""
        return step

    host.ask(Question("what was missing", answered, declined="nothing noted"))


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on the steps home and on what is left to do; whether the message was for one of them."""
    row = message.row
    if row.kind != "check" or row.ref is None:
        return False
    answer = _todo if row.label == TODO_LABEL else _step
    if isinstance(message, messages.Digit):
        answer(host, row, message.text)
    elif isinstance(message, messages.Cleared):
        answer(host, row, "")
    elif isinstance(message, messages.Chosen):
        host.board.say(_TODO_KEYS if row.label == TODO_LABEL else _KEYS)
    else:
        return False
    return True


def _todo(host: Host, row: Row, key: str) -> None:
    if row.ref is None or key not in ("", "1"):
        host.board.say(_TODO_KEYS)
        return
    on = host.desk.now().date() if key else None
    _attempt(host, done_todo(host.desk.files, row.ref, row.path[1], on))


def _step(host: Host, row: Row, key: str) -> None:
    _, _, rode = _rode(host)
    mine = next((one for one in rode if row.path[1:3] == (one.rider, one.bike)), None)
    if mine is None or (key and key not in ANSWERS):
        host.board.say(_KEYS)
        return
    _attempt(host, road_step(host.desk, mine, row.path[-2], ANSWERS.get(key)))


def _attempt(host: Host, step: Step | str) -> None:
    host.attempt(step)


def hinted(row: Row) -> str:
    if row.kind != "check":
        return ""
    return "1 done" if row.label == TODO_LABEL else "1 ok 2 to fix 3 n.a."
