"""The page of limits: every threshold of the rules, with its meaning and source, and whose it is."""

from collections.abc import Iterator

from paddock_tui.limits import LIMITS, THEMES, Limit, Limits
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import trouble_at
from paddock_tui.records.paths import GARAGE, Path
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.rules.short import SHORT
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

CAUTION_SHORT = "A wider threshold makes nothing safer."
CAUTION = (
    "A wider threshold finds less, and makes nothing safer. The bike's manual, the organiser, scrutineers "
    "and qualified people come first."
)
ROOT = "limits"
_DEFAULT = "Every threshold is the default: none is yours."
_NAMED = {
    "aids": "throttle or power map",
    "bike": "wheelie control",
    "suspension": "an adjuster",
    "what was written down": "an aid",
}
"""What stands for the one that a rule speaks of, where its theme does not say it."""
_LABELS = {"freed_below": "strong below", "like_track": "similar track", "sparing": "share of the rate"}
"""Labels of thresholds whose name in the file is no word of riders."""


def limits_page(in_force: Limits, loaded: Loaded | None = None) -> Page:
    """Make the page; `loaded` is the garage's own file, for what cannot be read there."""
    rules = sorted({rule for rule, _ in LIMITS})
    rules.sort(key=THEMES.__getitem__)
    sections = [Section(_title(rule), tuple(_rows(rule, in_force, loaded))) for rule in rules]
    strays = tuple(_strays(in_force))
    if strays:
        sections.insert(0, Section("in the file, but not used", strays))
    changed = sum(in_force.overridden(one) for one in LIMITS.values())
    said = f"{changed} of them yours" if changed else "all default"
    stray = f"{len(strays)} in the file not used" if strays else ""
    answer = stray or (f"{changed} of {len(LIMITS)} yours, the others default." if changed else _DEFAULT)
    short = stray or (f"{changed} of {len(LIMITS)} yours." if changed else "All default.")
    return Page(
        f"thresholds · {len(LIMITS)}, {said}",
        tuple(sections),
        answer=answer,
        answer_short=short,
        caution=CAUTION,
        judged=False,
        caution_short=CAUTION_SHORT,
    )


def _title(rule: str) -> str:
    """Name the thresholds of a rule by what it warns of; its id stands behind `w`, for the file."""
    words = SHORT.get(rule, rule.replace("-", " ")).replace("{name}", _NAMED.get(THEMES[rule], "")).strip()
    return f"{THEMES[rule]} · {words}"


def path_of(wanted: Limit) -> Path:
    """Return where a limit stands in the garage's file."""
    return (ROOT, wanted.rule, wanted.name)


def written(wanted: Limit, value: float) -> str:
    """Write a value of a limit as it is typed: with its unit where it has one."""
    return f"{show_number(value)} {wanted.unit}".strip()


def shown(wanted: Limit, value: float) -> str:
    """Write a value of a limit as it is read: kelvins apart are degrees of difference."""
    if wanted.unit == "K":
        return f"{show_number(value)} \N{DEGREE SIGN}C difference"
    return written(wanted, value)


def _rows(rule: str, in_force: Limits, loaded: Loaded | None) -> Iterator[Row]:
    for key in sorted(key for key in LIMITS if key[0] == rule):
        one = LIMITS[key]
        value = written(one, in_force[one])
        default = shown(one, one.value)
        yours = in_force.overridden(one)
        where = f"yours; default {default}, backspace goes back" if yours else "default"
        found = trouble_at(loaded, path_of(one)) if loaded is not None else None
        yield Row(
            label=_LABELS.get(one.name, one.name.replace("_", " ")),
            value=shown(one, in_force[one]),
            range=_range(one, in_force[one]),
            aside=printable(f"{one.meaning}; {where}; source: {one.source}"),
            ref=GARAGE,
            path=path_of(one),
            edit=value,
            working=(f'in garage.toml: [{ROOT}.{rule}] {one.name} = "{value}"',),
            trouble=printable(f"cannot be read: {found.found}") if found is not None else "",
        )


def _range(wanted: Limit, value: float) -> str:
    """Say what a threshold may be; a part of a whole is said in percent too."""
    to = " to " if wanted.low < 0 else "-"
    said = f"range {show_number(wanted.low)}{to}{show_number(wanted.high)}"
    return f"{value * 100:.0f} %, {said}" if not wanted.unit and wanted.high <= 1 else said


def _strays(in_force: Limits) -> Iterator[Row]:
    for rule, name, wrong in in_force.problems():
        yield Row(
            label=printable(f"{rule}.{name}"),
            value=printable(wrong),
            aside="backspace takes it out",
            ref=GARAGE,
            path=(ROOT, rule, name),
            key="stray",
        )
