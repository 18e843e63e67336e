"""Which page each room shows. No Textual here: a room is a function of the desk and of what is looked at."""

from collections.abc import Callable

import attrs

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.beside_setup import beside_session, beside_setup
from paddock_tui.advice.ledger import LedgerFilter
from paddock_tui.advice.next_change import next_change
from paddock_tui.desk import Desk
from paddock_tui.desk.day.countdown import clock_of
from paddock_tui.desk.debrief.lap_timing import WHY, forbidden
from paddock_tui.desk.debrief.rows import open_groups
from paddock_tui.desk.edits.remedies import mending
from paddock_tui.desk.edits.values import bike_of, field_of
from paddock_tui.desk.lookup import glance
from paddock_tui.desk.sessions.last_time import last_time
from paddock_tui.desk.sessions.next_change import next_of, ridden_one
from paddock_tui.desk.situations import Assembled
from paddock_tui.limits import Limits
from paddock_tui.pages.actions import ActionContext, actions_page, help_page
from paddock_tui.pages.advised import advised, working_section
from paddock_tui.pages.bench import TypedInputs, bench_page
from paddock_tui.pages.checklist import checklist_page
from paddock_tui.pages.countdown import clock_section, clock_words
from paddock_tui.pages.dash import dash_page
from paddock_tui.pages.day import day_page, group_today
from paddock_tui.pages.debrief import return_page
from paddock_tui.pages.explanation import explained
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.going_out import judged_going_out, out_page
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.last_time import last_time_page
from paddock_tui.pages.limits import limits_page
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.next_change import Coming, next_change_page
from paddock_tui.pages.paper_slip import slip_page
from paddock_tui.pages.record import record_page, title_of
from paddock_tui.pages.review import CAUTION_WORDS, finding_key, finding_rows, review_page, verdict_line
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.session import session_page, set_up_page, without_laps
from paddock_tui.pages.today import today_page
from paddock_tui.pages.why import why_page
from paddock_tui.records.common import Units
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import GARAGE, Path, Ref
from paddock_tui.rules import Finding, Review, review
from paddock_tui.screens import comparing, ledger
from paddock_tui.screens.beside import beside_record

SUBJECT_ROOMS = ("setup", "session", "dash", "return", "next", "last", "slip", "checklist", "out", "review")
"""Rooms about the session or the profile that is looked at."""

_NAMES_SUBJECT = (*SUBJECT_ROOMS, "bench", "compare")
"""Rooms whose heading names what is looked at: elsewhere the verdict is of the session in hand."""


STAYS_OFF = "no riding today: the head"
"""What stands in place of the clock after a head was hit."""


@attrs.frozen
class Place:
    """What is on the screen: the room, the session or profile looked at, another record, a row explained.

    `other` is what the session or profile is compared with, `wanted` what the ledger shows,
    `seen` the rows of dash cards that were found as planned.
    """

    room: str = "garage"
    subject: Ref | None = None
    record: Ref | None = None
    row: Row | None = None
    retired: bool = False
    other: str = ""
    wanted: LedgerFilter | None = None
    seen: frozenset[Path] = frozenset()


@attrs.frozen
class Look:
    """A page with what was judged for it."""

    page: Page
    review: Review
    place: Place


def look(desk: Desk, place: Place, context: ActionContext, tried: TypedInputs | None = None) -> Look:
    """Make the page of a place, its verdict and findings with it; `tried` is what was typed on the bench."""
    subject = place.subject or desk.session_in_hand()
    assembled = desk.assembled(subject) if subject is not None else None
    judged = _judged(place, assembled)
    if place.room == "bench":
        page = _bench(desk, subject, assembled, tried or {})
    else:
        page = _page(desk, place, subject, assembled, judged, context)
    about = place.room in ("setup", "session", "dash", "checklist")
    clock = clock_of(desk.files, desk.session_in_hand(), desk.now())
    return Look(
        attrs.evolve(
            page,
            verdict=_verdict(desk, place.room, subject, judged),
            findings=tuple(finding_rows(judged)) if about else (),
            judged=about,
            clock=STAYS_OFF if _stays_off(judged) else clock_words(clock, desk.now().time()),
            caution=page.caution or (CAUTION_WORDS if about else ""),
        ),
        judged,
        attrs.evolve(place, subject=subject),
    )


def _stays_off(judged: Review) -> bool:
    """Return whether the rider does not ride any more today: nothing counts down to going out then."""
    return any(one.rule == "concussion-suspected" for one in judged.findings)


def _verdict(desk: Desk, room: str, subject: Ref | None, judged: Review) -> str:
    """Write the verdict of the session in hand, where the heading names what is looked at of that.

    What was ridden is said to be: its verdict is no leave to go out again.
    """
    about, hand = subject, desk.session_in_hand()
    if room not in _NAMES_SUBJECT and hand is not None and hand != subject:
        about, judged = hand, review(desk.assembled(hand).situation)
    seen = glance(about, desk.files.data(about)) if about is not None and about.kind == "session" else None
    word, dot, counts = verdict_line(judged).partition(" · ")
    ridden = " · ridden" if seen is not None and seen.ridden else ""
    return f"{word}{ridden}{dot}{counts}"


def _judged(place: Place, assembled: Assembled | None) -> Review:
    """Judge what is looked at; for whoever goes out what is not done yet counts too."""
    if assembled is None:
        return Review(about_a_session=False)
    return judged_going_out(assembled.situation) if place.room == "out" else review(assembled.situation)


def _page(
    desk: Desk,
    place: Place,
    subject: Ref | None,
    assembled: Assembled | None,
    judged: Review,
    context: ActionContext,
) -> Page:
    if place.room == "help":
        return help_page()
    if place.room == "actions":
        return actions_page(context)
    if place.room in _OF_GARAGE:
        return _OF_GARAGE[place.room](desk)
    if place.room == "why" and place.row is not None:
        return _why(desk, place.row, place.row.ref)
    if place.room in ledger.ROOMS:
        return ledger.page(desk, subject, place.wanted, place.row if place.room == ledger.CHANGE else None)
    if place.room == "compare" and subject is not None:
        return comparing.page(desk, subject, place.other) or _gone(subject)
    if place.room == "record" and place.record is not None:
        beside = beside_record(desk, place.record, subject, assembled)
        return advised(_record(desk, place.record, subject), place.record, beside)
    if place.room in _OF_SUBJECT and subject is not None and assembled is not None:
        return _OF_SUBJECT[place.room](desk, place, subject, assembled, judged)
    if place.room in SUBJECT_ROOMS and subject is not None and assembled is not None:
        return _about(desk, place.room, subject, assembled, judged)
    return garage_page(desk, retired=place.retired)


def _out(desk: Desk, _: Place, subject: Ref, assembled: Assembled, judged: Review) -> Page:
    return out_page(assembled.situation, judged, heading_of(desk, subject))


def _dash(desk: Desk, place: Place, subject: Ref, assembled: Assembled, _: Review) -> Page:
    loaded = desk.files.read(subject)
    if loaded is None:
        return _gone(subject)
    here = (str(subject),)
    mine = frozenset(path[1:] for path in place.seen if path[:1] == here)
    return dash_page(
        loaded, bike_of(desk.files, subject), heading_of(desk, subject), assembled.situation.day, mine
    )


_OF_SUBJECT: dict[str, Callable[[Desk, Place, Ref, Assembled, Review], Page]] = {"out": _out, "dash": _dash}
"""Pages about a session before it goes out."""


def _limits(desk: Desk) -> Page:
    return limits_page(Limits(desk.files.garage().limits), desk.files.read(GARAGE))


_OF_GARAGE: dict[str, Callable[[Desk], Page]] = {"today": today_page, "limits": _limits}
"""Pages about the whole garage."""


def _about(desk: Desk, room: str, subject: Ref, assembled: Assembled, judged: Review) -> Page:
    loaded = desk.files.read(subject)
    heading = heading_of(desk, subject)
    if loaded is None:
        return _gone(subject)
    if loaded.record is None:
        return record_page(loaded)
    if room == "review":
        problems = (*assembled.problems, *assembled.notes)
        return review_page(judged, heading, problems, _previews(desk, subject, assembled, judged))
    if room == "checklist" and subject.kind == "session":
        kept = (
            desk.files.read(ref) for ref in (subject, assembled.situation.refs.get("day")) if ref is not None
        )
        return checklist_page(assembled.situation, heading, (one for one in kept if one is not None))
    units = _units(desk, loaded.record)
    no_laps = WHY if forbidden(desk.files, loaded.data) else ""
    if room == "return" and subject.kind == "session":
        groups = open_groups(desk.files, subject)
        return return_page(desk.files, loaded, groups, heading, units, desk.now(), no_laps)
    if room == "next" and subject.kind == "session":
        return _next(desk, subject, units)
    if room == "slip" and subject.kind == "session":
        return slip_page(heading, units)
    if room == "last" and subject.kind == "session":
        found = last_time(assembled.situation)
        return last_time_page(loaded, found, bike_of(desk.files, subject), heading, units)
    known = desk.about(subject, assembled)
    if room == "session" and subject.kind == "session":
        page = without_laps(session_page(loaded, heading, units), no_laps)
        return advised(page, subject, beside_session(known))
    where = f" · {loaded.name}" if subject.kind == "profile" else ""
    page = set_up_page(loaded, bike_of(desk.files, subject), f"{heading}{where}", units)
    return advised(page, subject, beside_setup(known))


def _next(desk: Desk, subject: Ref, units: Units) -> Page:
    ridden = ridden_one(desk.files, subject)
    loaded = desk.files.read(ridden) if ridden is not None else None
    if ridden is None or loaded is None or loaded.record is None:
        return _gone(ridden or subject)
    advised_ = next_change(desk.about(ridden))
    return next_change_page(advised_, loaded, _coming(desk, ridden), heading_of(desk, ridden), units)


def _coming(desk: Desk, ridden: Ref) -> Coming | None:
    """Return the session made from a ridden one, with what its review says of several changes at once."""
    ref = next_of(desk.files, ridden)
    loaded = desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        return None
    method = [message_line(one) for one in desk.review(ref).findings if one.about == "method"]
    return Coming(loaded, method[0] if method else "")


def _previews(desk: Desk, subject: Ref, assembled: Assembled, judged: Review) -> dict[str, str]:
    """Say for each finding that values can mend what its remedy would do."""
    said: dict[str, str] = {}
    for finding in judged.findings:
        step = mending(desk.files, finding, subject, assembled.situation.refs)
        if step is not None:
            said[finding_key(finding)] = desk.previewed(step, subject, judged).words()
    return said


def _record(desk: Desk, ref: Ref, subject: Ref | None) -> Page:
    loaded = desk.files.read(ref)
    if loaded is None:
        return _gone(ref)
    if ref.kind == "day" and isinstance(loaded.record, RidingDay):
        data = desk.files.data(subject) if subject is not None else {}
        rider, bike = (word if isinstance(word := data.get(key), str) else None for key in ("rider", "bike"))
        group = group_today(loaded.record, rider, bike)
        page = day_page(loaded, _units(desk, loaded.record), group)
        today = clock_of(desk.files, desk.session_in_hand(), desk.now()) if _is_today(desk, ref) else None
        due = clock_section(today, desk.now().time())
        # Today what is due comes first: the timetable above it fills a screen, with what is past on top.
        return page if due is None else attrs.evolve(page, sections=(due, *page.sections))
    return record_page(loaded, bike_of(desk.files, ref), _units(desk, loaded.record))


def _is_today(desk: Desk, day: Ref) -> bool:
    return desk.files.data(day).get("date") == desk.now().date()


def _bench(desk: Desk, subject: Ref | None, assembled: Assembled | None, tried: TypedInputs) -> Page:
    about = desk.about(subject, assembled)
    heading = heading_of(desk, subject) if subject is not None else ""
    return bench_page(calculators(about), tried, heading, about.units)


def _why(desk: Desk, row: Row, ref: Ref | None) -> Page:
    if ref is None:
        return Page(f"why · {row.label.removeprefix('= ')}", (working_section(row.working),), judged=False)
    loaded = desk.files.read(ref)
    field = field_of(desk.files, ref, row.path)
    if loaded is None or field is None:
        lines = tuple(Row("", text, kind="text", key=text) for text in (row.value, row.aside) if text)
        return Page(f"why · {row.label}", (Section(title_of(loaded) if loaded else str(ref), lines),))
    holds_set_up = ref.kind in ("session", "profile")
    what = explained(field.path, desk.assembled(ref).situation, row.offer) if holds_set_up else ()
    return why_page(loaded, field, row.working, what)


def _gone(ref: Ref) -> Page:
    said = f"{ref} is not in the garage any more; what is shown elsewhere goes on"
    return Page(str(ref), (Section("gone", (Row("", said, kind="text", key="gone"),)),))


def _units(desk: Desk, record: object) -> Units:
    rider = getattr(record, "rider", None)
    return desk.units(rider if isinstance(rider, str) else None)


def finding_at(judged: Review, row: Row | None) -> Finding | None:
    """Return the finding under the cursor, else the first shown."""
    if row is not None and row.kind == "finding":
        for finding in judged.findings:
            if finding_key(finding) == row.key:
                return finding
    return judged.findings[0] if judged.findings else None
