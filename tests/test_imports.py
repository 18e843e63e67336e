"""What importing costs: clean interpreters are asked which heavy packages they have loaded."""

import importlib.util
import pkgutil
import subprocess
import sys
from pathlib import Path

import pytest

import paddock_tui

_LOADED = "\nimport sys; print('loaded:', *sorted({names} & set(sys.modules)))"
_VERSION = """
import runpy, sys
sys.argv = ["paddock-tui", "--version"]
try:
    runpy.run_module("paddock_tui", run_name="__main__")
except SystemExit as end:
    assert not end.code, end.code
"""

_COMMAND = """
from paddock_tui.__main__ import main
assert main({words}) in (0, 1)
"""


def loaded(code: str, names: set[str]) -> set[str]:
    """Which of the packages named a clean interpreter has loaded after running the code."""
    program = code + _LOADED.format(names=names)
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return set(done.stdout.rpartition("loaded:")[2].split())


def modules_of(package: str) -> list[str]:
    """Every module of one package, the package itself first."""
    found = importlib.util.find_spec(f"paddock_tui.{package}")
    assert found is not None
    assert found.submodule_search_locations
    inside = pkgutil.walk_packages(found.submodule_search_locations, f"paddock_tui.{package}.")
    return [f"paddock_tui.{package}", *(module.name for module in inside)]


def packages_present(*packages: str) -> list[str]:
    present = {module.name for module in pkgutil.iter_modules(paddock_tui.__path__)}
    return [package for package in packages if package in present]


def test_a_clean_interpreter_that_loads_a_package_is_found_out() -> None:
    assert loaded("import pint, tomlkit", {"pint", "tomlkit", "textual"}) == {"pint", "tomlkit"}


@pytest.mark.parametrize(
    "package", packages_present("quantities", "limits", "trade", "records", "facts", "rules")
)
def test_the_layers_of_pure_thought_load_no_screen_no_file_writer_and_no_unit_engine(package: str) -> None:
    imports = "".join(f"import {module}\n" for module in modules_of(package))

    assert loaded(imports, {"textual", "rich", "tomlkit", "pint"}) == set()


def test_rooms_and_actions_of_the_screen_are_declared_without_loading_it() -> None:
    assert loaded("import paddock_tui.screens.registry", {"textual", "rich", "pint"}) == set()


def test_importing_the_command_line_loads_no_screen_and_no_unit_engine() -> None:
    assert loaded("import paddock_tui.__main__", {"textual", "pint"}) == set()


def test_asking_for_the_version_loads_no_screen_and_no_unit_engine() -> None:
    assert loaded(_VERSION, {"textual", "pint"}) == set()


@pytest.mark.parametrize(
    "words",
    [
        ["check"],
        ["check", "--all"],
        ["show"],
        ["show", "2026-05-16-2-otter"],
        ["set", "2026-06-20-4-magpie", "setup.front_start=30 psi", "track=68 F", "setup.controls.traction=6"],
        ["accept", "little-traction-help-in-the-wet", "traction", "--reason", "slow laps"],
    ],
    ids=" ".join,
)
def test_commands_in_everyday_units_load_no_screen_and_no_unit_engine(garage: Path, words: list[str]) -> None:
    code = _COMMAND.format(words=[words[0], str(garage), *words[1:]])

    assert loaded(code, {"textual", "rich", "pint"}) == set()


def test_a_unit_beyond_the_short_table_loads_the_unit_engine(garage: Path) -> None:
    words = ["set", str(garage), "2026-06-20-4-magpie", "setup.fork_height=0.006 yard"]

    assert loaded(_COMMAND.format(words=words), {"textual", "pint"}) == {"pint"}
