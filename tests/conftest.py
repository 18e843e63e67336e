"""What every test shares: one environment, one depth of search, and a garage to work in."""

import functools
import gc
import os
import shutil
import tempfile
import time
from pathlib import Path

import pytest
from hypothesis import settings

from paddock_tui import quick_classes
from tests.copied import Folder, held, laid_out

# As the program does: before a module of it makes a class.
quick_classes.begin()

# Set on import: before a test module reads clock, locale or terminal, and for processes that tests start.
os.environ.update(TZ="UTC", LANG="C.UTF-8", LC_ALL="C.UTF-8", COLUMNS="80", LINES="24", TERM="xterm-256color")
# Garages of tests stand in memory where the machine has it: a run makes tens of thousands of files.
if Path("/dev/shm").is_dir() and shutil.disk_usage("/dev/shm").free > 2**31:
    os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", "/dev/shm")
for _name in ("NO_COLOR", "FORCE_COLOR", "VISUAL", "EDITOR"):
    os.environ.pop(_name, None)
time.tzset()

# What the program keeps about its user: a folder of this run's own, gone with it.
_STATE = tempfile.TemporaryDirectory(prefix="paddock-state-")
for _name in ("XDG_STATE_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"):
    os.environ[_name] = _STATE.name

# Tests and modules are hundreds of thousands of objects that stay: look through them for garbage seldom, and
# not at all while they are collected.
gc.set_threshold(50_000, 20, 100)
gc.disable()

settings.register_profile("dev", max_examples=18, deadline=None)
settings.register_profile("ci", settings.get_profile("dev"), derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "dev")

_SAMPLE = Path(__file__).parent.parent / "sample_garage"


@pytest.fixture
def garage(tmp_path: Path) -> Path:
    """A copy of the sample garage that the test may change, without the tool's own traces."""
    return laid_out(_sample(), tmp_path / "garage")


@functools.cache
def _sample() -> Folder:
    return held(_SAMPLE, without=".paddock")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Begin with what mostly waits, and put together what needs something that takes seconds to have.

    Tests on a terminal wait for a program on it: first, in one worker, they leave the processors to the
    others, where one of them at the end is waited for by all. Then what reads the source of the program,
    parsed once a process; then calculations, most of them held to a library that is slow to load.
    """
    items.sort(key=_takes)


def _takes(item: pytest.Item) -> int:
    held = vars(item.module) if isinstance(item, pytest.Function) else {}
    if "Wire" in held:
        return -1
    if "tree_of" in held or "texts_of" in held:
        return 0
    return 1 if item.path.parent.name in ("calc", "outside") else 2


def pytest_collection_finish() -> None:
    """Share what tests do alike, and leave what was collected out of every look for garbage to come."""
    from tests.shared import share

    share()
    gc.freeze()
    gc.enable()


def pytest_sessionfinish() -> None:
    """Look through what is left once: pytest would five times over, for objects that are still in use."""
    gc.collect()
    gc.freeze()


def pytest_runtest_teardown(item: pytest.Item, nextitem: pytest.Item | None) -> None:
    """After each module: what its tests shared is as it was."""
    if nextitem is None or nextitem.path != item.path:
        from tests.shared import check

        check()


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Test in one process where a part of the tests is asked for; else in one more than there are cores.

    The one more works while others wait for a terminal, a disk or a process.
    """
    whole = [Path(one).resolve() for one in config.args] == [Path(__file__).parent]
    return _cores() + 1 if whole else 0


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_setupnodes(config: pytest.Config) -> None:
    """Compile before there are workers, each of which would."""
    from tests.compiled import compile_all

    compile_all(config, _cores())


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print the account of the published figures where it was checked in this run."""
    passed = terminalreporter.stats.get("passed", ())
    if any("outside/test_account.py::" in getattr(report, "nodeid", "") for report in passed):
        from tests.outside.account import table

        terminalreporter.section("published figures")
        for line in table():
            terminalreporter.line(line)
