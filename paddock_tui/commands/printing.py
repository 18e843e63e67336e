"""How `show` prints a page, and what of it was asked for."""

import sys
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any, Literal

import attrs

from paddock_tui.commands.common import columns, say

if TYPE_CHECKING:
    from paddock_tui.pages.rows import Page

PrintForm = Literal["text", "json", "html", "plain"]

CheckForm = Literal["text", "json", "plain"]
"""The forms of a review."""


@attrs.frozen
class AskedPage:
    """A page by its name and what it is about, its form, and what is asked of some pages alone.

    `long` is the long form, `came` names what a briefing's rider comes from, `personal` what is left out
    unless it is asked for.
    """

    name: str
    of: str
    form: PrintForm = "text"
    long: bool = False
    came: str | None = None
    personal: Sequence[str] = ()


def print_page(page: "Page", form: PrintForm) -> None:
    """Print a page as text, as sentences or as JSON."""
    if form == "json":
        from paddock_tui.pages.as_json import page_as_dict

        print_dict(page_as_dict(page))
    else:
        say(lines_of(page, form))


def lines_of(page: "Page", form: PrintForm, *, paths: bool = False) -> Iterable[str]:
    """Write a page as sentences or as text, with the paths of its values where they are asked for."""
    if form == "plain":
        from paddock_tui.pages.speech import spoken

        return spoken(page)
    from paddock_tui.pages.layout.pen import with_units
    from paddock_tui.pages.plain import plain_page

    return plain_page(with_units(page), columns(), paths=paths)


def print_dict(data: dict[str, Any]) -> None:
    """Print plain data as JSON; control characters come out escaped."""
    import json

    sys.stdout.write(json.dumps(data, indent=2, ensure_ascii=True) + "\n")
