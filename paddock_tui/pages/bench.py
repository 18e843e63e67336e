"""The bench: calculators with their inputs and answers, to be tried without changing any record."""

import functools
from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.advice.calculators import Answer, Calculator, FilledInput, Input
from paddock_tui.advice.gearing import GEARING
from paddock_tui.entry.typing_kinds import choices_of, typing_kind
from paddock_tui.pages.bench_picture import with_gears
from paddock_tui.pages.kept_sections import KeptSections
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import UNKNOWN_WORD, also_in
from paddock_tui.records.common import AIR_PRESSURE, Units
from paddock_tui.records.paths import Path
from paddock_tui.text import printable

BENCH = "bench"
CAUTION_SHORT = "Starting points: the manual leads."
CAUTION = (
    "Nothing typed here is saved until v uses an answer. Starting points, no guarantee: the bike's "
    "manual, the tyre vendor and qualified people come first."
)

TypedInputs = Mapping[tuple[str, str], Any]
"""What was typed: calculator and input -> the value, None where it was cleared."""


def bench_page(
    calculators: tuple[Calculator, ...],
    typed: TypedInputs,
    heading: str,
    units: Units,
    kept: KeptSections | None = None,
) -> Page:
    """Make the page of all calculators; `heading` names what they are filled from.

    What is `kept` from the page before is not worked out again where it would be the same.
    """
    kept = kept or KeptSections()
    sections = tuple(kept.of(one, typed_of(one, typed), units, section_of) for one in calculators)
    known = [one for one in sections if one.summary]
    first = f"{len(known)} of {len(sections)} can answer"
    return Page(
        f"calculators · {heading}" if heading else "calculators",
        sections,
        answer=f"{first}, first {known[0].title}: {known[0].summary}" if known else f"{first}.",
        answer_short=f"{first}.",
        caution=CAUTION,
        judged=False,
        caution_short=CAUTION_SHORT,
    )


def typed_of(calculator: Calculator, typed: TypedInputs) -> dict[str, Any]:
    """Return what was typed into one calculator."""
    return {key: value for (owner, key), value in typed.items() if owner == calculator.id}


def input_at(calculators: tuple[Calculator, ...], path: Path) -> tuple[Calculator, Input] | None:
    """Return the calculator and the input that a row's path names."""
    if len(path) != 3 or path[0] != BENCH:
        return None
    for calculator in calculators:
        if calculator.id == path[1]:
            found = calculator.input(path[2])
            return None if found is None else (calculator, found)
    return None


def section_of(calculator: Calculator, tried: Mapping[str, Any], units: Units) -> Section:
    """Make the section of a calculator, with what was tried in it."""
    filled = calculator.with_typed(tried)
    inputs = (_input_row(calculator, one, filled.get(one.key), units) for one in calculator.inputs)
    answers = tuple(_answer_rows(calculator, calculator.answers(units, tried)))
    note = "" if not tried else f"{len(tried)} tried here"
    first = next((f"{one.label} {one.value}" for one in answers if one.known), "")
    section = Section(calculator.title, (*inputs, *answers), note, summary=first)
    return with_gears(section, calculator, tried, units) if calculator.id == GEARING else section


def _input_row(calculator: Calculator, declared: Input, found: FilledInput | None, units: Units) -> Row:
    value = None if found is None else found.value
    aside = declared.help if found is None else _where(declared, found, units)
    return Row(
        label=declared.label,
        value=UNKNOWN_WORD if value is None else printable(declared.shape.show(value)),
        range=declared.unit if value is not None else "",
        aside=printable(aside),
        path=(BENCH, calculator.id, declared.key),
        edit="" if value is None else declared.shape.show(value),
        known=value is not None,
        working=_about(declared, found),
        typing=typing_kind(declared.shape),
        choices=choices_of(declared.shape),
    )


def _where(declared: Input, found: FilledInput, units: Units) -> str:
    also = "" if declared.shape is AIR_PRESSURE else also_in(found.value, units)
    return "; ".join(filter(None, (also, found.origin)))


def _about(declared: Input, found: FilledInput | None) -> tuple[str, ...]:
    origin = found.origin if found is not None else "not known"
    return (*_declared(declared), printable(f"comes from: {origin}"))


@functools.lru_cache(maxsize=1024)
def _declared(declared: Input) -> tuple[str, ...]:
    """Say what an input is and what it may be, which is the same on every page."""
    lines = [declared.name]
    if declared.help:
        lines.append(f"what it is: {declared.help}")
    lines.append(f"may be: {declared.shape.expected}")
    band = declared.shape.band()
    if band is not None:
        lines.append(f"can be: {band[0]:g} to {band[1]:g} {band[2]}".strip())
    return tuple(printable(one) for one in lines)


def _answer_rows(calculator: Calculator, answers: tuple[Answer, ...]) -> Iterator[Row]:
    for one in answers:
        yield Row(
            label=f"= {one.label}",
            value=printable(one.text),
            kind="text",
            path=(BENCH, calculator.id, "answer", one.key),
            known=one.known,
            offer=one.puts,
            working=tuple(printable(line) for line in one.working),
        )
