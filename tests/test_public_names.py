"""One public name means one thing in packages that know each other: classes and aliases of types."""

import ast
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import combinations
from pathlib import Path

from tests.source import nodes_of, tree_of

ROOT = Path(__file__).parent.parent / "paddock_tui"


def package(path: Path) -> str:
    return path.relative_to(ROOT).with_suffix("").parts[0]


def defined(tree: ast.Module) -> Iterator[str]:
    """The public classes and aliases that a module defines; constants in capitals are none."""
    for node in tree.body:
        if isinstance(node, ast.ClassDef):
            names = [node.name]
        elif isinstance(node, ast.Assign):
            names = [one.id for one in node.targets if isinstance(one, ast.Name)]
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            names = [node.target.id]
        else:
            continue
        yield from (name for name in names if name[0].isupper() and not name.isupper() and len(name) > 1)


def imported(tree: ast.Module) -> Iterator[str]:
    """The packages of the program that a module imports from, also for types alone."""
    for node in nodes_of(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("paddock_tui."):
            yield (node.module or "").split(".")[1]


def with_two_homes(modules: Iterable[tuple[str, str, ast.Module]]) -> dict[str, list[str]]:
    """The names that two modules define, where their packages are one or one imports the other."""
    homes: dict[str, list[tuple[str, str]]] = defaultdict(list)
    knows: dict[str, set[str]] = defaultdict(set)
    for room, where, tree in modules:
        knows[room].update({room}, imported(tree))
        for name in defined(tree):
            homes[name].append((room, where))
    found: dict[str, list[str]] = {}
    for name, places in homes.items():
        for (one, here), (other, there) in combinations(places, 2):
            if other in knows[one] or one in knows[other]:
                found[name] = sorted({*found.get(name, ()), here, there})
    return found


def test_no_public_name_means_two_things_in_packages_that_import_each_other() -> None:
    paths = sorted(ROOT.rglob("*.py"))
    parsed = [(package(one), one.relative_to(ROOT).as_posix(), tree_of(one)) for one in paths]

    assert len(parsed) > 300
    assert with_two_homes(parsed) == {}


def test_a_name_with_two_homes_is_found_out() -> None:
    upper = "from paddock_tui.lower.a import Other\nclass Thing: ...\nLIMIT = 3\n_Own = int"
    lower = "Thing = tuple[int, ...]\nLIMIT = 4\n_Own = str"
    apart = "class Thing: ..."
    modules = [("upper", "u", upper), ("lower", "l", lower), ("apart", "a", apart)]

    assert with_two_homes([(room, at, ast.parse(text)) for room, at, text in modules]) == {
        "Thing": ["l", "u"]
    }
