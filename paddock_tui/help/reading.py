"""The text of a topic, read into parts: headings with paragraphs, and rows of tables."""

import re
from collections.abc import Iterator, Mapping

import attrs

_KEY = re.compile(r"`([^`\s])`")
_MARKED = re.compile("\ue000(.)\ue001")
_CODE = re.compile(r"`([^`]*)`")
_BOLD = re.compile(r"\*\*([^*]+)\*\*|(?<![\w*])\*([^*\s][^*]*)\*(?![\w*])")
_CELLS = re.compile(r"(?<!\\)\|")


@attrs.frozen
class Entry:
    """One line of a part: a paragraph (no label), a row of a table, or a line that is printed as it is."""

    text: str
    label: str = ""
    literal: bool = False


@attrs.frozen
class Part:
    """What stands under one heading; the first part of a topic has none."""

    title: str
    entries: tuple[Entry, ...]


@attrs.frozen
class Topic:
    """One topic: its name, what it is about, its parts, and the words that it names."""

    name: str
    about: str
    parts: tuple[Part, ...]
    words: tuple[str, ...] = ()

    @property
    def lead(self) -> str:
        """The first paragraph: what it is for."""
        entries = self.parts[0].entries if self.parts else ()
        return entries[0].text if entries else ""


def read_topic(text: str) -> Topic:
    """Read a topic. Raises ValueError where its first line is not `# name: what it is about`."""
    first, _, rest = text.partition("\n")
    found = re.fullmatch(r"# ([a-z][a-z0-9-]*): (.+)", first.strip())
    if found is None:
        raise ValueError(f"a topic begins with `# name: what it is about`, not with {first!r}")
    blocks = list(_blocks(rest))
    named: tuple[str, ...] = ()
    if blocks and blocks[-1][0].startswith("Words: "):
        named = tuple(word.strip() for word in " ".join(blocks.pop())[7:].split(","))
    return Topic(found[1], _plain(found[2]), tuple(_parts(blocks)), named)


def _blocks(text: str) -> Iterator[list[str]]:
    """Cut a text at its empty lines; fenced lines stay together."""
    block: list[str] = []
    fenced = False
    for line in text.splitlines():
        fenced ^= line.startswith("```")
        if line.strip() or fenced:
            block.append(line)
        elif block:
            yield block
            block = []
    if block:
        yield block


def _parts(blocks: list[list[str]]) -> Iterator[Part]:
    title, entries = "", list[Entry]()
    for block in blocks:
        if block[0].startswith("## "):
            if title or entries:
                yield Part(title, tuple(entries))
            title, entries, block = block[0][3:].strip(), [], block[1:]
        entries += _entries(block)
    if title or entries:
        yield Part(title, tuple(entries))


def _entries(block: list[str]) -> Iterator[Entry]:
    if not block:
        return
    if block[0].startswith("```"):
        yield from (Entry(line, literal=True) for line in block[1:-1])
    elif block[0].startswith("|"):
        heads = _cells(block[0])
        yield from (_table_row(_cells(line), heads) for line in block[2:])
    elif block[0].startswith("- "):
        yield from (Entry(_plain(item)) for item in re.split(r"\n?- ", "\n".join(block))[1:])
    else:
        yield Entry(_plain("\n".join(block)))


def _cells(line: str) -> list[str]:
    return [_plain(cell) for cell in _CELLS.split(line.strip().removeprefix("|").removesuffix("|"))]


def _table_row(cells: list[str], heads: list[str]) -> Entry:
    """Make one entry of a row: the first column is its label, what is behind the second has its heading."""
    others = [f"{head}: {cell}" for cell, head in zip(cells[2:], heads[2:], strict=True) if cell]
    return Entry("; ".join(filter(None, (*cells[1:2], *others))), cells[0])


def _plain(text: str) -> str:
    """Take the marks of Markdown away: a screen has none of them. A key by itself keeps a mark of its own."""
    text = _KEY.sub("\ue000\\1\ue001", text)
    text = _CODE.sub(lambda found: found[1], " ".join(text.split()))
    return _BOLD.sub(lambda found: found[1] or found[2], text).replace("\\|", "|").strip()


def with_keys(text: str, own: Mapping[str, str]) -> str:
    """Write the keys of a text as they are here, where `own` has another one for a usual one."""
    return _MARKED.sub(lambda found: own.get(found[1], found[1]), text)
