"""References to other records, and names that are looked up in another record."""

from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import LONGEST, PATTERN, is_id
from paddock_tui.records.shapes.base import SOME, JsonSchema, Shape


class Reference(Shape[str]):
    """The id of another record. It is looked up in the listing, never joined to a path."""

    def __init__(self, kind: str) -> None:
        self.kind = kind

    @property
    def expected(self) -> str:
        return f"the id of a {self.kind} in this garage"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": f"^{PATTERN}$", "maxLength": LONGEST}

    def load(self, raw: object) -> str | InputError:
        if not isinstance(raw, str) or not is_id(raw):
            return self.wrong(raw, "an id has lower-case letters, digits and hyphens")
        return raw

    def read(self, text: str) -> str | InputError:
        return self.load(text.strip().removeprefix(f"{self.kind}/"))

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return f"your-{self.kind}"


class Named(Shape[str]):
    """A name that the owner gave inside another record: a riding mode, a damping mode, a preset."""

    def __init__(self, what: str, choices: tuple[str, ...] = ()) -> None:
        self.what, self.choices = what, choices

    @property
    def expected(self) -> str:
        return f"{self.what}: {', '.join(self.choices)}" if self.choices else self.what

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": SOME}

    def load(self, raw: object) -> str | InputError:
        if not isinstance(raw, str) or not raw.strip():
            return self.wrong(raw)
        return raw

    def read(self, text: str) -> str | InputError:
        typed = text.strip().casefold()
        if not self.choices:
            return self.load(text.strip())
        starts = [word for word in self.choices if typed and word.casefold().startswith(typed)]
        same = [word for word in starts if word.casefold() == typed]
        if len(same or starts) == 1:
            return (same or starts)[0]
        return self.wrong(text)

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return self.choices[0] if self.choices else "..."

    def step(self, value: str, by: int) -> str | None:
        if value not in self.choices:
            return self.choices[0] if self.choices else None
        at = self.choices.index(value) + by
        return self.choices[max(0, min(len(self.choices) - 1, at))]

    def words(self) -> tuple[str, ...]:
        return self.choices
