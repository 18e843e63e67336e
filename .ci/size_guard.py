"""Refuse modules over 400 lines and functions over 60, unless a reason stands beside them.

A reason is a comment `# size: <reason>`: in the first lines of a module, or beside the head of a function,
which goes from `def` to the line before its body.
"""

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

MODULE_LINES = 400
FUNCTION_LINES = 60
_FIRST_LINES = 10
_REASON = re.compile(r"# size: \S+")


def _excused(lines: list[str]) -> bool:
    return any(_REASON.search(line) for line in lines)


def too_long(source: str) -> Iterator[tuple[int, str]]:
    """Line and complaint for the module and for each of its functions that is too long."""
    lines = source.splitlines()
    if len(lines) > MODULE_LINES and not _excused(lines[:_FIRST_LINES]):
        yield 1, f"module of {len(lines)} lines, at most {MODULE_LINES}"
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            continue
        length = (node.end_lineno or node.lineno) - node.lineno + 1
        head = lines[node.lineno - 1 : max(node.lineno, node.body[0].lineno - 1)]
        if length > FUNCTION_LINES and not _excused(head):
            yield node.lineno, f"function {node.name} of {length} lines, at most {FUNCTION_LINES}"


def main(folders: list[str]) -> int:
    modules = sorted(file for folder in folders for file in Path(folder).rglob("*.py"))
    complaints = [
        f"{file}:{line}: {complaint}"
        for file in modules
        for line, complaint in too_long(file.read_text(encoding="utf-8"))
    ]
    print("\n".join(complaints) or f"{len(modules)} modules, none too long")
    return 1 if complaints or not modules else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
