"""The account of all published figures: by topic and status, how many are checked here, and how.

A topic's module holds its `ROWS`, the reasons for those `NOT_USED`, and may name, under `ELSEWHERE`, tests
that use a figure in another way, and under `PARTLY` what of a checked row is left out.
"""

import ast
import collections
import contextlib
import csv
import functools
import importlib
import inspect
import pkgutil
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import CodeType, FunctionType, ModuleType, NoneType

import attrs

import tests.outside
from tests.outside.rows import Row

STATUSES = ("CONFIRMED", "DERIVED", "LIBRARY", "FROM MEMORY")
"""Whether the figure itself was seen in print, follows from a printed formula, comes from a library, or from
memory alone."""

USES = ("checked", "used elsewhere", "not used")
_FIGURES = Path(__file__).with_name("figures.csv")


@attrs.frozen
class Figure:
    """A published figure by its id: its topic, and how far it is trusted."""

    id: str
    topic: str
    status: str


@attrs.frozen
class Topic:
    """What one module says of the figures of its topic."""

    module: ModuleType
    rows: Sequence[Row]
    not_used: Mapping[str, str]
    elsewhere: Mapping[str, str]
    partly: Mapping[str, str]

    def uses(self) -> list[tuple[str, str]]:
        """List each figure with what becomes of it."""
        found = [(row.id, "checked") for row in self.rows]
        found += [(one, "used elsewhere") for one in self.elsewhere]
        return found + [(one, "not used") for one in self.not_used]


@functools.cache
def figures() -> tuple[Figure, ...]:
    """Read the list of all published figures."""
    with _FIGURES.open(encoding="utf-8", newline="") as lines:
        return tuple(Figure(**row) for row in csv.DictReader(lines))


@functools.cache
def topics() -> tuple[Topic, ...]:
    """Find every module beside this one that holds rows."""
    names = sorted(one.name for one in pkgutil.iter_modules(tests.outside.__path__))
    modules = (importlib.import_module(f"tests.outside.{name}") for name in names if name.startswith("test_"))
    return tuple(
        Topic(
            module,
            module.ROWS,
            getattr(module, "NOT_USED", {}),
            getattr(module, "ELSEWHERE", {}),
            getattr(module, "PARTLY", {}),
        )
        for module in modules
        if hasattr(module, "ROWS")
    )


def called_by(computed: Callable[..., object]) -> frozenset[tuple[str, str]]:
    """Return what of the program a check names, itself or through helpers of its tests: module, name."""
    found: set[tuple[str, str]] = set()
    seen: set[int] = set()
    waiting: list[object] = [computed]
    while waiting:
        one = waiting.pop()
        if id(one) in seen:
            continue
        seen.add(id(one))
        one = one.func if isinstance(one, functools.partial) else one
        if isinstance(one, FunctionType) and one.__module__.startswith("tests."):
            places, values = _named_in(one)
            found |= places
            waiting += values
            continue
        owner = one if isinstance(one, type | FunctionType) else type(one)
        if owner.__module__.startswith("paddock_tui."):
            found.add((owner.__module__, owner.__qualname__.partition(".")[0]))
    return frozenset(found)


def _named_in(function: FunctionType) -> tuple[set[tuple[str, str]], list[object]]:
    """Return what a function of the tests names: what its module imports, and other values to look into."""
    names: set[str] = set()
    codes: list[CodeType] = [function.__code__]
    while codes:
        code = codes.pop()
        names.update(code.co_names)
        codes += [one for one in code.co_consts if isinstance(one, CodeType)]
    imported = _imports(function.__module__)
    places = {imported[name] for name in names if name in imported}
    values = [function.__globals__[name] for name in names - set(imported) if name in function.__globals__]
    for module in [one for one in values if isinstance(one, ModuleType)]:
        places |= {
            (module.__name__, name)
            for name in names
            if not isinstance(getattr(module, name, None), ModuleType | NoneType)
            and module.__name__.startswith("paddock_tui.")
        }
    for closed in function.__closure__ or ():
        with contextlib.suppress(ValueError):
            values.append(closed.cell_contents)
    return places, [*values, *(function.__defaults__ or ())]


@functools.cache
def _imports(module: str) -> dict[str, tuple[str, str]]:
    """Return what a module of the tests imports by name from the program; modules of it are left out."""
    found = {}
    for node in ast.walk(ast.parse(inspect.getsource(importlib.import_module(module)))):
        if not isinstance(node, ast.ImportFrom) or not (node.module or "").startswith("paddock_tui."):
            continue
        home = importlib.import_module(node.module or "")
        for alias in node.names:
            if not isinstance(getattr(home, alias.name, None), ModuleType | NoneType):
                found[alias.asname or alias.name] = (home.__name__, alias.name)
    return found


def table() -> tuple[str, ...]:
    """Write the account line by line, as it stands in DEVELOPERS.md."""
    used = {id_: use for topic in topics() for id_, use in topic.uses()}
    columns = ("figures", *USES, *STATUSES)
    counts: dict[str, collections.Counter[str]] = collections.defaultdict(collections.Counter)
    for one in figures():
        for topic in (one.topic, "all"):
            counts[topic].update(("figures", used.get(one.id, "missing"), one.status))
    ordered = sorted(counts, key=lambda topic: (topic == "all", topic))
    return (
        f"| topic | {' | '.join(columns)} |",
        f"| --- |{' ---: |' * len(columns)}",
        *(f"| {topic} | {' | '.join(str(counts[topic][one]) for one in columns)} |" for topic in ordered),
    )
