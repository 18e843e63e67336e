"""What the desk and the entry line refuse says what to press or to type instead."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.source import nodes_of, tree_of

PROGRAM = Path(__file__).parents[2] / "paddock_tui"
FOLDERS = ("desk", "entry", "screens")
NONE = re.compile(
    r"^(there is no|there are no|nothing|no |that would|this |\{\} (is|was|cannot|has) )|( is| was) not "
)
INSTEAD = re.compile(r": .*\w")
SAID_ALREADY = {"{} is open already", "{} is at its end: {}"}
EXPECTED_SAYS = {'there is no {} "{}"', "no set-up in it", "no JSON: {}"}
"""What is expected there is a list to choose from, or a command to run."""


def texts(node: ast.AST) -> Iterator[str]:
    """List the texts that an expression may be, what is put into them as {}."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.JoinedStr):
        yield "".join(str(one.value) if isinstance(one, ast.Constant) else "{}" for one in node.values)
    elif isinstance(node, ast.IfExp | ast.BoolOp | ast.BinOp):
        for inside in ast.iter_child_nodes(node):
            yield from texts(inside)


def trees() -> Iterator[tuple[str, ast.Module]]:
    for folder in FOLDERS:
        for file in sorted((PROGRAM / folder).rglob("*.py")):
            yield f"{folder}/{file.name}", tree_of(file)


def reasons() -> Iterator[tuple[str, str]]:
    """List the texts that functions give in place of a step, or as a reason why not."""
    for name, tree in trees():
        for one in nodes_of(tree):
            if not isinstance(one, ast.FunctionDef) or one.returns is None:
                continue
            gives = ast.unparse(one.returns)
            if ("Step" in gives and "str" in gives) or one.name.lstrip("_").startswith("why"):
                for inside in ast.walk(one):
                    if isinstance(inside, ast.Return) and inside.value is not None:
                        yield from ((name, text) for text in texts(inside.value))


def errors() -> Iterator[tuple[str, str, bool]]:
    """List what errors found, and whether they say what to do."""
    for name, tree in trees():
        for one in nodes_of(tree):
            if isinstance(one, ast.Call) and getattr(one.func, "id", "") == "InputError" and one.args:
                mends = len(one.args) > 2 or any(word.arg == "mend" for word in one.keywords)
                yield from ((name, text, mends) for text in texts(one.args[0]))


def test_what_is_given_in_place_of_a_step_says_what_to_press_instead() -> None:
    found = [(name, text) for name, text in reasons() if NONE.search(text) and text not in SAID_ALREADY]

    assert len(found) > 10
    assert [(name, text) for name, text in found if not INSTEAD.search(text)] == []


def test_an_error_that_finds_nothing_to_work_on_says_what_to_do() -> None:
    found = [
        (name, text)
        for name, text, mends in errors()
        if NONE.search(text) and not mends and text not in EXPECTED_SAYS
    ]

    assert len(list(errors())) > 60
    assert found == []
