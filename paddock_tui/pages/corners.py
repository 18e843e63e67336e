"""The venue's corners on one page: how each is ridden, and what was said of it the last time."""

from collections.abc import Iterator

import attrs

from paddock_tui.facts.incidents import with_corner
from paddock_tui.facts.past import PastSession
from paddock_tui.facts.situation import Situation
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.going_out import aim_row
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import field_row
from paddock_tui.records.common import Units
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.people import Corner
from paddock_tui.records.session import Session
from paddock_tui.records.shown_words import shown
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable


def corners_page(loaded: Loaded, situation: Situation, heading: str, units: Units) -> Page:
    """Make the page of a session: a row for each corner, on which words about it are typed."""
    session, venue = situation.session, situation.venue
    sections = []
    if session is not None and session.aim is not None:
        sections.append(Section("ride for", (aim_row(session),)))
    if session is None or venue is None:
        said = Row("", "Of this session no venue is known: choose its day.", kind="text", key="none")
        return Page(f"corners · {heading}", (Section("corners", (said,)),), judged=False)
    rows = []
    named = {key: venue.corners.get(key, Corner()) for key in (*venue.corners, *session.corner_words)}
    for number in sorted(named, key=int):
        row = _row(loaded, number, named[number], units)
        beside = "; ".join(_beside(situation, session, number, named[number]))
        rows.append(attrs.evolve(row, aside=beside, known=row.known or bool(beside)))
    note = "type what to do there next time" if rows else "none in the venue's record: enter them there"
    sections.append(Section(printable(venue.name or "corners"), tuple(rows), note))
    return Page(f"corners · {heading}", tuple(sections), judged=False)


def _row(loaded: Loaded, number: str, corner: Corner, units: Units) -> Row:
    field = field_at("session", ("corner_words", number))
    if field is None:
        raise LookupError(number)
    row = field_row(loaded, field, units)
    label = printable(" ".join(filter(None, (number, corner.name))))
    return attrs.evolve(row, label=label, value=row.value if row.known else "-")


def _beside(situation: Situation, session: Session, number: str, corner: Corner) -> Iterator[str]:
    """Say what was said of a corner the last time, what the bike did there, and how it is ridden."""
    last = _last(situation, session, number, corner)
    if last is not None:
        when = short_date(last.session.date) if last.session.date is not None else last.id
        said = last.session.corner_words.get(number)
        yield printable(f"{when}: {said}" if said else f"{when}: {', '.join(_felt(last, number, corner))}")
    ridden = (corner.side, f"gear {corner.gear}" if corner.gear is not None else None, corner.marker)
    if any(ridden):
        yield printable(", ".join(one for one in ridden if one))


def _last(situation: Situation, session: Session, number: str, corner: Corner) -> PastSession | None:
    """Return the last session of this rider here in which something was said or felt in a corner."""
    here = situation.refs["venue"].id if "venue" in situation.refs else None
    before = with_corner(situation.history, here, session.rider, number)
    those = (one for one in before if number in one.session.corner_words or any(_felt(one, number, corner)))
    return next(those, None)


def _felt(one: PastSession, number: str, corner: Corner) -> Iterator[str]:
    names = {number, (corner.name or number).casefold()}
    for symptom in one.session.symptoms.values():
        if symptom.what is not None and (symptom.corner or "").casefold() in names:
            said = shown(symptom.what)
            yield said if not symptom.end or symptom.end in said else f"{symptom.end} {said}"
