"""Fixed words of files as riders say them: files keep the old word for ever, screens show the other."""

from collections.abc import Iterable, Mapping

from paddock_tui.records.errors import InputError

SHOWN: Mapping[str, str] = {
    "tucks": "front tucks",
    "runs wide off the brake": "runs wide on brake release",
    "kicks": "rear kicked up by one bump",
    "hops": "rear hops over ripples",
    "skips on the brakes": "rear hops on the brakes",
    "loose on entry": "rear steps out on entry",
    "slides on drive": "rear steps out on exit",
    "traction cuts without slip": "TC cuts in without a slide",
    "traction lamp with slip": "TC light comes with a slide",
    "wheelie cut kills drive": "wheelie control takes the drive",
    "bars wobble": "headshake or wobble",
    "loose in the heat": "worse as it warms up",
    "parts ground": "touches down",
    "arms sore": "arm pump",
    "fine balls": "fine rolled edges (normal)",
    "step at the grooves": "stepped at the groove edges",
    "patches at the grooves": "worn patches beside the grooves",
    "new skin": "shiny: not scrubbed in",
    "at the marks": "at the wear indicators",
    "below the marks": "below the wear indicators",
    "half-moons": "half-moon wear",
    "warning lamp": "warning light",
    "mend by": "to fix by",
}
"""Stored words that riders do not say, each with the words of the trade."""


def shown(word: str) -> str:
    """Return a fixed word of a file as it is shown."""
    return SHOWN.get(word, word)


def is_named(word: str, text: str) -> bool:
    """Return whether a text names a fixed word, as files keep it or as it is shown."""
    folded = text.casefold()
    return word.casefold() in folded or shown(word).casefold() in folded


def meant(text: str, choices: Iterable[str]) -> str | InputError | None:
    """Return the choice that a typed text means, as stored or as shown, also by a start that fits one alone.

    None where it begins none; an error that names those which it may mean where it begins several.
    """
    typed = text.strip().casefold()
    spelt = {one: (one.casefold(), shown(one).casefold()) for one in choices}
    same = [one for one, forms in spelt.items() if typed in forms]
    if same:
        return same[0]
    starts = [one for one, forms in spelt.items() if any(form.startswith(typed) for form in forms)]
    if not typed or not starts:
        return None
    if len(starts) == 1:
        return starts[0]
    return InputError(f'"{text}"', "one of them alone", f"type more of it: {', '.join(map(shown, starts))}")
