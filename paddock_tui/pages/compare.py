"""Two set-ups side by side: what differs, in the bike's own numbers, and what each side helps."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.presets import moved_words
from paddock_tui.calc.levels import Level
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.bike import Bike
from paddock_tui.records.differences import SetUpDifference, control_difference, differences
from paddock_tui.records.electronics import Control
from paddock_tui.records.in_force import control_in_force, value_in_force
from paddock_tui.records.setup import SetUp
from paddock_tui.text import printable


@attrs.frozen
class Side:
    """One of the two: how it is called, and its set-up."""

    name: str
    setup: SetUp


def compare_page(left: Side, right: Side, bike: Bike | None) -> Page:
    """Make the page of two set-ups of one bike: differences only, help beside each level."""
    of_bike = bike or Bike()
    controls = tuple(_controls(left, right, of_bike))
    rest = (
        *(_row(one) for one in differences(left.setup, right.setup, bike) if one.kind != "controls"),
        *_from_presets(left, right, of_bike),
    )
    sections = [
        Section("the two", (_said("this", left.name, "left"), _said("that", right.name, "right"))),
        Section("controls, as in force", controls or (_none("controls"),)),
        Section("everything else", rest or (_none("rest"),)),
    ]
    count = len(controls) + len(rest)
    first = (*controls, *rest)[:1]
    said = "".join(f", first: {row.label} {row.value}" for row in first)
    return Page(
        f"compared · {left.name} · {right.name}",
        tuple(sections),
        judged=False,
        answer=f"{count} differ{said}" if count else "They differ in nothing that is written down.",
        answer_short=f"{count} differ: {first[0].label}" if count else "No difference is written down.",
    )


def _said(label: str, text: str, key: str) -> Row:
    return Row(label, printable(text), kind="text", key=f"compare {key}")


def _none(key: str) -> Row:
    return Row("", "no difference", kind="text", key=f"compare none {key}")


def _row(one: SetUpDifference, outside: str = "") -> Row:
    """Return the row of a difference: both values, and what each side helps."""
    aside = "; ".join(filter(None, (one.help.beside if one.help else "", outside)))
    key = f"compare {one.kind} {one.key}"
    return Row(printable(one.label), printable(one.beside), aside=printable(aside), kind="text", key=key)


def _from_presets(left: Side, right: Side, bike: Bike) -> Iterator[Row]:
    """Say how far each side has moved from its preset, where that is not the same."""
    this, that = moved_words(bike, left.setup), moved_words(bike, right.setup)
    if this != that:
        value = f"{this or 'none known'} | {that or 'none known'}"
        yield Row("from its preset", printable(value), kind="text", key="compare from preset")


def _controls(left: Side, right: Side, bike: Bike) -> Iterator[Row]:
    """Return the controls that differ as they are in force: what a riding mode fixes counts."""
    for name, control in bike.controls.items():
        this, that = value_in_force(name, left.setup, bike), value_in_force(name, right.setup, bike)
        outside = "; ".join(
            filter(
                None,
                (_outside(name, control, one.setup, bike, at) for one, at in ((left, this), (right, that))),
            )
        )
        if this == that and not outside:
            continue
        yield _row(control_difference(name, this, that, bike), outside)
    for one in differences(left.setup, right.setup, bike):
        if one.kind == "controls" and not one.listed:
            yield _row(one)


def _outside(name: str, control: Control, setup: SetUp, bike: Bike, value: Level | None) -> str:
    """Say what the riding mode of a side leaves of a control where the value is not among that."""
    here = control_in_force(name, setup, bike)
    if value is None or here.allows(control, value):
        return ""
    return here.words().replace("the riding mode", setup.mode or "the riding mode", 1)
