"""Compiling the tests once, before each worker would do it for itself: on a fresh clone that takes it 9 s.

What hypothesis reads of the program, to try its numbers and words, is kept as well: that takes it 2 s.
"""

import compileall
import os
import sys
from collections.abc import Sequence
from importlib.util import cache_from_source
from itertools import chain
from pathlib import Path
from types import ModuleType

import pytest
from _pytest.assertion import rewrite
from hypothesis.internal.constants_ast import constants_from_module

ROOT = Path(__file__).parent
PROGRAM = ROOT.parent / "paddock_tui"


def compile_all(config: pytest.Config, cores: int) -> None:
    """Write what Python and pytest keep of each module, where it is not kept yet, on all cores.

    A worker that finds something missing or old compiles it as ever.
    """
    if sys.dont_write_bytecode or not hasattr(os, "fork"):
        return
    paths = sorted(chain(ROOT.rglob("*.py"), PROGRAM.rglob("*.py")))
    helpers = [pid for share in range(1, cores) if (pid := _forked(config, paths[share::cores]))]
    for path in paths[::cores]:
        _compile(config, path)
    for pid in helpers:
        os.waitpid(pid, 0)


def _forked(config: pytest.Config, paths: Sequence[Path]) -> int:
    """Compile some of them in a process of its own, and return its id."""
    if pid := os.fork():
        return pid
    try:
        for path in paths:
            _compile(config, path)
    finally:
        os._exit(0)


def _compile(config: pytest.Config, path: Path) -> None:
    if not (path.is_relative_to(ROOT) and (path.name.startswith("test_") or path.name == "conftest.py")):
        is_new = not Path(cache_from_source(str(path))).exists()
        compileall.compile_file(path, quiet=2)
        if is_new and path.is_relative_to(PROGRAM):
            module = ModuleType(path.stem)
            module.__file__ = str(path)
            constants_from_module(module)
        return
    kept = rewrite.get_cache_dir(path) / f"{path.stem}{rewrite.PYC_TAIL}"
    if rewrite._read_pyc(path, kept) is None and rewrite.try_makedirs(kept.parent):
        found, code = rewrite._rewrite_test(path, config)
        rewrite._write_pyc(config.stash[rewrite.assertstate_key], code, found, kept)
