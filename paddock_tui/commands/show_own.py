"""The pages that `show` makes by itself, each by the name that is asked for in place of a record."""

from collections.abc import Callable

import attrs

from paddock_tui.advice.briefing import briefing
from paddock_tui.advice.ledger import LedgerFilter
from paddock_tui.commands.common import NOT_DONE, OK, USAGE, CommandStopped, columns, find_ref, say
from paddock_tui.commands.printing import AskedPage, print_dict, print_page
from paddock_tui.desk import Desk
from paddock_tui.desk.day.board import BoardMemory
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.emergency import emergency, emergency_standing
from paddock_tui.desk.season import season
from paddock_tui.desk.sessions.came_from import came_from
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.pages.after import AFTER, after_page
from paddock_tui.pages.as_json import page_as_dict
from paddock_tui.pages.before import BEFORE, before_page
from paddock_tui.pages.board import BOARD, board_as_dict, board_page
from paddock_tui.pages.briefing import BRIEF, READ_AT, briefing_lines, briefing_page
from paddock_tui.pages.card import card_as_dict, card_html, card_lines, card_of
from paddock_tui.pages.dash import dash_page, last_ridden
from paddock_tui.pages.emergency import EMERGENCY, emergency_page
from paddock_tui.pages.explanation import surface_of
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.ledger import LEDGER, ledger_page
from paddock_tui.pages.modes import MODES, modes_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.season import SEASON, season_page
from paddock_tui.records.bike import Bike
from paddock_tui.store.emergency import NotThisFile
from paddock_tui.text import printable

CARD = "card"
"""What is asked for in place of a record to have the set-up card."""

DASH = "dash"
"""What is asked for in place of a record to see the dash card."""


def show_own(desk: Desk, asked: AskedPage) -> int:
    """Print one of these pages; return the status."""
    return OWN[asked.name](desk, asked)


def _card(desk: Desk, asked: AskedPage) -> int:
    """Print the set-up card of a session or a profile, or of the session in hand."""
    ref = find_ref(desk, asked.of, ("session", "profile")) if asked.of else desk.session_in_hand()
    card = card_of(desk, ref) if ref is not None else None
    if card is None:
        raise CommandStopped(NOT_DONE, "there is no set-up to print", f"  name one: {CARD}/SESSION")
    if asked.form == "html":
        say((card_html(card),))
    elif asked.form == "json":
        print_dict(card_as_dict(card))
    else:
        say(card_lines(card, min(columns(), 78)))
    return OK


def _brief(desk: Desk, asked: AskedPage) -> int:
    """Print the briefing of a session or a profile, or of the session in hand."""
    ref = find_ref(desk, asked.of, ("session", "profile")) if asked.of else desk.session_in_hand()
    if ref is None or desk.files.read(ref) is None:
        raise CommandStopped(NOT_DONE, "there is no set-up to explain", f"  name one: {BRIEF}/SESSION")
    before = find_ref(desk, asked.came, ("session", "profile")) if asked.came is not None else None
    found = briefing(desk.about(ref), desk.review(ref), came_from(desk.files, ref, before))
    if asked.form == "json":
        print_dict(page_as_dict(briefing_page(found, heading_of(desk, ref), asked.long)))
    else:
        say(briefing_lines(found, min(columns(), READ_AT), asked.long))
    return OK


def _board(desk: Desk, asked: AskedPage) -> int:
    """Print the board of a day, or of today."""
    day = find_ref(desk, asked.of, ("day",)) if asked.of else None
    if asked.form == "json":
        print_dict(board_as_dict(desk, BoardMemory(), day))
    else:
        print_page(board_page(desk, BoardMemory(), day), asked.form)
    return OK


def _before(desk: Desk, asked: AskedPage) -> int:
    """Print what a day needs beforehand: the one named, or the next to come."""
    print_page(before_page(desk, find_ref(desk, asked.of, ("day",)) if asked.of else None), asked.form)
    return OK


def _after(desk: Desk, asked: AskedPage) -> int:
    """Print what a day leaves behind: the one named, or the latest that was ridden."""
    print_page(after_page(desk, find_ref(desk, asked.of, ("day",)) if asked.of else None), asked.form)
    return OK


def _season(desk: Desk, asked: AskedPage) -> int:
    """Print a year of the garage, or this one; falls only where they were asked for."""
    if asked.of and not (asked.of.isdecimal() and len(asked.of) == 4):
        raise CommandStopped(USAGE, f'"{printable(asked.of)}" is no year', f"  name one: {SEASON}/2026")
    print_page(
        season_page(season(desk, int(asked.of) if asked.of else None), falls="incidents" in asked.personal),
        asked.form,
    )
    return OK


def _emergency(desk: Desk, asked: AskedPage) -> int:
    """Print the emergency page of a rider, or how that of each stands."""
    today = desk.now().date()
    if not asked.of:
        riders = {ref.id: emergency_standing(desk.root, ref.id, today) for ref in desk.files.listing("rider")}
        if asked.form == "json":
            print_dict(riders)
        else:
            say(f"{EMERGENCY}/{rider}: {standing}" for rider, standing in riders.items())
        return OK
    ref = find_ref(desk, asked.of, ("rider",))
    loaded = desk.files.read(ref)
    name = loaded.data.get("name") if loaded is not None else None
    try:
        found = emergency(desk.root, ref.id)
    except NotThisFile as error:
        raise CommandStopped(NOT_DONE, str(error)) from None
    if found is None:
        raise CommandStopped(NOT_DONE, f"{ref.id}: not on this laptop; z in the screens begins it")
    print_page(emergency_page(ref.id, name if isinstance(name, str) else ref.id, found, today), asked.form)
    return OK


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
"""Those that print as any page does, with what they are about behind a slash."""


def _as_page(desk: Desk, asked: AskedPage) -> int:
    print_page(PAGES[asked.name](desk, asked.of), asked.form)
    return OK


OWN: dict[str, Callable[[Desk, AskedPage], int]] = {
    CARD: _card,
    BRIEF: _brief,
    BEFORE: _before,
    AFTER: _after,
    BOARD: _board,
    EMERGENCY: _emergency,
    SEASON: _season,
    **dict.fromkeys(PAGES, _as_page),
}
