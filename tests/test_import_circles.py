"""No module of the package imports itself, however far round, not even for the type checker alone."""

import ast
from collections.abc import Iterator, Mapping
from pathlib import Path

import paddock_tui

ROOT = Path(paddock_tui.__file__).parent

Imports = Mapping[str, frozenset[str]]


def modules(root: Path) -> dict[str, ast.Module]:
    """Parse every module of a package, by its dotted name."""
    found = {}
    for path in root.rglob("*.py"):
        parts = path.relative_to(root.parent).with_suffix("").parts
        name = ".".join(parts).removesuffix(".__init__")
        found[name] = ast.parse(path.read_text(encoding="utf-8"))
    return found


def imports(parsed: Mapping[str, ast.Module]) -> Imports:
    """Return what each module imports of the others, wherever in it the import stands."""
    return {name: frozenset(_imported(tree, parsed.keys() - {name})) for name, tree in parsed.items()}


def _imported(tree: ast.Module, known: set[str]) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from {one.name for one in node.names} & known
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            for one in node.names:
                whole = f"{node.module}.{one.name}"
                yield from {whole} & known or {node.module} & known


def circles(among: Imports) -> list[set[str]]:
    """Return the strongly connected components of more than one module (each reaches every other)."""
    reached = {name: _reached(name, among) for name in among}
    found: list[set[str]] = []
    for name in among:
        mine = {other for other in reached[name] if name in reached[other]}
        if mine and mine not in found:
            found.append(mine)
    return found


def _reached(name: str, among: Imports) -> set[str]:
    seen: set[str] = set()
    left = [name]
    while left:
        new = among[left.pop()] - seen
        seen |= new
        left += new
    return seen


def test_a_circle_is_found_also_where_only_the_type_checker_goes_round() -> None:
    code = {
        "p.a": "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from p.b import B\n",
        "p.b": "def f():\n    from p import c\n",
        "p.c": "import p.a\n",
        "p.d": "from p.a import A\n",
    }

    assert circles(imports({name: ast.parse(text) for name, text in code.items()})) == [{"p.a", "p.b", "p.c"}]


def test_no_module_imports_itself_round_others() -> None:
    among = imports(modules(ROOT))

    assert len(among) > 300
    assert circles(among) == []
