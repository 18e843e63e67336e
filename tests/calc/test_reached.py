"""Every public function, method and class of the calculations is reached from what a rider sees.

Read from the source: what the other rooms name is reached, and what a reached definition names in its body is
reached from there. A name counts only where it is imported from, or defined in, the module that holds it; a
method or property where its class is reached and its name is used as an attribute in reached code.
"""

import ast
import functools
import re
from collections.abc import Iterator
from pathlib import Path

import attrs

import paddock_tui
from tests.source import nodes_of, tree_of

_ROOT = Path(paddock_tui.__file__).parent
_CALC = "paddock_tui.calc"
_ATTRIBUTE = re.compile(r"\.([a-z]\w*)")
Place = tuple[str, str]
"""A module of calc, and the name of what it defines there."""


@attrs.frozen(eq=False)
class Source:
    """One module: its definitions by name, what it imports from calc, and the nodes outside definitions."""

    name: str
    defined: dict[str, ast.AST]
    imported: dict[str, Place]
    loose: tuple[ast.AST, ...]


def _source(path: Path) -> Source:
    tree = tree_of(path)
    name = ".".join(path.relative_to(_ROOT.parent).with_suffix("").parts)
    imported = {
        alias.asname or alias.name: (node.module, alias.name)
        for node in nodes_of(tree)
        if isinstance(node, ast.ImportFrom)
        and node.module is not None
        and node.module.startswith(f"{_CALC}.")
        for alias in node.names
    }
    defined: dict[str, ast.AST] = {}
    loose = []
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            defined[node.name] = node
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            defined |= {one.id: node for one in targets if isinstance(one, ast.Name)}
        elif not isinstance(node, ast.Import | ast.ImportFrom):
            loose.append(node)
    return Source(name, defined, imported, tuple(loose))


@functools.cache
def _sources() -> tuple[dict[str, Source], tuple[Source, ...]]:
    """Return the modules of calc by name, and those of every other room."""
    paths = [
        one
        for one in sorted(_ROOT.rglob("*.py"))
        if f"{_CALC}." in _text(one) or "calc" in one.relative_to(_ROOT).parts
    ]
    found = [_source(path) for path in paths]
    calc = {one.name: one for one in found if one.name.startswith(f"{_CALC}.")}
    return calc, tuple(one for one in found if one.name not in calc)


@functools.cache
def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def _named(node: ast.AST) -> Iterator[str]:
    """List the plain names in a node, those within the text of an annotation too."""
    for one in ast.walk(node):
        if isinstance(one, ast.Name):
            yield one.id
        elif isinstance(one, ast.Constant) and isinstance(one.value, str) and one.value.isidentifier():
            yield one.value


def _attributes(node: ast.AST) -> Iterator[str]:
    return (one.attr for one in ast.walk(node) if isinstance(one, ast.Attribute))


def reached_places() -> frozenset[Place]:
    """Return the definitions of calc that are reached from what a rider sees."""
    return _reached()[0]


@functools.cache
def _reached() -> tuple[frozenset[Place], frozenset[str]]:
    """Return the definitions that are reached, and every attribute that reached code names."""
    calc, others = _sources()
    # What other rooms call an attribute is read from their text: most of them import nothing from here.
    outside = (_text(one) for one in _ROOT.rglob("*.py") if "calc" not in one.relative_to(_ROOT).parts)
    attributes = {name for text in outside for name in _ATTRIBUTE.findall(text)}
    waiting: list[Place] = []
    for source in others:
        for node in (*source.defined.values(), *source.loose):
            waiting += [source.imported[name] for name in _named(node) if name in source.imported]
    reached: set[Place] = set()
    while waiting:
        place = waiting.pop()
        holds = calc.get(place[0])
        if place in reached or holds is None or place[1] not in holds.defined:
            continue
        reached.add(place)
        node = holds.defined[place[1]]
        attributes |= set(_attributes(node))
        waiting += [holds.imported.get(name, (holds.name, name)) for name in _named(node)]
    return frozenset(reached), frozenset(attributes)


def test_every_public_function_and_class_is_reached() -> None:
    calc, _ = _sources()
    reached, _ = _reached()
    public = {
        (source.name, name)
        for source in calc.values()
        for name, node in source.defined.items()
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not name.startswith("_")
    }

    assert len(public) > 200
    assert sorted(public - reached) == []


def test_every_public_method_is_named_where_it_can_be_reached() -> None:
    calc, _ = _sources()
    reached, attributes = _reached()
    lost = [
        (module, name, method.name)
        for module, name in sorted(reached)
        for method in getattr(calc[module].defined[name], "body", ())
        if isinstance(calc[module].defined[name], ast.ClassDef)
        and isinstance(method, ast.FunctionDef)
        and not method.name.startswith("_")
        and method.name not in attributes
    ]

    assert lost == []
