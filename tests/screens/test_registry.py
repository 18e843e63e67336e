"""The registry of the screen lists once what the folders declare; code names only rooms that are there."""

import ast
import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType

import pytest

import paddock_tui.screens
from paddock_tui.records.paths import Ref
from paddock_tui.screens import actions, rooms
from paddock_tui.screens.action import Action
from paddock_tui.screens.place import Place
from paddock_tui.screens.registry import ACTIONS, REGISTRY, ROOMS, action_of, place_showing, room_of
from paddock_tui.screens.room import Room
from tests.every import every
from tests.source import nodes_of, tree_of

FOLDER = Path(paddock_tui.screens.__path__[0])


def modules(package: ModuleType) -> Iterator[ModuleType]:
    for found in pkgutil.iter_modules(package.__path__):
        yield importlib.import_module(f"{package.__name__}.{found.name}")


def declared(module: ModuleType) -> list[Room | Action]:
    return [one for one in vars(module).values() if isinstance(one, Room | Action)]


@pytest.mark.parametrize("package", [rooms, actions], ids=["rooms", "actions"])
def test_every_module_declares_something_and_the_registry_lists_it_once(package: ModuleType) -> None:
    for module in modules(package):
        ours = declared(module)
        assert ours, module.__name__
        for one in ours:
            assert sum(one is listed for listed in REGISTRY) == 1, one.id


def test_nothing_is_listed_that_no_module_declares() -> None:
    found = [one for package in (rooms, actions) for module in modules(package) for one in declared(module)]

    assert len(found) == len(REGISTRY)


def test_ids_name_one_room_and_one_action() -> None:
    of_rooms = [one for one in REGISTRY if isinstance(one, Room)]

    assert len(ROOMS) == len(of_rooms)
    assert all(room_of(one.id) is one for one in of_rooms)
    assert all(action_of(one.id) is one for one in ACTIONS)


def test_what_a_room_does_its_own_way_is_an_action() -> None:
    own = [name for room in ROOMS.values() for name in room.own]

    assert sorted(own) == ["help", "new", "offer", "offer", "offer", "redo", "try_back", "undo"]
    assert all(action_of(name) for name in own)


def rooms_named() -> Iterator[tuple[str, str]]:
    """Give each name of a room that is written out in the code of the screens: room="..." and to("...")."""
    for path in FOLDER.rglob("*.py"):
        for node in nodes_of(tree_of(path)):
            if isinstance(node, ast.Call):
                named = [one.value for one in node.keywords if one.arg == "room"]
                if isinstance(node.func, ast.Name) and node.func.id in ("to", "room_of"):
                    named += node.args[:1]
                words = [one.value for one in named if isinstance(one, ast.Constant)]
                yield from ((path.name, word) for word in words if isinstance(word, str))


def test_every_room_that_the_code_goes_to_is_there() -> None:
    named = list(rooms_named())

    assert len(named) >= 10
    assert [one for one in named if one[1] not in ROOMS] == []


SESSION, DAY = Ref("session", "a"), Ref("day", "b")


@every(
    ("ref", "path", "room"),
    [
        (SESSION, (), "session"),
        (SESSION, ("laps", "2"), "session"),
        (SESSION, ("setup", "front_start"), "setup"),
        (SESSION, ("dash", "read"), "dash"),
        (SESSION, ("checks", "visor", "status"), "checklist"),
        (DAY, ("entries", "ines", "magpie", "checks", "visor", "status"), "checklist"),
        (DAY, ("entries", "ines", "magpie", "group"), "record"),
        (Ref("profile", "p"), (), "setup"),
        (Ref("profile", "p"), ("note",), "setup"),
        (Ref("bike", "magpie"), ("modes", "wet"), "record"),
    ],
)
def test_a_value_is_looked_for_in_the_room_that_shows_it(ref: Ref, path: tuple[str, ...], room: str) -> None:
    assert place_showing(Place(), ref, path).room == room
