"""`show`: a garage, one of its pages, or one of its records, as plain text."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from paddock_tui.commands.common import (
    NOT_DONE,
    OK,
    USAGE,
    CommandStopped,
    find_ref,
    open_desk,
    open_to_read,
    say,
)
from paddock_tui.commands.printing import AskedPage, PrintForm, lines_of, print_dict, print_page
from paddock_tui.desk.looking import LooksAt
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import Loaded

if TYPE_CHECKING:
    from paddock_tui.desk import Desk
    from paddock_tui.pages.rows import Page

ScreenPage = Callable[["Desk", str, Ref | None, str], "Page"]
"""Makes the page of a room of the screens, about a session or profile, beside another where one is named."""

_AS_NAMED = (
    "setup",
    "bench",
    "compare",
    "review",
    "out",
    "return",
    "next",
    "last",
    "slip",
    "crew",
    "corners",
    "limits",
    "today",
)
AS_ON_SCREEN = {"checks": "checklist", **dict(zip(_AS_NAMED, _AS_NAMED, strict=True))}
"""Rooms of the screens that print as they are, by the name that stands for them, with the session or profile
they are about behind a slash.
"""

CALLED = {"change-log": "ledger", "calculators": "bench", "thresholds": "limits", "debrief": "return"}
"""Pages by what the screens call them, for the names that stand for them here."""

_OF_THE_RIDER = ("review", "checks", "out", "return", "next")
"""Pages that the rider goes through to ride or not: asked for by name they say all that stands open."""

CARD, BRIEF, COMPARE = "card", "brief", "compare"
OWN = (CARD, BRIEF, "after", "before", "board", "dash", "emergency", "ledger", "modes", "season")
"""The pages that `show` makes by itself; what makes them is loaded when one of them is asked for."""


def show(
    folder: str,
    wanted: str | None,
    form: PrintForm = "text",
    *,
    paths: bool = False,
    long: bool = False,
    came: str | None = None,
    personal: Sequence[str] = (),
    screen: ScreenPage | None = None,
) -> int:
    """Print the garage's contents, one of its pages, or one record; status 3 where that cannot be read.

    `screen` makes the pages that are as on the screens, `personal` names what is left out unless asked for.
    """
    name, _, of = (wanted or "").partition("/")
    name = CALLED.get(name, name)
    _refuse(name, form, long, came)
    if name in OWN:
        from paddock_tui.commands.show_own import show_own

        return show_own(open_desk(folder, writes=False), AskedPage(name, of, form, long, came, personal))
    if name in AS_ON_SCREEN and screen is not None:
        desk = open_desk(folder, writes=False)
        page = screen(desk, AS_ON_SCREEN[name], _subject(desk, name, of), came or "")
        if name not in _OF_THE_RIDER and not {"health", "incidents"} <= set(personal):
            from paddock_tui.pages.without_persons import without_persons

            page = without_persons(page)
        print_page(page, form)
        return OK
    return _show_read(open_to_read(folder), wanted, form, paths=paths)


def _show_read(desk: LooksAt, wanted: str | None, form: PrintForm, *, paths: bool) -> int:
    """Print the garage's contents or one record."""
    if wanted is None:
        from paddock_tui.pages.garage import garage_page

        print_page(garage_page(desk), form)
        return OK
    ref = find_ref(desk, wanted)
    loaded = desk.files.read(ref)
    if loaded is None:
        return NOT_DONE
    if form == "json":
        from paddock_tui.pages.as_json import record_as_dict

        print_dict(record_as_dict(loaded, desk.files.data(ref)))
    else:
        say(lines_of(_record(desk, loaded), form, paths=paths))
    return NOT_DONE if loaded.record is None else OK


def _refuse(name: str, form: PrintForm, long: bool, came: str | None) -> None:
    """Refuse options that the page asked for has no use for, or that it lacks."""
    if form == "html" and name != CARD:
        raise CommandStopped(USAGE, f"only the card prints as HTML: {CARD} or {CARD}/SESSION")
    if came is not None and name not in (BRIEF, COMPARE):
        raise CommandStopped(
            USAGE, f"only {BRIEF} and {COMPARE} are about two: {BRIEF}/SESSION --from PROFILE"
        )
    if came is None and name == COMPARE:
        raise CommandStopped(USAGE, f"compare with what? {COMPARE}/SESSION --from SESSION, PROFILE or MODE")
    if long and name != BRIEF:
        raise CommandStopped(USAGE, f"only the briefing has a long form: {BRIEF} or {BRIEF}/SESSION")


def _subject(desk: LooksAt, name: str, of: str) -> Ref | None:
    """Return what a page of the screens is about: what is named, else the session in hand."""
    ref = find_ref(desk, of, ("session", "profile")) if of else desk.session_in_hand()
    if ref is None and name not in ("limits", "today"):
        raise CommandStopped(NOT_DONE, "there is no session to show", f"  name one: {name}/SESSION")
    return ref


def _record(desk: LooksAt, loaded: Loaded) -> "Page":
    from paddock_tui.pages.record import record_page

    named = getattr(loaded.record, "bike", None)
    bike = desk.files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    rider = getattr(loaded.record, "rider", None)
    return record_page(loaded, known, desk.units(rider if isinstance(rider, str) else None))
