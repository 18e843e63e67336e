"""`show`: a garage, its ledger, a dash card, or one of its records, as plain text."""

from collections.abc import Callable, Sequence
from typing import Literal

import attrs

from paddock_tui.advice.briefing import briefing
from paddock_tui.advice.ledger import LedgerFilter
from paddock_tui.commands.check import print_dict
from paddock_tui.commands.common import NOT_DONE, OK, USAGE, CommandStopped, columns, find_ref, open_desk, say
from paddock_tui.desk import Desk
from paddock_tui.desk.day.board import BoardMemory
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.emergency import emergency, emergency_standing
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.came_from import came_from
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.pages.as_json import page_as_dict, record_as_dict
from paddock_tui.pages.before import BEFORE, before_page
from paddock_tui.pages.board import BOARD, board_as_dict, board_page
from paddock_tui.pages.briefing import BRIEF, READ_AT, briefing_lines, briefing_page
from paddock_tui.pages.card import card_as_dict, card_html, card_lines, card_of
from paddock_tui.pages.dash import dash_page, last_ridden
from paddock_tui.pages.emergency import EMERGENCY, emergency_page
from paddock_tui.pages.explanation import surface_of
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.ledger import LEDGER, ledger_page
from paddock_tui.pages.modes import MODES, modes_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.record import record_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.season import SEASON, season_page
from paddock_tui.pages.speech import spoken
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref
from paddock_tui.store.emergency import NotThisFile
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

PrintForm = Literal["text", "json", "html", "plain"]

ScreenPage = Callable[[Desk, str, Ref | None], Page]
"""Makes the page of a room of the screens, about a session or profile."""

_AS_NAMED = (
    "setup",
    "bench",
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

CARD = "card"
"""What is asked for in place of a record to have the set-up card."""

DASH = "dash"
"""What is asked for in place of a record to see the dash card."""


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
    if form == "html" and name != CARD:
        raise CommandStopped(USAGE, f"only the card prints as HTML: {CARD} or {CARD}/SESSION")
    if came is not None and name != BRIEF:
        raise CommandStopped(USAGE, f"only the briefing comes from something: {BRIEF}/SESSION --from PROFILE")
    if long and name != BRIEF:
        raise CommandStopped(USAGE, f"only the briefing has a long form: {BRIEF} or {BRIEF}/SESSION")
    desk = open_desk(folder, writes=False)
    own: dict[str, Callable[[], int]] = {
        CARD: lambda: _card(desk, of, form),
        BRIEF: lambda: _brief(desk, of, form, long, came),
        BEFORE: lambda: _before(desk, of, form),
        BOARD: lambda: _board(desk, of, form),
        EMERGENCY: lambda: _emergency(desk, of, form),
        SEASON: lambda: _season(desk, of, form, falls="incidents" in personal),
    }
    if name in own:
        return own[name]()
    if name in AS_ON_SCREEN and screen is not None:
        _print(screen(desk, AS_ON_SCREEN[name], _subject(desk, name, of)), form)
        return OK
    if wanted is None or name in PAGES:
        _print(garage_page(desk) if wanted is None else PAGES[name](desk, of), form)
        return OK
    ref = find_ref(desk, wanted)
    loaded = desk.files.read(ref)
    if loaded is None:
        return NOT_DONE
    if form == "json":
        print_dict(record_as_dict(loaded, desk.files.data(ref)))
    else:
        page = _record(desk, loaded)
        say(spoken(page) if form == "plain" else plain_page(page, columns(), paths=paths))
    return NOT_DONE if loaded.record is None else OK


def _subject(desk: Desk, name: str, of: str) -> Ref | None:
    """Return what a page of the screens is about: what is named, else the session in hand."""
    ref = find_ref(desk, of, ("session", "profile")) if of else desk.session_in_hand()
    if ref is None and name not in ("limits", "today"):
        raise CommandStopped(NOT_DONE, "there is no session to show", f"  name one: {name}/SESSION")
    return ref


def _print(page: Page, form: PrintForm) -> None:
    if form == "json":
        print_dict(page_as_dict(page))
    else:
        say(spoken(page) if form == "plain" else plain_page(page, columns()))


def _card(desk: Desk, of: str, form: PrintForm) -> int:
    """Print the set-up card of a session or a profile, or of the session in hand."""
    ref = find_ref(desk, of, ("session", "profile")) if of else desk.session_in_hand()
    card = card_of(desk, ref) if ref is not None else None
    if card is None:
        raise CommandStopped(NOT_DONE, "there is no set-up to print", f"  name one: {CARD}/SESSION")
    if form == "html":
        say((card_html(card),))
    elif form == "json":
        print_dict(card_as_dict(card))
    else:
        say(card_lines(card, min(columns(), 78)))
    return OK


def _brief(desk: Desk, of: str, form: PrintForm, long: bool, came: str | None) -> int:
    """Print the briefing of a session or a profile, or of the session in hand; `came` names what the rider
    comes from.
    """
    ref = find_ref(desk, of, ("session", "profile")) if of else desk.session_in_hand()
    if ref is None or desk.files.read(ref) is None:
        raise CommandStopped(NOT_DONE, "there is no set-up to explain", f"  name one: {BRIEF}/SESSION")
    before = find_ref(desk, came, ("session", "profile")) if came is not None else None
    found = briefing(desk.about(ref), desk.review(ref), came_from(desk.files, ref, before))
    if form == "json":
        print_dict(page_as_dict(briefing_page(found, heading_of(desk, ref), long)))
    else:
        say(briefing_lines(found, min(columns(), READ_AT), long))
    return OK


def _board(desk: Desk, of: str, form: PrintForm) -> int:
    """Print the board of a day, or of today."""
    day = find_ref(desk, of, ("day",)) if of else None
    if form == "json":
        print_dict(board_as_dict(desk, BoardMemory(), day))
    else:
        _print(board_page(desk, BoardMemory(), day), form)
    return OK


def _before(desk: Desk, of: str, form: PrintForm) -> int:
    """Print what a day needs beforehand: the one named, or the next to come."""
    _print(before_page(desk, find_ref(desk, of, ("day",)) if of else None), form)
    return OK


def _season(desk: Desk, of: str, form: PrintForm, *, falls: bool) -> int:
    """Print a year of the garage, or this one; falls only where they were asked for."""
    if of and not (of.isdecimal() and len(of) == 4):
        raise CommandStopped(USAGE, f'"{printable(of)}" is no year', f"  name one: {SEASON}/2026")
    _print(season_page(season(desk, int(of) if of else None), falls=falls), form)
    return OK


def _emergency(desk: Desk, of: str, form: PrintForm) -> int:
    """Print the emergency page of a rider, or how that of each stands."""
    today = desk.now().date()
    if not of:
        for ref in desk.files.listing("rider"):
            say((f"{EMERGENCY}/{ref.id}: {emergency_standing(desk.root, ref.id, today)}",))
        return OK
    ref = find_ref(desk, of, ("rider",))
    loaded = desk.files.read(ref)
    name = loaded.data.get("name") if loaded is not None else None
    try:
        found = emergency(desk.root, ref.id)
    except NotThisFile as error:
        raise CommandStopped(NOT_DONE, str(error)) from None
    if found is None:
        raise CommandStopped(NOT_DONE, f"{ref.id}: not on this laptop; z in the screens begins it")
    _print(emergency_page(ref.id, name if isinstance(name, str) else ref.id, found, today), form)
    return OK


def _record(desk: Desk, loaded: Loaded) -> Page:
    named = getattr(loaded.record, "bike", None)
    bike = desk.files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    rider = getattr(loaded.record, "rider", None)
    return record_page(loaded, known, desk.units(rider if isinstance(rider, str) else None))


def _dash(desk: Desk, session: str) -> Page:
    """Return the dash card of the session in hand, or of one named, without the rows that note something."""
    ref = find_ref(desk, session, ("session",)) if session else desk.session_in_hand()
    loaded = desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        raise CommandStopped(
            NOT_DONE, "there is no session whose dash could be read", f"  name one: {DASH}/SESSION"
        )
    situation = desk.assembled(ref).situation
    before = last_ridden(situation.history)
    page = dash_page(loaded, bike_of(desk.files, ref), heading_of(desk, ref), situation.day, before=before)
    return attrs.evolve(page, sections=page.sections[:2], verdict="")


def _ledger(desk: Desk, bike: str) -> Page:
    """Return the ledger of every bike, or of one; the rows that choose what is shown are left out."""
    of = find_ref(desk, bike, ("bike",)).id if bike else ""
    page = ledger_page(ledger(desk), LedgerFilter(bike=of))
    return attrs.evolve(page, sections=page.sections[1:])


def _modes(desk: Desk, named: str) -> Page:
    """Return the riding modes and presets of a bike, or of that of the session in hand with its set-up."""
    ref = find_ref(desk, named, ("bike",)) if named else None
    subject = desk.session_in_hand()
    situation = desk.assembled(subject).situation if subject is not None else None
    of = situation.refs.get("bike") if situation is not None else None
    if ref is None and of is None:
        raise CommandStopped(
            NOT_DONE, "there is no session whose bike could be shown", f"  name one: {MODES}/BIKE"
        )
    if situation is not None and situation.bike is not None and ref in (None, of):
        setup, bike, surface = situation.setup, situation.bike, surface_of(situation)
    else:
        loaded = desk.files.read(ref) if ref is not None else None
        if loaded is None or not isinstance(loaded.record, Bike):
            raise CommandStopped(NOT_DONE, f"{ref} cannot be read", f"  see `show {ref}`")
        setup, bike, surface = None, loaded.record, None
    shown = ref or of
    return modes_page(bike.name or (shown.id if shown else ""), setup, bike, surface)


PAGES: dict[str, Callable[[Desk, str], Page]] = {LEDGER: _ledger, DASH: _dash, MODES: _modes}
"""What is asked for in place of a record, with what it is about behind a slash."""
