"""Every page on the sample garage, drawn without an app: what a rider sees at 80x24 and at 40x20.

Committed beside this module, so that a change of a page shows as a change of a text.
"""

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.desk import Desk
from paddock_tui.pages.actions import ActionContext, hints
from paddock_tui.pages.checklist import first_open
from paddock_tui.pages.folding import folded, hidden_in
from paddock_tui.pages.layout import WIDE as PANELLED
from paddock_tui.pages.layout import Laid, View, layout
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.paths import Ref, spell
from paddock_tui.rules import Review
from paddock_tui.screens.folds import HIGH, WIDE, Folds
from paddock_tui.screens.judged_page import context_of, judged_page
from paddock_tui.screens.panel import panel_of
from paddock_tui.screens.place import Place
from paddock_tui.screens.registry import ACTIONS, room_of
from paddock_tui.screens.run_state import RunState
from paddock_tui.text import width

FOLDER = Path(__file__).parent
SIZES = ((80, 24), (40, 20))
LARGE = (120, 40)
NOON = dt.datetime(2026, 6, 20, 12, 40)
"""When the looks are taken: forty minutes before the next session of the sample goes out."""

NEXT = Ref("session", "2026-06-20-4-magpie")
RIDDEN = Ref("session", "2026-05-16-5-magpie")
WET = Ref("profile", "magpie-ines-wet")
ASKS = Ref("session", "2026-04-18-1-badger")
"""A session with a symptom whose cause has to be told apart by a question."""


FIRST_OPEN = "first open"
"""In place of a row: the one that the checklist opens on."""


@attrs.frozen
class Seen:
    """One look: the place, and the words on the row that the cursor stands on (none: the first row)."""

    place: Place
    at: str = ""


_FROM = {"why": "setup", "change": "ledger"}
"""The rooms that are about a row of another one."""

_LOWER = frozenset(
    {
        "garage-lower",
        "setup-lower",
        "bench-lower",
        "record-bike-lower",
        "session-hot",
        "next-asks",
        "modes-wet",
    }
)
"""Looks further down a page, or of another case of it: two sizes are enough."""


def _record(kind: str, name: str) -> Place:
    return Place("record", NEXT, Ref(kind, name))


LOOKS: dict[str, Seen] = {
    "garage": Seen(Place()),
    "garage-lower": Seen(Place(), "tyres/magpie-trackday-2"),
    "board": Seen(Place("board", NEXT)),
    "crew": Seen(Place("crew", NEXT)),
    "corners": Seen(Place("corners", NEXT)),
    "before": Seen(Place("before", NEXT)),
    "after": Seen(Place("after", NEXT)),
    "setup": Seen(Place("setup", NEXT)),
    "setup-lower": Seen(Place("setup", NEXT), "setup.front_start"),
    "setup-ridden": Seen(Place("setup", RIDDEN)),
    "setup-profile": Seen(Place("setup", WET)),
    "session": Seen(Place("session", NEXT)),
    "session-hot": Seen(Place("session", NEXT), "pressures.hot.rear"),
    "session-ridden": Seen(Place("session", RIDDEN), "laps.2"),
    "checklist": Seen(Place("checklist", NEXT), FIRST_OPEN),
    "review": Seen(Place("review", NEXT)),
    "review-profile": Seen(Place("review", WET)),
    "dash": Seen(Place("dash", NEXT)),
    "out": Seen(Place("out", NEXT)),
    "return": Seen(Place("return", NEXT)),
    "return-ridden": Seen(Place("return", RIDDEN)),
    "next": Seen(Place("next", NEXT)),
    "next-asks": Seen(Place("next", ASKS)),
    "last": Seen(Place("last", NEXT)),
    "ledger": Seen(Place("ledger", NEXT)),
    "change": Seen(Place("change", NEXT), "front trim"),
    "today": Seen(Place("today")),
    "limits": Seen(Place("limits", NEXT)),
    "slip": Seen(Place("slip", NEXT)),
    "compare": Seen(Place("compare", NEXT, other="wading")),
    "modes": Seen(Place("modes", NEXT), "traction control"),
    "brief": Seen(Place("brief", NEXT)),
    "modes-wet": Seen(Place("modes", NEXT, across=2), "traction control"),
    "why": Seen(Place("why", NEXT), "setup.controls.traction"),
    "bench": Seen(Place("bench", NEXT)),
    "bench-lower": Seen(Place("bench", NEXT), "= ratios"),
    "help": Seen(Place("help")),
    "guide": Seen(Place("guide", NEXT), "surface"),
    "actions": Seen(Place("actions")),
    "season": Seen(Place("season")),
    "emergency": Seen(Place("emergency", NEXT, Ref("rider", "ines"))),
    "emergency-riders": Seen(Place("emergency", NEXT)),
    "record-bike": Seen(_record("bike", "magpie")),
    "record-bike-lower": Seen(_record("bike", "magpie"), "modes.wading.use"),
    "record-rider": Seen(_record("rider", "ines")),
    "record-venue": Seen(_record("venue", "anvilfen")),
    "record-tyres": Seen(_record("tyres", "magpie-trackday-2")),
    "record-day": Seen(_record("day", "2026-06-20-anvilfen")),
    "record-checklist": Seen(_record("checklist", "before-session")),
}
"""The looks by the name of their files."""


def drawn(desk: Desk, seen: Seen, size: tuple[int, int]) -> str:
    """Draw one look; a bar stands at the right edge, so that what is cut shows."""
    wide = size[0]
    lines = laid_out(desk, seen, size).text().split("\n")
    return "".join(f"{line}{' ' * (wide - width(line))}|\n" for line in lines)


def laid_out(desk: Desk, seen: Seen, size: tuple[int, int]) -> Laid:
    """Lay one look out, with the panel that its room has on a wide screen; of a desk this is done once."""
    key = desk, seen, size
    if key not in _LAID:
        _LAID[key] = _laid_out(desk, seen, size)
    return _LAID[key]


def _laid_out(desk: Desk, seen: Seen, size: tuple[int, int]) -> Laid:
    made = made_of(desk, seen, size)
    wide, high = size
    panel = None
    if wide >= PANELLED and room_of(made.place.room).panel:
        row = next(iter(made.page.rows()[made.at :]), Row(""))
        panel = panel_of(desk, row, made.review, made.whole)
    return layout(made.page, View(wide, high, made.at, hints=made.hints, panel=panel))


@attrs.frozen
class Made:
    """What a look shows: the page with its cursor, folded for a screen, and the same page without a fold."""

    place: Place
    page: Page
    whole: Page
    at: int
    review: Review
    hints: tuple[str, ...]


def made_of(desk: Desk, seen: Seen, size: tuple[int, int] = (WIDE, HIGH)) -> Made:
    """Make what a look shows on a screen of a size; of a desk on which nothing is edited it is made once."""
    key = desk, seen, min(size[0], WIDE), min(size[1], HIGH)
    if key not in _MADE:
        state = RunState()
        state.of(Folds).fit(*size)
        _MADE[key] = _made(desk, seen, state)
    return _MADE[key]


_MADE: dict[tuple[Desk, Seen, int, int], Made] = {}
_LAID: dict[tuple[Desk, Seen, tuple[int, int]], Laid] = {}


def let_go(desk: Desk) -> None:
    """Forget what was made of a desk."""
    for made in [one for one in _MADE if one[0] is desk]:
        del _MADE[made]
    for laid in [one for one in _LAID if one[0] is desk]:
        del _LAID[laid]


def _made(desk: Desk, seen: Seen, state: RunState) -> Made:
    place, context = seen.place, context_at(desk, seen.place, None)
    if place.room in _FROM:
        row = _row(judged_page(desk, attrs.evolve(place, room=_FROM[place.room]), context).page, seen.at)
        place, seen = attrs.evolve(place, row=row), attrs.evolve(seen, at="")
    shown = judged_page(desk, place, context, state)
    if seen.at == FIRST_OPEN and place.subject is not None:
        first = first_open(desk.assembled(place.subject).situation)
        named = next(row for row in shown.page.rows() if row.identity == first)
        seen = attrs.evolve(seen, at=spell(named.path))
    row = _row(shown.page, seen.at)
    context = context_of(desk, _subject_of(desk, place), row, shown.review)
    whole = judged_page(desk, place, context, state).page
    hidden = hidden_in(whole, row.identity) if seen.at else ()
    page = folded(whole, dict.fromkeys(hidden, True))
    at = 0 if not seen.at else next(n for n, one in enumerate(page.rows()) if one.identity == row.identity)
    return Made(place, page, whole, at, shown.review, hints(ACTIONS, context))


def sizes_of(name: str) -> tuple[tuple[int, int], ...]:
    """Return the sizes at which a look is drawn: the first of each page also on a wide screen."""
    return SIZES if name in _LOWER else (*SIZES, LARGE)


def context_at(desk: Desk, place: Place, row: Row | None) -> ActionContext:
    """Return what the actions know at a place of the sample."""
    at = _subject_of(desk, place)
    return context_of(desk, at, row, desk.review(at.subject))


def _subject_of(desk: Desk, place: Place) -> Place:
    return attrs.evolve(place, subject=place.subject or desk.session_in_hand())


def _row(page: Page, at: str) -> Row:
    """Find the first row on which the cursor stops, or the one at a path or with a name."""
    rows = [row for row in page.rows() if row.kind != "heading"]
    if not at:
        return rows[0] if rows else Row("", kind="heading")
    return next(row for row in rows if at in (spell(row.path) if row.path else "", row.label, str(row.ref)))


def sample_desk(root: Path) -> Desk:
    """Open a copy of the sample garage at the time of the looks."""
    return Desk(root, lambda: NOON)


def renewed(desk: Desk) -> Iterator[tuple[Path, str]]:
    """Give the file and the text of every look, on a desk of the sample garage."""
    for name, seen in LOOKS.items():
        for wide, high in sizes_of(name):
            yield FOLDER / f"{name}-{wide}x{high}.txt", drawn(desk, seen, (wide, high))
