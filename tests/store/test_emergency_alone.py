"""Who opens a rider's emergency page: its own modules, and nothing else of the program."""

import ast
from collections.abc import Iterator
from pathlib import Path

import paddock_tui

ROOT = Path(paddock_tui.__file__).parent
OPENS = "paddock_tui.store.emergency"
MAY = {"store/emergency.py", "desk/emergency.py", "screens/at_work/emergency.py", "commands/show_own.py"}
READS = {"read_text", "parsed"}
"""What gives the content of the file: only what makes the page takes it."""


def _nodes(file: Path, word: str) -> Iterator[ast.AST]:
    """Walk through a module that holds a word at all: no other can name what is looked for."""
    text = file.read_text(encoding="utf-8")
    return ast.walk(ast.parse(text)) if word in text else iter(())


def _taken(file: Path, module: str) -> Iterator[str]:
    for node in _nodes(file, module.rpartition(".")[2]):
        if isinstance(node, ast.ImportFrom) and node.module == module:
            yield from (one.name for one in node.names)
        if isinstance(node, ast.Import):
            yield from (one.name for one in node.names if one.name == module)


def test_only_the_page_s_own_modules_reach_its_file() -> None:
    """No merge, index, search, rename, schema, export or crash report imports what opens the file."""
    taken = {str(file.relative_to(ROOT)): set(_taken(file, OPENS)) for file in ROOT.rglob("*.py")}
    assert {name for name, names in taken.items() if names} == MAY - {"store/emergency.py"}
    assert {name for name, names in taken.items() if names & READS} == {"desk/emergency.py"}


def test_nobody_else_names_its_folder() -> None:
    """The folder's name stands as a text in one module alone, so that no path to it is made elsewhere."""
    naming = {
        str(file.relative_to(ROOT))
        for file in ROOT.rglob("*.py")
        for node in _nodes(file, "private")
        if isinstance(node, ast.Constant) and node.value in ("private", "private/")
    }
    assert naming == {"store/emergency.py"}
