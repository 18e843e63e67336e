"""The review: verdict, findings, what is not judged and what is to do."""

import attrs

from paddock_tui.facts.essentials import MissingEssential
from paddock_tui.on_demand import Later, load_later
from paddock_tui.pages.review import finding_key, from_before, missing_at, review_page
from paddock_tui.pages.rows import MISSING, Page, Row
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.rules import Review
from paddock_tui.screens.action import Action, needs_subject
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject
from paddock_tui.widgets import messages

answering = Later("paddock_tui.desk.day.checklist")("answering")
load_later("paddock_tui.desk.edits.remedies")


def _page(about: SubjectContext) -> Page:
    problems = (*about.assembled.problems, *about.assembled.notes)
    session = about.loaded.record
    ridden = isinstance(session, Session) and is_ridden(session)
    out = session.out if isinstance(session, Session) and ridden else None
    before = from_before(about.desk.facts_of(about.assembled.situation))
    return review_page(
        about.asked.review, about.heading, problems, _previews(about), went_out=out, before=before
    )


@attrs.define
class ShownFindings:
    """The findings that this run has shown on a review, by what they are about."""

    keys: dict[Ref, set[str]] = attrs.field(factory=dict)


def _go(host: Host) -> None:
    """Go to the review, on the worst finding that was not there when it was last looked at."""
    subject = host.place.subject
    host.go(attrs.evolve(host.place, room=ROOM.id))
    if subject is None:
        return
    shown = host.state.of(ShownFindings).keys.setdefault(subject, set())
    rows = [row for row in host.board.page.rows() if row.kind == "finding"]
    new = [row for row in rows if row.key not in shown]
    if new:
        host.board.go(new[0].identity)
    shown |= {row.key for row in rows}


def answers_missing(host: Host, message: messages.RowMessage, judged: Review) -> bool:
    """Answer the essential of a row with 1, go to its value with enter; whether the message was for one."""
    one, subject = missing_at(judged, message.row), host.place.subject
    if one is None or subject is None:
        return False
    if isinstance(message, messages.Digit) and message.text == "1" and (one.tick or one.says):
        _answer(host, one, subject)
    elif isinstance(message, messages.Chosen) and one.ref is not None and one.path and not one.tick:
        host.jump(one.ref, one.path)
    elif isinstance(message, messages.Chosen | messages.Digit):
        host.board.say(f"1: {one.says or 'inspected, ok'}" if one.tick or one.says else "enter goes there")
    else:
        return False
    return True


def _answer(host: Host, one: MissingEssential, subject: Ref) -> None:
    if one.tick:
        step = answering(
            host.desk.files, subject, one.tick, "ok", host.desk.now(), in_day=one.in_day, text=one.label
        )
        host.attempt(step)
    elif one.ref is not None:
        wrong = host.set_text(one.ref, one.path, one.says)
        if wrong:
            host.board.say(wrong)


def _hears(host: Host, message: messages.RowMessage) -> bool:
    subject = host.place.subject
    return subject is not None and answers_missing(host, message, host.desk.review(subject))


def hint(row: Row) -> str:
    """Say which keys the row of an essential hears."""
    return "1 ok, enter goes there" if row.key.startswith(MISSING) else ""


def _previews(about: SubjectContext) -> dict[str, str]:
    """Say for each finding that values can mend what its remedy would do."""
    from paddock_tui.desk.edits.remedies import mending

    said: dict[str, str] = {}
    judged = about.asked.review
    for finding in judged.findings:
        step = mending(about.desk.files, finding, about.ref, about.assembled.situation.refs)
        if step is not None:
            said[finding_key(finding)] = about.desk.previewed(step, about.ref, judged).words()
    return said


_AT_ONCE = 14
"""Lines of rows on the first screen, of 19 at 80x24: five more open under the cursor, why and what to do."""


ROOM = Room(
    id="review",
    page=of_subject(_page),
    about="subject",
    action=Action(
        "review",
        "r",
        "review",
        "verdict, findings, not assessed, to do",
        needs_subject,
        hint=11,
        do=_go,
    ),
    hears=_hears,
    hint=hint,
    at_once=_AT_ONCE,
    finding_answers=True,
)
