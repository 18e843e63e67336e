"""Disputed facts as rows: what each laptop says; enter takes it."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.disputes import CONFLICT, Dispute, disputes
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.paths import spell
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

_WORDS = {"base": "before", "ours": "ours", "theirs": "theirs"}


def with_disputes(page: Page, loaded: Loaded) -> Page:
    """Put what two laptops disagree on before everything else of a record's page."""
    rows = tuple(row for one in disputes(loaded.data) for row in _rows(loaded, one))
    if not rows:
        return page
    section = Section("two laptops disagree", rows, "enter takes one", first=True)
    return attrs.evolve(page, sections=(section, *page.sections))


def _rows(loaded: Loaded, one: Dispute) -> Iterator[Row]:
    counts = "not known until decided" if lookup(loaded.data, one.path) is MISSING else "the worse counts"
    yield Row(printable(spell(one.path)), counts, kind="text", key=f"dispute {one.key}")
    for side, word in _WORDS.items():
        yield Row(
            f"  {word}",
            value_words(one.side(side)),
            aside="put it back as it was" if side == "base" else "take this one",
            kind="link",
            ref=loaded.ref,
            path=(CONFLICT, one.key, side),
        )


def value_words(value: Value | Missing) -> str:
    """Write what a side says."""
    if value is MISSING:
        return "not there"
    if isinstance(value, Mapping):
        return printable(", ".join(f"{key} {value_words(inner)}" for key, inner in value.items()) or "empty")
    if isinstance(value, list | tuple):
        return printable(", ".join(map(str, value)))
    return printable(str(value))
