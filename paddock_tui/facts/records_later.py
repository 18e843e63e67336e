"""Records of which many are named and few are looked at: each is read when it is first asked for."""

from collections.abc import Callable, Iterator, Mapping

from paddock_tui.records.tyres import TyreSet


class _Later:
    """A record that is there and was not read yet; those who hold it share it."""

    def __init__(self, read: Callable[[], TyreSet | None]) -> None:
        self._read = read
        self._found: TyreSet | None = None

    def record(self) -> TyreSet:
        """Return the record; one that cannot be read by now holds nothing that is known."""
        if self._found is None:
            self._found = self._read() or TyreSet()
        return self._found


class RecordsLater(Mapping[str, TyreSet]):
    """Tyre sets by their ids, of which some are read later."""

    def __init__(self) -> None:
        self._held: dict[str, TyreSet | _Later] = {}

    def put(self, name: str, one: TyreSet) -> None:
        """Put in a tyre set that was read."""
        self._held[name] = one

    def put_later(self, name: str, read: Callable[[], TyreSet | None]) -> None:
        """Put in a tyre set that is read when it is asked for."""
        self._held[name] = _Later(read)

    def copy(self) -> "RecordsLater":
        """Return one that holds the same, and goes on from there by itself."""
        other = RecordsLater()
        other._held = dict(self._held)
        return other

    def holds_as(self, other: "RecordsLater") -> bool:
        """Return whether both hold the very same, read or not."""
        return len(self._held) == len(other._held) and all(
            other._held.get(name) is one for name, one in self._held.items()
        )

    def __getitem__(self, name: str) -> TyreSet:
        one = self._held[name]
        return one.record() if isinstance(one, _Later) else one

    def __contains__(self, name: object) -> bool:
        return name in self._held

    def __iter__(self) -> Iterator[str]:
        return iter(self._held)

    def __len__(self) -> int:
        return len(self._held)
