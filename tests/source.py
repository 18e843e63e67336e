"""The program's own modules, parsed: once a run, for all tests that read them."""

import ast
import functools
from pathlib import Path


@functools.cache
def tree_of(path: Path) -> ast.Module:
    """Parse a module; nobody may change the tree."""
    return ast.parse(path.read_text(encoding="utf-8"))
