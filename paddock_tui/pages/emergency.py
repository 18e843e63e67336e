"""The page for whoever finds a rider: who to call and what to know, plain, on one screen."""

import datetime as dt
from collections.abc import Iterator, Sequence
from typing import Any

from paddock_tui.entry.row_typing import TypingKind
from paddock_tui.entry.typing_kinds import choices_of, typing_kind
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import UNKNOWN_WORD
from paddock_tui.records.emergency import Emergency, EmergencyRead, is_due, shapes
from paddock_tui.records.paths import Ref
from paddock_tui.text import printable

EMERGENCY = "emergency"

_FIRST = ("call_first", "call_then", "name", "born", "blood_group", "allergies", "medicines", "conditions")
_LAST = ("insurance", "as_of", "consent")


def emergency_page(
    rider: str, name: str, found: EmergencyRead | None, today: dt.date, wrong: str = ""
) -> Page:
    """Make a rider's page; `found` is None where it is not on this laptop, `wrong` why it cannot be read."""
    heading = f"RIDER DOWN · {printable(name)}"
    if wrong:
        said = Row("", printable(wrong), kind="text", key="wrong")
        return Page(heading, (Section("cannot be read", (said,)),), judged=False)
    known = found.known if found is not None else Emergency()
    note = "not on this laptop" if found is None else _as_of(known, today)
    order = (*_FIRST, *_LAST) if known.consent is not None else ("consent", *_FIRST, *_LAST[:-1])
    rows = [_row(rider, key, known, found, today) for key in order]
    first = printable(known.call_first or "") or "not known. Ask at race control."
    paper = f"for the suit: paddock-tui show GARAGE {EMERGENCY}/{rider}"
    return Page(
        heading,
        (
            Section(
                "who to call, what to know",
                (*rows, *_strange(found), Row("paper", paper, kind="text", key="paper")),
                note,
                heavy=True,
            ),
        ),
        judged=False,
        answer=f"Call first: {first}",
        answer_short=f"Call: {first}",
    )


def riders_page(riders: Sequence[tuple[Ref, str, str]], strays: Sequence[str]) -> Page:
    """Make the page that a rider is chosen on, from each with name and how the page stands."""
    rows = tuple(
        Row(f"{number} {printable(name)}", printable(said), kind="link", key=ref.id)
        for number, (ref, name, said) in enumerate(riders, 1)
    )
    sections = [Section("which rider? a digit or enter", rows)]
    if strays:
        words = f"{', '.join(strays)}: give the file in private/ the name that the rider has now"
        sections.append(Section("files of no rider here", (Row("", words, kind="text", key="strays"),)))
    return Page("RIDER DOWN", tuple(sections), judged=False)


def key_of(row: Row) -> tuple[str, str] | None:
    """Return the rider and the key that a row of the page is about."""
    return (row.path[1], row.path[2]) if row.path[:1] == (EMERGENCY,) and len(row.path) == 3 else None


def _as_of(known: Emergency, today: dt.date) -> str:
    if known.as_of is None:
        return "as of: not said"
    return f"as of {known.as_of}" + (": OVER A YEAR OLD" if is_due(known, today) else "")


def _row(rider: str, key: str, known: Emergency, found: EmergencyRead | None, today: dt.date) -> Row:
    label, help_text, shape = shapes()[key]
    value: Any = getattr(known, key)
    raw = found.written.get(key) if found is not None else None
    choices: tuple[str, ...] = ()
    typing: TypingKind = "yes or no"
    text = raw[0] if raw is not None else "" if value is None else shape.show(value)
    if key == "consent":
        shown = f"yes, on {text}" if value is not None else "no: whoever uses this laptop can read this page"
        edit = ""
    else:
        shown, typing, choices = printable(text) or UNKNOWN_WORD, typing_kind(shape), choices_of(shape)
        edit = today.isoformat() if key == "as_of" else text
    return Row(
        label,
        shown,
        path=(EMERGENCY, rider, key),
        edit=edit,
        known=bool(text),
        typing=typing,
        choices=choices,
        working=(f"{label}: {help_text}", f"may be: {shape.expected}"),
        whole=True,
    )


def _strange(found: EmergencyRead | None) -> Iterator[Row]:
    """Show what nobody declared: a stranger may need it all the same."""
    for key, (text, _) in found.written.items() if found is not None else ():
        if key not in shapes():
            yield Row(printable(key), printable(text), kind="text", key=f"written {key}", whole=True)
