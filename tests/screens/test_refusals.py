"""Every message of rooms and actions that refuses says what to press instead."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.source import nodes_of, tree_of

FOLDER = Path(__file__).parents[2] / "paddock_tui" / "screens"
REFUSES = re.compile(r"^(there is no|there is nothing|nothing|this row|this session has no|no set-up)\b")
INSTEAD = re.compile(r": .*\w")
DONE = {"nothing left"}
"""What is said of undo and redo after the last step: nothing has to be pressed."""


def texts(node: ast.AST) -> Iterator[str]:
    """List the texts of an expression; what is handed on to a function is not said as it is."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    for inside in ast.iter_child_nodes(node) if not isinstance(node, ast.Call) else ():
        yield from texts(inside)


def messages() -> Iterator[tuple[str, str]]:
    """List the texts that are said or given as a reason, with the file that they stand in."""
    for file in sorted(FOLDER.rglob("*.py")):
        for node in nodes_of(tree_of(file)):
            given: list[ast.expr] = []
            if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "say":
                given = node.args[:1]
            elif isinstance(node, ast.Return) and node.value is not None:
                given = [node.value]
            for one in given:
                yield from ((file.name, text) for text in texts(one))


def test_a_refusal_says_what_to_press_instead() -> None:
    found = [(file, text) for file, text in messages() if REFUSES.match(text) and text not in DONE]

    assert len(found) > 20
    assert [(file, text) for file, text in found if not INSTEAD.search(text)] == []
