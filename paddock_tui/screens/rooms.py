"""Which page each room shows. No Textual here: a room is a function of the desk and of what is looked at."""

import attrs

from paddock_tui.advice.bench import calculators
from paddock_tui.advice.rows import beside_session, beside_setup
from paddock_tui.desk import Desk
from paddock_tui.desk.assembling import Assembled
from paddock_tui.desk.mending import mending
from paddock_tui.desk.typing import bike_of, field_of
from paddock_tui.pages.actions import Context, actions_page, help_page
from paddock_tui.pages.advised import advised, working_section
from paddock_tui.pages.bench import Typed, bench_page
from paddock_tui.pages.checklist import checklist_page
from paddock_tui.pages.day import day_page, group_today
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.record import record_page, title_of
from paddock_tui.pages.review import CAUTION_WORDS, finding_key, finding_rows, review_page, verdict_line
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.session import session_page, set_up_page
from paddock_tui.pages.why import why_page
from paddock_tui.records.common import Units
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Finding, Review, review

SUBJECT_ROOMS = ("setup", "session", "checklist", "review")
"""Rooms about the session or the profile that is looked at."""


@attrs.frozen
class Place:
    """What is on the screen: the room, the session or profile looked at, another record, a row explained."""

    room: str = "garage"
    subject: Ref | None = None
    record: Ref | None = None
    row: Row | None = None
    retired: bool = False


@attrs.frozen
class Look:
    """A page with what was judged for it."""

    page: Page
    review: Review
    place: Place


def look(desk: Desk, place: Place, context: Context, tried: Typed | None = None) -> Look:
    """Make the page of a place, its verdict and findings with it; `tried` is what was typed on the bench."""
    subject = place.subject or desk.session_in_hand()
    assembled = desk.assembled(subject) if subject is not None else None
    judged = review(assembled.situation) if assembled is not None else Review(about_a_session=False)
    if place.room == "bench":
        page = _bench(desk, subject, assembled, tried or {})
    else:
        page = _page(desk, place, subject, assembled, judged, context)
    about = place.room in ("setup", "session", "checklist")
    return Look(
        attrs.evolve(
            page,
            verdict=verdict_line(judged),
            findings=tuple(finding_rows(judged)) if about else (),
            judged=about,
            caution=page.caution or (CAUTION_WORDS if about else ""),
        ),
        judged,
        attrs.evolve(place, subject=subject),
    )


def _page(
    desk: Desk,
    place: Place,
    subject: Ref | None,
    assembled: Assembled | None,
    judged: Review,
    context: Context,
) -> Page:
    if place.room == "help":
        return help_page()
    if place.room == "actions":
        return actions_page(context)
    if place.room == "why" and place.row is not None:
        return _why(desk, place.row, place.row.ref)
    if place.room == "record" and place.record is not None:
        return _record(desk, place.record, subject)
    if place.room in SUBJECT_ROOMS and subject is not None and assembled is not None:
        return _about(desk, place.room, subject, assembled, judged)
    return garage_page(desk, retired=place.retired)


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
    known = desk.about(subject, assembled)
    if room == "session" and subject.kind == "session":
        return advised(session_page(loaded, heading, units), subject, beside_session(known))
    where = f" · {loaded.name}" if subject.kind == "profile" else ""
    page = set_up_page(loaded, bike_of(desk.files, subject), f"{heading}{where}", units)
    return advised(page, subject, beside_setup(known))


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
        return day_page(loaded, _units(desk, loaded.record), group)
    return record_page(loaded, bike_of(desk.files, ref), _units(desk, loaded.record))


def _bench(desk: Desk, subject: Ref | None, assembled: Assembled | None, tried: Typed) -> Page:
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
    return why_page(loaded, field, row.working)


def _gone(ref: Ref) -> Page:
    said = f"{ref} is not in the garage any more; what is shown elsewhere goes on"
    return Page(str(ref), (Section("gone", (Row("", said, kind="text", key="gone"),)),))


def _units(desk: Desk, record: object) -> Units:
    rider = getattr(record, "rider", None)
    return desk.units(rider if isinstance(rider, str) else None)


def finding_at(judged: Review, row: Row | None) -> Finding | None:
    """Give the finding under the cursor, else the first shown."""
    if row is not None and row.kind == "finding":
        for finding in judged.findings:
            if finding_key(finding) == row.key:
                return finding
    return judged.findings[0] if judged.findings else None
