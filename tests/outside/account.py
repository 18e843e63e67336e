"""The account of all published figures: by topic and status, how many are checked here, and how.

A topic's module holds its `ROWS`, the reasons for those `NOT_USED`, and may name, under `ELSEWHERE`, tests
that use a figure in another way, and under `PARTLY` what of a checked row is left out.
"""

import collections
import csv
import functools
import importlib
import pkgutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import ModuleType

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
