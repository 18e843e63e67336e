"""A rider's own words beside the fixed ones: the nearest are shown and asked, never guessed."""

import collections
import re
from typing import Final

from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import CauseQuestion, Kind, Passed, Proposal, Spoken
from paddock_tui.records.session_parts import SYMPTOMS
from paddock_tui.records.shown_words import shown

NEAREST: Final[dict[str, tuple[str, ...]]] = {
    "headshake": ("bars wobble", "weaves"),
    "tank slap": ("bars wobble",),
    "wobble": ("bars wobble", "weaves"),
    "shak": ("bars wobble", "chatters"),
    "wash": ("tucks", "runs wide off the brake"),
    "lost the front": ("tucks", "front locks"),
    "push": ("runs wide on power", "runs wide off the brake"),
    "wide": ("runs wide on power", "runs wide off the brake"),
    "understeer": ("runs wide on power", "will not turn"),
    "pumps": ("wallows", "kicks", "arms sore"),
    "pumping": ("wallows", "kicks", "arms sore"),
    "pumped": ("arms sore", "wallows", "kicks"),
    "bounc": ("wallows", "vague"),
    "patter": ("chatters", "hops"),
    "chatter": ("chatters", "hops"),
    "bottom": ("dives", "harsh on single bumps"),
    "dive": ("dives",),
    "lock": ("front locks", "rear locks"),
    "scrap": ("parts ground",),
    "ground": ("parts ground",),
    "no grip": ("tyre goes off", "tucks", "slides on drive"),
    "less grip": ("tyre goes off", "tucks", "slides on drive"),
    "lost grip": ("tucks", "slides on drive", "tyre goes off"),
    "smear": ("slides on drive", "tyre goes off"),
    "lazy": ("will not turn",),
    "traction": ("traction cuts without slip", "traction lamp with slip"),
    "greasy": ("tyre goes off",),
    "nose": ("dives",),
    "spin": ("slides on drive", "traction lamp with slip"),
    "step out": ("slides on drive", "loose on entry"),
    "stepped out": ("slides on drive", "loose on entry"),
    "slid": ("slides on drive", "loose on entry"),
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
"""How words that riders use begin, each with the phrases that come nearest, the nearest first. Common
practice, no source."""

_WHOLE, _A_WORD = 1000, 10
"""How many points a phrase gets that stands there whole, and that is the nearest to one word."""

MOST_SHOWN: Final = 5
"""So many phrases are shown: more is a list to search, and no question."""

NONE_OF_THESE: Final = (("did",), "noted")
"""It stays in the rider's words: something was noted, and is no symptom that is known here."""

_DENIED = re.compile(r"\b(?:no|not|never|without)(?: an?| any| the| more)*$")


def nearest(text: str) -> tuple[str, ...]:
    """Return the phrases that the whole of a text comes nearest to, the nearest first; none where none is.

    A phrase that stands in it whole is nearest, then the one that most of its words point to, then the one
    that is nearest to one of them; what stands behind a no or a not is left out.
    """
    folded = " ".join(text.casefold().split())
    points: collections.Counter[str] = collections.Counter()
    for phrase in SYMPTOMS:
        if _says(phrase, folded) or _says(shown(phrase).casefold(), folded):
            points[phrase] += _WHOLE
    for word, phrases in NEAREST.items():
        if _says(word, folded):
            for rank, phrase in enumerate(phrases):
                points[phrase] += _A_WORD - rank
    found = sorted(points, key=lambda one: (-points[one], SYMPTOMS.index(one)))
    return tuple(found[:MOST_SHOWN])


def _says(word: str, folded: str) -> bool:
    """Return whether a word begins so somewhere in a text, with no denial before it."""
    begins = re.finditer(rf"\b{re.escape(word)}", folded)
    return any(_DENIED.search(folded[: one.start()].rstrip()) is None for one in begins)


def own_words(given: Given) -> Spoken:
    """Ask which of the fixed phrases is meant, where only the rider's own words say what was felt."""
    session = given.session
    if session.symptoms or session.did is not None:
        return Passed("what the bike did is answered")
    texts = (session.said or "", *(note.text or "" for note in session.notes.values()))
    for text in texts:
        phrases = nearest(text)
        if phrases:
            question = CauseQuestion(
                f'You wrote "{_short(text)}". Which is nearest?',
                tuple((phrase, shown(phrase)) for phrase in phrases),
                NONE_OF_THESE,
            )
            return Proposal(
                Kind.ASK,
                "your own words",
                question.text,
                "only what is written in fixed words can be found again",
                question=question,
                answer_at=("symptoms", "1", "what"),
            )
    return Passed("nothing was written in words of your own that a symptom comes near")


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:59]}…"
