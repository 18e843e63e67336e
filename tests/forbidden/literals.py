"""What a text has to hold for a pattern to be found in it: most texts are left aside without a search."""

import re
from collections.abc import Collection, Iterable
from typing import Any


def needed(pattern: str) -> frozenset[str] | None:
    """Return plain texts of which one stands in all that the pattern finds; None where it cannot be told."""
    parsed = re._parser.parse(pattern)  # type: ignore[attr-defined]
    if parsed.state.flags & ~re.UNICODE:
        return None
    return _needed(parsed)


def _needed(parts: Iterable[tuple[Any, Any]]) -> frozenset[str] | None:
    """Of the parts that follow one another take the one of which most is told."""
    found: list[frozenset[str]] = []
    run = ""
    for kind, what in parts:
        if str(kind) == "LITERAL":
            run += chr(what)
            continue
        found += [frozenset((run,))] if run else []
        run = ""
        inner = _of_part(str(kind), what)
        found += [inner] if inner else []
    found += [frozenset((run,))] if run else []
    return max(found, key=lambda one: min(map(len, one)), default=None)


def _of_part(kind: str, what: Any) -> frozenset[str] | None:
    if kind == "SUBPATTERN":
        return _needed(what[-1])
    if kind == "MAX_REPEAT" and what[0] > 0:
        return _needed(what[2])
    if kind == "BRANCH":
        branches = [_needed(one) for one in what[1]]
        told = [one for one in branches if one is not None]
        return frozenset().union(*told) if len(told) == len(branches) else None
    return None


def among(pattern: str, texts: Collection[str], whole: str) -> Collection[str]:
    """List the texts in which the pattern may be found; `whole` is all of them in one."""
    literals = needed(pattern)
    if literals is None:
        return texts
    return {text for one in literals if one in whole for text in texts if one in text}
