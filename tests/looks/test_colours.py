"""Every room in every theme: what is drawn is in the list of checked colours, a hold looks like no other."""

import functools

import attrs
from rich.color import ColorSystem

from paddock_tui.desk import Desk
from paddock_tui.pages.layout import Line, View, layout
from paddock_tui.widgets.look import STYLES
from paddock_tui.widgets.themes import COLOURS
from tests.every import every
from tests.examples import one_in
from tests.looks import LARGE, LOOKS, SIZES, laid_out, made_of
from tests.widgets.test_themes import AA, FIXED, SYSTEMS, contrast, pairs, shown

REVERSED = ("hold", "verdict-hold")


def styles_of(lines: tuple[Line, ...]) -> set[str]:
    """List the styles in which something is drawn; the ground has none."""
    return {style for line in lines for text, style in line if text.strip() and style}


@every("name", LOOKS)
def test_every_style_of_a_page_is_among_those_whose_contrast_is_checked(name: str, desk: Desk) -> None:
    sizes = (*SIZES, LARGE)
    # One size of each page, another one of the next: a style hangs on what is said, seldom on the size.
    for size in sizes[list(LOOKS).index(name) % one_in(len(sizes)) :: one_in(len(sizes))]:
        used = styles_of(laid_out(desk, LOOKS[name], size).lines)
        assert used
        assert used <= set(STYLES)
        assert used & too_faint() == set(), size


@functools.cache
def too_faint() -> frozenset[str]:
    """Return the styles that in any theme and system of colours have less contrast than AA asks for."""
    return frozenset(
        style
        for theme in FIXED
        for system in SYSTEMS
        for style, colours in pairs(COLOURS[theme]).items()
        if contrast(*(shown(one, system) for one in colours)) < AA
    )


@every("system", (*SYSTEMS, None), ids=lambda one: one.name if one else "monochrome")
@every("theme", sorted(COLOURS))
def test_a_hold_looks_like_no_other_style(theme: str, system: ColorSystem | None) -> None:
    def looks(style: str) -> tuple[object, ...]:
        weight = STYLES[style].partition("text-style:")[2].partition(";")[0].split()
        colours = pairs(COLOURS[theme])[style]
        # The terminal's own colours are what they are: there and without colours form alone tells.
        told = () if system is None or theme not in FIXED else tuple(shown(one, system) for one in colours)
        return tuple(sorted(set(weight) - {"italic"})), told

    held = {looks(style) for style in REVERSED}
    assert len(held) == 1
    assert not held & {looks(style) for style in STYLES if style not in REVERSED}


@every("name", LOOKS)
def test_a_held_page_draws_its_hold_in_reverse_and_nothing_else(name: str, desk: Desk) -> None:
    made = made_of(desk, LOOKS[name])
    held = attrs.evolve(made.page, verdict="HOLD 1 (1 to answer) · 6 missing")
    for size in SIZES:
        head, *rest = layout(held, View(*size, made.at)).lines
        assert {style for _, style in head} == {"rail-hold", "verdict-hold"}
        assert "verdict-hold" not in styles_of(tuple(rest))
        assert styles_of(tuple(rest)) <= set(STYLES)
