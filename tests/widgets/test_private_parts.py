"""The private parts of the framework that are leant on: each is still there, and none is left unsaid."""

import ast
import inspect
import re
from collections.abc import Callable, Iterator
from pathlib import Path

from rich.console import Console
from textual._compositor import Compositor
from textual._xterm_parser import XTermParser
from textual.app import App
from textual.dom import DOMNode
from textual.driver import Driver
from textual.drivers.linux_driver import LinuxDriver
from textual.message import Message
from textual.message_pump import MessagePump
from textual.screen import Screen

import paddock_tui
from tests.every import every
from tests.source import nodes_of, tree_of

ROOT = Path(paddock_tui.__file__).parent


class _Driver:
    """What the stock driver has, made without a terminal: its methods, and what it sets on itself."""

    def __init__(self) -> None:
        for kind in (LinuxDriver, Driver):
            for name in re.findall(r"self\.(_\w+)\b", inspect.getsource(kind)):
                setattr(self, name, None)


PARTS: tuple[tuple[Callable[[], object], str, str], ...] = (
    (App, "_handle_exception", "a crash prints the values of all variables, and what is half typed is lost"),
    (App, "_return_code", "a crash ends with status 0"),
    (App, "_exception", "tests do not see that the app crashed"),
    (App, "_exception_event", "a test whose app crashed waits until it is stopped"),
    (App, "_disable_tooltips", "each screen mounts and styles a widget that nothing ever shows"),
    (App, "_disable_notifications", "each screen mounts and styles another"),
    (DOMNode, "_attach", "a named style cannot be made when it is first painted"),
    (MessagePump, "_dispatch_message", "a key goes to the board over a queue of its own, a turn later"),
    (Message, "_set_forwarded", "a key that the board left comes to it again, and again"),
    (Screen, "_compositor", "each changed line is sent from its left edge, in full colour codes"),
    (Console, "_color_system", "a span is sent in colours that the terminal may not have"),
    (_Driver, "_run_input_thread", "an error while keys are read prints a traceback over the screen"),
    (_Driver, "_writer_thread", "the terminal reports focus, and each report has the whole screen sent"),
    (_Driver, "_app", "neither a hang-up nor an error of the input thread reaches the app"),
    (_Driver, "_loop", "ctrl+c does not end a program that hangs"),
    (_Driver, "_file", "the terminal is not given back where a program that hangs is left"),
    (_Driver, "_debug", "the input thread cannot make its parser"),
    (lambda: XTermParser(False), "_timeout_time", "an escape alone waits for the next key"),
    (lambda: Compositor, "render_partial_update", "what changed is not sent sparingly"),
)
"""Who has it, its name, and what breaks when it goes."""


@every(("maker", "name", "breaks"), PARTS, ids=[name for _, name, _ in PARTS])
def test_each_private_part_is_there(maker: Callable[[], object], name: str, breaks: str) -> None:
    assert hasattr(maker(), name), f"without {name}: {breaks}"


def foreign(path: Path) -> Iterator[str]:
    """Give the names with an underscore that a module uses and does not make itself."""
    tree = tree_of(path)
    used, made = set(), set()
    for node in nodes_of(tree):
        if isinstance(node, ast.Attribute) and node.attr.startswith("_") and not node.attr.endswith("__"):
            used.add(node.attr)
        elif isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            made.add(node.name)
    for node in nodes_of(tree):
        targets = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
        flat = [one for each in targets for one in (each.elts if isinstance(each, ast.Tuple) else [each])]
        made |= {one.attr for one in flat if isinstance(one, ast.Attribute)}
    inherited = {name for _, name, _ in PARTS}
    yield from (used - made) | ((used | made) & inherited)


def test_no_other_private_part_is_leant_on() -> None:
    paths = [ROOT / "app.py", *(ROOT / "widgets").glob("*.py"), *(ROOT / "screens").rglob("*.py")]
    found = {name for path in paths for name in foreign(path)}

    listed = {name for _, name, _ in PARTS if name.startswith("_")}
    private = {name for name in found if name.startswith("_")}
    assert private - {"_exit"} == listed  # os._exit is of Python itself
