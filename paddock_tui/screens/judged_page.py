"""The page of a place: a room's rows, with verdict, findings, clock and caution around them."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.answers import MANY_UNREAD, Reading
from paddock_tui.desk.day.countdown import by_pace, clock_of
from paddock_tui.desk.day.what_now import NextThing, next_thing
from paddock_tui.desk.lookup import glance
from paddock_tui.desk.set_clock import set_date
from paddock_tui.desk.situations import Assembled
from paddock_tui.desk.usual_lap import usual_lap_s
from paddock_tui.desk.venue_clock import venue_zone
from paddock_tui.facts.outing import COLUMN
from paddock_tui.pages.actions import ActionContext, ActionRow, said_next
from paddock_tui.pages.countdown import clock_words
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.garage import LOOKING, garage_heading
from paddock_tui.pages.garage_list import whose
from paddock_tui.pages.opening_page import ANSWER
from paddock_tui.pages.own_keys import like_keys, own_keys, page_with
from paddock_tui.pages.review import (
    CAUTION_WORDS,
    SHORT_CAUTION,
    finding_key,
    finding_rows,
    verdict_line,
)
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.paths import Ref
from paddock_tui.records.verdict_words import NONE_SAVED, RIDDEN_TAIL
from paddock_tui.rules import HOLD, Finding, Review
from paddock_tui.screens.folds import Folds, fold, ordered
from paddock_tui.screens.page_answers import STAYS_IN, answers_of, when_of
from paddock_tui.screens.place import Place, PlaceKey
from paddock_tui.screens.record_answers import record_answers
from paddock_tui.screens.registry import ACTIONS, room_of
from paddock_tui.screens.room import PageContext, Room
from paddock_tui.screens.run_state import RunState
from paddock_tui.store.data import leaves, lookup
from paddock_tui.text import printable

STAYS_OFF = "no riding today: the head"
"""What stands in place of the clock after a head was hit."""


@attrs.frozen
class JudgedPage:
    """A page with what was judged for it, the records that it shows, and their texts that look like keys.

    `is_reading`: earlier sessions are still read, so that nothing was judged.
    """

    page: Page
    review: Review
    place: Place
    shows: tuple[Ref, ...] = ()
    quoted: tuple[str, ...] = ()
    is_reading: bool = False


def context_of(desk: Desk, place: Place, row: Row | None, judged: Review | None) -> ActionContext:
    """Return what actions look at to tell whether they can act, on a row of a page that was judged."""
    room, subject = room_of(place.room), place.subject
    return ActionContext(
        room=place.room,
        session=subject is not None and subject.kind == "session",
        profile=subject is not None and subject.kind == "profile",
        row=row,
        finding=finding_at(judged, row) if judged is not None and room.needs_subject else None,
        undo=desk.can_undo(),
        undo_of_others=desk.has_history_of_others(),
        redo=desk.can_redo(),
        unkept=bool(desk.unkept()),
        own=frozenset(room.own),
        hint=room.hint(row) if row is not None else "",
        wet=room.needs_subject and subject is not None and _is_wet(desk, subject),
    )


def _is_wet(desk: Desk, subject: Ref) -> bool:
    """Return whether the surface of what is looked at asks for the wet package: damp, drying or wet."""
    return COLUMN.get(str(desk.files.data(subject).get("surface")), "dry") != "dry"


def judged_page(
    desk: Desk,
    place: Place,
    context: ActionContext,
    state: RunState | None = None,
    actions: Sequence[ActionRow] = ACTIONS,
    shown: Page | None = None,
) -> JudgedPage:
    """Make the page of a place, its verdict and findings with it; `state` is what the run remembers.

    `shown` is a page whose rows stand for those of the room: they stay as they are.
    """
    room = room_of(place.room)
    subject = place.subject or desk.session_in_hand()
    remembered = state or RunState()
    reading = past_awaited(desk, place) if room.unjudged else None
    if reading is not None and subject is not None:
        return _unjudged_page(PageReading(desk, place, subject, context, actions, remembered, reading))
    assembled = desk.assembled(subject) if subject is not None else None
    judged, as_everywhere = _judged(desk, room, assembled)
    hand = desk.session_in_hand()
    in_hand = _of_hand(desk, room, subject, as_everywhere, hand)
    stays_off = _stays_off(judged)
    following = None if stays_off or in_hand is None else _next(desk, room, hand, in_hand)
    now = said_next(following, actions)
    asked = PageContext(desk, place, subject, assembled, judged, context, actions, remembered, now)
    page = shown or _page(room, asked)
    if room.for_anybody:
        return JudgedPage(page, judged, attrs.evolve(place, subject=subject), ())
    answers = answers_of(desk, room, subject, as_everywhere, hand, in_hand)
    if room.id == "record":
        about = subject if in_hand is None or hand is None else hand
        clock = _clock(desk, hand, in_hand)
        whole, short = record_answers(desk, page, place.record, about, in_hand or as_everywhere, clock)
        answers = whole, "", short
    if shown is None:
        page = _arranged(page, room, place, (judged, in_hand or as_everywhere), remembered.of(Folds))
    clock = _off_words(room) if stays_off else _clock(desk, hand, in_hand)
    verdict_of = _about(room, subject, hand, in_hand)
    made = attrs.evolve(
        page,
        place=room.id,
        heading=_with_clock(desk, page.heading),
        whose=whose(desk.files, verdict_of),
        verdict=_verdict(desk, room, subject, as_everywhere, hand, in_hand),
        findings=tuple(finding_rows(judged)) if room.findings else (),
        judged=room.findings,
        clock=clock,
        now=now,
        leads=_leads(following),
        answer=page.answer or answers[0],
        answer_mid="" if page.answer else answers[1],
        answer_short=page.answer_short or answers[2],
        when=() if stays_off else when_of(desk, room, verdict_of, hand, clock, answers[0]),
        caution=page.caution or _caution(room, place, remembered),
        caution_short=page.caution_short or (SHORT_CAUTION if not room.findings else ""),
    )
    at, shows = attrs.evolve(place, subject=subject), _shown(place, subject, assembled)
    return _with_own_keys(desk, JudgedPage(made, judged, at, shows), actions)


def before_lists(
    desk: Desk, place: Place, context: ActionContext, first: Page, actions: Sequence[ActionRow]
) -> Page | None:
    """Return the first page with the verdict on it, where the rows of a place take a while; None elsewhere.

    What problems there are is not known by then.
    """
    if not room_of(place.room).lists_many(desk):
        return None
    page = attrs.evolve(first, heading=f"{garage_heading(desk)}{LOOKING}", verdict="", answer="")
    return judged_page(desk, place, context, actions=actions, shown=page).page


def _judged(desk: Desk, room: Room, assembled: Assembled | None) -> tuple[Review, Review]:
    """Judge what is looked at for a room, and as it counts on every page.

    Going out judges what is not done yet as well; the verdict is the same everywhere.
    """
    if assembled is None:
        return (Review(about_a_session=False),) * 2
    everywhere = desk.judged(assembled.situation)
    if not room.going_out:
        return everywhere, everywhere
    return desk.judged(attrs.evolve(assembled.situation, going_out=True)), everywhere


def _arranged(page: Page, room: Room, place: Place, judged: tuple[Review, Review], folds: Folds) -> Page:
    """Put first what waits, and fold what no finding is about: by the review of what the page is about.

    The second review is of the session in hand: it tells what waits on the page of a record.
    """
    page = attrs.evolve(page, judged=room.findings)
    if room.waiting_first(place):
        page = ordered(page, judged[0 if room.needs_subject else 1], place.key, folds)
    return fold(page, judged[0], place.key, folds, room.at_once) if room.folds else page


def _judged_for(desk: Desk, place: Place) -> tuple[Ref, ...]:
    """List what is judged for the page of a place."""
    hand = desk.session_in_hand()
    subject = place.subject or hand
    named = (subject,) if room_of(place.room).names_subject else (subject, hand)
    return tuple(dict.fromkeys(ref for ref in named if ref is not None))


def _unread(desk: Desk, about: Sequence[Ref]) -> int:
    return sum(desk.histories.unread(desk.files, ref) for ref in about)


def has_many_unread(desk: Desk, place: Place) -> bool:
    """Return whether the page of a place is shown before what it is judged by is read."""
    return room_of(place.room).unjudged and _unread(desk, _judged_for(desk, place)) > MANY_UNREAD


def past_awaited(desk: Desk, place: Place) -> Reading | None:
    """Return how far the sessions are read that the verdicts of a place rest on; None once they are."""
    about = _judged_for(desk, place)
    unread = _unread(desk, about)
    if unread <= MANY_UNREAD:
        return None
    found = desk.answers.of(("past", about), unread, lambda looks: tuple(map(looks.review, about)))
    return found if isinstance(found, Reading) else None


class PageReading(NamedTuple):
    """What a page is made from while earlier sessions are still read."""

    desk: Desk
    place: Place
    subject: Ref
    context: ActionContext
    actions: Sequence[ActionRow]
    state: RunState
    reading: Reading


def _unjudged_page(asked: PageReading) -> JudgedPage:
    """Make the page of a place without what rests on earlier sessions."""
    desk, place, subject = asked.desk, asked.place, asked.subject
    room = room_of(place.room)
    assembled, none = desk.assembled_without_past(subject), Review(about_a_session=False)
    about = PageContext(
        desk, place, subject, assembled, none, asked.context, asked.actions, asked.state, is_reading=True
    )
    page = _page(room, about)
    at = attrs.evolve(place, subject=subject)
    # Nothing folds as long as one stays: what is typed into a row would lose it once the verdict is there.
    asked.state.of(Folds).of(place.key, dict)
    if room.for_anybody:
        return JudgedPage(page, none, at, (), is_reading=True)
    hand = desk.session_in_hand()
    whose_verdict = subject if room.names_subject or hand is None else hand
    made = attrs.evolve(
        page,
        place=room.id,
        heading=_with_clock(desk, page.heading),
        whose=whose(desk.files, whose_verdict),
        verdict=asked.reading.words(),
        judged=False,
        answer=page.answer or ANSWER,
        caution=page.caution or _caution(room, place, asked.state),
        caution_short=page.caution_short or SHORT_CAUTION,
    )
    shows = _shown(place, subject, assembled)
    return _with_own_keys(desk, JudgedPage(made, none, at, shows, is_reading=True), asked.actions)


@attrs.define
class FirstPage:
    """Where a run begins: the cautions stand there whole until one goes on."""

    key: PlaceKey | None = None
    left: bool = False

    def is_at(self, key: PlaceKey) -> bool:
        """Return whether nothing but the first place was shown yet, and this is it."""
        self.key = self.key or key
        self.left = self.left or key != self.key
        return not self.left


def _with_clock(desk: Desk, heading: str) -> str:
    """Say before a heading which clock is meant, where that is not the laptop's."""
    set_to, zone = set_date(desk.now), venue_zone(desk.now)
    said = f"clock {short_date(set_to)} · " if set_to is not None else f"{zone} time · " if zone else ""
    return f"{said}{heading}"


def _caution(room: Room, place: Place, remembered: RunState) -> str:
    if remembered.of(FirstPage).is_at(place.key) and room.answers_in_hand:
        return CAUTION_WORDS
    return SHORT_CAUTION if room.findings else ""


def _with_own_keys(desk: Desk, made: JudgedPage, actions: Sequence[ActionRow]) -> JudgedPage:
    """Write a page with the keys of one's own, and note which of its texts only look like keys."""
    own = own_keys(actions)
    quoted = like_keys(_texts(desk, made.shows), own) if own else ()
    return attrs.evolve(made, page=page_with(made.page, own, quoted), quoted=quoted)


def _texts(desk: Desk, refs: Sequence[Ref]) -> Iterator[str]:
    """List the texts in records as they are shown."""
    for ref in dict.fromkeys(refs):
        yield from (printable(text) for _, text in leaves(desk.files.data(ref)) if isinstance(text, str))


def _shown(place: Place, subject: Ref | None, assembled: Assembled | None) -> tuple[Ref, ...]:
    """List the records whose values stand on a page: what is looked at, and what that is about."""
    about = assembled.situation.refs.values() if assembled is not None else ()
    return tuple(ref for ref in (subject, place.record, *about) if ref is not None)


def _of_hand(desk: Desk, room: Room, subject: Ref | None, judged: Review, hand: Ref | None) -> Review | None:
    """Return the review of the session in hand where it is at hand or has to be said; None elsewhere."""
    if hand is None or hand == subject:
        return judged
    return None if room.names_subject else desk.review(hand)


def _next(desk: Desk, room: Room, hand: Ref | None, judged: Review) -> NextThing | None:
    """Return the next thing to do; nothing where one does it already."""
    found = next_thing(desk.files.data(hand) if hand is not None else None, judged)
    begins = found is not None and found.action == room.id == "guide"
    return None if begins else found


def _leads(found: NextThing | None) -> tuple[str, tuple[str, ...]] | None:
    """Return the action that leads to the next thing, and the row where it is entered."""
    if found is None or found.where is None:
        return None
    return found.action, (str(found.where.ref), *found.where.path, "")


def _page(room: Room, asked: PageContext) -> Page:
    """Make a room's page; of a profile its set-up stands for what only a session has."""
    garage = room_of("garage")
    if room.needs_subject and asked.subject is None:
        room = garage
    elif room.about == "session" and asked.subject is not None and asked.subject.kind != "session":
        room = room_of("setup")
    page = room.page(asked) or garage.page(asked)
    assert page is not None
    return page


def _clock(desk: Desk, hand: Ref | None, in_hand: Review | None) -> str:
    """Return the clock; while a hold stands nobody shall be hurried out."""
    seen = glance(hand, desk.files.data(hand)) if hand is not None and hand.kind == "session" else None
    if seen is not None and not seen.ridden and in_hand is not None and in_hand.count(HOLD):
        return STAYS_IN
    clock = clock_of(desk.files, hand, desk.now())
    if clock is not None and clock.laps is not None and hand is not None:
        clock = by_pace(clock, usual_lap_s(desk, hand))
    return clock_words(clock, desk.now())


def _stays_off(judged: Review) -> bool:
    """Return whether the rider does not ride any more today: nothing counts down to going out then."""
    return any(one.rule == "concussion-suspected" for one in judged.findings)


def _off_words(room: Room) -> str:
    """Say that the rider stays off; why, only where the rider reads alone."""
    return STAYS_IN if room.read_by_others else STAYS_OFF


def _about(room: Room, subject: Ref | None, hand: Ref | None, in_hand: Review | None) -> Ref | None:
    """Return what the verdict is about: the session in hand, unless the heading names another."""
    return subject if room.names_subject or hand is None or in_hand is None else hand


def _verdict(
    desk: Desk, room: Room, subject: Ref | None, judged: Review, hand: Ref | None, in_hand: Review | None
) -> str:
    """Write the verdict of the session in hand, where the heading names what is looked at of that.

    What was ridden is said to be: its verdict is no leave to go out again.
    """
    about = _about(room, subject, hand, in_hand)
    if about != subject and in_hand is not None:
        judged = in_hand
    seen = glance(about, desk.files.data(about)) if about is not None and about.kind == "session" else None
    word, dot, counts = verdict_line(judged).partition(" · ")
    ridden = f"{RIDDEN_TAIL}{_went_out(desk, about)}" if seen is not None and seen.ridden else ""
    return f"{word}{ridden}{dot}{counts}"


def _went_out(desk: Desk, session: Ref | None) -> str:
    """Say the verdict that a ridden session went out with: what is found now is none of it."""
    then = lookup(desk.files.data(session), ("out", "verdict")) if session is not None else None
    return f", went out {printable(then)}" if isinstance(then, str) and then else f", {NONE_SAVED}"


def finding_at(judged: Review, row: Row | None) -> Finding | None:
    """Return the finding under the cursor, else the first shown."""
    if row is not None and row.kind == "finding":
        for finding in judged.findings:
            if finding_key(finding) == row.key:
                return finding
    return judged.findings[0] if judged.findings else None
