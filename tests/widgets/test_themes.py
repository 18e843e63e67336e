"""Contrast of every pair of colours in use, at 24 bits, 256 and 16 colours; what is kept and asked for."""

import re
from pathlib import Path
from typing import ClassVar

import pytest
from rich.color import Color, ColorSystem
from rich.color_triplet import ColorTriplet
from rich.terminal_theme import DEFAULT_TERMINAL_THEME

from paddock_tui.store.settings import keep_theme, load_settings
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.encoding import ascii_only
from paddock_tui.widgets.look import STYLES
from paddock_tui.widgets.themes import COLOURS, VARIABLES, Colours, theme_named, themes
from tests.every import every
from tests.screens.typing import until_idle
from tests.widgets.board_app import BoardApp

AA = 4.5
"""WCAG 2.2, success criterion 1.4.3: contrast of text of any size, at least."""

FIXED = sorted(set(COLOURS) - {"terminal"})
SYSTEMS = (ColorSystem.TRUECOLOR, ColorSystem.EIGHT_BIT, ColorSystem.STANDARD)


def luminance(colour: ColorTriplet) -> float:
    """Return relative luminance as WCAG 2.2 defines it for sRGB."""
    parts = [one / 255 for one in colour]
    red, green, blue = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: ColorTriplet, other: ColorTriplet) -> float:
    """Return the contrast ratio of WCAG 2.2: (L1 + 0.05) / (L2 + 0.05)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def shown(colour: str, system: ColorSystem) -> ColorTriplet:
    """Return what a terminal of so many colours shows, as the framework chooses it."""
    return Color.parse(colour).downgrade(system).get_truecolor(DEFAULT_TERMINAL_THEME)


def pairs(colours: Colours) -> dict[str, tuple[str, str]]:
    """Return the two colours of every style; reversed ones are the same two."""
    found = {}
    for name, rules in STYLES.items():
        variable = re.search(r"\$([a-z-]+)", rules)
        colour = getattr(colours, VARIABLES[variable[1]]) if variable else colours.text
        found[name] = (colour, colours.ground)
    return found


@every("system", SYSTEMS, ids=lambda one: one.name)
@every("name", FIXED)
def test_every_pair_of_colours_in_use_is_told_apart(name: str, system: ColorSystem) -> None:
    low = {
        style: round(found, 2)
        for style, (colour, ground) in pairs(COLOURS[name]).items()
        if (found := contrast(shown(colour, system), shown(ground, system))) < AA
    }

    assert low == {}


def test_the_ratio_is_that_of_the_standards_own_examples() -> None:
    """Black on white is 21:1 and grey #767676 on white just passes (WCAG 2.2, understanding 1.4.3)."""
    white = ColorTriplet(255, 255, 255)

    assert contrast(ColorTriplet(0, 0, 0), white) == pytest.approx(21.0)
    assert contrast(ColorTriplet(0x76, 0x76, 0x76), white) == pytest.approx(4.54, abs=0.005)
    assert contrast(ColorTriplet(0x77, 0x77, 0x77), white) < AA


def test_at_night_red_is_left_to_holds() -> None:
    night = COLOURS["night"]

    assert "ff5f5f" in night.hold
    assert night.hold not in (night.serious, night.caution, night.good, night.accent, night.text)


def test_by_default_all_colours_are_the_terminals_own() -> None:
    assert all(re.fullmatch(r"ansi_[a-z_]+( 50%)?", one) for one in vars_of(COLOURS["terminal"]))
    assert theme_named("") == "terminal"


def vars_of(colours: Colours) -> list[str]:
    return [getattr(colours, name) for name in ("ground", "text", *VARIABLES.values())]


@every(
    ("wanted", "kept", "named"),
    [
        ("day", "night", "day"),
        ("", "night", "night"),
        ("light", "", "day"),
        ("dark", "", "night"),
        ("plain", "", "terminal"),
        ("mauve", "day", "day"),
    ],
)
def test_what_is_asked_for_comes_before_what_was_kept(wanted: str, kept: str, named: str) -> None:
    assert theme_named(wanted, kept) == named


def test_a_theme_is_kept_among_the_users_own_settings(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    file = tmp_path / "own" / "settings.toml"
    monkeypatch.setattr("paddock_tui.store.settings.settings_file", lambda: file)

    assert keep_theme("day") == ""
    assert load_settings()[0].theme == "day"
    file.write_text('# mine\ngarage = "g"\ntheme = "plain"  # old\n\n[keys]\nundo = "z"\n', encoding="utf-8")
    assert load_settings()[0].theme == "terminal"
    assert keep_theme("night") == ""
    assert file.read_text(encoding="utf-8") == '# mine\ngarage = "g"\ntheme = "night"\n\n[keys]\nundo = "z"\n'


def test_settings_that_cannot_be_read_or_written_are_said_and_harm_nothing(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    file = tmp_path / "settings.toml"
    monkeypatch.setattr("paddock_tui.store.settings.settings_file", lambda: file)
    file.write_text("[keys\n", encoding="utf-8")
    assert keep_theme("day").startswith("not saved: fix the settings first")
    assert file.read_text(encoding="utf-8") == "[keys\n"

    monkeypatch.setattr("paddock_tui.store.settings.settings_file", lambda: file / "below")
    assert keep_theme("day").startswith("not saved: ")


@every(
    ("variables", "plain"),
    [
        ({"PADDOCK_PLAIN": "1"}, True),
        ({"PADDOCK_PLAIN": "0"}, False),
        ({"TERM": "dumb"}, True),
        ({"TERM": "linux"}, True),
        ({"LC_ALL": "C"}, True),
        ({"LC_ALL": "", "LANG": "POSIX"}, True),
        ({"LC_ALL": "", "LANG": "C", "LC_CTYPE": "C.UTF-8"}, False),
        ({"LC_ALL": "C.UTF-8", "LANG": "C"}, False),
        ({"LC_ALL": "", "LANG": ""}, False),
    ],
)
def test_ascii_is_asked_for_or_all_that_a_terminal_has(
    monkeypatch: pytest.MonkeyPatch, variables: dict[str, str], plain: bool
) -> None:
    for name, value in variables.items():
        monkeypatch.setenv(name, value)

    assert ascii_only() is plain


async def test_a_named_style_is_what_the_framework_makes_of_its_rules() -> None:
    """Made when first painted it is what a component class gives, in each theme and after a change."""

    class Stock(Board):
        COMPONENT_CLASSES: ClassVar[set[str]] = {f"board--{name}" for name in STYLES}

    app, stock = BoardApp(), Stock()
    async with app.run_test() as pilot:
        for theme in themes():
            app.register_theme(theme)
        await app.bench.mount(stock)
        seen = {}
        for worn in COLOURS:
            app.bench.wear(worn)
            await until_idle(app, pilot)
            assert app.bench.board._style("") == stock.rich_style
            for name in STYLES:
                seen[worn, name] = app.bench.board._style(name)
                assert seen[worn, name] == stock.get_component_rich_style(f"board--{name}"), (worn, name)

    assert len({seen[worn, "hold"] for worn in COLOURS}) == len(COLOURS)
