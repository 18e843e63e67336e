"""The themes: the terminal's own colours, black on white for the sun, and a dim one for the night.

A theme names few colours, each for what form has said already. `paddock_tui/widgets/look.py` says which
style takes which; a test computes the contrast of every pair at 24 bits, 256 and 16 colours.
"""

from collections.abc import Mapping

import attrs
from textual.theme import BUILTIN_THEMES, Theme

from paddock_tui.store.settings import THEMES_BEFORE

DEFAULT = "terminal"


@attrs.frozen
class Colours:
    """The colours of one theme: ground and text, what is quiet, and the four that repeat what form says."""

    ground: str
    text: str
    quiet: str
    accent: str
    hold: str
    serious: str
    caution: str
    good: str


COLOURS: Mapping[str, Colours] = {
    "terminal": Colours(
        "ansi_default",
        "ansi_default",
        "ansi_default 50%",
        "ansi_green",
        "ansi_red",
        "ansi_red",
        "ansi_yellow",
        "ansi_green",
    ),
    "day": Colours("#ffffff", "#000000", "#262626", "#00005f", "#870000", "#870000", "#303000", "#003000"),
    "night": Colours("#000000", "#b2b2b2", "#8a8a8a", "#afaf87", "#ff5f5f", "#afaf5f", "#afaf5f", "#87af87"),
}
"""The colours by theme; at night red is left to holds."""

VARIABLES: Mapping[str, str] = {
    "text-muted": "quiet",
    "text-accent": "accent",
    "text-error": "hold",
    "text-primary": "serious",
    "text-warning": "caution",
    "text-success": "good",
}
"""Which colour each variable of the framework holds that a style names."""


def theme_named(wanted: str, kept: str = "") -> str:
    """Return the theme that is meant: what was asked for, else what was kept, else the terminal's colours."""
    return next(
        (one for word in (wanted, kept) if (one := THEMES_BEFORE.get(word, word)) in COLOURS), DEFAULT
    )


def themes() -> list[Theme]:
    """Make each theme for the framework."""
    return [_theme(name, colours) for name, colours in COLOURS.items()]


def _theme(name: str, colours: Colours) -> Theme:
    return Theme(
        name=f"paddock-{name}",
        primary=colours.text,
        warning=colours.caution,
        error=colours.hold,
        success=colours.good,
        accent=colours.accent,
        foreground=colours.text,
        background=colours.ground,
        surface=colours.ground,
        panel=colours.ground,
        dark=name != "day",
        ansi=name == DEFAULT,
        variables=(dict(BUILTIN_THEMES["ansi-dark"].variables) if name == DEFAULT else {})
        | {variable: getattr(colours, name) for variable, name in VARIABLES.items()},
    )
