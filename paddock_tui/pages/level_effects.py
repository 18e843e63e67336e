"""What single levels of a control do beside more or less: the wheel they leave, lean, lift, shifts."""

from collections.abc import Iterator

from paddock_tui.explanations import LEVEL_EFFECTS
from paddock_tui.pages.rows import Row, Section
from paddock_tui.records.electronics import Control
from paddock_tui.text import printable

_EXPLAINED = ("lean", "rear_lift")
"""Effects that are a function of their own: what they do is said, and what is lost without."""


def level_section(control: Control) -> Section | None:
    """Make the section of what the bike's file says of single levels; None where it says nothing."""
    rows = tuple(
        Row("", printable(said), kind="text", key=f"levels {key}")
        for key in LEVEL_EFFECTS
        for said in _said(key, control)
    )
    return Section("its levels differ in", rows) if rows else None


def _said(key: str, control: Control) -> Iterator[str]:
    by_word: dict[str, list[str]] = {}
    for level, effect in control.effects.items():
        value = getattr(effect, key)
        if value is not None:
            word = {True: "on", False: "off"}[value] if isinstance(value, bool) else str(value)
            by_word.setdefault(word, []).append(level)
    if not by_word:
        return
    found = LEVEL_EFFECTS[key]
    where = "; ".join(f"{word} at {', '.join(levels)}" for word, levels in by_word.items())
    title = f"{found.title[:1].upper()}{found.title[1:]}"
    yield f"{title}: {where}."
    if key in _EXPLAINED:
        yield f"{' '.join(found.does)} Without it: {found.less.costs.safety}."
