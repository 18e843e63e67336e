"""The help: of the page one came from, of a topic or a word; every key, and what it does."""

import attrs

from paddock_tui.pages.help import found_page, room_help
from paddock_tui.pages.rows import Page
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext
from paddock_tui.text import printable
from paddock_tui.widgets.messages import Chosen, RowMessage


@attrs.define
class Asked:
    """What this run's help is about: the page that it was asked on, and the topic or word asked for."""

    room: str = "help"
    topic: str = ""


def make_page(asked: PageContext) -> Page:
    about = asked.state.of(Asked)
    found = found_page(about.topic, asked.rows) if about.topic else None
    return found or room_help(about.room, asked.rows)


def open_help(host: Host) -> None:
    """Show the help of the page shown."""
    about = host.state.of(Asked)
    about.room, about.topic = host.place.room, ""
    host.go(attrs.evolve(host.place, room="help"))


def ask_word(host: Host) -> None:
    """Ask for a topic or a word."""

    def answered(text: str) -> str:
        return _show(host, text)

    host.ask(Question("help on, a topic or a word", answered))


def _show(host: Host, text: str) -> str:
    """Show a topic or a word; gives what is wrong where there is none."""
    if text.strip() and found_page(text) is None:
        return printable(f'there is no topic and no word "{text.strip()}": enter alone lists the topics')
    host.state.of(Asked).topic = text.strip() or "help"
    host.draw()
    host.board.go(next(row for row in host.board.page.rows()).identity)
    return ""


def hear(host: Host, message: RowMessage) -> bool:
    """Open the topic under the cursor."""
    name = message.row.key.removeprefix("topic ")
    if not isinstance(message, Chosen) or name == message.row.key:
        return False
    _show(host, name)
    return True
