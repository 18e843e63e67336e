"""The bench on the screen: what is typed into calculators is held here, and nowhere else."""

from typing import TYPE_CHECKING, Any, cast

import attrs

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.calculators import Calculator
from paddock_tui.desk.edits.keys import one_digit
from paddock_tui.entry import read_typed
from paddock_tui.pages.bench import BENCH, input_at
from paddock_tui.pages.rows import Row
from paddock_tui.records.common import Units
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes import Flag
from paddock_tui.widgets import messages

if TYPE_CHECKING:
    from paddock_tui.screens.main import MainScreen


@attrs.define
class Bench:
    """What was tried for one session or profile; for another one the bench begins anew."""

    subject: Ref | None = None
    typed: dict[tuple[str, str], Any] = attrs.field(factory=dict)

    def about(self, subject: Ref | None) -> dict[tuple[str, str], Any]:
        """Return what was tried for a subject, nothing where it was for another."""
        if subject != self.subject:
            self.subject, self.typed = subject, {}
        return self.typed


def heard(screen: "MainScreen", message: Any) -> bool:
    """Take the keys on the inputs of the bench; whether the message was for one of them."""
    row = getattr(message, "row", None)
    if row is None or row.path[:1] != (BENCH,) or row.kind != "field":
        return False
    if isinstance(message, messages.Accepted):
        wrong = typed(screen, row, message.text)
        if wrong:
            screen.board.refuse(wrong)
    elif isinstance(message, messages.Stepped):
        screen.board.say(stepped(screen, row, message.by))
    elif isinstance(message, messages.Toggled):
        screen.board.say(toggled(screen, row))
    elif isinstance(message, messages.Cleared):
        screen.board.say(cleared(screen, row))
    elif isinstance(message, messages.Digit):
        digit(screen, row, message.text)
    else:
        return False
    return True


def typed(screen: "MainScreen", row: Row, text: str) -> str:
    """Try what was typed on an input; gives what is wrong with it, or nothing."""
    found = input_at(_calculators(screen), row.path)
    if found is None:
        return "nothing can be typed here"
    calculator, declared = found
    if not text.strip():
        return _tried(screen, calculator, declared.key, None)
    field = Field(row.path, declared.label, (), declared.shape, declared.help)
    value = read_typed(field, text, _units(screen))
    if isinstance(value, InputError):
        return value.sentence()
    raw = cast("Any", value)
    loaded = declared.shape.load(list(raw) if isinstance(raw, tuple) else raw)
    return (
        loaded.sentence()
        if isinstance(loaded, InputError)
        else _tried(screen, calculator, declared.key, loaded)
    )


def stepped(screen: "MainScreen", row: Row, by: int) -> str:
    """Step an input; gives why it cannot be stepped, or nothing."""
    found = input_at(_calculators(screen), row.path)
    value = _value(screen, row)
    if found is None or value is None:
        return f"{row.label} is not known: type it"
    after = found[1].shape.step(value, by)
    if after is None:
        return f"{row.label} has no steps: enter edits it"
    return _tried(screen, found[0], found[1].key, after)


def toggled(screen: "MainScreen", row: Row) -> str:
    """Turn yes into no and back; gives why it cannot, or nothing."""
    found = input_at(_calculators(screen), row.path)
    if found is None or not isinstance(found[1].shape, Flag):
        return f"{row.label} is neither yes nor no: enter edits it"
    return _tried(screen, found[0], found[1].key, _value(screen, row) is not True)


def cleared(screen: "MainScreen", row: Row) -> str:
    """Take back what was tried on an input; where nothing was, try it as not known."""
    found = input_at(_calculators(screen), row.path)
    if found is None:
        return "nothing can be cleared here"
    place = (found[0].id, found[1].key)
    held = screen.bench.about(screen.place.subject)
    if place in held:
        del held[place]
        screen.draw()
        return ""
    if _value(screen, row) is None:
        return f"{row.label} is not known already"
    return _tried(screen, found[0], found[1].key, None)


def digit(screen: "MainScreen", row: Row, text: str) -> None:
    """Try a digit at once where it is a whole answer; else open the editor with it."""
    found = input_at(_calculators(screen), row.path)
    if found is not None and one_digit(found[1].shape):
        screen.board.say(typed(screen, row, text))
    else:
        screen.board.edit(text)


def _calculators(screen: "MainScreen") -> tuple[Calculator, ...]:
    return calculators(screen.desk.about(screen.place.subject))


def _units(screen: "MainScreen") -> Units:
    return screen.units(screen.place.subject) if screen.place.subject is not None else screen.desk.units()


def _value(screen: "MainScreen", row: Row) -> Any:
    found = input_at(_calculators(screen), row.path)
    if found is None:
        return None
    held = screen.bench.about(screen.place.subject)
    place = (found[0].id, found[1].key)
    if place in held:
        return held[place]
    filled = found[0].filled.get(found[1].key)
    return None if filled is None else filled.value


def _tried(screen: "MainScreen", calculator: Calculator, key: str, value: Any) -> str:
    screen.bench.about(screen.place.subject)[calculator.id, key] = value
    screen.board.done()
    screen.draw()
    return ""
