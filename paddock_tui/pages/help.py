"""The help as pages: of the page one stands on, of a topic, of a word; and every key."""

import re
from collections.abc import Iterator, Sequence

import attrs

from paddock_tui import help as texts
from paddock_tui.entry.row_typing import SAID
from paddock_tui.help import Entry, Part, Topic
from paddock_tui.pages.actions import ROW_KEYS, ActionRow, printed
from paddock_tui.pages.own_keys import own_keys, said_with
from paddock_tui.pages.review import CAUTION_WORDS
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.text import printable

KEYS = "keys"
"""The topic whose rows are made from the actions."""

_RUN = re.compile(r" {2,}")


def room_help(room: str, actions: Sequence[ActionRow]) -> Page:
    """Make the help of a page: what it is for, its keys and words; then all keys, and what else there is."""
    of_room = texts.topic(room) if room in texts.names() else None
    sections = [*_about(of_room, actions)] if of_room is not None else []
    page = Page(
        f"help · {texts.called(room)}" if of_room is not None else "help",
        (
            *sections,
            *key_sections(actions),
            _caution(),
            Section("topics", tuple(_topic_rows()), "enter opens one, ? asks for one by name"),
        ),
    )
    return _with_keys(page, actions)


def topic_page(topic: Topic, actions: Sequence[ActionRow] = ()) -> Page:
    """Make the page of one topic, whole."""
    sections = [_with_own_keys(_section(part, topic), actions) for part in topic.parts]
    if topic.name == KEYS:
        sections += key_sections(actions)
    page = Page(
        f"help · {texts.called(topic.name)}: {topic.about}", (*sections, *_words(topic)), judged=False
    )
    return _with_keys(page, actions)


def found_page(asked: str, actions: Sequence[ActionRow] = ()) -> Page | None:
    """Make the page of what is asked for: a topic, a word, or what begins so; None where there is none."""
    found = texts.find(asked)
    if not found:
        return None
    whole = found[0]
    if isinstance(whole, Topic) and (len(found) == 1 or whole.name == asked.casefold().strip()):
        page = topic_page(whole, actions)
        said = [one for one in found[1:] if isinstance(one, str)]
        return Page(page.heading, (*_meanings(said), *page.sections), judged=False)
    words = [one for one in found if isinstance(one, str)]
    topics = [one for one in found if isinstance(one, Topic)]
    more = (Section("topics", tuple(_links(topics))),) if topics else ()
    return _with_keys(Page(f"help · {printable(asked)}", (*_meanings(words), *more), judged=False), actions)


def topics_page() -> Page:
    """List the topics, each with what it is about."""
    return _with_keys(Page("help · topics", (Section("topics", tuple(_topic_rows())),), judged=False), ())


def key_sections(actions: Sequence[ActionRow]) -> tuple[Section, ...]:
    """List every action with its key, what the keys do on a row, and how each kind of value is typed."""
    said = tuple(
        Row(printed(one) or "in m", f"{one.label}: {one.help}", kind="text", key=one.id) for one in actions
    )
    rows = tuple(Row(keys, words, kind="text", key=keys) for keys, words in ROW_KEYS)
    kinds = tuple(Row(name, words, kind="text", key=f"kind {name}") for name, words in SAID.values())
    return Section("all keys", said), Section("on a row", rows), Section("by kind of value", kinds)


def _about(topic: Topic, actions: Sequence[ActionRow]) -> Iterator[Section]:
    """Say of a page what it is for and its own keys; what is longer stands in its topic."""
    lead = Row("", topic.lead, kind="text", key="lead")
    yield Section("this page", (lead, *_links([topic])))
    for part in topic.parts:
        if part.title == "Its keys":
            yield _with_own_keys(_section(part, topic), actions)
    yield from _words(topic)


def _with_keys(page: Page, actions: Sequence[ActionRow]) -> Page:
    """Write the keys in a page's prose as they are here: a topic says the usual ones."""
    own = own_keys(actions)

    def row(one: Row) -> Row:
        return attrs.evolve(
            one,
            label=texts.with_keys(one.label, own),
            value=texts.with_keys(one.value, own),
            aside=texts.with_keys(one.aside, own),
        )

    sections = tuple(
        attrs.evolve(
            one,
            title=texts.with_keys(one.title, own),
            note=said_with(one.note, own),
            rows=tuple(map(row, one.rows)),
        )
        for one in page.sections
    )
    return attrs.evolve(page, heading=texts.with_keys(page.heading, own), sections=sections)


def _with_own_keys(section: Section, actions: Sequence[ActionRow]) -> Section:
    """Write keys of actions as they are here in the table of a page's own keys."""
    if section.title != "its keys":
        return section
    own = own_keys(actions)
    rows = tuple(attrs.evolve(row, label=own.get(row.label, row.label)) for row in section.rows)
    return attrs.evolve(section, rows=rows)


def _words(topic: Topic) -> Iterator[Section]:
    return _meanings(topic.words)


def _meanings(words: Sequence[str]) -> Iterator[Section]:
    if words:
        rows = (Row(word, texts.words()[word], kind="text", key=f"word {word}") for word in words)
        yield Section("words", tuple(rows))


def _section(part: Part, topic: Topic) -> Section:
    rows = (_row(entry, f"{part.title} {at}") for at, entry in enumerate(part.entries))
    return Section((part.title or topic.about).lower(), tuple(rows))


def _row(entry: Entry, key: str) -> Row:
    text = entry.text
    if entry.literal:
        # Wrapping takes runs of spaces for one; those of a file or a table are meant.
        text = _RUN.sub(lambda run: "\u00a0" * len(run[0]), text) or "\u00a0"
    return Row(printable(entry.label), printable(text), kind="text", key=key)


def _topic_rows() -> Iterator[Row]:
    return _links(texts.topics())


def _links(topics: Sequence[Topic]) -> Iterator[Row]:
    for topic in topics:
        yield Row(texts.called(topic.name), topic.about, kind="link", key=f"topic {topic.name}")


def _caution() -> Section:
    return Section("before anything else", (Row("", CAUTION_WORDS, kind="text", key="caution"),))
