"""No module of the package imports itself, however far round, not even for the type checker alone."""

import ast
from collections.abc import Iterator, Mapping
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import paddock_tui
from tests.source import nodes_of, tree_of

ROOT = Path(paddock_tui.__file__).parent

Imports = Mapping[str, frozenset[str]]


def modules(root: Path) -> dict[str, ast.Module]:
    """Parse every module of a package, by its dotted name."""
    found = {}
    for path in root.rglob("*.py"):
        parts = path.relative_to(root.parent).with_suffix("").parts
        name = ".".join(parts).removesuffix(".__init__")
        found[name] = tree_of(path)
    return found


def imports(parsed: Mapping[str, ast.Module]) -> Imports:
    """Return what each module imports of the others, wherever in it the import stands."""
    return {name: frozenset(_imported(tree, parsed.keys() - {name})) for name, tree in parsed.items()}


def _imported(tree: ast.Module, known: set[str]) -> Iterator[str]:
    for node in nodes_of(tree):
        if isinstance(node, ast.Import):
            yield from {one.name for one in node.names} & known
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            for one in node.names:
                whole = f"{node.module}.{one.name}"
                yield from {whole} & known or {node.module} & known


def circle(among: Imports) -> list[str]:
    """Return the modules of a way round from one back to itself, in order; empty where there is none."""
    try:
        TopologicalSorter(among).prepare()
    except CycleError as error:
        return list(error.args[1])
    return []


def test_a_circle_is_found_also_where_only_the_type_checker_goes_round() -> None:
    code = {
        "p.a": "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from p.b import B\n",
        "p.b": "def f():\n    from p import c\n",
        "p.c": "import p.a\n",
        "p.d": "from p.a import A\n",
    }

    found = circle(imports({name: ast.parse(text) for name, text in code.items()}))

    assert set(found) == {"p.a", "p.b", "p.c"}


def test_no_module_imports_itself_round_others() -> None:
    among = imports(modules(ROOT))

    assert len(among) > 300
    assert circle(among) == []
