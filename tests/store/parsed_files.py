"""Which files were parsed as a whole."""

import pytest

from paddock_tui.store.reading import loads


def count_parsed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return a list to which the name of each file is added that is parsed from here on."""
    names: list[str] = []

    def counted(text: str, name: str) -> object:
        names.append(name)
        return loads(text, name)

    monkeypatch.setattr("paddock_tui.store.loaded.loads", counted)
    return names
