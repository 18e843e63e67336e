"""The program's own modules, parsed: once a run, for all tests that read them."""

import ast
import functools
import gc
from pathlib import Path

_NODES: dict[ast.Module, tuple[ast.AST, ...]] = {}


@functools.cache
def tree_of(path: Path) -> ast.Module:
    """Parse a module; nobody may change the tree."""
    gc.disable()
    try:
        tree = ast.parse(path.read_text(encoding="utf-8"))
        _NODES[tree] = tuple(ast.walk(tree))
        # Hundreds of thousands of nodes that stay: looking through them for garbage takes as long as parsing.
        gc.freeze()
    finally:
        gc.enable()
    return tree


def nodes_of(tree: ast.Module) -> tuple[ast.AST, ...]:
    """List all nodes of a module, as `ast.walk` does; of one that was parsed here they are listed once."""
    return _NODES.get(tree) or tuple(ast.walk(tree))


@functools.cache
def texts_of(path: Path) -> tuple[tuple[int, str], ...]:
    """List the texts of a module that are no docstrings, each with its line."""
    docs: set[int] = set()
    found: list[tuple[int, str]] = []
    # A statement comes before what stands in it: by then it is known to be a docstring.
    for node in nodes_of(tree_of(path)):
        if node.__class__ is ast.Expr and isinstance(node.value, ast.Constant):
            docs.add(id(node.value))
        elif node.__class__ is ast.Constant and isinstance(node.value, str) and id(node) not in docs:
            found.append((node.lineno, node.value))
    return tuple(found)
