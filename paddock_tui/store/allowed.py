"""Places outside a garage that its links may lead to: each allowed once by the user, noted outside it."""

import json
import os
from pathlib import Path

from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.guarded import NotRead, read_file
from paddock_tui.store.signing import user_folder
from paddock_tui.store.tree import outside

_NAME = "links.json"
_LARGEST = 1_000_000


class Allowed:
    """Tells of a place whether the user allowed it for this garage, itself or a folder that it is in."""

    def __init__(self, root: Path) -> None:
        self._garage = os.path.realpath(root)
        self._places: frozenset[Path] | None = None

    def __call__(self, place: Path) -> bool:
        """Return whether a link may lead there."""
        if self._places is None:
            self._places = frozenset(Path(one) for one in _read().get(self._garage, []))
        return any(place.is_relative_to(one) for one in self._places)

    def allow(self, place: Path) -> None:
        """Allow a place from now on. Raises NotWritten."""
        try:
            folder = user_folder()
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        except (OSError, RuntimeError) as error:
            raise NotWritten(f"it cannot be noted: {error}") from error
        places = _read()
        places[self._garage] = sorted({*places.get(self._garage, []), str(place)})
        file = folder / _NAME
        replace_durably(
            outside(file), file, json.dumps(places, indent=1), create=not file.exists(), mode=0o600
        )
        self._places = None


def _read() -> dict[str, list[str]]:
    """Read which places were allowed for which garage; none where that cannot be read."""
    try:
        file = user_folder() / _NAME
        given = json.loads(read_file(outside(file), file, _LARGEST))
        return {str(garage): [str(one) for one in places] for garage, places in given.items()}
    except (NotRead, RuntimeError, ValueError, AttributeError, TypeError):
        return {}
