"""`show`: a garage, its ledger, a dash card, or one of its records, as plain text."""

import attrs

from paddock_tui.advice.ledger import LedgerFilter
from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, columns, find_ref, open_desk, say
from paddock_tui.desk import Desk
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.sessions.ledger import ledger
from paddock_tui.pages.dash import dash_page
from paddock_tui.pages.explanation import surface_of
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.ledger import LEDGER, ledger_page
from paddock_tui.pages.modes import MODES, modes_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.record import record_page
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref

DASH = "dash"
"""What is asked for in place of a record to see the dash card."""


def show(folder: str, wanted: str | None, *, paths: bool = False) -> int:
    """Print the garage's contents, its ledger, or one record; status 3 where its file cannot be read."""
    desk = open_desk(folder)
    if wanted is None:
        say(plain_page(garage_page(desk), columns()))
        return OK
    if wanted.partition("/")[0] == LEDGER:
        return _ledger(desk, wanted.partition("/")[2])
    if wanted.partition("/")[0] == DASH:
        return _dash(desk, wanted.partition("/")[2])
    if wanted.partition("/")[0] == MODES:
        return _modes(desk, wanted.partition("/")[2])
    ref = find_ref(desk, wanted)
    loaded = desk.files.read(ref)
    if loaded is None:
        return NOT_DONE
    named = getattr(loaded.record, "bike", None)
    bike = desk.files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    rider = getattr(loaded.record, "rider", None)
    page = record_page(loaded, known, desk.units(rider if isinstance(rider, str) else None))
    say(plain_page(page, columns(), paths=paths))
    return NOT_DONE if loaded.record is None else OK


def _dash(desk: Desk, session: str) -> int:
    """Print the dash card of the session in hand, or of one named, without the rows that note something."""
    ref = find_ref(desk, session, ("session",)) if session else desk.session_in_hand()
    loaded = desk.files.read(ref) if ref is not None else None
    if ref is None or loaded is None:
        raise CommandStopped(
            NOT_DONE, "there is no session whose dash could be read", f"  name one: {DASH}/SESSION"
        )
    day = desk.assembled(ref).situation.day
    page = dash_page(loaded, bike_of(desk.files, ref), heading_of(desk, ref), day)
    say(plain_page(attrs.evolve(page, sections=page.sections[:2], verdict=""), columns()))
    return OK


def _ledger(desk: Desk, bike: str) -> int:
    """Print the ledger of every bike, or of one; the rows that choose what is shown are left out."""
    of = find_ref(desk, bike, ("bike",)).id if bike else ""
    page = ledger_page(ledger(desk), LedgerFilter(bike=of))
    say(plain_page(attrs.evolve(page, sections=page.sections[1:]), columns()))
    return OK


def _modes(desk: Desk, named: str) -> int:
    """Print the riding modes and presets of a bike, or of that of the session in hand with its set-up."""
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
            return NOT_DONE
        setup, bike, surface = None, loaded.record, None
    shown = ref or of
    say(plain_page(modes_page(bike.name or (shown.id if shown else ""), setup, bike, surface), columns()))
    return OK
