"""Modules that register something are written out where they are imported: no file may be left out."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent / "paddock_tui"


def imported(package: Path) -> set[str]:
    """The modules of a package that its __init__ imports by name."""
    name = ".".join(package.relative_to(ROOT.parent).parts)
    found: set[str] = set()
    for node in ast.walk(ast.parse((package / "__init__.py").read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module == name:
            found |= {alias.name for alias in node.names}
    return found


def registering(package: Path, decorators: set[str]) -> set[str]:
    """The modules of a package that use one of the registering decorators."""
    return {path.stem for path in package.glob("*.py") if decorators & used(path)}


def used(path: Path) -> set[str]:
    """The names that a module calls as decorators of its own functions, or at its top level."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = [one for node in tree.body if isinstance(node, ast.FunctionDef) for one in node.decorator_list]
    return {one.func.id for one in calls if isinstance(one, ast.Call) and isinstance(one.func, ast.Name)}


@pytest.mark.parametrize(("package", "decorator"), [("facts", "fact"), ("rules", "rule")])
def test_the_written_list_of_a_registry_is_the_folder(package: str, decorator: str) -> None:
    folder = ROOT / package

    assert len(registering(folder, {decorator})) > 20
    assert registering(folder, {decorator}) <= imported(folder)
