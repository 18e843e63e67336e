"""The bench on the screen: what is typed into calculators is held here, and nowhere else."""

from collections.abc import Iterator
from typing import Any, cast

import attrs

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.calculators import Calculator
from paddock_tui.entry import read_typed
from paddock_tui.entry.typing_kinds import chosen, whole_text
from paddock_tui.pages.bench import BENCH, bench_page, input_at, section_of
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.kept_sections import KeptCalculators, KeptSections
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.common import Units
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Flag
from paddock_tui.screens.digits import begun, followed
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.widgets import messages


@attrs.define
class TriedInputs:
    """What was tried for one session or profile; for another one the bench begins anew."""

    subject: Ref | None = None
    typed: dict[tuple[str, str], Any] = attrs.field(factory=dict)

    def about(self, subject: Ref | None) -> dict[tuple[str, str], Any]:
        """Return what was tried for a subject, nothing where it was for another."""
        if subject != self.subject:
            self.subject, self.typed = subject, {}
        return self.typed


def make_page(asked: PageContext) -> Page:
    about = asked.desk.about(asked.subject, asked.assembled)
    heading = heading_of(asked.desk, asked.subject) if asked.subject is not None else ""
    tried = asked.state.of(TriedInputs).about(asked.subject)
    every = asked.state.of(KeptCalculators).of(about, calculators)
    return bench_page(every, tried, heading, about.units, asked.state.of(KeptSections))


def ahead(host: Host) -> Iterator[None]:
    """Work out what the page says of what is looked at, before anything is tried there: one by one."""
    with host.desk.files.once.each():
        about = host.desk.about(host.place.subject or host.desk.session_in_hand())
    yield
    every = host.state.of(KeptCalculators).of(about, calculators)
    for one in every:
        yield
        host.state.of(KeptSections).of(one, {}, about.units, section_of)


def hear(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on the inputs; whether the message was for one of them."""
    row = message.row
    if row.path[:1] != (BENCH,) or row.kind != "field":
        return False
    if isinstance(message, messages.Accepted):
        accepted(host, row, message.text)
    elif isinstance(message, messages.Editing):
        followed(host, row, message.text, lambda row, text: accepted(host, row, text))
    elif isinstance(message, messages.Stepped):
        host.board.say(stepped(host, row, message.by))
    elif isinstance(message, messages.Toggled):
        host.board.say(toggled(host, row))
    elif isinstance(message, messages.Cleared):
        host.board.say(cleared(host, row))
    elif isinstance(message, messages.Digit):
        digit(host, row, message.text)
    else:
        return False
    return True


def typed(host: Host, row: Row, text: str) -> str:
    """Try what was typed on an input; gives what is wrong with it, or nothing."""
    found = input_at(_calculators(host), row.path)
    if found is None:
        return "nothing can be typed here: up and down go to the inputs"
    calculator, declared = found
    if not text.strip():
        return _tried(host, calculator, declared.key, None)
    field = Field(row.path, declared.label, (), declared.shape, declared.help)
    whole = whole_text(declared.shape, chosen(row.choices, text), _units(host))
    value = read_typed(field, whole, _units(host))
    if isinstance(value, InputError):
        return value.sentence()
    raw = cast("Any", value)
    loaded = declared.shape.load(list(raw) if isinstance(raw, tuple) else raw)
    return (
        loaded.sentence()
        if isinstance(loaded, InputError)
        else _tried(host, calculator, declared.key, loaded)
    )


def stepped(host: Host, row: Row, by: int) -> str:
    """Step an input; gives why it cannot be stepped, or nothing."""
    found = input_at(_calculators(host), row.path)
    value = _value(host, row)
    if found is None or value is None:
        return f"{row.label} is not known: type it"
    after = found[1].shape.step(value, by)
    if after is None:
        return f"{row.label} has no steps: enter edits it"
    return _tried(host, found[0], found[1].key, after)


def toggled(host: Host, row: Row) -> str:
    """Turn yes into no and back; gives why it cannot, or nothing."""
    found = input_at(_calculators(host), row.path)
    if found is None or not isinstance(found[1].shape, Flag):
        return f"{row.label} is neither yes nor no: enter edits it"
    return _tried(host, found[0], found[1].key, _value(host, row) is not True)


def cleared(host: Host, row: Row) -> str:
    """Take back what was tried on an input; where nothing was, try it as not known."""
    found = input_at(_calculators(host), row.path)
    if found is None:
        return "nothing can be cleared here: backspace is for the inputs"
    place = (found[0].id, found[1].key)
    held = host.state.of(TriedInputs).about(host.place.subject)
    if place in held:
        del held[place]
        host.draw()
        return ""
    if _value(host, row) is None:
        return f"{row.label} is not known already"
    return _tried(host, found[0], found[1].key, None)


def digit(host: Host, row: Row, text: str) -> None:
    """Try a digit at once where it is a whole answer; else open the editor with it."""
    found = input_at(_calculators(host), row.path)
    shape = found[1].shape if found is not None else None
    begun(host, row, shape, text, lambda row, text: accepted(host, row, text))


def accepted(host: Host, row: Row, text: str) -> None:
    """Try what was typed, or say what is wrong with it."""
    wrong = typed(host, row, text)
    if host.board.is_typing:
        host.board.refuse(wrong)
    else:
        host.board.say(wrong)


def _calculators(host: Host) -> tuple[Calculator, ...]:
    return host.state.of(KeptCalculators).of(host.desk.about(host.place.subject), calculators)


def _units(host: Host) -> Units:
    return host.units(host.place.subject)


def _value(host: Host, row: Row) -> Any:
    found = input_at(_calculators(host), row.path)
    if found is None:
        return None
    held = host.state.of(TriedInputs).about(host.place.subject)
    place = (found[0].id, found[1].key)
    if place in held:
        return held[place]
    filled = found[0].filled.get(found[1].key)
    return None if filled is None else filled.value


def _tried(host: Host, calculator: Calculator, key: str, value: Any) -> str:
    host.state.of(TriedInputs).about(host.place.subject)[calculator.id, key] = value
    host.board.done()
    host.draw()
    return ""
