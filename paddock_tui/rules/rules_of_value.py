"""Which rules look at a value: found from what rules and facts declare that they need."""

import functools

from paddock_tui.facts import FACTS
from paddock_tui.records.paths import Path
from paddock_tui.rules.core import Rule
from paddock_tui.rules.registered import RULES


def rules_using(kind: str, path: Path) -> tuple[Rule, ...]:
    """List the rules whose facts stand at a path of a kind of record, by id."""
    patterns = _by_pattern().get((kind, len(path)), {})
    found = {rule for pattern, rules in patterns.items() if _matches(pattern, path) for rule in rules}
    return tuple(RULES[rule] for rule in sorted(found))


def _matches(pattern: Path, path: Path) -> bool:
    return all(wanted in ("{subject}", key) for wanted, key in zip(pattern, path, strict=True))


@functools.cache
def _by_pattern() -> dict[tuple[str, int], dict[Path, list[str]]]:
    """Sort all rules by the kind of record, the length of a path, and the pattern of paths that they read."""
    found: dict[tuple[str, int], dict[Path, list[str]]] = {}
    for rule in RULES:
        for role, pattern in _places(rule):
            # A set-up stands in a session and in a profile.
            of_set_up = role == "setup" or (role == "session" and pattern[:1] == ("setup",))
            for kind in {role, "session", "profile"} if of_set_up else {role}:
                found.setdefault((kind, len(pattern)), {}).setdefault(pattern, []).append(rule)
    return found


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
