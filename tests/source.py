"""The program's own modules, parsed: once a run, for all tests that read them."""

import ast
import functools
from pathlib import Path


@functools.cache
def tree_of(path: Path) -> ast.Module:
    """Parse a module; nobody may change the tree."""
    return ast.parse(path.read_text(encoding="utf-8"))


@functools.cache
def texts_of(path: Path) -> tuple[tuple[int, str], ...]:
    """List the texts of a module that are no docstrings, each with its line."""
    docs: set[int] = set()
    found: list[tuple[int, str]] = []
    # A statement comes before what stands in it: by then it is known to be a docstring.
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            docs.add(id(node.value))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
            found.append((node.lineno, node.value))
    return tuple(found)
