"""Long pages: which sections are folded to their heading, and the page as it then shows."""

from collections.abc import Callable, Mapping, Sequence, Set

import attrs

from paddock_tui.pages.rows import FOLD, MISSING, TO_DO, Page, Row, Section
from paddock_tui.pages.rows import NOTHING as EMPTY
from paddock_tui.records.paths import Path, Ref
from paddock_tui.text import clip

RowIsOpen = Callable[[Row], bool]
"""Whether something is open on a row: a finding, a missing essential, a to-do."""

_GRAVE = ("hold", "serious", "trouble", "caution")
"""What keeps a section open: a note says nothing that has to be seen at once."""
_LEAST = 3
"""A section of fewer rows is as short as its heading would be."""

_SMALL = 9
"""A picture of so few lines never folds: it is what one looks at first."""

_GROUP = 3
"""From so many on, folded sections of one kind share one heading."""

NOTHING = "nothing noted yet"
"""What folded sections beside each other are that hold no value."""

REST = " · rest"
"""What is added to the key of a section for the line behind which the rest of it stands."""

_FEWEST = 2
"""So many rows at least stand behind one line: one row is as short itself."""

_COUNTED = " open of "
"""Between how many rows are open and how many there are: a summary that says it needs no count beside it."""

ANSWERED = "answered"
"""What checklists beside each other are that have nothing open, and the answered items of one that has."""

_SUMMARY = 60
_WORDS = 16
"""Cells of a summary, and of one value in it."""


def opens(places: Set[tuple[Ref | None, Path]]) -> RowIsOpen:
    """Return what tells open rows: those of these places, those with trouble, and unanswered questions."""

    of: dict[Ref | None, list[Path]] = {}
    for ref, path in places:
        if path:
            of.setdefault(ref, []).append(path)

    def is_open(row: Row) -> bool:
        if row.trouble or row.severity in _GRAVE or (row.key and row.key.startswith((MISSING, TO_DO))):
            return True
        paths = of.get(row.ref)
        return paths is not None and any(row.path[: len(path)] == path for path in paths)

    return is_open


def folds_of(page: Page, is_open: RowIsOpen, lines: Callable[[Section], int], most: int) -> dict[str, bool]:
    """Choose which sections of a page to fold, so that it takes at most so many lines: by key.

    What has an open row is never folded; of the rest as many stay open as have room, from the top. Sections
    as short as their heading would be are folded only where it is too long without, or what the page begins
    with would be; and so are lists that are not at hand, whose headings say how many items are open. The
    only section of a page is what one came for. Where that is not enough, what stays open shows what matters
    now first, and the rest of its rows behind one line.
    """
    sizes = {id(one): lines(one) for one in page.sections}
    if sum(sizes.values()) <= most or len(page.sections) == 1:
        return {}
    shut = [
        one
        for one in page.sections
        if one.rows
        and not any(map(is_open, one.rows))
        and not all(_unanswered(row) for row in one.rows if row.kind != "heading")
        and not (sizes[id(one)] <= _SMALL and _has_picture(one))
    ]
    heads = {id(one): _head(one) for one in page.sections}
    may = [one for one in shut if len(one.rows) >= _LEAST]
    first = {id(one) for one in page.sections[:1] if 2 * sizes[id(one)] <= most}
    if _lines(page, {id(one) for one in may} - first, sizes, heads) > most:
        may = shut
    if _lines(page, {id(one) for one in may}, sizes, heads) > most:
        may = [*may, *_not_at_hand(page, may)]
    closed = {id(one) for one in may}
    taken = _lines(page, closed, sizes, heads)
    for one in may:
        # A section that opens saves its heading at most: of thousands hardly any has to be counted.
        if taken + sizes[id(one)] - 1 <= most:
            opened = _lines(page, closed - {id(one)}, sizes, heads)
            if opened <= most:
                closed.discard(id(one))
                taken = opened
    chosen = {key_of(one): id(one) in closed for one in may}
    left = taken - most
    return chosen | _trimmed_of(page, is_open, lines, closed, left) if left > 0 else chosen


def _not_at_hand(page: Page, others: Sequence[Section]) -> list[Section]:
    """List the checklists that are not at hand where another is, and in which nothing is to fix."""
    if not any(one.at_hand for one in page.sections):
        return []
    lists = [one for one in page.sections if one.rows and all(row.kind == "check" for row in one.rows)]
    return [one for one in lists if not (one.at_hand or one in others or worst(one))]


def waiting_first(page: Page, waits: Set[str]) -> Page:
    """Put sections in which something waits before the others, behind pictures; else nothing moves.

    Those in which a value is missed that a rule waits for come next.
    """
    drawn = [one for one in page.sections if _has_picture(one)]
    rest = [one for one in page.sections if not _has_picture(one)]
    rest.sort(key=lambda one: (not one.first, key_of(one) not in waits, not _is_waited_for(one)))
    return attrs.evolve(page, sections=(*drawn, *rest))


def _is_waited_for(section: Section) -> bool:
    """Return whether a value that a rule waits for is not known in a section."""
    return any(map(_is_loud, section.rows))


def _is_loud(row: Row) -> bool:
    return row.kind == "field" and row.ref is not None and not row.known and row.value != EMPTY


def waiting(page: Page, is_open: RowIsOpen) -> frozenset[str]:
    """Return the keys of sections in which something waits: a finding, what is missing, what is to do.

    Where a page says itself what is at hand, that alone.
    """
    at_hand = frozenset(key_of(one) for one in page.sections if one.at_hand)
    return at_hand or frozenset(key_of(one) for one in page.sections if any(map(is_open, one.rows)))


def _trimmed_of(
    page: Page, is_open: RowIsOpen, lines: Callable[[Section], int], closed: Set[int], left: int
) -> dict[str, bool]:
    """Choose which open sections show what matters alone: those that give most lines, until it is enough."""
    gains = []
    for one in page.sections:
        quiet = frozenset() if id(one) in closed else _quiet(one, is_open)
        if quiet:
            gain = lines(one) - lines(_trimmed(attrs.evolve(one, quiet=quiet), False))
            gains.append((gain, one, quiet))
    chosen: dict[str, bool] = {}
    for gain, one, quiet in sorted(gains, key=lambda found: -found[0]):
        if left > 0 and gain > 0:
            chosen |= {_waits(one, at): True for at in quiet}
            left -= gain
    return chosen


def _waits(section: Section, at: int) -> str:
    """Return what it is remembered by that a row waits behind the line of its section."""
    return " ".join((key_of(section), *section.rows[at].identity))


def _quiet(section: Section, is_open: RowIsOpen) -> frozenset[int]:
    """Return the places of the rows that can wait: what is answered, is not due, or only tells."""
    found = [place for place, row in enumerate(section.rows) if not _matters(row, is_open)]
    return frozenset(found) if len(found) >= _FEWEST else frozenset()


def _matters(row: Row, is_open: RowIsOpen) -> bool:
    return (
        is_open(row)
        or _is_loud(row)
        or _unanswered(row)
        or row.kind in ("heading", "add")
        or (row.kind == "check" and not row.known)
    )


def _unanswered(row: Row) -> bool:
    """Return whether a row is a question that nobody answered yet: sections of nothing else stay open."""
    return row.kind == "ask" and not row.known


def _has_picture(section: Section) -> bool:
    return any(row.picture is not None for row in section.rows)


def _lines(page: Page, closed: Set[int], sizes: Mapping[int, int], heads: Mapping[int, str]) -> int:
    """Count the lines of a page with these sections folded, of which those of a kind share a heading."""
    runs = _runs(page.sections, lambda one: id(one) in closed, lambda one: heads[id(one)])
    headed = (1 if len(run) >= _GROUP else len(run) for run in runs if id(run[0]) in closed)
    return sum(headed) + sum(sizes[id(one)] for one in page.sections if id(one) not in closed)


def with_folds(page: Page, folds: Mapping[str, bool], is_open: RowIsOpen) -> Page:
    """Mark the sections of a page that are folded unless somebody opened them."""
    if not any(folds.values()):
        return page
    return attrs.evolve(page, sections=tuple(_marked(one, folds, is_open) for one in page.sections))


def _marked(section: Section, folds: Mapping[str, bool], is_open: RowIsOpen) -> Section:
    if folds.get(key_of(section)):
        waits = sum(is_open(row) or _unanswered(row) for row in section.rows)
        return attrs.evolve(section, folded=True, open_rows=waits)
    # What was answered since stays where it is: no line moves under the cursor.
    quiet = frozenset(at for at in _quiet(section, is_open) if folds.get(_waits(section, at)))
    return attrs.evolve(section, quiet=quiet) if quiet else section


def key_of(section: Section) -> str:
    """Return what a section is remembered by."""
    return section.title


def folded(page: Page, opened: Mapping[str, bool]) -> Page:
    """Return the page as it shows: a folded section is its heading, an opened one folds again by its own."""
    if not any(one.folded or one.quiet for one in page.sections):
        return page
    sections: list[Section] = []
    for run in _runs(page.sections, _is_folded):
        if len(run) >= _GROUP:
            is_open = opened.get(_group_key(run), False)
            sections.append(_group(run, is_open))
            if not is_open:
                continue
        for one in run:
            rest = bool(one.quiet) and not one.folded
            key = key_of(one) + REST * rest
            sections.append((_trimmed if rest else _as_shown)(one, opened.get(key, False)))
    return attrs.evolve(page, sections=tuple(sections))


def hidden_in(page: Page, identity: tuple[str, ...]) -> tuple[str, ...]:
    """Return the keys of what hides a row: its folded section and that one's group; empty without one."""
    for run in _runs(page.sections, _is_folded):
        for one in run:
            if one.folded and any(row.identity == identity for row in one.rows):
                return (_group_key(run), key_of(one)) if len(run) >= _GROUP else (key_of(one),)
            if not one.folded and any(one.rows[at].identity == identity for at in one.quiet):
                return (key_of(one) + REST,)
    return ()


def _head(section: Section) -> str:
    """Return what a section is one of: the first part of its title, what is done, or nothing is noted in."""
    if section.rows and all(row.kind == "check" and row.known and not row.severity for row in section.rows):
        return ANSWERED
    return NOTHING if _is_blank(section) else section.title.split(" · ")[0]


def _is_blank(section: Section) -> bool:
    """Return whether nothing is written in a section: its rows are unknown, or only add."""
    return not (section.note or section.summary or section.columns) and not any(
        row.kind != "add" and (row.known or row.trouble or row.severity) for row in section.rows
    )


def _group_key(run: Sequence[Section]) -> str:
    head = _head(run[0])
    return f"{head} · {run[0].title if head in (NOTHING, ANSWERED) else '*'}"


def _is_folded(section: Section) -> bool:
    return section.folded


def _runs(
    sections: Sequence[Section],
    is_folded: Callable[[Section], bool],
    head: Callable[[Section], str] = _head,
) -> list[list[Section]]:
    """Put folded sections of one kind together, such as the controls of a bike; every other stands alone."""
    runs: list[list[Section]] = []
    for one in sections:
        before = runs[-1][-1] if runs else None
        if before is not None and is_folded(before) and is_folded(one) and head(before) == head(one):
            runs[-1].append(one)
        else:
            runs.append([one])
    return runs


def _group(run: Sequence[Section], is_open: bool) -> Section:
    """Make the one heading of folded sections of a kind, which names them."""
    head = _head(run[0])
    names = " · ".join(one.title.removeprefix(f"{head} · ") for one in run if one.title != head)
    count = sum(one.open_rows for one in run)
    heading = Row(
        head,
        "" if is_open else names,
        f"{count} open in {len(run)}" if count else str(len(run)),
        kind=FOLD,
        key=f"{FOLD} {_group_key(run)}",
        severity=next((one for one in _GRAVE if any(worst(part) == one for part in run)), ""),
    )
    hidden = () if is_open else tuple(row for one in run for row in one.rows)
    return Section(head, (heading,), hidden=hidden)


def _as_shown(section: Section, is_opened: bool) -> Section:
    if not section.folded:
        return section
    said, count = section.summary or _summary(section), _count(section)
    heading = Row(
        section.title,
        "" if is_opened else said,
        "" if _COUNTED in said and not is_opened else count,
        kind=FOLD,
        key=f"{FOLD} {key_of(section)}",
        severity=worst(section),
    )
    if is_opened:
        return attrs.evolve(section, rows=(heading, *section.rows))
    return Section(section.title, (heading,), hidden=section.rows)


def _trimmed(section: Section, is_opened: bool) -> Section:
    """Show what matters of a section, then one line for the rest, behind which that stands where opened."""
    shown = tuple(row for at, row in enumerate(section.rows) if at not in section.quiet)
    rest = tuple(row for at, row in enumerate(section.rows) if at in section.quiet)
    called, words = _called(rest)
    line = Row(
        called,
        "" if is_opened else words,
        str(len(rest)),
        kind=FOLD,
        key=f"{FOLD} {key_of(section)}{REST}",
    )
    if is_opened:
        return attrs.evolve(section, rows=(*shown, line, *rest))
    return attrs.evolve(section, rows=(*shown, line), hidden=rest)


def _called(rest: Sequence[Row]) -> tuple[str, str]:
    """Name rows that stand behind one line, and say what they are about."""
    if all(row.kind == "finding" for row in rest):
        return "notes", " · ".join(row.short or row.value for row in rest)
    if all(row.kind == "check" for row in rest):
        return ANSWERED, ", ".join(clip(row.value, _WORDS) for row in rest)
    return "the rest", ", ".join(clip(row.label, _WORDS) for row in rest)


def worst(section: Section) -> str:
    """Return the gravest severity on the rows of a section; empty without one."""
    return next((one for one in _GRAVE if any(row.severity == one for row in section.rows)), "")


def _count(section: Section) -> str:
    count = sum(1 for row in section.rows if row.kind != "add")
    if not count:
        return ""
    return f"{section.open_rows}{_COUNTED}{count}" if section.open_rows else str(count)


def _summary(section: Section) -> str:
    """Say the first values of a section, or what stands beside its title."""
    if section.rows and all(row.kind == "add" for row in section.rows):
        return section.rows[0].label
    drawn = next((row.picture for row in section.rows if row.picture is not None), None)
    if drawn is not None and drawn.sentence:
        return drawn.sentence
    checks = all(row.kind in ("check", "heading") for row in section.rows)
    if section.note and (checks or not any(row.kind == "field" for row in section.rows)):
        return section.note
    loud = [row.label for row in section.rows if _is_loud(row) and row.label]
    said = [f"{loud[0]} not known" if len(loud) == 1 else f"{len(loud)} not known: {loud[0]}"] if loud else []
    cells = sum(map(len, said))
    for row in section.rows:
        if row.kind in ("add", "picture") or not row.known or not (row.label or row.value):
            continue
        value = clip(row.value, _WORDS)
        words = f"{row.label} {value}".strip()
        cells += len(words) + 3
        if cells > _SUMMARY:
            break
        said.append(words)
    if not said:
        lost = any(row.kind in ("field", "link") and not row.known for row in section.rows)
        return "nothing noted" if lost else section.note
    return " · ".join(said)
