"""Which rules look at a value: found from what rules and facts declare that they need."""

import functools

from paddock_tui.facts import FACTS
from paddock_tui.records.paths import Path
from paddock_tui.rules.core import Rule
from paddock_tui.rules.registered import RULES


def rules_using(kind: str, path: Path) -> tuple[Rule, ...]:
    """List the rules whose facts stand at a path of a kind of record, by id."""
    return tuple(RULES[rule] for rule in sorted(RULES) if _reads(rule, kind, path))


def _reads(rule: str, kind: str, path: Path) -> bool:
    return any(_matches(role, pattern, kind, path) for role, pattern in _places(rule))


def _matches(role: str, pattern: Path, kind: str, path: Path) -> bool:
    if role == "setup" or (role == "session" and pattern[:1] == ("setup",)):
        role = kind if kind in ("session", "profile") else role
    if role != kind or len(pattern) != len(path):
        return False
    return all(wanted in ("{subject}", key) for wanted, key in zip(pattern, path, strict=True))


@functools.cache
def _places(rule: str) -> tuple[tuple[str, Path], ...]:
    """List where the facts of a rule are entered, facts of facts included, and where its mend is made."""
    registered = RULES[rule]
    seen: set[str] = set()
    places: list[tuple[str, Path]] = [(registered.role, registered.path)] if registered.path else []
    waiting = [*registered.needs, *registered.when]
    while waiting:
        name = waiting.pop()
        if name in seen or name not in FACTS:
            continue
        seen.add(name)
        found = FACTS[name]
        waiting += found.needs
        if found.path:
            places.append((found.role, found.path))
    return tuple(dict.fromkeys(places))
