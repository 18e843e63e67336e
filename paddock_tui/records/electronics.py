"""The electronics of a bike: its controls and its riding modes."""

from collections.abc import Mapping

import attrs

from paddock_tui import quantities
from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import one, tables, values
from paddock_tui.records.shapes import Series, Setting, Word, WordList
from paddock_tui.records.shapes.base import SOME, JsonSchema, Shape
from paddock_tui.records.shapes.numbers import read_number

HELP_FUNCTIONS = ("traction", "wheelie", "slide", "front-abs", "rear-abs", "abs", "throttle", "power")
"""Functions that have more or less help; `abs` is front and rear in one."""

STATE_FUNCTIONS = ("launch", "shifter", "pit-limiter")

FUNCTIONS = (*HELP_FUNCTIONS, "engine-braking", *STATE_FUNCTIONS, "other")

KINDS = ("level", "choice", "switch", "speed", "state")


class OffValue(Shape[bool | Setting]):
    """Whether a control can be off: true, or the level or word that means off on this bike."""

    expected = "true, false, or the level or word that means off"

    def schema(self) -> JsonSchema:
        return {"anyOf": [{"type": "boolean"}, c.SETTING.schema()]}

    def load(self, raw: object) -> bool | Setting | InputError:
        if isinstance(raw, bool):
            return raw
        found = c.SETTING.load(raw)
        return self.wrong(raw) if isinstance(found, InputError) else found

    def read(self, text: str) -> bool | Setting | InputError:
        typed = text.strip()
        if typed.casefold() in ("yes", "true"):
            return True
        if typed.casefold() in ("no", "false"):
            return False
        found = c.SETTING.read(typed)
        return self.wrong(text) if isinstance(found, InputError) else found

    def dump(self, value: bool | Setting) -> bool | Setting:
        return value

    def example(self) -> bool | Setting:
        return True

    def show(self, value: bool | Setting) -> str:
        return {True: "yes", False: "no"}.get(value, str(value)) if isinstance(value, bool) else str(value)


class Bounds(Shape[tuple[Setting, ...]]):
    """What a riding mode leaves of a control: two levels (from, to), or the words allowed."""

    expected = "two levels, from and to, or the words allowed"

    def schema(self) -> JsonSchema:
        words = {"type": "array", "items": {"type": "string", "pattern": SOME}, "minItems": 1}
        level = {"type": "integer", "exclusiveMinimum": -(10**9), "exclusiveMaximum": 10**9}
        return {"anyOf": [words, {"type": "array", "items": level, "minItems": 2, "maxItems": 2}]}

    def load(self, raw: object) -> tuple[Setting, ...] | InputError:
        if not isinstance(raw, list) or not raw:
            return self.wrong(raw)
        found = [c.SETTING.load(item) for item in raw]
        words = all(isinstance(item, str) for item in found)
        levels = len(found) == 2 and all(isinstance(item, int) for item in found)
        return tuple(raw) if words or levels else self.wrong(raw)

    def read(self, text: str) -> tuple[Setting, ...] | InputError:
        numbers = Series(2, 2, "", whole=True).read(text)
        if not isinstance(numbers, InputError):
            return tuple(int(number) for number in numbers)
        pieces = [piece.strip() for piece in text.split(",") if piece.strip()]
        return self.wrong(text) if any(read_number(one) is not None for one in pieces) else self.load(pieces)

    def dump(self, value: tuple[Setting, ...]) -> list[str | int | float | bool]:  # type: ignore[override]
        return list(value)

    def example(self) -> tuple[Setting, ...]:
        return (2, 6)

    def show(self, value: tuple[Setting, ...]) -> str:
        if value and isinstance(value[0], int):
            return f"{value[0]} to {value[1]}"
        return ", ".join(str(word) for word in value)


@attrs.frozen
class Effect:
    """What one level of a control does where that is more than 'more' or 'less'."""

    front: str | None = one(Word("off", "on"), "front wheel", "whether this level watches the front wheel")
    rear: str | None = one(Word("off", "on"), "rear wheel", "whether this level watches the rear wheel")
    lean: bool | None = one(c.FLAG, "allows for lean", "whether this level allows for lean angle")
    rear_lift: bool | None = one(
        c.FLAG, "holds the rear down", "whether this level acts when the rear wheel lifts"
    )
    shifts: str | None = one(
        Word("up", "down", "both"), "shifts", "which shifts this level does without the clutch"
    )


@attrs.frozen
class Control:
    """One thing that the electronics let the rider set."""

    function: str | None = one(
        Word(*FUNCTIONS), "function", "what it controls; left out, the name of the control says it"
    )
    kind: str | None = one(
        Word(*KINDS), "kind", "counted levels, a choice of words, a switch, a speed or a state"
    )
    levels: tuple[float, ...] | None = one(
        Series(2, 2, "two whole numbers, lowest and highest", whole=True),
        "levels",
        "lowest and highest number shown",
    )
    choices: tuple[str, ...] | None = one(
        WordList("the words in the bike's order"),
        "choices",
        "the words of a choice or a state, in the bike's order",
    )
    speeds: tuple[str, ...] | None = one(
        WordList("speeds with their units"), "speeds", "the speeds that can be chosen"
    )
    most_help: Setting | None = one(
        c.SETTING, "most help at", "the end of the range that helps most; left out while that is not known"
    )
    frees_most: Setting | None = one(
        c.SETTING,
        "engine brakes least at",
        "engine braking: the end with the least engine braking; left out: not known",
    )
    off: bool | Setting | None = one(
        OffValue(),
        "can be off",
        "true: off is a state beside the levels; or the level that means off, not counted as help",
    )
    key_off: str | None = one(
        Word("keeps", "resets"),
        "after ignition off",
        "whether the value survives it; left out: not known",
    )
    value_after_key_off: Setting | None = one(c.SETTING, "resets to", "what it then shows, where it resets")
    reached: str | None = one(
        c.TEXT, "how it is reached", "where it is set on the dash, in your own words, one line"
    )
    change_when: str | None = one(
        Word("standing", "throttle closed", "any time"),
        "when it may be changed",
        "what the bike asks for before it lets it be changed",
    )
    gentlest: Setting | None = one(
        c.SETTING, "gentlest at", "launch: the level or word to begin with; left out while that is not known"
    )
    call: str | None = one(c.TEXT, "call", "the word for it on the entry line, where you want your own")
    outside_modes: bool | None = one(c.FLAG, "outside riding modes", "whether riding modes leave it alone")
    effects: Mapping[str, Effect] = tables(Effect, "effects", keyed_by="level", keys="[A-Za-z0-9 _-]+")


@attrs.frozen
class Mode:
    """One of the bike's electronic maps; controls that it does not name are free."""

    use: str | None = one(
        Word("dry", "damp", "wet", "road", "any"), "made for", "the surface this mode is meant for"
    )
    note: str | None = one(c.TEXT, "note", "anything worth knowing")
    fixes: Mapping[str, Setting] = values(
        c.SETTING,
        "fixes",
        "the value this mode sets, which cannot be changed in it",
        keyed_by="control",
    )
    limits: Mapping[str, tuple[Setting, ...]] = values(
        Bounds(), "allowed ranges", "the range or the words this mode leaves", keyed_by="control"
    )
    off_allowed: tuple[str, ...] | None = one(
        WordList("names of controls"), "may be off", "the controls that may be switched off in this mode"
    )


def function_of(name: str, control: Control) -> str:
    """Return what a control does: what the file says, else its name, else 'other'."""
    if control.function is not None:
        return control.function
    return name if name in FUNCTIONS else "other"


def speed_of(setting: Setting) -> Quantity | None:
    """Read the speed in a setting such as "60 km/h"; None where it is off or not a speed."""
    found = quantities.parse(setting) if isinstance(setting, str) else None
    return found if isinstance(found, Quantity) and found.dimension == "speed" else None
