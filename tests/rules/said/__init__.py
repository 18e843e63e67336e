"""What every rule says in each of its cases, committed as text: words, place, remedy, what a key would set.

A file per module of rules, and one of all limits. `python -m tests.rules.said` writes them anew; then read
what changed.
"""

import functools
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.limits import LIMITS
from paddock_tui.records.paths import spell
from paddock_tui.rules import RULES, Finding
from paddock_tui.rules.short import SHORT
from tests.rules.case import Raises
from tests.rules.cases import CASES
from tests.rules.looked import looked

FOLDER = Path(__file__).parent
OF_LIMITS = FOLDER / "limits.txt"


@functools.cache
def themes() -> dict[str, tuple[str, ...]]:
    """List the rules of each module of rules, by the module's name."""
    of = {rule: RULES[rule].function.__module__.rpartition(".")[2] for rule in sorted(CASES)}
    return {theme: tuple(rule for rule in of if of[rule] == theme) for theme in of.values()}


@functools.cache
def text_of(rules: tuple[str, ...]) -> str:
    """Write what these rules say in each of their raising cases, and what they are declared to be about."""
    return "".join(f"{line.rstrip()}\n" for rule in rules for line in _rule(rule))


def limits_text() -> str:
    """Write every limit as it is declared: address, value, the band that its owner has, meaning, source."""
    return "".join(
        f"{one.rule}.{one.name} = {f'{one.value} {one.unit}'.strip()} of {one.low} to {one.high}:"
        f" {one.meaning} ({one.source})\n"
        for one in LIMITS.values()
    )


def _rule(rule: str) -> Iterator[str]:
    declared = RULES[rule]
    yield f"== {rule}: {declared.about}, rank {declared.rank}, of a set-up {declared.of_set_up}"
    yield f"short: {SHORT[rule]}"
    yield f"source: {declared.source}"
    yield f"mended at: {declared.role}:{spell(declared.path)}; quotes: {', '.join(declared.when)}"
    if declared.absorbs or declared.gathers:
        yield f"takes over: {', '.join(declared.absorbs)}; gathers: {', '.join(sorted(declared.gathers))}"
    if declared.todo:
        yield f"to do {declared.todo.minutes} min before the start: {declared.todo.what or 'its message'}"
    for at, case in enumerate(CASES[rule].raising):
        for found in _mine(rule, case):
            yield from _finding(at, found)
    yield ""


def _mine(rule: str, case: Raises) -> list[Finding]:
    return [one for one in looked(rule, case).findings if one.rule == rule]


def _finding(at: int, one: Finding) -> Iterator[str]:
    """Write one finding; an empty place means that it points at nothing that is entered."""
    place = f"{one.where.ref} {spell(one.where.path)}".strip() if one.where else "nowhere"
    yield f"-- {at} {one.subject} [{one.severity}] at {place}"
    yield f"   {one.message}"
    yield f"   why: {one.why}"
    yield f"   do: {one.remedy.text}"
    for value in one.remedy.puts:
        yield f"   sets: {value.role} {spell(value.path)} = {value.value!r}"
    yield f"   facts: {one.facts}"
    if one.parts or one.quoted:
        yield f"   parts: {', '.join(one.parts)}; quoted: {', '.join(one.quoted)}"
