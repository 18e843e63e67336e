"""Never a wrong merge: whatever the base and whatever the edits of both sides."""

import contextlib
import random
import tomllib
from collections.abc import Mapping
from typing import Any

import tomlkit
import tomlkit.exceptions
from hypothesis import given

from paddock_tui.merge import CONFLICT, Conflict, Merged, MergeError, merged
from paddock_tui.merge.facts import facts_of
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import Path
from paddock_tui.store.data import lookup, same
from paddock_tui.store.lines import split_lines
from tests.examples import examples
from tests.merge.drawn import drawn_triple
from tests.merge.triples import Triple, data, triples

EXAMPLES = examples(20)


def paths(*sides: Mapping[str, Any]) -> list[Path]:
    return list(dict.fromkeys(path for side in sides for path, _ in facts_of(side)))


def alike(one: Value | Missing, other: Value | Missing) -> bool:
    """Compare facts; a table that holds nothing says nothing."""
    one, other = (MISSING if value == {} else value for value in (one, other))
    return one is other if MISSING in (one, other) else same(one, other)


def in_dispute(path: Path, conflicts: tuple[Conflict, ...]) -> bool:
    return any(path[: len(one.path)] == one.path or one.path[: len(path)] == path for one in conflicts)


def read_alike(text: str) -> bool:
    """Return whether both parsers read a text alike.

    They differ on line endings inside long strings, and one stops at some tables out of order.
    """
    with contextlib.suppress(tomlkit.exceptions.ParseError):
        return same(tomlkit.parse(text.removeprefix("\ufeff")).unwrap(), data(text))
    return False


def merge(triple: Triple) -> Merged | None:
    try:
        return merged(triple.base, triple.ours, triple.theirs)
    except MergeError:
        return None


def wrong(triple: Triple, found: Merged | None) -> str:
    """Return what is wrong with the merge of a triple; empty where it is right, or was refused whole."""
    if found is None:
        return ""
    base, ours, theirs, after = map(data, (triple.base, triple.ours, triple.theirs, found.text))
    sides = (triple.base, triple.ours, triple.theirs)
    if not read_alike(found.text) and all(map(read_alike, sides)):
        return "two parsers read it differently"
    for path in paths(base, ours, theirs):
        was, mine, other, now = (lookup(side, path) for side in (base, ours, theirs, after))
        if in_dispute(path, found.conflicts) or any(isinstance(one, Mapping) for one in (was, mine, other)):
            continue
        expected = other if alike(was, mine) else mine
        if not alike(mine, other) and not alike(was, mine) and not alike(was, other):
            return f"{path} was changed on both sides and is not listed"
        if not alike(now, expected):
            return f"{path} is {now!r}, not {expected!r}"
    for one in found.conflicts:
        if not same(lookup(after, (CONFLICT, one.key)), one.as_table()):
            return f"the conflict of {one.path} is not written down"
    extra = [path for path in paths(after) if path[0] != CONFLICT and path not in paths(base, ours, theirs)]
    return f"{extra} came from nowhere" if any(lookup(after, path) != {} for path in extra) else ""


@EXAMPLES
@given(triples())
def test_every_fact_is_that_of_the_side_that_changed_it_and_every_other_conflict_is_listed(
    triple: Triple,
) -> None:
    assert wrong(triple, merge(triple)) == ""


@EXAMPLES
@given(triples())
def test_facts_merge_the_same_whichever_side_is_ours(triple: Triple) -> None:
    one = merge(triple)
    other = merge(Triple(triple.base, triple.theirs, triple.ours))
    if one is None or other is None:
        return
    first, second = data(one.text), data(other.text)
    assert [conflict.path for conflict in one.conflicts] == [conflict.path for conflict in other.conflicts]
    both = [path for path in paths(first, second) if path[0] != CONFLICT]
    assert all(alike(lookup(first, path), lookup(second, path)) for path in both)


@EXAMPLES
@given(triples())
def test_a_side_that_changed_nothing_leaves_the_other_byte_for_byte(triple: Triple) -> None:
    assert merged(triple.base, triple.base, triple.theirs).text == triple.theirs
    assert merged(triple.base, triple.ours, triple.base).text == triple.ours
    assert merged(triple.base, triple.ours, triple.ours).text == triple.ours


@EXAMPLES
@given(triples())
def test_lines_that_neither_side_wrote_never_appear(triple: Triple) -> None:
    found = merge(triple)
    if found is None or found.conflicts or CONFLICT in tomllib.loads(found.text.removeprefix("\ufeff")):
        return
    sides = (triple.base, triple.ours, triple.theirs)
    known = {line.strip("\ufeff \t\r\n") for text in sides for line in split_lines(text)}
    lines = [line.strip("\ufeff \t\r\n") for line in split_lines(found.text)]
    strange = [line for line in lines if line and line not in known]
    # A value that is written anew into ours may be spelled in the program's own way; nothing else is new.
    assert all("=" in line or line.startswith("[") for line in strange)


def test_drawn_records_merge_without_a_wrong_fact() -> None:
    drawn = random.Random(20260620)
    triples_ = [drawn_triple(drawn) for _ in range(200)]
    assert [said for said in (wrong(one, merge(one)) for one in triples_) if said] == []
