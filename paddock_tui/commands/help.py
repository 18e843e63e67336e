"""`help`: the topics, one of them, or a word; the same texts as `?` shows."""

from collections.abc import Sequence

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, columns, say
from paddock_tui.pages.actions import ActionRow
from paddock_tui.pages.help import found_page, topics_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.text import printable


def help_on(asked: str, actions: Sequence[ActionRow]) -> int:
    """Print what is asked for, the list of topics where nothing is; status 3 where there is none."""
    page = found_page(asked, actions) if asked else topics_page()
    if page is None:
        raise CommandStopped(
            NOT_DONE, printable(f'there is no topic and no word "{asked}"'), "  paddock-tui help lists them"
        )
    # Spaces that wrapping may not take are plain ones in what is copied from here.
    say(line.replace("\u00a0", " ") for line in plain_page(page, columns()))
    return OK
