"""Text, words out of a list, and yes or no."""

from collections.abc import Mapping

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import SOME, JsonSchema, Shape, found_words
from paddock_tui.records.shown_words import meant, shown

_LONGEST = 2000


class Text(Shape[str]):
    """Any text on one line."""

    expected = "a text"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": SOME}

    def load(self, raw: object) -> str | InputError:
        if not isinstance(raw, str):
            return self.wrong(raw, f'write "{found_words(raw)}"' if isinstance(raw, int | float) else "")
        if not raw.strip():
            return self.wrong(raw, "leave the line out while it is not known")
        return raw

    def read(self, text: str) -> str | InputError:
        if len(text) > _LONGEST:
            return InputError(found=f"a text of {len(text)} characters", expected=f"at most {_LONGEST}")
        return self.load(text.strip())

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return "..."


class Word(Shape[str]):
    """One word out of a list; at the keyboard a unique start of it will do.

    Some are shown in other words than they are stored (`records/shown_words.py`), and read in both.
    `formerly` are words that files may hold for one of the list for ever, with what they are called now:
    they are read as that, and only that is written.
    """

    def __init__(self, *choices: str, formerly: Mapping[str, str] | None = None) -> None:
        self.choices = choices
        self.formerly = dict(formerly or {})

    @property
    def expected(self) -> str:
        return one_of(self.choices)

    def schema(self) -> JsonSchema:
        return {"enum": [*self.choices, *self.formerly]}

    def load(self, raw: object) -> str | InputError:
        if isinstance(raw, str) and raw in self.choices:
            return raw
        if isinstance(raw, str):
            return self.formerly.get(raw) or self.wrong(raw, nearest(raw, self.choices))
        return self.wrong(raw)

    def read(self, text: str) -> str | InputError:
        typed = text.strip().casefold()
        found = meant(text, self.choices)
        if isinstance(found, InputError) and typed not in self.formerly:
            return self.mistyped(text, found.mend)
        if isinstance(found, str):
            return found
        if typed in self.formerly:
            return self.formerly[typed]
        return self.mistyped(text, nearest(typed, self.words()))

    def mistyped(self, text: str, mend: str) -> InputError:
        """Refuse what was typed, with the words as they are shown: files hold others."""
        return InputError(found_words(text), one_of(self.words()), mend)

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return self.choices[0]

    def step(self, value: str, by: int) -> str | None:
        if value not in self.choices:
            return self.choices[0]
        at = self.choices.index(value) + by
        return self.choices[max(0, min(len(self.choices) - 1, at))]

    def words(self) -> tuple[str, ...]:
        return tuple(map(shown, self.choices))

    def show(self, value: str) -> str:
        return shown(value)


class Flag(Shape[bool]):
    """Yes or no; `true` or `false` in a file."""

    expected = "yes or no"

    def schema(self) -> JsonSchema:
        return {"type": "boolean"}

    def load(self, raw: object) -> bool | InputError:
        if isinstance(raw, bool):
            return raw
        return InputError(
            found=self.wrong(raw).found, expected="true or false", mend="write true or false, without quotes"
        )

    def read(self, text: str) -> bool | InputError:
        typed = text.strip().casefold()
        if typed in ("yes", "y", "true"):
            return True
        if typed in ("no", "n", "false"):
            return False
        return self.wrong(text)

    def dump(self, value: bool) -> bool:
        return value

    def example(self) -> bool:
        return True

    def show(self, value: bool) -> str:
        return "yes" if value else "no"

    def step(self, value: bool, by: int) -> bool:  # noqa: ARG002 - up is yes, whatever it was
        return by > 0

    def words(self) -> tuple[str, ...]:
        return ("yes", "no")


def one_of(choices: tuple[str, ...]) -> str:
    """Write a list of words as 'a, b or c'."""
    if len(choices) < 2:
        return "".join(choices)
    return f"{', '.join(choices[:-1])} or {choices[-1]}"


def nearest(text: str, choices: tuple[str, ...]) -> str:
    """Offer the most alike word as a mend; empty where none is alike."""
    import difflib

    alike = difflib.get_close_matches(text, choices, n=1)
    return f"did you mean {alike[0]}?" if alike else ""
