"""How `show` prints a page, and what of it was asked for."""

from collections.abc import Sequence
from typing import Literal

import attrs

from paddock_tui.commands.check import print_dict
from paddock_tui.commands.common import columns, say
from paddock_tui.pages.as_json import page_as_dict
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.speech import spoken

PrintForm = Literal["text", "json", "html", "plain"]


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


def print_page(page: Page, form: PrintForm) -> None:
    """Print a page as text, as sentences or as JSON."""
    if form == "json":
        print_dict(page_as_dict(page))
    else:
        say(spoken(page) if form == "plain" else plain_page(page, columns()))
