"""A rider's own words beside the fixed ones: the nearest are shown and asked, never guessed."""

from typing import Final

from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import CauseQuestion, Kind, Passed, Proposal, Spoken

NEAREST: Final[dict[str, tuple[str, ...]]] = {
    "headshake": ("bars wobble", "weaves"),
    "tank slap": ("bars wobble",),
    "wobble": ("bars wobble", "weaves"),
    "shake": ("bars wobble", "chatters"),
    "wash": ("tucks", "runs wide off the brake"),
    "lost the front": ("tucks", "front locks"),
    "push": ("runs wide on power", "runs wide off the brake"),
    "wide": ("runs wide on power", "runs wide off the brake"),
    "understeer": ("runs wide on power", "will not turn"),
    "pump": ("wallows", "kicks", "arms sore"),
    "patter": ("chatters", "hops"),
    "chatter": ("chatters", "hops"),
    "bottom": ("dives", "harsh on single bumps"),
    "nose": ("dives",),
    "spin": ("slides on drive", "traction lamp with slip"),
    "step out": ("slides on drive", "loose on entry"),
    "back end": ("slides on drive", "loose on entry", "wallows"),
    "heavy": ("will not turn",),
    "slow to turn": ("will not turn",),
    "nervous": ("twitchy",),
    "cut": ("traction cuts without slip", "wheelie cut kills drive", "engine cuts out"),
    "fork": ("dives", "harsh on single bumps", "vague"),
    "rough": ("harsh on single bumps", "harsh on a series"),
    "stiff": ("harsh on single bumps", "harsh on a series"),
    "soft": ("dives", "wallows"),
}
"""Words that riders use, each with the phrases that come nearest. Common practice, no source."""

NONE_OF_THESE: Final = (("did",), "noted")
"""It stays in the rider's words: something was noted, and is no symptom that is known here."""


def own_words(given: Given) -> Spoken:
    """Ask which of the fixed phrases is meant, where only the rider's own words say what was felt."""
    session = given.session
    if session.symptoms or session.did is not None:
        return Passed("what the bike did is answered")
    texts = [session.said or "", *(note.text or "" for note in session.notes.values())]
    for text in texts:
        for word, phrases in NEAREST.items():
            if word in text.casefold():
                answers = tuple((phrase, phrase) for phrase in phrases)
                asked = f'You wrote "{_short(text)}". Which is nearest?'
                question = CauseQuestion(asked, answers, NONE_OF_THESE)
                return Proposal(
                    Kind.ASK,
                    word,
                    question.text,
                    "only what is written in fixed words can be found again",
                    question=question,
                    answer_at=("symptoms", "1", "what"),
                )
    return Passed("nothing was written in words of your own that a symptom comes near")


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:59]}…"
