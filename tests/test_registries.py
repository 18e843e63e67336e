"""Modules that register something are written out where they are imported: no file may be left out."""

import ast
import re
from pathlib import Path

import pytest

from tests.every import every
from tests.source import nodes_of, tree_of

ROOT = Path(__file__).parent.parent / "paddock_tui"
TESTS = Path(__file__).parent


def imported(package: Path) -> set[str]:
    """The modules of a package that its list imports by name: `registered`, else its __init__."""
    written = package / "registered.py"
    written = written if written.is_file() else package / "__init__.py"
    return from_package(written, ".".join(package.relative_to(ROOT.parent).parts))


def from_package(module: Path, name: str) -> set[str]:
    """The names that a module imports from a package or from the modules in it, without its path."""
    found: set[str] = set()
    for node in nodes_of(tree_of(module)):
        if isinstance(node, ast.ImportFrom) and node.module == name:
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith(f"{name}."):
            found.add((node.module or "").removeprefix(f"{name}."))
    return found


def registering(package: Path, functions: set[str]) -> set[str]:
    """The modules of a package that register something."""
    return {path.stem for path in package.glob("*.py") if functions & used(path)}


def used(path: Path) -> set[str]:
    """The names that a module calls as decorators of its own functions, or at its top level."""
    tree = tree_of(path)
    calls = [one for node in tree.body if isinstance(node, ast.FunctionDef) for one in node.decorator_list]
    calls += [node.value for node in nodes_of(tree) if isinstance(node, ast.Assign | ast.Expr)]
    return {one.func.id for one in calls if isinstance(one, ast.Call) and isinstance(one.func, ast.Name)}


@every(
    ("package", "function"),
    [("facts", "fact"), ("limits", "limit"), ("matters", "declare"), ("rules", "rule")],
)
def test_the_written_list_of_a_registry_is_the_folder(package: str, function: str) -> None:
    folder = ROOT / package

    assert len(registering(folder, {function})) > 10
    assert registering(folder, {function}) <= imported(folder)


@pytest.mark.parametrize(("folder", "name"), [("cases", "CASES"), ("limit_rows", "ROWS")])
def test_the_written_list_of_cases_is_the_folder(folder: str, name: str) -> None:
    package = TESTS / "rules" / folder
    of = re.compile(rf"^{name}\b.* = ", re.MULTILINE)
    holding = {one.stem for one in package.glob("*.py") if of.search(one.read_text(encoding="utf-8"))}

    assert len(holding) > 5
    assert holding - {"__init__"} <= imported(package)


def test_every_calculator_is_on_the_bench_or_beside_a_record() -> None:
    advice = ROOT / "advice"
    making = {one.stem for one in advice.glob("*.py") if makes_a_calculator(one)}
    shown = ("bench.py", "beside_records.py", "beside_setup.py")
    named = set().union(*(from_package(advice / one, "paddock_tui.advice") for one in shown))

    assert len(making) > 15
    assert making <= named


def makes_a_calculator(module: Path) -> bool:
    """Whether a module has a public function that gives a calculator."""
    return any(
        isinstance(node, ast.FunctionDef)
        and not node.name.startswith("_")
        and isinstance(node.returns, ast.Name)
        and node.returns.id == "Calculator"
        for node in tree_of(module).body
    )
