"""What every shape can do."""

import abc
from typing import Any, Generic, TypeVar

from paddock_tui.records.edits import Plain
from paddock_tui.records.errors import InputError

T = TypeVar("T")

_MOST_DIGITS = 40

SOME = r"\S"
"""The pattern of a text that says something."""

JsonSchema = dict[str, Any]
"""A JSON Schema, or a part of one, as plain data."""

Stored = Plain | list[Plain]
"""What a shape writes into a file: one plain value or an array of plain values."""


class ShapeMeta(abc.ABCMeta):
    """Keep a shape from being made without all that it must do.

    Whether something is one is asked hundreds of thousands of times, and nothing is registered as one.
    """

    __instancecheck__ = type.__instancecheck__


class Shape(Generic[T], metaclass=ShapeMeta):
    """One kind of value.

    `load` takes what the file holds and `read` what was typed; both answer the value or an InputError.
    What can be read is kept: whether it can be so on this bike, and whether it is wise, are rules.
    """

    @property
    @abc.abstractmethod
    def expected(self) -> str:
        """Say what may stand here, as the end of the sentence 'expected ...'."""

    @abc.abstractmethod
    def load(self, raw: object) -> T | InputError:
        """Take a value from a file."""

    @abc.abstractmethod
    def read(self, text: str) -> T | InputError:
        """Take what was typed."""

    @abc.abstractmethod
    def dump(self, value: T) -> Stored:
        """Return the value as the file holds it."""

    @abc.abstractmethod
    def schema(self) -> JsonSchema:
        """Return what `load` takes as a JSON Schema (2020-12); dates and times are ISO strings there."""

    @abc.abstractmethod
    def example(self) -> T:
        """Return a value that may stand here, for templates and messages."""

    def show(self, value: T) -> str:
        """Write the value for the screen, so that `read` takes it back."""
        return str(value)

    def step(self, value: T, by: int) -> T | None:  # noqa: ARG002 - the default has no steps
        """Return the value `by` steps further, stopping at the ends; None where it has no steps."""
        return None

    def words(self) -> tuple[str, ...]:
        """List the words that `read` takes, for completion; empty where any text may do."""
        return ()

    def band(self) -> tuple[float, float, str] | None:
        """Return the lowest and highest figure that can be, and their unit; None where there is no band."""
        return None

    def wrong(self, found: object, mend: str = "") -> InputError:
        """Make the InputError of a value that this shape does not take."""
        return InputError(found=found_words(found), expected=self.expected, mend=mend)


def found_words(found: object) -> str:
    """Write what stood in a file or was typed, the way TOML would."""
    if isinstance(found, str):
        shown = found if len(found) <= 60 else found[:57] + "..."
        return f'"{shown}"'
    if isinstance(found, bool):
        return "true" if found else "false"
    if isinstance(found, dict):
        return "a table"
    if isinstance(found, list):
        return "an array"
    if isinstance(found, int) and abs(found) >= 10**_MOST_DIGITS:
        # Python refuses to write very long numbers out.
        return f"a number of more than {_MOST_DIGITS} digits"
    shown = str(found)
    return shown if len(shown) <= 60 else shown[:57] + "..."


def article(noun: str) -> str:
    """Write a noun with 'a' or 'an'."""
    return f"{'an' if noun[:1] in 'aeiou' else 'a'} {noun}"
