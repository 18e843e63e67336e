"""A pytest plugin that runs the collected tests once, to see what they cover, and then against each mutant.

The tests are imported once. Each mutant is a process that begins as a copy of this one and puts the changed
code under the functions that are there; a mutant of what runs when a module is imported is a new interpreter
with the plugin `_changed_import` instead. Told by PADDOCK_MUTANTS, a file as `mutants` writes it.
"""

import builtins
import contextlib
import functools
import gc
import importlib
import json
import os
import re
import resource
import shutil
import signal
import sys
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import attrs
import pytest

from tests.bench._changed_import import module_name, quick_to_fail
from tests.bench._mutators import Mutant, instrumented, mutated

SURVIVED, KILLED = 0, 1


@attrs.frozen
class Job:
    """What is to be run: the mutants, how many at a time, where to write, how many s of tests for each."""

    mutants: tuple[Mutant, ...]
    at_once: int
    results: Path
    most_s: float

    @classmethod
    def read(cls) -> "Job":
        """Read what `mutants` has written."""
        data = json.loads(Path(os.environ["PADDOCK_MUTANTS"]).read_text(encoding="utf-8"))
        mutants = tuple(Mutant(**one) for one in data["mutants"])
        return cls(mutants, data["at_once"], Path(data["results"]), data["most_s"])


@attrs.define
class Covered:
    """What a test covers, as numbers of statements, how long it takes in s, and whether it passes."""

    hits: set[int]
    seconds: float
    passed: bool


def codes(code: CodeType) -> Iterator[CodeType]:
    """List a code and all code within it."""
    yield code
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield from codes(one)


def put_under(path: str, changed: CodeType) -> None:
    """Give every function of a file that is there its changed code; ValueError where that cannot be done."""
    file = str(Path(path).resolve())
    fresh = {(one.co_qualname, one.co_firstlineno): one for one in codes(changed)}
    for one in gc.get_objects():
        if isinstance(one, FunctionType) and one.__code__.co_filename == file:
            code = fresh.get((one.__code__.co_qualname, one.__code__.co_firstlineno))
            if code is not None:
                one.__code__ = code.replace(co_filename=file)


def caches() -> list[Any]:
    """Find every cache of a function: what it holds was worked out by the code as it was."""
    made = functools._lru_cache_wrapper
    return [one for one in gc.get_objects() if isinstance(one, made) and _ours(one)]


def _ours(one: Any) -> bool:
    return str(getattr(one, "__module__", "")).partition(".")[0] in ("paddock_tui", "tests")


class Loop:
    """Runs the tests, as pytest would, and against the mutants."""

    def __init__(self, job: Job) -> None:
        self.job = job
        self.hits: set[int] = set()
        self.failed = False

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Take the place of pytest's own loop."""
        gc.unfreeze()  # what the tests' conftest keeps out of the search for garbage could not be changed
        sources = {one.path: Path(one.path).read_text(encoding="utf-8") for one in self.job.mutants}
        for path in sources:
            importlib.import_module(module_name(path))
        covered, lines = self.covered(session, sources | _users(self.job.mutants))
        failed = [session.items[at].nodeid for at, one in covered.items() if not one.passed]
        if not any(one.hits for one in covered.values()):
            raise RuntimeError("no test runs any statement of these files: nothing would be measured")
        self.write({"tests": len(covered), "failed": failed})
        running: dict[int, tuple[Mutant, float]] = {}
        for mutant in self.job.mutants:
            chosen, cut = self.chosen(mutant, covered, lines, _naming(session, mutant))
            if not chosen:
                self.write({"mutant": attrs.asdict(mutant), "outcome": "not covered", "tests": 0})
                continue
            if len(running) >= self.job.at_once:
                self.reap(running)
            pid = self.start(session, mutant, sources[mutant.path], chosen, covered)
            running[pid] = mutant, time.monotonic()
            self.write({"started": mutant.key, "tests": len(chosen), "cut": cut})
        while running:
            self.reap(running)
        return True

    # what the tests cover

    def covered(
        self, session: pytest.Session, sources: dict[str, str]
    ) -> tuple[dict[int, Covered], dict[int, tuple[str, int]]]:
        """Run every test once in a process of its own, each statement of the files counted."""
        lines: dict[int, tuple[str, int]] = {}
        fresh = {path: instrumented(path, source, lines) for path, source in sources.items()}
        out = self.job.results.with_suffix(".covered")
        pid = os.fork()
        if pid == 0:
            quiet(out.with_suffix(".tmp"))
            setattr(builtins, "__hit__", self.hits.add)  # noqa: B010 - a name that mypy does not know
            for path, code in fresh.items():
                put_under(path, code)
            self.cover(session, out)
            os._exit(0)
        os.waitpid(pid, 0)
        read = {}
        with out.open(encoding="utf-8") as rows:
            for row in rows:
                at, seconds, passed, hits = json.loads(row)
                read[at] = Covered(set(hits), seconds, passed)
        self.share(session, read)
        return read, lines

    def cover(self, session: pytest.Session, out: Path) -> None:
        """Write what each test covers, a line each."""
        held = caches()
        with out.open("w", encoding="utf-8") as file:
            for at, item in enumerate(session.items):
                for one in held:
                    one.cache_clear()
                began = time.process_time()
                self.hits.clear()
                passed = self.run([item])
                row = [at, time.process_time() - began, passed, sorted(self.hits)]
                file.write(json.dumps(row) + "\n")

    def share(self, session: pytest.Session, covered: dict[int, Covered]) -> None:
        """Give what one test covers through a fixture of its module to all that use that fixture."""
        held: dict[tuple[str, str], set[int]] = {}
        used: dict[int, list[tuple[str, str]]] = {}
        for at, item in enumerate(session.items):
            names = getattr(item, "_fixtureinfo", None)
            wide = [
                (item.nodeid.partition("::")[0], name)
                for name, found in (names.name2fixturedefs.items() if names else ())
                if found[-1].scope != "function" and found[-1].func.__module__.startswith("tests.")
            ]
            used[at] = wide
            for key in wide:
                held.setdefault(key, set()).update(covered[at].hits)
        for at, wide in used.items():
            for key in wide:
                covered[at].hits |= held[key]

    # the mutants

    def chosen(
        self,
        mutant: Mutant,
        covered: dict[int, Covered],
        lines: dict[int, tuple[str, int]],
        naming: dict[int, int],
    ) -> tuple[list[int], bool]:
        """Choose tests that run what a mutant changes, and say whether some are left out.

        Half of the time is for those that run most of the file that is changed, half for the quickest.
        Of what runs when a module is imported, those whose module is `naming` it come first: they may read
        it and run nothing of it.
        """
        wanted = {at for at, place in lines.items() if place == (mutant.path, mutant.statement)}
        if mutant.name or not wanted:
            wanted = set(self._using(mutant, lines))
        of_file = {at for at, place in lines.items() if place[0] == mutant.path}
        # What only declares is read through its package.
        reads = {at for at, how in naming.items() if how == _ITSELF or not of_file}
        found = [at for at, one in covered.items() if one.passed and (one.hits & wanted or at in reads)]
        about = sorted(
            found, key=lambda at: (at not in reads, -len(covered[at].hits & of_file), covered[at].seconds)
        )
        quick = sorted(found, key=lambda at: covered[at].seconds)
        taken = self._within(about, covered, self.job.most_s / 2)
        taken += self._within([at for at in quick if at not in taken], covered, self.job.most_s / 2)
        return taken, len(taken) < len(found)

    def _within(self, ordered: list[int], covered: dict[int, Covered], most_s: float) -> list[int]:
        """Take tests in this order that there is time for, at least one; give the quick ones first."""
        taken, left_s = ordered[:1], most_s - sum(covered[at].seconds for at in ordered[:1])
        for at in ordered[1:]:
            if covered[at].seconds <= left_s:
                left_s -= covered[at].seconds
                taken.append(at)
        return sorted(taken, key=lambda at: covered[at].seconds)

    def _using(self, mutant: Mutant, lines: dict[int, tuple[str, int]]) -> Iterator[int]:
        """List the statements that may use a name: of its own module, and of those that import it."""
        says = {
            path
            for path in {place[0] for place in lines.values()}
            if path == mutant.path or (mutant.name and mutant.name in _head(path))
        }
        return (at for at, (path, _) in lines.items() if path in says)

    def start(
        self,
        session: pytest.Session,
        mutant: Mutant,
        source: str,
        chosen: list[int],
        covered: dict[int, Covered],
    ) -> int:
        """Start the tests against a mutant; gives the number of the process."""
        seconds = sum(covered[at].seconds for at in chosen)
        pid = os.fork()
        if pid:
            return pid
        os.setpgid(0, 0)
        temp = self.job.results.parent / f"temp-{os.getpid()}"
        temp.mkdir()
        os.environ["PYTEST_DEBUG_TEMPROOT"] = str(temp)
        quiet(temp / "said")
        most = int(30 + 4 * seconds)
        resource.setrlimit(resource.RLIMIT_CPU, (most, most + 5))
        signal.signal(signal.SIGALRM, signal.SIG_DFL)
        signal.alarm(10 * most)
        ids = [session.items[at].nodeid for at in chosen]
        if mutant.at_import:
            _instead(mutant, ids, temp)
        try:
            put_under(mutant.path, mutated(mutant.path, source, mutant.number))
        except ValueError:  # another set of closed-over names
            _instead(mutant, ids, temp)
        for one in caches():
            one.cache_clear()
        passed = self.run([session.items[at] for at in chosen])
        os._exit(SURVIVED if passed else KILLED)

    def reap(self, running: dict[int, tuple[Mutant, float]]) -> None:
        """Wait for one of the processes and write what became of its mutant."""
        pid, status = os.wait()
        if pid not in running:
            return
        mutant, began = running.pop(pid)
        with contextlib.suppress(ProcessLookupError):
            os.killpg(pid, signal.SIGKILL)  # what a test may have left behind
        shutil.rmtree(self.job.results.parent / f"temp-{pid}", ignore_errors=True)
        outcome = "survived" if status == 0 else "timed out" if os.WIFSIGNALED(status) else "killed"
        seconds = round(time.monotonic() - began, 1)
        self.write({"mutant": attrs.asdict(mutant), "outcome": outcome, "seconds": seconds})

    def write(self, row: dict[str, Any]) -> None:
        """Add a row to the results."""
        with self.job.results.open("a", encoding="utf-8") as file:
            file.write(json.dumps(row) + "\n")

    # running

    def run(self, items: list[pytest.Item]) -> bool:
        """Run tests until one fails; whether none does."""
        self.failed = False
        for at, item in enumerate(items):
            following = items[at + 1] if at + 1 < len(items) else None
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
            if self.failed:
                return False
        return True

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Take note of a test that fails."""
        self.failed = self.failed or report.failed


_ITSELF, _PACKAGE = 2, 1


def _naming(session: pytest.Session, mutant: Mutant) -> dict[int, int]:
    """Say which tests stand in a module that imports the changed one, or its package."""
    if not mutant.at_import:
        return {}
    module = module_name(mutant.path)
    package = module.rpartition(".")[0]
    found = {}
    for at, item in enumerate(session.items):
        text = _text(item.path)
        if module in text:
            found[at] = _ITSELF
        elif f"from {package} import" in text:
            found[at] = _PACKAGE
    return found


@functools.cache
def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8") if path.is_file() else ""


def quiet(file: Path) -> None:
    """Send what this process prints to a file."""
    said = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(said, 1)
    os.dup2(said, 2)


def _users(mutants: Sequence[Mutant]) -> dict[str, str]:
    """Read the modules that import what a mutant changes outside of any function: there it is used."""
    modules = {module_name(one.path) for one in mutants if one.name}
    found: dict[str, str] = {}
    for file in sorted(Path("paddock_tui").rglob("*.py")):
        source = file.read_text(encoding="utf-8")
        if str(file) not in found and any(f"from {one} import" in source for one in modules):
            importlib.import_module(module_name(str(file)))
            found[str(file)] = source
    return found


def _head(path: str) -> str:
    """Read what stands before the first function or class of a module: its imports and constants."""
    return re.split(r"^(?:@|def |class )", Path(path).read_text(encoding="utf-8"), maxsplit=1, flags=re.M)[0]


def _instead(mutant: Mutant, ids: list[str], temp: Path) -> None:
    """Become a new interpreter that imports the changed module and runs these tests."""
    listed = temp / "tests"
    listed.write_text("\n".join(ids) + "\n", encoding="utf-8")
    changed = json.dumps([mutant.path, mutant.number])
    command = [sys.executable, "-m", "pytest", "-x", "-q", "--numprocesses=0", "--no-header"]
    command += ["-p", "no:cacheprovider", "-p", "tests.bench._changed_import", f"@{listed}"]
    os.execve(sys.executable, command, {**os.environ, "PADDOCK_CHANGED": changed})


def pytest_configure(config: pytest.Config) -> None:
    """Put the loop in the place of pytest's own."""
    quick_to_fail()
    config.pluginmanager.register(Loop(Job.read()), "mutation-loop")
