"""Sections of the bench that still stand: nothing that their answers rest on reads otherwise.

The page is made anew for every key, and its calculators are most of its work. Nothing stands by a guess:
values are the same when they are written alike, records when they are the very same objects.
"""

import datetime as dt
import functools
from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from typing import Any, NamedTuple

import attrs

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Calculator, FilledInput
from paddock_tui.pages.rows import Section
from paddock_tui.records.common import Units
from paddock_tui.records.shapes import Shape
from paddock_tui.rules.kept import same_but_for_now

MakesSection = Callable[[Calculator, Mapping[str, Any], Units], Section]
"""Makes the section of a calculator, with what was typed into it, in these units."""

_EQUAL_ALIKE = frozenset({str, int, bool, dt.date, dt.time, dt.datetime})
_WRITTEN_ALIKE = frozenset({float, Decimal})
"""Numbers that are equal may be written otherwise: 36 and 36.0, 0.0 and -0.0."""


class KeptCalculators:
    """Makes the calculators for what is looked at, and gives them again while new ones would be the same."""

    def __init__(self) -> None:
        self._about: About | None = None
        self._found: tuple[Calculator, ...] = ()

    def of(self, about: About, make: Callable[[About], tuple[Calculator, ...]]) -> tuple[Calculator, ...]:
        """Return the calculators that `make` makes: of the same records on the same day the same ones."""
        before = self._about
        # Of the time they look at the day alone: until which one has been ridden so far.
        same_day = before is not None and before.situation.now.date() == about.situation.now.date()
        if not (same_day and alike(before, about)):
            self._about, self._found = about, make(about)
        return self._found


class _Kept(NamedTuple):
    calculator: Calculator
    typed: Mapping[str, Any]
    units: Units
    section: Section


class KeptSections:
    """Makes the sections of calculators, and gives one again while a new one would be the same."""

    def __init__(self) -> None:
        self._kept: dict[str, _Kept] = {}
        self.made = 0
        """How many sections were made."""

    def of(
        self, calculator: Calculator, typed: Mapping[str, Any], units: Units, make: MakesSection
    ) -> Section:
        """Return the section of a calculator."""
        found = self._kept.get(calculator.id)
        if found is None or not _stands(found, calculator, typed, units):
            found = _Kept(calculator, dict(typed), units, make(calculator, typed, units))
            self._kept[calculator.id] = found
            self.made += 1
        return found.section


def _stands(found: _Kept, calculator: Calculator, typed: Mapping[str, Any], units: Units) -> bool:
    before = found.calculator
    if found.units != units or not alike(found.typed, typed):
        return False
    return before is calculator or (
        (before.title, before.id) == (calculator.title, calculator.id)
        and alike(before.filled, calculator.filled)
        and alike(before.inputs, calculator.inputs)
        and alike(before.limits, calculator.limits)
        and alike(before.compute, calculator.compute)
    )


def alike(one: Any, other: Any) -> bool:
    """Return whether two values read, and are written, in the same way; False where that cannot be told."""
    if one is other:
        return True
    kind = type(one)
    if kind is not type(other):
        return False
    if kind in _EQUAL_ALIKE:
        return bool(one == other)
    if kind in _WRITTEN_ALIKE:
        return repr(one) == repr(other)
    compare = _BY_KIND.get(kind)
    if compare is not None:
        return compare(one, other)
    return alike(vars(one), vars(other)) if isinstance(one, Shape) else _all_parts(one, other)


def _filled(one: FilledInput, other: FilledInput) -> bool:
    return one.origin == other.origin and one.earlier == other.earlier and alike(one.value, other.value)


def _items(one: Sequence[Any], other: Sequence[Any]) -> bool:
    return len(one) == len(other) and all(map(alike, one, other))


def _table(one: Mapping[Any, Any], other: Mapping[Any, Any]) -> bool:
    # In the same order too: that is the order in which what is in it is said.
    return list(one) == list(other) and all(map(alike, one.values(), other.values()))


def _call(one: functools.partial[Any], other: functools.partial[Any]) -> bool:
    return one.func is other.func and alike((one.args, one.keywords), (other.args, other.keywords))


def _looked_at(one: About, other: About) -> bool:
    # No calculator looks at the clock while it works: what the time decides stands among its inputs.
    same = one.units == other.units and one.history is other.history
    return same and same_but_for_now(one.situation, other.situation)


_BY_KIND: dict[type, Callable[[Any, Any], bool]] = {
    FilledInput: _filled,
    tuple: _items,
    list: _items,
    dict: _table,
    functools.partial: _call,
    About: _looked_at,
}


_PARTS: dict[type, tuple[str, ...]] = {}
"""The parts by which values of a class are compared; none where it compares by identity."""


def _all_parts(one: Any, other: Any) -> bool:
    """Return whether all parts of two values are alike, where they are made of parts that are compared."""
    kind = type(one)
    if kind not in _PARTS:
        by_parts = attrs.has(kind) and kind.__eq__ is not object.__eq__
        _PARTS[kind] = tuple(part.name for part in attrs.fields(kind) if part.eq) if by_parts else ()
    names = _PARTS[kind]
    return bool(names) and all(alike(getattr(one, name), getattr(other, name)) for name in names)
