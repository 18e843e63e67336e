"""The guided start as a page: its rows, and at the end what is missing and what that would unlock."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.desk.start.ask import Ask
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules import Review
from paddock_tui.text import printable

REVIEW = "to the review"
"""The key of the row that leads to the review."""

_NOTES = {"rider": "enter passes a row, escape leaves; all is saved"}
_MOST = 12
_LABELS = len("front start pressure")
"""The longest label that comes as answers bring rows."""


def start_page(
    rows: Sequence[Ask],
    session: Ref | None,
    judged: Review,
    refs: Mapping[str, Ref],
    beside: Mapping[Path, BesideRow],
) -> Page:
    """Make the page of a start. `beside` are the suggestions for the session's values."""
    sections = [
        Section(title, tuple(_row(one, session, beside) for one in group), _NOTES.get(title, ""))
        for title, group in groupby(rows, lambda one: one.section)
    ]
    if session is not None:
        sections += _next_steps(judged, refs)
    left = [one.label for one in rows if one.is_open]
    first = f"{len(left)} open, first: {printable(left[0])}" if left else "Everything asked for is answered."
    return Page("guided start", tuple(sections), labels=_LABELS, answer=first)


def _row(one: Ask, session: Ref | None, beside: Mapping[Path, BesideRow]) -> Row:
    found = beside.get(one.path) if one.path and one.ref == session and session is not None else None
    offered = f"enter takes {one.offered}" if one.is_open and one.offered else ""
    how, beside_it = "" if one.value else one.how, found.short if found is not None else ""
    # Where there is nothing to take yet, what the advice lacks is said behind how the row is answered.
    said = (beside_it, offered, how) if found is not None and found.puts else (offered, how, beside_it)
    return Row(
        printable(one.label),
        printable(one.value),
        aside=printable("; ".join(filter(None, said))),
        kind="ask",
        ref=one.ref,
        path=one.path,
        known=not one.is_open,
        edit="",
        key=one.key,
        typing="words",
        offer=found.puts if found is not None else (),
        working=found.working if found is not None else (),
    )


def _next_steps(judged: Review, refs: Mapping[str, Ref]) -> Iterator[Section]:
    """List what is missing, first what would let most rules judge, and the way to the review."""
    rows = [Row(REVIEW, judged.verdict, kind="link", key=REVIEW)]
    for missing, count in judged.unlocking()[:_MOST]:
        ref = refs.get(missing.role)
        rows.append(
            Row(
                printable(missing.label),
                f"would let {count} more {'rule' if count == 1 else 'rules'} judge",
                kind="link",
                ref=ref,
                path=missing.path if ref is not None else (),
                key=f"unlocks {missing.label}",
            )
        )
    yield Section("next steps", tuple(rows), "what is missing, and what it would unlock")
