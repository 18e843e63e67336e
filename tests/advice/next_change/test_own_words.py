"""What a rider writes freely: the fixed phrases that the whole of it comes near are asked, none is taken."""

from paddock_tui.advice.next_change.own_words import MOST_SHOWN, NEAREST, nearest
from paddock_tui.records.session_parts import SYMPTOMS
from tests.advice.next_change.cases import advised
from tests.every import every
from tests.rules.situations import put, without


@every(
    ("text", "phrases"),
    [
        ("bad headshake out of 4", ("bars wobble", "weaves")),
        # Two words that point to one phrase bring it before what each of them names first.
        ("the back end steps, spins up, bike pumps", ("slides on drive", "wallows")),
        ("nose goes down, soft", ("dives", "wallows")),
        ("feels heavy and wide, understeers", ("runs wide on power", "will not turn")),
        ("Loose  on\nentry, then wide", ("loose on entry", "runs wide on power")),
        ("no chatter, but vague and a bit greasy", ("vague", "tyre goes off")),
        ("not wide, never a wobble", ()),
        ("lovely morning", ()),
        ("good grip, good brakes, waved from the pump house", ()),
        ("no grip at all, rear smears", ("tyre goes off", "slides on drive")),
        # A word counts where it begins, and not within another.
        ("executed the plan, reached the tyre's best", ()),
    ],
)
def test_the_nearest_of_the_whole_phrase_come_first(text: str, phrases: tuple[str, ...]) -> None:
    found = nearest(text)
    assert found[: len(phrases)] == phrases
    assert bool(found) is bool(phrases)
    assert len(found) <= MOST_SHOWN


def test_each_word_leads_to_fixed_phrases_and_each_phrase_to_itself() -> None:
    assert {one for phrases in NEAREST.values() for one in phrases} <= set(SYMPTOMS)
    assert [one for one in SYMPTOMS if nearest(f"it {one} there")[0] != one] == []


def test_a_note_is_asked_about_where_nothing_was_said() -> None:
    found = advised(
        without("session", "did"),
        put("session", "said", "warm and dry"),
        put("session", "notes.1", {"text": "front washes, back end spins"}),
    ).proposal
    assert found.question is not None
    assert found.text == 'You wrote "front washes, back end spins". Which is nearest?'
    assert [one for one, _ in found.question.answers][:2] == ["slides on drive", "tucks"]
    assert found.move is None
