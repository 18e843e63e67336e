"""Functions that stand for those of a module until that is loaded."""

import sys
from importlib import import_module
from types import ModuleType
from unittest.mock import Mock

import pytest

from paddock_tui import on_demand
from paddock_tui.on_demand import Later


@pytest.fixture
def module(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    made = ModuleType("made_for_this")
    made.__dict__["twice"] = lambda number: 2 * number
    monkeypatch.setattr(Later, "declared", [])
    monkeypatch.setitem(sys.modules, "made_for_this", made)
    return made


def test_what_is_loaded_is_called_without_an_import(
    module: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    imported = Mock(wraps=import_module)
    monkeypatch.setattr(on_demand, "import_module", imported)
    twice = Later("made_for_this")("twice")

    monkeypatch.setattr(Later, "is_loaded", False)
    assert (twice(2), imported.call_count) == (4, 1)

    monkeypatch.setattr(Later, "is_loaded", True)
    module.__dict__["twice"] = lambda number: 20 * number
    assert (twice(2), imported.call_count) == (40, 1)


def test_what_could_not_be_loaded_with_the_others_is_loaded_when_it_is_called(
    module: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Later, "is_loaded", True)
    monkeypatch.delitem(sys.modules, "made_for_this")
    imported = Mock(return_value=module)
    monkeypatch.setattr(on_demand, "import_module", imported)

    assert Later("made_for_this")("twice")(3) == 6
    imported.assert_called_once_with("made_for_this")
