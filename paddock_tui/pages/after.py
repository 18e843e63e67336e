"""After the day: the road home, counters brought forward, what is left to do, what was learnt.

Of what is open about a person it says whose it is and how severe: the page is printed, and read by helpers.
"""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.advice.ridden_so_far import count_words
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.day.after import (
    LearntChange,
    RodeThere,
    day_over,
    goes_by_road,
    learnt_on,
    next_finds,
    profile_from,
    road_findings,
    who_rode,
)
from paddock_tui.desk.day.packing import to_pack
from paddock_tui.desk.looking import LooksAt
from paddock_tui.facts.checklists import OPEN, TO_FIX
from paddock_tui.facts.situation import Situation
from paddock_tui.matters import Matter
from paddock_tui.pages.after_counters import counter_rows
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.day_memory import DayMemory
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.todos import add_row, to_fix_rows, todo_rows
from paddock_tui.pages.values import field_row
from paddock_tui.records.checklist import ROAD_HOME, unlisted_item
from paddock_tui.records.common import Check, Units
from paddock_tui.records.day import RidingDay
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.packing import PACKING
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules.personal import impersonal_matter_words, impersonal_words
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

AFTER = "after"
"""What is asked for in place of a record to see what a day leaves behind."""

NOT_READ = "What is left is not known yet."
"""Said in place of an answer while sessions are read."""

PROFILE_OF = "profile of "
"""Begins the key of a row from which the day's set-up is saved as a profile."""

MATTER = "matter "
"""Begins the key of a row that may be noted as something to do."""


class AfterMemory(DayMemory):
    """The page of this kind that was made last."""

    def made(self, desk: LooksAt, wanted: Ref | None) -> Page:
        """Make the page."""
        return after_page(desk, wanted)

    def awaited(self, desk: LooksAt, wanted: Ref | None, read: Reading) -> Page:
        """Make the page with what the day's own record says."""
        return after_page(desk, wanted, read)

    def rests_on(self, desk: LooksAt, wanted: Ref | None) -> tuple[Ref, ...]:
        """List the last session of each rider and bike of the day."""
        _, day, rode = day_ridden(desk, wanted)
        return tuple(one.last for one in rode) if day is not None else ()


def day_ridden(
    desk: LooksAt, wanted: Ref | None
) -> tuple[Loaded | None, RidingDay | None, tuple[RodeThere, ...]]:
    """Return the day that is wanted, else the latest that was ridden, with who rode there."""
    ref = day_over(desk, wanted)
    loaded = desk.files.read(ref) if ref is not None else None
    day = loaded.possible if loaded is not None else None
    if ref is None or not isinstance(day, RidingDay):
        return None, None, ()
    return loaded, day, who_rode(desk, ref, day)


def after_page(desk: LooksAt, wanted: Ref | None = None, read: Reading | None = None) -> Page:
    """Make the page of a day that was ridden: what it leaves behind, for each rider and bike.

    While sessions are still read for it, it says of nobody what is left.
    """
    loaded, day, rode = day_ridden(desk, wanted)
    if loaded is None or day is None:
        text = Row("", "no day was ridden yet", kind="text", key="none")
        return Page("after the day", (Section("no day", (text,)),), judged=False)
    sections: list[Section] = []
    if not rode:
        text = Row("", "nothing was ridden on this day", kind="text", key="none")
        sections.append(Section("no session", (text,)))
    for one in rode:
        sections += _of_one(desk, loaded, day, one) if read is None else (_awaited(desk, loaded, one),)
    packing = tuple(_packing(desk, loaded))
    sections.append(Section("how the packing served", packing, "" if packing else "no packing list yet"))
    date = f"{day.date:%a} {short_date(day.date)}" if day.date is not None else ""
    said = read.words() if read is not None else ""
    heading = " · ".join(filter(None, ("after", said, date, day.venue or "")))
    shown = tuple(one for one in sections if one.rows or one.note)
    answers = (_first(shown), _first(shown, short=True)) if read is None else (NOT_READ, NOT_READ)
    return Page(printable(heading), shown, judged=False, answer=answers[0], answer_short=answers[1])


def _first(sections: tuple[Section, ...], short: bool = False) -> str:
    """Say what is left of the day, worst first."""
    rows = [row for one in sections for row in one.rows]
    order = ("hold", "serious", "caution")
    bad = sorted((row for row in rows if row.severity in order), key=lambda row: order.index(row.severity))
    if not bad:
        return "Nothing is known to be left" + ("." if short else " to do before the next day.")
    said = ": ".join(filter(None, (bad[0].label, bad[0].value)))
    return (
        f"{len(bad)} to see to: {bad[0].label or said}" if short else f"First, {len(bad)} to see to: {said}"
    )


def _awaited(desk: LooksAt, loaded: Loaded, rode: RodeThere) -> Section:
    """Return what is asked of a rider and a bike while earlier sessions are read."""
    return Section(_name(rode), (_line(loaded, rode, desk.units(rode.rider or None)),), "the rest is read")


def _name(rode: RodeThere) -> str:
    return printable(" on ".join(filter(None, (rode.rider, rode.bike))) or "rider and bike not known")


def _of_one(desk: LooksAt, loaded: Loaded, day: RidingDay, rode: RodeThere) -> Iterator[Section]:
    name = _name(rode)
    line = _line(loaded, rode, desk.units(rode.rider or None))
    yield Section(name, (line,), count_words(len(rode.sessions)))
    by_road = goes_by_road(day, rode)
    if by_road is not False:
        note = "" if by_road else "how it gets home is not said: s, travel"
        yield Section(f"{name}: the road home", tuple(_road(desk, loaded, day, rode)), note)
    about = desk.about(rode.last)
    yield Section(f"{name}: brought forward", tuple(counter_rows(about, day, name)))
    found = next_finds(desk, rode.last)
    yield Section(f"{name}: before the next day", tuple(_left(desk, found, rode, name)), "n adds, 1 is done")
    yield Section(f"{name}: learnt", tuple(_learnt(desk, loaded.ref, rode, name)))


def _line(loaded: Loaded, rode: RodeThere, units: Units) -> Row:
    field = field_at("day", ("entries", rode.rider, rode.bike, "said"))
    if field is None or not rode.rider or not rode.bike:
        return Row("the day in a line", "rider and bike are not named", kind="text", key="line")
    return field_row(loaded, field, units)


def _road(desk: LooksAt, loaded: Loaded, day: RidingDay, rode: RodeThere) -> Iterator[Row]:
    """Offer the steps of the way home, and say under them what the rules find of the bike as it stands."""
    held = day.entry_of(rode.rider, rode.bike).checks
    for item, text in ROAD_HOME.items():
        check = held.get(item, Check())
        status = check.status or OPEN
        said = " ".join(filter(None, (f"{check.at:%H:%M}" if check.at else "", check.by or "")))
        path: Path = ("entries", rode.rider, rode.bike, "checks", item, "status")
        yield Row(
            label=status,
            value=text,
            aside=printable(said),
            kind="check",
            ref=loaded.ref,
            path=path,
            severity=(unlisted_item(item).to_fix or "") if status == TO_FIX else "",
        )
    for number, one in enumerate(road_findings(desk, rode.last)):
        yield Row(
            str(one.severity),
            printable(impersonal_words(one) or one.message),
            aside=printable(one.remedy.text),
            kind="link",
            severity=str(one.severity),
            opens=rode.last,
            key=f"{rode.rider} {rode.bike} road {number}",
        )


def _left(desk: LooksAt, found: Situation | None, rode: RodeThere, name: str) -> Iterator[Row]:
    """List what is open: things to do, matters, what is to fix; each stays until it is answered."""
    bike = Ref("bike", rode.bike)
    yield from todo_rows(desk, bike, None)
    facts = found.facts() if found is not None else None
    matters = facts.get("open_matters") if facts is not None else ()
    for number, one in enumerate(matters if isinstance(matters, tuple) else ()):
        if isinstance(one, Matter):
            yield _matter(one, f"{MATTER}{rode.rider} {rode.bike} {number}")
    if found is not None:
        for row in to_fix_rows(found, f"{MATTER}{rode.rider} {rode.bike} "):
            yield attrs.evolve(row, aside=f"{row.aside} · v notes it with a date")
    if found is None:
        yield Row("still open", "not known: the last session cannot be read", kind="text", key=f"{name} lost")
    if desk.files.path_of(bike) is not None:
        yield add_row(bike)


def _matter(one: Matter, key: str) -> Row:
    since = f"since {short_date(one.since)}" if one.since is not None else ""
    return Row(
        "still open",
        impersonal_matter_words(one) or printable(one.message),
        aside=printable(" · ".join(filter(None, (since, "v notes it with a date")))),
        kind="link" if one.ref is not None else "text",
        severity=str(one.severity),
        opens=one.ref,
        key=key,
    )


def _learnt(desk: LooksAt, ref: Ref, rode: RodeThere, name: str) -> Iterator[Row]:
    found = learnt_on(desk, ref, rode)
    for number, one in enumerate(found):
        first = one.entry.changes[0]
        words = printable(first.words)
        kept = "kept" if one.kept else "taken back"
        session = one.entry.session
        yield Row(
            printable(one.entry.label),
            f"{words}: {one.entry.verdict}",
            aside=f"{kept}, session {session.session.number}",
            kind="link",
            opens=Ref("session", session.id),
            key=f"{name} learnt {number}",
        )
    if not found:
        yield Row("", "nothing was changed from one session to the next", kind="text", key=f"{name} same")
    made = profile_from(desk.files, rode)
    if made is not None:
        yield Row("profile", f"saved as {made.id}", kind="link", opens=made, key=f"{name} profile")
        return
    yield Row(
        "profile",
        "what the day ended with, as a profile",
        aside="v saves it",
        kind="text",
        key=f"{PROFILE_OF}{rode.rider} {rode.bike}",
    )


def learnt_words(found: tuple[LearntChange, ...]) -> str:
    """Say what a day's changes did in one line, as the note of a profile: helped, undecided, taken back."""
    kept = [one for one in found if one.kept]
    parts = []
    for verdict in dict.fromkeys(one.entry.verdict for one in kept):
        names = [one.entry.label for one in kept if one.entry.verdict == verdict]
        parts.append(f"{verdict}: {', '.join(names)}")
    back = [one.entry.label for one in found if not one.kept]
    if back:
        parts.append(f"taken back: {', '.join(back)}")
    return "; ".join(parts)


def _packing(desk: LooksAt, loaded: Loaded) -> Iterator[Row]:
    """Ask of each thing on the packing lists how it served on this day, what was noted before beside it."""
    date: dt.date | None = loaded.data.get("date")
    for one in to_pack(desk, date):
        field = field_at("day", (PACKING, one.item, "was"))
        if field is None:
            continue
        row = field_row(loaded, field, Units())
        before = one.served.words() if one.served is not None else ""
        aside = " · ".join(filter(None, (before, "" if one.listed else "on no packing list")))
        row = row if row.known else attrs.evolve(row, value="-", known=bool(before))
        yield attrs.evolve(row, label=printable(one.text), aside=aside)
    listed = {one.item for one in to_pack(desk, date)}
    own = loaded.data.get(PACKING)
    for item in sorted(own) if isinstance(own, dict) else ():
        field = field_at("day", (PACKING, item, "was"))
        if item not in listed and field is not None:
            yield attrs.evolve(field_row(loaded, field, Units()), label=item, aside="on no packing list")
    yield Row(
        "add: something that was missing",
        kind="add",
        ref=loaded.ref,
        adds=(PACKING,),
        key="add packing",
    )
