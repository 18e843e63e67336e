"""The guided start on the screen: each answer is saved at once, and the cursor goes on to what is open."""

import attrs

from paddock_tui.advice.beside_setup import beside_setup
from paddock_tui.desk import Desk
from paddock_tui.desk.day.minute import Minute
from paddock_tui.desk.edits.values import clearing, field_of
from paddock_tui.desk.start.about import last_session
from paddock_tui.desk.start.ask import Ask
from paddock_tui.desk.start.context import Context
from paddock_tui.desk.start.order import after, asks, context_of_start, goes_on
from paddock_tui.entry.typing_kinds import is_whole, second_possible, whole_text
from paddock_tui.pages.rows import Page, Row
from paddock_tui.pages.start import REVIEW, start_page
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.text import printable
from paddock_tui.widgets import messages


@attrs.define
class StartState:
    """The records chosen in this run's start; None: a new one is wanted.

    `reached` is the row that a digit went on to by itself: an enter right behind that digit ends the answer,
    as it does for a choice on any page, and passes no row that nobody has read.
    """

    chosen: dict[str, Ref | None] = attrs.field(factory=dict)
    reached: str = ""
    minute: Minute = attrs.field(factory=Minute, init=False)
    _made: tuple[Context, tuple[Ask, ...]] | None = attrs.field(default=None, init=False)
    _of: dict[str, Ref | None] = attrs.field(factory=dict, init=False)

    def rows(self, desk: Desk) -> tuple[Context, tuple[Ask, ...]]:
        """Return what the rows are made from, and the rows; made anew once anything changed."""
        is_over = self.minute.is_over(desk)
        if self._made is None or is_over or self._of != self.chosen:
            with desk.files.once.each():
                context = context_of_start(desk, self.chosen)
                self._made, self._of = (context, asks(context)), dict(self.chosen)
            # Making them may have come upon what others changed.
            self.minute.is_over(desk)
        return self._made


def _rows(host: Host) -> tuple[Ask, ...]:
    return host.state.of(StartState).rows(host.desk)[1]


def make_page(asked: PageContext) -> Page:
    context, rows = asked.state.of(StartState).rows(asked.desk)
    session = context.about.session
    if session is None or asked.desk.files.read(session) is None:
        return start_page(rows, None, Review(about_a_session=False), {}, {})
    own = session == asked.subject
    about = asked.desk.about(session, asked.assembled if own else None)
    judged = asked.review if own else asked.desk.judged(about.situation)
    return start_page(rows, session, judged, about.situation.refs, beside_setup(about))


def _begin(host: Host, **chosen: Ref | None) -> None:
    host.state.of(StartState).chosen = dict(chosen)
    host.go(attrs.evolve(host.place, room="guide"))
    _to(host, goes_on(_rows(host)))


def start_guide(host: Host) -> None:
    """Begin the start, or go on where it stopped."""
    _begin(host)


def add_bike(host: Host) -> None:
    """Begin with a new bike: its tyres and its session are new too."""
    _begin(host, bike=None, tyres=None, session=None)


def add_day(host: Host) -> None:
    """Begin with a new day, on the bike and tyres of the last session."""
    _begin(host, day=None, session=None, **_last(host))
    _to(host, next((one for one in _rows(host) if one.key == "date"), None))


def _last(host: Host) -> dict[str, Ref | None]:
    """Return the rider, bike, tyres and venue of the newest session."""
    session = last_session(host.desk.files, None)
    data = host.desk.files.data(session) if session is not None else {}
    day = data.get("day")
    of_day = host.desk.files.data(Ref("day", day)) if isinstance(day, str) else {}
    held = {**data, "venue": of_day.get("venue")}
    return {
        kind: Ref(kind, str(held[kind]))
        for kind in ("rider", "bike", "tyres", "venue")
        if isinstance(held.get(kind), str)
    }


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take what the board says of a row of the start; whether it was taken."""
    row, state = message.row, host.state.of(StartState)
    reached, state.reached = state.reached, ""
    if isinstance(message, messages.Chosen) and reached == row.key:
        host.say_done()
        return True
    if row.key == REVIEW and isinstance(message, messages.Chosen):
        session = state.rows(host.desk)[0].about.session
        host.go(attrs.evolve(host.place, room="review", subject=session))
        return True
    if isinstance(message, messages.Editing) and not message.text.isdecimal():
        return False
    one = next((one for one in _rows(host) if one.key == row.key), None)
    if row.kind != "ask" or one is None:
        return False
    if isinstance(message, messages.Digit):
        _digit(host, one, message.text)
    elif isinstance(message, messages.Editing):
        _editing(host, one, message.text)
    elif isinstance(message, messages.Accepted | messages.Chosen):
        _enter(host, one, message.text if isinstance(message, messages.Accepted) else "")
    elif isinstance(message, messages.Cleared):
        _cleared(host, one)
    elif isinstance(message, messages.Stepped | messages.Toggled):
        host.board.say("type it, or enter passes the row")
    else:
        return False
    return True


def _digit(host: Host, one: Ask, text: str) -> None:
    """Take a digit: the whole answer where it picks one, or such a value has no more; else its beginning."""
    number, closed = int(text), not one.free and 0 < len(one.choices) < 10
    picks = one.key.startswith("whole ") or (closed and 0 < number <= len(one.choices))
    if closed and not picks and not any(word.startswith(text) for word in one.choices):
        host.board.say(f"{text} is none of them: {printable(one.how)}")
        return
    field = field_of(host.desk.files, one.ref, one.path) if one.ref is not None and one.path else None
    second = field is not None and not one.choices and second_possible(field.shape, text)
    if picks or (one.typing in ("one digit", "two digits") and not second):
        _keep(host, one, text)
        _reached(host)
    else:
        host.board.edit(text, second=second)


def _editing(host: Host, one: Ask, text: str) -> None:
    """Keep a number once its second digit has followed, and what is of a fixed length once it is whole."""
    two = one.typing == "two digits" and len(text) == 2
    if not one.choices and (two or is_whole(one.typing, text)):
        _keep(host, one, _whole_text(host, one, text))
        _reached(host)


def _whole_text(host: Host, one: Ask, text: str) -> str:
    """Write three digits with their point and unit, as on any other page: 238 is 2.38 bar."""
    field = field_of(host.desk.files, one.ref, one.path) if one.ref is not None and one.path else None
    units = host.state.of(StartState).rows(host.desk)[0].units
    return whole_text(field.shape, text, units) if field is not None else text


def _reached(host: Host) -> None:
    row = host.board.cursor_row
    if row is not None and not host.board.is_typing:
        host.state.of(StartState).reached = row.key


def _enter(host: Host, one: Ask, text: str) -> None:
    """Take what was typed; with nothing typed what is offered, else go on past the row."""
    if text.strip():
        _keep(host, one, _whole_text(host, one, text))
    elif one.offered and one.is_open:
        _keep(host, one, one.offered)
    else:
        host.board.done()
        _go_on(host, one)


def _keep(host: Host, one: Ask, text: str) -> None:
    """Do the step of an answer and go on, or say what is wrong with it."""
    found = one.answer(text)
    if isinstance(found, InputError):
        _refuse(host, printable(found.sentence()), text)
        return
    host.board.done()
    if found.about is not None:
        host.state.of(StartState).chosen[found.about.kind] = found.about
    if found.step is not None and found.step.changes:
        host.attempt(found.step)
    else:
        host.draw()
    if not host.board.is_typing:
        _go_on(host, one)


def _refuse(host: Host, why: str, text: str) -> None:
    if not host.board.is_typing:
        host.board.edit(text)
    host.board.refuse(why)


def _cleared(host: Host, one: Ask) -> None:
    if one.ref is None or not one.path:
        host.board.say("this row takes another answer: alt+u undoes, or change it on its own page")
        return
    step: Step = clearing(host.desk.files, one.ref, one.path)
    host.attempt(step if step.changes else f"{one.label} is not known already")


def _go_on(host: Host, one: Ask) -> None:
    """Go to the next open row; behind the last one to the review."""
    _to(host, after(_rows(host), one.key))


def _to(host: Host, one: Ask | None) -> None:
    key = one.key if one is not None else REVIEW
    row: Row | None = next((row for row in host.board.page.rows() if row.key == key), None)
    if row is not None:
        host.board.go(row.identity)
