"""What importing costs: clean interpreters are asked which heavy packages they have loaded."""

import importlib
import importlib.util
import pkgutil
import subprocess
import sys
from pathlib import Path

import pytest

import paddock_tui
from tests.clean import CHECK, COMMAND, after
from tests.every import every
from tests.sample import SAMPLE

_VERSION = """
from paddock_tui.__main__ import main
assert main(["--version"]) == 0
"""


def loaded(code: str, names: set[str]) -> set[str]:
    """Which of the packages named a clean interpreter has loaded after running the code."""
    return names & after(code)["loaded"]


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
    assert loaded("import colorsys, tomlkit", {"colorsys", "tomlkit", "textual"}) == {"colorsys", "tomlkit"}


def told(program: str) -> list[str]:
    """List what a program says that it was the first to load; it must end well."""
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return [line for line in done.stdout.splitlines() if line.startswith("loaded:")]


def tell(what: object, names: set[str]) -> str:
    """Write the lines of a program that say which packages were loaded since the last time, and by what."""
    return (
        f"new = {names} & set(sys.modules) - seen\nseen |= new\n"
        f"for one in sorted(new): print('loaded:', {str(what)!r}, one)\n"
    )


START = "import sys\nseen = set()\n"
PURE = packages_present("quantities", "limits", "calc", "records", "facts", "rules")


def test_the_layers_of_pure_thought_load_no_screen_no_file_writer_and_no_unit_engine() -> None:
    """One interpreter imports layer after layer, from the lowest up."""
    program = START
    for package in PURE:
        program += "".join(f"import {module}\n" for module in modules_of(package))
        program += tell(package, {"textual", "rich", "tomlkit", "pint"})

    assert len(PURE) == 6
    assert told(program) == []


def test_rooms_and_actions_of_the_screen_are_declared_without_loading_it() -> None:
    assert loaded("import paddock_tui.screens.registry", {"textual", "rich", "pint"}) == set()


def test_importing_the_command_line_loads_no_screen_and_no_unit_engine() -> None:
    assert loaded("import paddock_tui.__main__", {"textual", "pint"}) == set()


def test_asking_for_the_version_loads_no_screen_and_no_unit_engine() -> None:
    assert loaded(_VERSION, {"textual", "pint"}) == set()


COMMANDS = (
    ["check"],
    ["check", "--all"],
    ["show"],
    ["show", "2026-05-16-2-otter"],
    ["accept", "little-traction-help-in-the-wet", "traction", "--reason", "slow laps"],
    ["set", "2026-06-20-4-magpie", "setup.front_start=30 psi", "track=68 F", "setup.controls.traction=6"],
)


def test_a_garage_without_a_bad_value_loads_nothing_that_lists_refusals() -> None:
    assert loaded(CHECK, {"cattrs", "tomllib"}) == set()


def test_the_help_of_commands_loads_nothing_that_types_paths_and_dates_need() -> None:
    asked = _MAIN.format(words=["--help"])

    assert loaded(asked, {"typing", "pathlib", "datetime", "urllib.parse", "gettext", "inspect"}) <= {
        "gettext"  # there, and put off
    }


def test_asking_for_the_width_loads_nothing_that_compresses_files() -> None:
    assert loaded(CHECK, {"shutil", "bz2", "lzma"}) == set()


def test_commands_in_everyday_units_load_no_screen_and_no_unit_engine(garage: Path) -> None:
    """One interpreter does one after the other."""
    program = f"{START}from paddock_tui.__main__ import main\n"
    for words in COMMANDS:
        program += f"assert main({[words[0], str(garage), *words[1:]]}) in (0, 1)\n"
        program += tell(words, {"textual", "rich", "pint"})

    assert told(program) == []


def test_what_loads_a_package_is_told() -> None:
    names = {"colorsys", "tomlkit", "textual"}
    program = f"{START}import tomlkit\n{tell('one', names)}import colorsys\n{tell('two', names)}"

    assert told(program) == ["loaded: one tomlkit", "loaded: two colorsys"]


def test_a_unit_beyond_the_short_table_loads_the_unit_engine(garage: Path) -> None:
    words = ["set", str(garage), "2026-06-20-4-magpie", "setup.fork_height=0.006 yard"]

    assert loaded(COMMAND.format(words=words), {"textual", "pint"}) == {"pint"}


_MAIN = "from paddock_tui.__main__ import main\ntry:\n    main({words})\nexcept SystemExit:\n    pass"

_VERDICT = f"""
import datetime as dt
from pathlib import Path
from paddock_tui import app
from paddock_tui.store.garage import GarageFiles
files, now = GarageFiles(Path({str(SAMPLE)!r})), lambda: dt.datetime(2026, 6, 20, 12, 55, 30)
app.load_main(files, now, "", app.Page("", ()), print)
"""

BUDGETS = {
    "--help": (_MAIN.format(words=["--help"]), 16, 0),
    "rows": ("import paddock_tui.pages.rows", 12, 8),
    "board": ("import paddock_tui.widgets.board", 46, 28),
    "files": ("import paddock_tui.store.garage, paddock_tui.desk.lookup", 37, 24),
    "first page": ("import paddock_tui.app, paddock_tui.commands.open", 100, 54),
    "first verdict": (_VERDICT, 503, 315),
    "check": (CHECK, 329, 273),
}
"""Programs with the most modules of this package that they may load, and the most attrs classes that may be
made of them: what is loaded is waited for over a slow line."""


@every(("program", "modules", "classes"), BUDGETS.values(), ids=list(BUDGETS))
def test_no_more_is_loaded_than_is_needed(program: str, modules: int, classes: int) -> None:
    found = after(program)

    assert sum(one.startswith("paddock_tui") for one in found["loaded"]) <= modules
    assert len(found["classes"]) <= classes


PACKAGES = ("desk", "entry", "facts", "matters", "pages.layout", "rules")
"""The packages whose own names are loaded when they are asked for."""


@every("package", PACKAGES)
def test_every_name_of_a_package_that_is_loaded_on_demand_is_there(package: str) -> None:
    made = importlib.import_module(f"paddock_tui.{package}")

    assert [name for name in made.__all__ if getattr(made, name, None) is None] == []
    with pytest.raises(AttributeError, match="no_such_name"):
        made.no_such_name  # noqa: B018 - asked for to be refused
