"""Riding modes at a glance: what the page says is fixed is what is in force, at any width."""

from typing import Any

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.riding_modes import with_mode
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.layout.table import moved
from paddock_tui.pages.modes import NOW, mode_at, modes_page, moves
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.bike import Bike
from paddock_tui.records.electronics import Control, Mode
from paddock_tui.records.in_force import allows, in_force_value
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.text import width
from tests.every import every
from tests.examples import examples
from tests.sample import bike, read

WORDS = ("crisp", "even", "gentle")


@st.composite
def controls(draw: st.DrawFn) -> Control:
    outside = draw(st.sampled_from([None, None, True]))
    if draw(st.booleans()):
        low, high = draw(st.tuples(st.integers(0, 3), st.integers(4, 10)))
        ends = draw(st.sampled_from([low, high, None]))
        off = draw(st.sampled_from([True, False, None]))
        return Control(kind="level", levels=(low, high), most_help=ends, off=off, outside_modes=outside)
    return Control(kind="choice", choices=WORDS, most_help="gentle", outside_modes=outside)


@st.composite
def bikes(draw: st.DrawFn) -> tuple[Bike, SetUp]:
    """Make a bike with controls and riding modes, and a set-up of it."""
    found = draw(
        st.dictionaries(st.sampled_from(["traction", "power", "slide", "abs"]), controls(), min_size=1)
    )

    def value(name: str) -> Any:
        levels = found[name].levels
        if levels is None:
            return draw(st.sampled_from(WORDS))
        return draw(st.one_of(st.integers(int(levels[0]), int(levels[1])), st.just("off")))

    def mode() -> Mode:
        fixes = {name: value(name) for name in found if draw(st.integers(0, 3)) == 0}
        limits: dict[str, tuple[Any, ...]] = {
            name: (2, 6) if found[name].levels else draw(st.sampled_from([WORDS[1:], (WORDS[0], WORDS[2])]))
            for name in found
            if name not in fixes and draw(st.integers(0, 2)) == 0
        }
        return Mode(
            fixes=fixes, limits=limits, off_allowed=tuple(name for name in found if draw(st.booleans()))
        )

    modes = {name: mode() for name in draw(st.sampled_from([("road",), ("road", "wet", "own")]))}
    using = draw(st.sampled_from([*modes, None]))
    return Bike(controls=found, modes=modes), SetUp(
        mode=using, controls={name: value(name) for name in found if draw(st.booleans())}
    )


def section(page: Page, title: str) -> Section:
    return next(one for one in page.sections if one.title == title)


@examples(60)
@given(bikes())
def test_what_the_page_says_is_fixed_is_what_is_in_force_in_that_mode(made: tuple[Bike, SetUp]) -> None:
    of, setup = made
    shown = section(modes_page("any", setup, of), "modes")
    rows = {row.label: row.cells for row in shown.rows if row.kind == "cells"}
    assert shown.columns[-1] == NOW
    for name, control in of.controls.items():
        if control.outside_modes:
            assert label_of(name) not in rows
            continue
        cells = rows[label_of(name)]
        written = setup.controls.get(name)
        for at, (mode_name, mode) in enumerate(of.modes.items()):
            inside = attrs.evolve(setup, mode=mode_name)
            force = in_force_value(name, control, inside, mode)
            fixed = cells[at].startswith("= ")
            if fixed:
                assert cells[at].removesuffix(" !") == f"= {force}"
                assert cells[at].endswith(" !") == (written is not None and written != force)
            else:
                assert force == written
                off = name in (mode.off_allowed or ())
                bounds = mode.limits.get(name)
                left = bounds is None or written is None or allows(control, bounds, written, off)
                assert cells[at].endswith("!") == (not left)
                assert (" off" in cells[at]) == off
        now = in_force_value(name, control, setup, of.modes.get(setup.mode or ""))
        assert cells[-1].startswith("?" if now is None else str(now))


@examples(60)
@given(bikes())
def test_a_mode_that_is_taken_has_what_it_fixes_and_nothing_that_it_does_not_allow(
    made: tuple[Bike, SetUp],
) -> None:
    of, setup = made
    for name, mode in of.modes.items():
        taken = with_mode(name, setup, of)
        assert taken.mode == name
        for control_name, control in of.controls.items():
            before, after = setup.controls.get(control_name), taken.controls.get(control_name)
            if control.outside_modes or before is None:
                assert after == before
            elif control_name in mode.fixes:
                assert after == mode.fixes[control_name]
            elif control_name in mode.limits:
                off = control_name in (mode.off_allowed or ())
                assert after is not None
                assert allows(control, mode.limits[control_name], after, off)
                assert after == before or not allows(control, mode.limits[control_name], before, off)
            else:
                assert after == before


def test_what_taking_a_mode_changes_in_force_is_said_row_by_row() -> None:
    session = read(Ref("session", "2026-06-20-4-magpie")).record
    assert isinstance(session, Session)
    assert moves("wading", session.setup, bike("magpie")) == (
        "traction control 3 -> 6 at least (more help)",
        "engine braking 3 -> 2 (less braking)",
        "throttle response even -> gentle (more help)",
    )
    assert moves("wild", session.setup, bike("magpie")) == ()


@every(
    ("widths", "chosen", "room", "shown"),
    [
        ([5, 5, 5], 0, 20, [0, 1, 2]),
        ([5, 5, 5], 2, 12, [1, 2]),
        ([5, 5, 5], 1, 12, [0, 1]),
        ([5, 5, 5], 2, 3, [2]),
        ([5, 9, 5], 1, 10, [1]),
        ([5], 0, 0, [0]),
    ],
)
def test_the_columns_move_sideways_so_that_the_one_looked_at_is_there(
    widths: list[int], chosen: int, room: int, shown: list[int]
) -> None:
    assert list(moved(widths, chosen, room)) == shown


def magpie(across: int = 0, setup: bool = True) -> Page:
    session = read(Ref("session", "2026-06-20-4-magpie")).record
    assert isinstance(session, Session)
    held = session.setup if setup else None
    return modes_page("Magpie", held, bike("magpie"), "wet" if setup else None, across)


@every("size", [(80, 24), (40, 20), (120, 40), (20, 10)])
@every("across", range(4))
def test_labels_the_mode_looked_at_and_what_is_set_stand_at_every_width(
    size: tuple[int, int], across: int
) -> None:
    lines = layout(magpie(across), View(*size, cursor=2)).text().splitlines()
    assert max(width(line) for line in lines) <= size[0]
    heads = next(line for line, before in zip(lines[1:], lines, strict=False) if "── modes " in before)
    assert (mode_at(bike("magpie"), across) or "")[: size[0] // 4].casefold() in heads.casefold()
    if size[0] >= 40:
        assert heads.rstrip().endswith(NOW)
        assert any(line.lstrip("> ").startswith("traction") for line in lines)


def test_a_bike_without_a_set_up_and_one_without_modes() -> None:
    assert section(magpie(setup=False), "modes").columns == ("homing", "soaring", "wading", "wild")
    assert not any("!" in cell for row in magpie(setup=False).rows() for cell in row.cells)
    assert modes_page("x", None, Bike(electronics="none")).rows() == (
        Row("", "This bike has no riding modes.", kind="text", key="no modes"),
    )


def test_a_control_of_which_the_file_says_nothing_is_a_question_in_every_mode() -> None:
    of = Bike(controls={"odd": Control()}, modes={"road": Mode(), "own": Mode(fixes={"odd": 2})})
    row = next(row for row in modes_page("x", SetUp(), of).rows() if row.label == "odd")
    assert row.cells == ("?", "= 2", "?")


def test_presets_stand_beside_each_other_with_what_nobody_wrote_down() -> None:
    rows = {row.label: row.cells for row in section(magpie(), "presets of live").rows}
    assert section(magpie(), "presets of live").columns == ("calm", "KEEN", "rough road", NOW)
    assert rows["made for"] == ("wet", "any", "?", "")
    assert rows["kerbs"] == ("-1", "0", "-", "0")


@pytest.mark.parametrize("columns", [78, 38])
def test_printed_it_keeps_every_mode_and_every_control_within_the_width(columns: int) -> None:
    lines = list(plain_page(magpie(), columns))
    assert max(map(width, lines)) <= columns
    for word in ("homing", "soaring", "wading", "WILD", NOW, "trimmed..least"):
        assert any(word in line for line in lines)
