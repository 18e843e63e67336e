"""The ledger as a page: what to show, every change with what it did, and the best session of each place."""

import itertools
from collections import Counter
from collections.abc import Iterator

from paddock_tui.advice.ledger import ANY, NAMES, TO_COME, Best, LedgerEntry, LedgerFilter, choices
from paddock_tui.advice.session_laps import lap_words, shift_words
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.sessions.ledger import Ledger
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.ledger_pictures import effects_row
from paddock_tui.pages.pictures.effects import LEGEND
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.differences import old_to_new
from paddock_tui.records.paths import Path, Ref
from paddock_tui.text import printable

LEDGER = "ledger"
FILTER = "ledger-filter"
CAUTION_SHORT = "Verdicts are about laps, not safety."
CAUTION = (
    "Verdicts are about laps, not safety. At most 1 in 20 changes without effect is reported as helped, "
    "while luck is as assumed."
)
_TELLS = ("helped", "made it worse")
"""The verdicts that tell something of a change; every other says that nothing can be told yet."""

_MANY = 4
"""A step with more changes than this stands in one row: nothing can be told of it anyway."""


def ledger_page(found: Ledger, wanted: LedgerFilter) -> Page:
    """Make the page of all changes that are wanted."""
    shown = [one for one in found.entries if wanted.takes(one)]
    best = [one for one in found.bests if wanted.takes_best(one)]
    sections = [Section("show", tuple(_filter_rows(found, wanted)), "- and + step, enter types")]
    effects = effects_row(shown)
    if effects is not None:
        sections.append(Section(effects.label, (effects,), LEGEND))
    for _, group in itertools.groupby(shown, key=lambda one: one.session.id):
        sections.append(_step_section(list(group), bool(wanted.control)))
    if not shown:
        said = "no session was copied from another yet" if not found.entries else "no change is like that"
        sections.append(Section("changes", (Row("", said, kind="text", key="nothing"),)))
    if best:
        sections.append(Section("best here", tuple(_best_rows(best)), "by usual lap, luck included"))
    bike = f" · {wanted.bike}" if wanted.bike else ""
    return Page(
        f"change log{bike} · {_count(shown)}",
        tuple(sections),
        answer=_told(shown),
        answer_short=_told(shown, short=True),
        caution=CAUTION,
        judged=False,
        caution_short=CAUTION_SHORT,
    )


def ledger_awaited(found: tuple[LedgerEntry, ...], wanted: LedgerFilter, read: Reading) -> Page:
    """Make the page of the newest changes while the sessions before them are read: no verdict stands yet.

    Nothing is counted either, since that grows. How far the reading is stands in the heading alone: each row
    that said it would be sent again whenever it goes on.
    """
    sections = [Section("show", tuple(_filter_rows(None, wanted)), "- and + step, enter types")]
    sections += [
        _step_section(list(group), bool(wanted.control), "reading")
        for _, group in itertools.groupby(filter(wanted.takes, found), key=lambda one: one.session.id)
    ]
    sections.append(Section("older changes", (Row("", "reading", kind="text", key="nothing"),)))
    bike = f" · {wanted.bike}" if wanted.bike else ""
    return Page(
        f"change log{bike} · {read.words()}",
        tuple(sections),
        caution=CAUTION,
        judged=False,
        caution_short=CAUTION_SHORT,
        answer="No verdict stands yet.",
    )


def _told(shown: list[LedgerEntry], short: bool = False) -> str:
    """Say how many changes came to which verdict, those that tell something first; the heading counts all."""
    verdicts = Counter(one.lost or one.verdict for one in shown)
    told = [name for name in _TELLS if name in verdicts]
    said = [f"{verdicts[name]} {name}" for name in told]
    if short and told:
        return ", ".join(said)
    left = len(shown) - sum(verdicts[name] for name in told)
    said += [f"{left} that tell nothing yet"] if left else []
    return ", ".join(said) if said else "No change is like that."


def entry_of(found: Ledger, row: Row) -> LedgerEntry | None:
    """Return the change that a row is about."""
    return found.at(row.path[1], row.path[2:]) if row.path[:1] == (LEDGER,) else None


def name_of(past_id: str, entry: LedgerEntry | None = None) -> str:
    """Name a session shortly: number and day."""
    session = entry.session.session if entry is not None else None
    if session is None or session.date is None or session.number is None:
        return past_id
    return f"session {session.number} · {short_date(session.date)} {session.date.year}"


def verdict_words(entry: LedgerEntry) -> str:
    """Say what a change did, how much, and what the rider called it."""
    judgement = entry.judgement
    gain = judgement.gain_s if judgement is not None else None
    said = [entry.lost or entry.verdict]
    if gain is not None:
        said.append(shift_words(gain))
    elif entry.feel:
        said.append(
            "feel "
            + ", ".join(f"{name} {old_to_new(str(old), str(new))}" for name, old, new in entry.feel[:2])
        )
    if entry.because is not None and entry.because.verdict:
        said.append(f"you: {entry.because.verdict}")
    return ", ".join(said)


def _filter_rows(found: Ledger | None, wanted: LedgerFilter) -> Iterator[Row]:
    for name, label in NAMES.items():
        among = choices(found.entries, name) if found is not None else ()
        held = getattr(wanted, name)
        yield Row(
            label,
            printable(held or ANY),
            aside=f"of {len(among)}" if found is not None else "",
            path=(FILTER, name),
            edit=held,
            known=True,
            key=name,
        )


def _step_section(entries: list[LedgerEntry], each: bool, awaited: str = "") -> Section:
    first = entries[0]
    session = first.session.session
    where = [word for word in (first.bike, first.session.venue, session.surface) if word]
    title = printable(" · ".join((name_of(first.session.id, first), *where)))
    if len(entries) > _MANY and not each:
        return Section(title, (_together(entries, awaited),), _from_preset(first))
    return Section(title, tuple(_row(one, awaited) for one in entries), _from_preset(first))


def _from_preset(entry: LedgerEntry) -> str:
    """Say how far the set-up then was from its preset; empty where it names none."""
    return printable(entry.presets[1])


def _together(entries: list[LedgerEntry], awaited: str) -> Row:
    first = entries[0]
    names = ", ".join(one.label for one in entries)
    value = awaited or ("to come" if first.verdict == TO_COME else "cannot tell yet")
    label = f"{len(entries)} at once"
    return Row(label, value, aside=printable(names), kind="link", path=_path(first), key="together")


def _row(entry: LedgerEntry, awaited: str) -> Row:
    value = entry.changes[0].words if entry.changes else ""
    return Row(
        printable(entry.label),
        printable(value),
        aside=printable(awaited or verdict_words(entry)),
        kind="link" if entry.changes else "text",
        path=_path(entry),
        key="change",
    )


def _path(entry: LedgerEntry) -> Path:
    return (LEDGER, entry.session.id, *entry.path)


def _best_rows(bests: list[Best]) -> Iterator[Row]:
    for one in bests:
        venue, rider, surface = one.place
        ref = Ref("session", one.best.id)
        differs = ", ".join(f"{each.label} {each.words}" for each in one.differs)
        said = "it is the last one there" if one.best == one.last else f"since then {differs or 'nothing'}"
        yield Row(
            printable(one.best.id),
            f"usual {lap_words(one.usual_s)}",
            aside=printable(f"{venue}, {rider}, {surface}, best of {one.of}; {said}"),
            kind="link",
            ref=ref,
            opens=ref,
            key=f"best {venue} {rider} {surface}",
        )


def _count(shown: list[LedgerEntry]) -> str:
    return "1 change" if len(shown) == 1 else f"{len(shown)} changes"
