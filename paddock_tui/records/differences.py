"""What differs between two set-ups: each value once, named as reasons for changes are kept."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records.paths import Path
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import label_of

TABLES = ("controls", "adjusters", "offsets")
"""The tables of a set-up; everything else in it is a value of its own."""


@attrs.frozen
class Difference:
    """One value that differs; `kind` and `key` are how its reason is kept, None means not written down."""

    kind: str
    key: str
    old: object
    new: object

    @property
    def path(self) -> Path:
        """Where the value stands in a session or a profile."""
        return ("setup", self.key) if self.kind == "setup" else ("setup", self.kind, self.key)

    @property
    def label(self) -> str:
        """What it is called."""
        return label_of(self.key.replace("_", "-"))

    @property
    def known(self) -> bool:
        """Whether both values are written down: what is not known changes nothing."""
        return self.old is not None and self.new is not None

    @property
    def reads(self) -> str:
        """Old -> new."""
        return f"{written(self.old)} -> {written(self.new)}"

    def __str__(self) -> str:
        return f"{self.label} {self.reads}"


def differences(old: SetUp, new: SetUp) -> tuple[Difference, ...]:
    """List what differs, in the order of the declarations; figures in other units of the same size do not."""
    return tuple(_differences(old, new))


def _differences(old: SetUp, new: SetUp) -> Iterator[Difference]:
    for one in attrs.fields(SetUp):
        before, after = getattr(old, one.name), getattr(new, one.name)
        if one.name not in TABLES:
            if not same_value(before, after):
                yield Difference("setup", one.name, before, after)
            continue
        yield from _in_table(one.name, before, after)


def _in_table(name: str, before: Mapping[str, object], after: Mapping[str, object]) -> Iterator[Difference]:
    for key in dict.fromkeys((*before, *after)):
        was, became = before.get(key), after.get(key)
        if not same_value(was, became):
            yield Difference(name, key, was, became)


def same_value(one: object, other: object) -> bool:
    """Return whether two values of a set-up are the same; figures are compared across units."""
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.dimension == other.dimension and one.same(other)
    return one == other


def written(value: object) -> str:
    """Write a value of a set-up."""
    if value is None:
        return "not known"
    if isinstance(value, float | int) and not isinstance(value, bool):
        return show_number(float(value))
    return str(value)
