"""Before the day: last time there, what the bike and the papers need, fuel, tyres, and a start to go from.

Of what is open about a person it says whose it is and how severe: the page is printed, and read by helpers.
"""

import datetime as dt
import itertools
from collections.abc import Iterable, Iterator

from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.answered import answered
from paddock_tui.advice.before_day import (
    DayExpected,
    DueBefore,
    PaperBefore,
    ServiceBefore,
    TyreBefore,
    date_code_of,
    day_expected,
    papers_before,
    services_before,
    tyres_before,
)
from paddock_tui.advice.brake_pads import pads_answer
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.ridden_so_far import count_words, so_far
from paddock_tui.advice.tyre_life import tyre_life
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.day.before import GoesThere, day_to_come, last_of_bikes, who_goes, written_down
from paddock_tui.desk.emergency import emergency_standing
from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.sessions.last_time import last_time
from paddock_tui.facts.checklists import NOT_APPLICABLE, TO_FIX, was_answered
from paddock_tui.matters import Matter
from paddock_tui.matters.checks import ITEM_TO_FIX
from paddock_tui.pages.after_counters import chain_row
from paddock_tui.pages.before_last import last_time_rows, not_known, shown, sprockets_of, text_row
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.day_memory import DayMemory
from paddock_tui.pages.packing import packing_rows
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.todos import to_fix_rows, todo_rows
from paddock_tui.records.day import DayEntry, RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.rules.personal import impersonal_matter_words
from paddock_tui.text import printable

BEFORE = "before"
"""What is asked for in place of a record to see what a day needs beforehand."""

STARTS = "start of "
"""Begins the key of a row from which the first session of the day is made."""

_BROUGHT = {"dry": ("dry",), "damp": ("wet", "dry"), "wet": ("wet",)}
"""Which tyres a surface asks for; for any other both are brought."""

_SEVERE: dict[DueBefore, str] = {"over": "serious", "in the day": "caution", "not known": "", "later": ""}


class BeforeMemory(DayMemory):
    """The page of this kind that was made last."""

    def made(self, desk: LooksAt, wanted: Ref | None) -> Page:
        """Make the page."""
        return before_page(desk, wanted)

    def awaited(self, desk: LooksAt, wanted: Ref | None, read: Reading) -> Page:
        """Make the page with what the day's own record says."""
        return before_page(desk, wanted, read)

    def rests_on(self, desk: LooksAt, wanted: Ref | None) -> tuple[Ref, ...]:
        """List the last session of each bike that goes there."""
        ref, day = _day(desk, wanted)
        return last_of_bikes(desk, ref, day) if ref is not None and day is not None else ()


def _day(desk: LooksAt, wanted: Ref | None) -> tuple[Ref | None, RidingDay | None]:
    ref = day_to_come(desk, wanted)
    loaded = desk.files.read(ref) if ref is not None else None
    day = loaded.possible if loaded is not None else None
    return ref, day if isinstance(day, RidingDay) else None


def before_page(desk: LooksAt, wanted: Ref | None = None, read: Reading | None = None) -> Page:
    """Make the page of a day: what it needs before it comes, for each rider and bike that goes there.

    While sessions are still read for it, it says of nobody what is due.
    """
    ref, day = _day(desk, wanted)
    if ref is None or day is None:
        text = text_row("there is no day yet: make one on the garage page", "none")
        return Page("before the day", (Section("no day", (text,)),), judged=False)
    date = day.date or desk.now().date()
    sections = [Section("what is booked", tuple(_booked(day, ref, desk.now().date())), _expected_words(day))]
    sections.append(Section("written down last time", tuple(_to_bring(desk, ref, day, date))))
    sections.append(
        Section("packing", tuple(packing_rows(desk, date)), "t, m, after the day notes what lacked")
    )
    if read is None:
        for made in who_goes(desk, ref, day):
            sections += _of_one(desk, day, date, made)
    else:
        sections.append(Section("who goes there", (text_row("what they need is read", "reading"),)))
    said = read.words() if read is not None else ""
    heading = " · ".join(filter(None, ("before", said, f"{date:%a} {short_date(date)}", day.venue or "")))
    days = (date - desk.now().date()).days
    note = f"in {count_words(days, 'day')}" if days > 0 else "today" if days == 0 else "over"
    held = tuple(one for one in sections if one.rows)
    answers = (_first(held), _first(held, short=True)) if read is None else (NOT_READ, NOT_READ)
    due = f"{date:%a} {short_date(date)}"
    return Page(
        printable(f"{heading} · {note}"),
        held,
        judged=False,
        answer=answers[0],
        answer_short=answers[1],
        caution=f"What says no date of its own is due before {due}.",
        caution_short=f"without a date: due before {due}",
    )


NOT_READ = "What is due is not known yet."
"""Said in place of an answer while sessions are read."""

_WORST = ("hold", "serious", "caution")


def _first(sections: Iterable[Section], short: bool = False) -> str:
    """Say what is to be seen to before the day, the worst first; nothing where nothing is known to be."""
    rows = [row for section in sections for row in section.rows if row.severity in _WORST]
    if not rows:
        return "Nothing is known to be due" + ("." if short else "; what is not known stands below.")
    worst = min(rows, key=lambda row: _WORST.index(row.severity))
    said = ": ".join(filter(None, (worst.label, worst.value)))
    return (
        f"{len(rows)} to see to: {worst.label or said}" if short else f"First, {len(rows)} to see to: {said}"
    )


def _of_one(desk: LooksAt, day: RidingDay, date: dt.date, made: GoesThere) -> Iterator[Section]:
    name = printable(" on ".join(filter(None, (made.rider, made.bike))) or "rider and bike not known")
    about = made.about
    entered = "" if made.entered else "not entered on the day: whoever rode it last"
    if about is None:
        text = text_row("never ridden as far as the garage knows: nothing to go by", f"{name} never")
        yield Section(name, (text,), entered)
        return
    expected = day_expected(about, day)
    yield Section(f"{name} · last time here", tuple(last_time_rows(about, name)), entered)
    yield Section(f"{name} · before it goes", tuple(_needs(desk, about, date, expected, name)))
    yield Section(f"{name} · papers", tuple(_papers(desk, papers_before(about, date), date)))
    rider = made.rider
    if rider:
        said = emergency_standing(desk.root, rider, desk.now().date())
        row = Row("emergency page", printable(said), aside="z shows it", kind="text", key=f"{name} emergency")
        yield Section(f"{name} · if the rider is down", (row,))
    yield Section(f"{name} · to bring", tuple(_fuel_tyres_gearing(desk, about, made, day, name)))
    yield Section(f"{name} · a start", tuple(_start(made, name)))


def _expected_words(day: RidingDay) -> str:
    said = (day.forecast, shown(day.air, "air"), printable(day.weather or ""))
    known = ", ".join(filter(None, said))
    return f"forecast: {known}" if known else "forecast not known"


def _booked(day: RidingDay, ref: Ref, today: dt.date) -> Iterator[Row]:
    for name, held in day.bookings.items():
        late = not held.done and held.by is not None and held.by <= today
        value = (
            "done" if held.done else f"due by {held.by}" if held.by is not None else "not known whether done"
        )
        yield Row(
            label_of(name),
            value,
            aside=printable(" · ".join(filter(None, ("overdue" if late else "", held.note or "")))),
            kind="link",
            opens=ref,
            severity="caution" if late else "",
            key=f"booked {name}",
        )
    if not day.bookings:
        yield not_known("bookings", "enter them on the day", "bookings")


def _to_bring(desk: LooksAt, ref: Ref, day: RidingDay, date: dt.date) -> Iterator[Row]:
    other, lines = written_down(desk, ref, day, date)
    for number, line in enumerate(lines):
        label = other.id if other is not None else ""
        yield Row(label, printable(line), kind="link", opens=other, key=f"bring {number}")


def _needs(desk: LooksAt, about: About, date: dt.date, expected: DayExpected, name: str) -> Iterator[Row]:
    yield text_row(_day_words(expected), f"{name} expected", "the day takes")
    bike = about.situation.refs.get("bike")
    yield from todo_rows(desk, bike, date) if bike is not None else ()
    for number, one in enumerate(_open_matters(about)):
        yield Row(
            "still open",
            impersonal_matter_words(one) or printable(one.message),
            aside=printable(f"since {short_date(one.since)}" if one.since is not None else ""),
            kind="link" if one.ref is not None else "text",
            severity=str(one.severity),
            opens=one.ref,
            key=f"{name} matter {number}",
        )
    told = {one.subject for one in _open_matters(about) if one.kind == ITEM_TO_FIX}
    yield from to_fix_rows(about.situation, f"{name} ", told)
    services = services_before(about, date, expected)
    for item in services:
        yield _service(item, name)
    if not services:
        yield not_known("service", "no item of service stands in the bike's file", f"{name} service")
    named = {item.item.name for item in services}
    yield chain_row(so_far(about), name)
    if "battery" not in named | told:
        yield _battery(about, name)
    for end in ENDS:
        answer = pads_answer(about, end)
        yield _or_unknown(answer.known, f"{end} pads", answer.text, f"{name} {end} pads")
    for tyre in tyres_before(about, expected):
        yield _tyre(about, tyre, name)
    if about.situation.tyres is None:
        yield not_known("tyres on it", "no tyre set is named", f"{name} tyres on it")


def _battery(about: About, name: str) -> Row:
    """Say when the battery was looked at last: an item of the morning's list, or of the bike's service."""
    key = f"{name} battery"
    entry = about.situation.facts().get("entry")
    of_day = entry.checks if isinstance(entry, DayEntry) else {}
    own = (about.session.date, (of_day, about.session.checks))
    before = reversed(about.history.past) if was_answered(about.history, "battery") else ()
    past = ((one.date, (one.entry.checks, one.session.checks)) for one in before)
    for date, lists in itertools.chain((own,), past):
        check = next(filter(None, (held.get("battery") for held in lists)), None)
        if check is not None and check.status not in (None, NOT_APPLICABLE):
            on = short_date(date) if date is not None else "on no date"
            return text_row(
                f"{check.status} {on}", key, "battery", "caution" if check.status == TO_FIX else ""
            )
    return not_known("battery", "never looked at as far as the garage knows", key)


def _day_words(expected: DayExpected) -> str:
    if expected.sessions is None:
        return f"not known: {expected.where}"
    said = [count_words(expected.sessions)]
    said += [f"{expected.hours:.1f} h"] if expected.hours is not None else []
    said += [f"about {expected.km:.0f} km"] if expected.km is not None else ["distance not known"]
    return f"{', '.join(said)}, by the {expected.where}"


def _open_matters(about: About) -> Iterable[Matter]:
    found = about.situation.facts().get("open_matters")
    return found if isinstance(found, tuple) else ()


def _or_unknown(known: bool, label: str, text: str, key: str) -> Row:
    return (
        text_row(text, key, label)
        if known
        else Row(label, "not known", printable(text), kind="text", key=key)
    )


def _service(one: ServiceBefore, name: str) -> Row:
    item = one.item
    parts = []
    if item.hours is not None:
        side = "to go" if item.hours > 0 else "over"
        parts.append(f"{abs(item.hours):.1f} h {side}")
    if item.km is not None:
        most = "at most " if item.km_lost and item.km > 0 else ""
        parts.append(f"{most}{abs(item.km):.0f} km {'to go' if item.km > 0 else 'over'}")
    if item.date is not None:
        parts.append(f"due {item.date}")
    label, key = item.label, f"{name} service {item.name}"
    if not parts:
        return not_known(label, "when it was done last, or how often, is not entered", key)
    words = {"over": "overdue", "in the day": "falls due in the day", "not known": "the rest is not known"}
    return text_row(", ".join(parts), key, label, _SEVERE[one.due], words.get(one.due, ""))


def _tyre(about: About, one: TyreBefore, name: str) -> Row:
    set_name = about.id_of("tyres") or ""
    tyres = about.situation.tyres
    assert tyres is not None
    life = {answer.key: answer for answer in tyre_life(about, set_name, tyres, one.end).answers(about.units)}
    said = [life["cycles"].short or life["cycles"].text]
    if one.left is not None:
        said.append(f"{max(one.left, 0)} left of your own most")
    code = date_code_of(about, one.end)
    said.append(f"week and year {code}" if code is not None else "date code not known")
    aside = {"over": "finished", "in the day": "fewer than the day has sessions"}.get(one.due, "")
    return text_row(", ".join(said), f"{name} {one.end} tyre", f"{one.end} tyre", _SEVERE[one.due], aside)


def _papers(desk: LooksAt, papers: Iterable[PaperBefore], date: dt.date) -> Iterator[Row]:
    for one in papers:
        kind = "rider" if desk.files.path_of(Ref("rider", one.whose)) is not None else "bike"
        yield _paper(one, date, Ref(kind, one.whose))


def _paper(one: PaperBefore, date: dt.date, opens: Ref) -> Row:
    label = f"{label_of(one.name)}, bike" if opens.kind == "bike" else label_of(one.name)
    key = f"{one.whose} {one.name}"
    until = one.paper.until
    value = f"good until {until}" if until is not None else "not known"
    aside = "not good on the day" if one.due == "over" else ""
    if until is not None and until >= date:
        days = (until - date).days
        aside = f"{count_words(days, 'day')} beyond the day"
    aside = " · ".join(filter(None, (aside, one.paper.note or "")))
    return Row(
        label,
        value,
        aside=printable(aside),
        kind="link",
        opens=opens,
        severity="serious" if one.due == "over" else "",
        key=key,
        known=until is not None,
    )


def _fuel_tyres_gearing(
    desk: LooksAt, about: About, made: GoesThere, day: RidingDay, name: str
) -> Iterator[Row]:
    answers = answered(about, fuel)
    cans = answers["cans"]
    yield _or_unknown(cans.known, "fuel", cans.text, f"{name} fuel")
    yield text_row(_tyre_words(desk, made, day), f"{name} bring tyres", "tyres")
    found = last_time(about.situation)
    then = sprockets_of(found.past.session.setup) if found is not None else ""
    now = sprockets_of(about.setup)
    if then and now:
        same = f"{now} is on, as last time here" if then == now else f"{now} is on; last time here {then}"
        yield text_row(same, f"{name} sprockets", "sprockets", "" if then == now else "caution")
    else:
        yield not_known("sprockets", f"on now: {now or 'not known'}", f"{name} sprockets")


def _tyre_words(desk: LooksAt, made: GoesThere, day: RidingDay) -> str:
    """Say which sets there are for the surface expected; both kinds where nobody knows it."""
    kinds: dict[str, list[str]] = {"wet": [], "dry": []}
    for ref in made.sets:
        front = desk.files.data(ref).get("front")
        kind = front.get("kind") if isinstance(front, dict) else None
        kinds["wet" if kind == "wet" else "dry"].append(ref.id)
    wanted = _BROUGHT.get(day.forecast or "", ("dry", "wet"))
    said = [f"{what}: {', '.join(kinds[what]) or 'none is in the garage'}" for what in wanted]
    lead = "" if day.forecast in ("dry", "damp", "wet") else "for both surfaces, "
    return lead + "; ".join(said)


def _start(made: GoesThere, name: str) -> Iterator[Row]:
    if made.session is not None:
        text = f"made already: {made.session.id}"
        yield Row("first session", printable(text), kind="link", opens=made.session, key=f"{name} made")
        return
    if made.source is None:
        return
    copy = f"as {made.source.id}"
    text = f"set-up of profile {made.profile.id}, {copy} in the rest" if made.profile is not None else copy
    yield Row(
        "first session",
        printable(text),
        aside="v makes it",
        kind="text",
        key=f"{STARTS}{made.rider} {made.bike}",
    )
