"""Keys of one's own in what the program says: its texts are written with the usual ones."""

import re
from collections.abc import Iterable, Mapping, Sequence

import attrs

from paddock_tui.pages.actions import ActionRow, printed
from paddock_tui.pages.rows import Page, Row
from paddock_tui.store.key_names import printed_key

_DOES = (
    "adds|all|asks|brings|comes|does|drops|explains|fixes|follows|goes|is for|leads|lists|makes|on its|opens|"
    "proposes|reviews|says|sets|shows|stamps|takes|then|types|undoes|when|again|leaves"
)
_FIRST = r"^|(?<=[:;(] )|(?<=[:;,] )|(?<=\()|(?<=\+)|(?<=then )|(?<=, or )|(?<=follows )|(?<=until )"
"""What a key follows: the beginning, a colon, semicolon or comma, a bracket, `alt+`, or such a word."""


def own_keys(actions: Sequence[ActionRow]) -> Mapping[str, str]:
    """Return the key that an action has here, by the usual one, as they are typed."""
    changed = ((printed_key(one.usual), printed(one)) for one in actions if one.usual)
    return {usual: own for usual, own in changed if usual != own}


def said_with(text: str, own: Mapping[str, str], quoted: Iterable[str] = ()) -> str:
    """Write a message with the keys that actions have here: `g, then n`, `u undoes`, `look: r`.

    What is `quoted` in it comes from the records, and stays as its owner wrote it.
    """
    if not own or not text:
        return text
    keys = "|".join(map(re.escape, own))
    pattern = rf"(?:{_FIRST})(?!y, n\b)({keys})(?=$|: |, |; |\)| (?:{_DOES})\b| or [a-z]$)"
    held = [found.span() for one in quoted for found in re.finditer(re.escape(one), text)]

    def written(found: re.Match[str]) -> str:
        of_records = any(start <= found.start(1) < end for start, end in held)
        return found[1] if of_records else own[found[1]]

    return re.sub(pattern, written, text)


def like_keys(texts: Iterable[str], own: Mapping[str, str]) -> tuple[str, ...]:
    """List the texts of records in which a letter stands as a key does in a message."""
    return tuple(dict.fromkeys(one for one in texts if said_with(one, own) != one))


def page_with(page: Page, own: Mapping[str, str], quoted: Sequence[str] = ()) -> Page:
    """Write what a page says of keys with those of one's own; what the records say stays as it is."""
    if not own:
        return page
    sections = tuple(
        attrs.evolve(
            one,
            note=said_with(one.note, own, quoted),
            rows=tuple(_row(row, own, quoted) for row in one.rows),
        )
        for one in page.sections
    )
    return attrs.evolve(page, sections=sections, answer=said_with(page.answer, own, quoted))


def _row(row: Row, own: Mapping[str, str], quoted: Sequence[str]) -> Row:
    of_program = row.kind == "text" and row.ref is None
    value = said_with(row.value, own, quoted) if of_program else row.value
    changed = value, said_with(row.aside, own, quoted), said_with(row.shut, own, quoted)
    if changed == (row.value, row.aside, row.shut):
        return row
    return attrs.evolve(row, value=changed[0], aside=changed[1], shut=changed[2])
