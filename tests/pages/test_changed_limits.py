"""A limit that its owner changed: the old figure stands nowhere any more, and the new one decides."""

import re
from collections.abc import Iterable, Iterator
from typing import Any

import pytest

from paddock_tui.advice.about import About
from paddock_tui.advice.bench import calculators
from paddock_tui.advice.beside_records import beside_bike, beside_day, beside_tyres
from paddock_tui.advice.beside_setup import beside_session, beside_setup
from paddock_tui.advice.next_change import next_change
from paddock_tui.advice.wet_package import wet_package
from paddock_tui.facts.situation import Situation
from paddock_tui.limits import LIMITS, Limit
from paddock_tui.limits.next_change import NEXT_CHANGE
from paddock_tui.pages.bench import bench_page
from paddock_tui.pages.going_out import out_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.review import review_page
from paddock_tui.rules import Finding, review
from tests.every import every
from tests.rules.cases import CASES
from tests.rules.limit_rows import ROWS
from tests.rules.situations import Change, asked, files, put, situation

Story = tuple[tuple[Change, ...], dict[str, Any]]

SPOKEN = {
    "clicks": "clicks",
    "damping_turns": "turns?",
    "preload_turns": "turns",
    "falls": "falls",
    "days": "days",
    "outings": "track outings",
    "levels": "levels",
    "times": "times",
    "false_neutrals": "false neutrals",
    "starts": "(hard )?starts",
    "fatigue": "(of|to) 5",
}
"""What stands after a count: bare, it could be of anything."""

OTHER_THINGS = (
    r"(may|can) be: .*",
    # A place on a scale, and the starting levels, which no limit decides.
    r"\(?\d+ % of most (help|engine braking)",
    r"now .*, which is \d+ % of most .*",
    # Published formulas, ranges of validity and constants.
    r"298\)\^0\.6",
    r"grip 0\.5-0\.7: [^(]*",
    r"wet friction, at worst:? +0\.5",
    r"measured at:? +0\.5 m",
    r"thicker than 0\.5 mm|more than 0\.5 mm thicker",
    r"petrol \(EN 228, at 15 C\)",
    r"ratio of 0\.\d to \d\.\d|slope up to 50 %",
    r"air from 20 C",
    r"(-45|-20) to (60|50) C",
    r"sun adds up to 8 C",
    r"(15 C, (filled at|later))|t from 15 C",
    # What is assumed of scales, tapes and consumption, and the steps that geometry is asked for.
    r"may be off:? +[\d.]+ (kg|mm)",
    r"consumption 15 % up|the 15 %: paddock",
    r"= 1 mm (of|more) [a-z ]+",
    # What calculators assume of their own accord.
    r"share of it here:? +\(?50 %",
    r"sqrt\(0\.\d\)",
    r"0\.5 C wrong",
    r"85 % mechanical efficiency",
    r"stroke 20 to 120 mm",
    r"1 / 0\.7 to 1 / 0\.5|wet / dry = 0\.5-0\.7",
    # The other windows of sag.
    r"free \d+ to \d+ mm",
    r"a track \(20-40 mm\)|rider 20 to 40 mm",
)
"""Figures that are the same by chance, with what they are of."""


def moved(limit: Limit) -> Iterator[float]:
    """A third more and a third less, as far as an owner may go; of none, a part of the most.

    Pressures to the hundredth of a bar, as they are told.
    """
    if not limit.value:
        yield limit.high / 4
    for share in (4 / 3, 2 / 3):
        third = f"{limit.value * share:.2f}" if limit.unit == "bar" else f"{limit.value * share:.3g}"
        value = min(max(float(third), limit.low), limit.high)
        if value != limit.value:
            yield value


def raising(limit: Limit) -> Iterator[Story]:
    """The stories that raise the rule of a limit; first those about the limit itself."""
    for row in ROWS:
        if (row.rule, row.limit) == (limit.rule, limit.name) and row.severity:
            yield row.changes, row.more
    for case in CASES[limit.rule].raising:
        yield case.changes, case.more


def with_limit(limit: Limit, value: float, story: Story) -> Situation:
    changes, more = story
    written = f"{value!r} {limit.unit}" if limit.unit else value
    made = situation(files(*changes, put("garage", f"limits.{limit.rule}.{limit.name}", written)), **more)
    assert made.limits[limit] == pytest.approx(value)
    return made


def found_by(rule: str, made: Situation) -> list[Finding]:
    with asked(rule):
        return [one for one in review(made).findings if one.rule == rule]


def figure(limit: Limit, value: float) -> re.Pattern[str]:
    """A value of a limit as it may be written: with its unit, as a share or a percentage, or as a count."""
    number = re.escape(f"{value:g}")
    if limit.unit:
        return re.compile(rf"(?<![\d.]){number}(\.0+)?(( to |-)[\d.]+)? ?{re.escape(limit.unit)}(?![\w/(])")
    if limit.name in SPOKEN:
        return re.compile(rf"(?<![\d.]){number} {SPOKEN[limit.name]}\b")
    return re.compile(rf"(?<![\d.:-]){number}0?(?![\d.:])|(?<![\d.]){100 * value:g} %")


def said(made: Situation) -> Iterator[str]:
    """Everything that a review, the bench, the rows and the advice say of a situation."""
    about, judged = About(made, made.history), review(made)
    for one in judged.findings:
        yield from (one.message, one.why, one.remedy.text, repr(one.remedy.puts), one.facts, one.source)
    yield from plain_page(review_page(judged, ""), columns=2000)
    for row in bench_page(calculators(about), {}, "", about.units).rows():
        yield " ".join((row.label, row.value, row.range, row.aside))
        yield from row.working
    besides = [beside_setup(about), beside_session(about), beside_bike(about)]
    besides += [beside_tyres(about, "may", made.tyres)] if made.tyres is not None else []
    besides += [beside_day(about, made.day)] if made.day is not None else []
    for rows in besides:
        yield from (line for row in rows.values() for line in (row.short, *row.working, repr(row.puts)))
    if made.session is not None:
        yield from plain_page(out_page(made, judged, ""), columns=2000)
        yield from (repr(next_change(about)), repr(wet_package(about)))


def quoting(limit: Limit, value: float, lines: Iterable[str]) -> Iterator[str]:
    """The lines that quote a value of a limit."""
    wanted, other = figure(limit, value), re.compile("|".join(OTHER_THINGS))
    digits, hundred = f"{value:g}", f"{100 * value:g}"
    # Most of the thousands of lines do not hold the digits at all, which is quicker told.
    held = (line for line in lines if (digits in line or hundred in line) and wanted.search(line))
    return (line for line in held if wanted.search(other.sub("", line)))


OF_RULES = [one for one in LIMITS.values() if one.rule != NEXT_CHANGE]
"""Those of the next change have stories of their own: tests/advice/next_change/test_limits.py."""


def ids(limit: Limit) -> str:
    return f"{limit.rule}.{limit.name}"


@every("limit", OF_RULES, ids=ids)
def test_the_old_figure_stands_nowhere_any_more(limit: Limit) -> None:
    """Of the stories that still raise the rule, one whose own records do not hold the old figure says so."""
    left: list[str] = []
    for story in raising(limit):
        for value in moved(limit):
            made = with_limit(limit, value, story)
            if not found_by(limit.rule, made):
                continue
            lines: list[str] = []
            old = next(quoting(limit, limit.value, remembered(said(made), lines)), None)
            if old is not None:
                left.append(old)
                continue
            # Who does not say the new figure may not say the old one where that holds.
            if not any(quoting(limit, value, lines)):
                assert not any(quoting(limit, limit.value, said(with_limit(limit, limit.value, story))))
            return
    pytest.fail(f"{limit.value:g} {limit.unit} still stands in {left[:3] or 'no story'}")


def remembered(lines: Iterable[str], held: list[str]) -> Iterator[str]:
    """Give lines one by one, and hold those that were given."""
    for line in lines:
        held.append(line)
        yield line


@every("limit", OF_RULES, ids=ids)
def test_the_new_figure_decides(limit: Limit) -> None:
    def differs(story: Story, value: float) -> bool:
        before, after = (with_limit(limit, one, story) for one in (limit.value, value))
        return found_by(limit.rule, before) != found_by(limit.rule, after)

    values = (*moved(limit), limit.low, limit.high)
    assert any(differs(story, value) for story in raising(limit) for value in values)
