"""What a page about a session answers, and when: against going out, or of what was ridden."""

from paddock_tui.desk import Desk
from paddock_tui.desk.lookup import glance
from paddock_tui.pages.answers import profile_answer, ridden_answer, ridden_in_few
from paddock_tui.pages.review import answer_in_few, answer_words, says_first
from paddock_tui.pages.when import (
    NOTHING_MORE,
    NOTHING_PLANNED,
    WhenWords,
    clock_forms,
    planned_forms,
    ridden_forms,
)
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from paddock_tui.screens.room import Room

STAYS_IN = "HOLD: stay in"
"""What stands in place of the clock while a hold stands."""

AnswerForms = tuple[str, str, str]
"""An answer whole, in fewer words, and in few for a narrow screen."""

_NONE: AnswerForms = ("", "", "")


def answers_of(
    desk: Desk, room: Room, subject: Ref | None, judged: Review, hand: Ref | None, in_hand: Review | None
) -> AnswerForms:
    """Answer what stands against going out, on pages about the session looked at and in the garage."""
    if room.stands_alone or room.read_by_others or not (room.answers_in_hand or room.needs_subject):
        return _NONE
    if room.answers_in_hand and hand is not None and in_hand is not None:
        subject, judged = hand, in_hand
    if subject is None:
        return ("No session is planned: nothing is judged.", "", "") if room.answers_in_hand else _NONE
    if subject.kind != "session":
        whole, short = profile_answer(judged)
        return whole, "", short
    seen = glance(subject, desk.files.data(subject))
    if seen is not None and seen.ridden:
        whole, short = ridden_answer(judged)
        return whole, ridden_in_few(judged), short
    if room.finding_answers and judged.findings and says_first(judged):
        return _NONE
    return answer_words(judged), answer_in_few(judged), answer_words(judged, short=True)


def when_of(
    desk: Desk, room: Room, about: Ref | None, hand: Ref | None, clock: str, answer: str
) -> WhenWords:
    """Say when what the verdict is about goes out, or came in; nothing while a hold stands.

    `clock` is the clock of the session in hand, which the `answer` may be already.
    """
    if room.read_by_others or clock == STAYS_IN or (clock and answer == clock):
        return ()
    if about is None:
        return NOTHING_PLANNED if not room.answers_in_hand else ()
    data, today = desk.files.data(about), desk.now().date()
    seen = glance(about, data) if about.kind == "session" else None
    if seen is None:
        return ()
    if seen.ridden:
        looked_at = room.names_subject or about != hand
        return ridden_forms(seen, data, today) if looked_at else clock_forms(clock) if clock else NOTHING_MORE
    return clock_forms(clock) if clock and about == hand else planned_forms(seen, data, today)
