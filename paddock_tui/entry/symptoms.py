"""Symptoms picked by a few letters, or by a digit from a short numbered list."""

from paddock_tui.records.session_parts import SYMPTOMS
from paddock_tui.records.shown_words import shown

SHORT = (
    "dives",
    "chatters",
    "tucks",
    "will not turn",
    "runs wide off the brake",
    "runs wide on power",
    "skips on the brakes",
    "slides on drive",
    "wallows",
)
"""The nine that a digit picks where nothing is typed yet, from the brakes to the exit."""

LETTERS = 2
"""So many letters at least pick a symptom; one alone would take a word that is only begun."""


def candidates(text: str) -> tuple[str, ...]:
    """List the symptoms that a text may mean: those it begins, else those with a word that it begins.

    Without a text these are the nine of the short list.
    """
    typed = " ".join(text.casefold().split())
    if not typed:
        return SHORT
    begins = tuple(one for one in SYMPTOMS if begun(one, typed))
    return begins or tuple(
        one
        for one in SYMPTOMS
        if any(word.startswith(typed) for word in f"{shown(one)} {one}".casefold().split())
    )


def begun(word: str, typed: str) -> str:
    """Return the form of a symptom, shown or stored, that letters begin; empty where they begin neither."""
    return next((form for form in (shown(word), word) if form.casefold().startswith(typed)), "")


def picked(text: str) -> str | None:
    """Return the symptom that a text picks: by letters that fit one alone, or by a digit behind them."""
    letters, digit = text.strip(), ""
    if letters[-1:].isascii() and letters[-1:].isdigit():
        letters, digit = letters[:-1], letters[-1]
    found = candidates(letters)
    if digit:
        place = int(digit) - 1
        return found[place] if 0 <= place < len(found) else None
    return found[0] if len(found) == 1 and len(letters) >= LETTERS else None


def numbered(found: tuple[str, ...]) -> str:
    """Write candidates with the digits that pick them."""
    return "  ".join(f"{number} {shown(one)}" for number, one in enumerate(found[:9], 1))
