"""What hundreds of tests do alike, done once for all: the files of the sample read, the style sheet parsed.

Only a file with the very text of the sample's is shared. Records are frozen; that nobody changes the data of
a file is checked after each module of tests (`check`).
"""

import copy
import sys
from collections.abc import Mapping
from typing import Any

from paddock_tui.records import reading
from paddock_tui.records.bike import Bike
from paddock_tui.records.errors import InputError
from paddock_tui.records.reading import RecordRead, read_record
from paddock_tui.store import loaded
from paddock_tui.store.reading import loads
from tests.sample import FILES

_TEXTS: set[str] = set()
"""The texts of the sample's files."""

_DATA: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {}
"""The data of each of these texts as it is given to all, and as it has to be at the end."""

_SHARED: dict[int, dict[str, Any]] = {}
"""The data that is given to all, by identity; held, so that no other takes its place."""

_READ: dict[tuple[str, int, int], RecordRead] = {}
"""What was read of shared data with a shared bike or none."""

_STAYS: list[tuple[Mapping[str, Any], Mapping[str, Any]]] = []
"""Tables of the tests' own that are shared, and as each has to be at the end."""

_BIKES: dict[int, Bike] = {}
_USED: set[str] = set()


def share() -> None:
    """Share from here on; called again it changes nothing."""
    if _TEXTS:
        return
    _TEXTS.update(path.read_text(encoding="utf-8") for path in FILES.values())
    loaded.loads = _loads  # type: ignore[attr-defined]
    reading.read_record = _read_record
    if "textual.css.stylesheet" in sys.modules:
        _share_styles()


def stays(*tables: Mapping[str, Any]) -> None:
    """Have it noticed from here on when somebody changes one of these tables."""
    _STAYS.extend((one, copy.deepcopy(one)) for one in tables)


def check() -> None:
    """Fail where somebody changed the data of a file, or a table, that others are given as well."""
    assert all(given == right for given, right in _STAYS), "a shared table was changed in place"
    used = sorted(_USED)
    _USED.clear()
    for text in used:
        given, right = _DATA[text]
        assert given == right, "the data of a file was changed in place"


def _loads(text: str, file: str = "", *, shared: bool = False) -> dict[str, Any] | InputError:
    if text not in _TEXTS:
        return loads(text, file, shared=shared)
    if text not in _DATA:
        given, right = loads(text, file), loads(text, file)
        assert isinstance(given, dict)
        assert isinstance(right, dict)
        _DATA[text] = given, right
        _SHARED[id(given)] = given
    _USED.add(text)
    return _DATA[text][0]


def _read_record(kind: str, data: Mapping[str, Any], bike: Bike | None = None) -> RecordRead:
    if id(data) not in _SHARED or not (bike is None or id(bike) in _BIKES):
        return read_record(kind, data, bike)
    key = (kind, id(data), id(bike))
    if key not in _READ:
        _READ[key] = found = read_record(kind, data, bike)
        if isinstance(found.record, Bike):
            _BIKES[id(found.record)] = found.record
    return _READ[key]


def _share_styles() -> None:
    """Parse each style sheet with the same variables once: every app that starts has the same."""
    from textual.css.model import RuleSet
    from textual.css.stylesheet import Stylesheet

    parsed: dict[object, list[RuleSet]] = {}
    parse = Stylesheet._parse_rules

    def shared(self: Stylesheet, css: str, *args: Any, **more: Any) -> list[RuleSet]:
        key = (css, args, tuple(more.items()), tuple(self._variables.items()))
        if key not in parsed:
            parsed[key] = parse(self, css, *args, **more)
        return parsed[key]

    Stylesheet._parse_rules = shared  # type: ignore[method-assign]
