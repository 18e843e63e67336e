"""What this run remembers for its rooms and actions, and no file does."""

from typing import Any, TypeVar, cast

Kept = TypeVar("Kept")


class RunState:
    """Holds one object of each class that is asked for; a room or an action declares the class of its own."""

    def __init__(self) -> None:
        self._held: dict[type[Any], Any] = {}

    def of(self, kind: type[Kept]) -> Kept:
        """Return the one object of a class, made without arguments when it is first asked for."""
        if kind not in self._held:
            self._held[kind] = kind()
        return cast("Kept", self._held[kind])
