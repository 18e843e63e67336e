"""The dash card: what to read after the last ignition-on, in the bike's own numbers, as it has to be."""

from collections.abc import Iterator, Set

from paddock_tui.desk.day.dash import HAPPENINGS, MODE, READ, VALUES, planned
from paddock_tui.facts.controls import short_range
from paddock_tui.facts.dash import undone_by
from paddock_tui.facts.past import History
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import UNKNOWN_WORD, with_trouble
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.day import RidingDay
from paddock_tui.records.electronics import Control, function_of, speed_of
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.shapes import Setting
from paddock_tui.records.shapes_of_bike import is_off, label_of
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

SEEN = "seen"
KEYS = "enter: as planned; else type what it shows"
"""What the keys do on a row of this page."""


def dash_page(
    loaded: Loaded,
    bike: Bike | None,
    heading: str,
    day: RidingDay | None = None,
    seen: Set[Path] = frozenset(),
    before: Session | None = None,
) -> Page:
    """Make the page; `seen` are the rows that were found as planned and wait for the others.

    `before` is the session that this bike was last ridden in: rows that differ from what the dash showed then
    say how they are reached.
    """
    title = f"dash card · {heading}"
    session = loaded.record
    if not isinstance(session, Session) or bike is None:
        return Page(title, (Section("dash", (_nothing("Which bike it is, is not known."),)),))
    if not bike.controls:
        words = "This bike has nothing to set." if bike.electronics else "The bike's controls are not listed."
        return Page(title, (Section("dash", (_nothing(words),)),))
    limit = day.limits.pit_lane if day is not None else None
    rows = tuple(_rows(loaded, session, bike, limit, seen, before))
    return Page(
        title,
        (
            Section("after the last ignition-on", (_whole(loaded, session, bike),), KEYS),
            Section("the dash has to show", rows),
            Section("this undoes it, enter notes it now", tuple(_happenings(session))),
        ),
    )


def rows_to_read(page: Page) -> tuple[Row, ...]:
    """List the rows that are compared with the dash."""
    return tuple(
        row for row in page.rows() if row.kind == "ask" and row.path[:1] == ("dash",) and row.path != READ
    )


def _whole(loaded: Loaded, session: Session, bike: Bike) -> Row:
    dash, since = session.dash, undone_by(session, bike)
    differs = bool(dash.values) or dash.shown_mode is not None
    read = f"read {dash.read:%H:%M}" if dash.read is not None else "not read"
    said = f"{read} {dash.by}" if dash.read is not None and dash.by else read
    return with_trouble(
        loaded,
        Row(
            label="the rest as planned" if differs else "all as planned",
            value=printable(f"{said}, then {since}: read it again" if since else said),
            kind="ask",
            ref=loaded.ref,
            path=READ,
            known=dash.read is not None and not since,
        ),
    )


def last_ridden(history: History) -> Session | None:
    """Return the session that the bike was last ridden in; None where none is known."""
    return history.ridden[-1].session if history.ridden else None


def _rows(
    loaded: Loaded,
    session: Session,
    bike: Bike,
    limit: Quantity | None,
    seen: Set[Path],
    before: Session | None,
) -> Iterator[Row]:
    if bike.modes:
        shown = session.dash.shown_mode
        yield _row(loaded, MODE, "riding mode", session.setup.mode, shown, "", "", seen)
    for name, control in bike.controls.items():
        path = (*VALUES, name)
        plan = planned(session, bike, path)
        last = _shown_last(path, session, before, bike)
        way = _reached(control) if plan is not None and last not in (None, plan) else ()
        words = "; ".join((*way, *_asides(name, control, plan, session, bike, limit)))
        bounds = short_range(control)
        yield _row(loaded, path, label_of(name), plan, session.dash.values.get(name), bounds, words, seen)


def _row(
    loaded: Loaded,
    path: Path,
    label: str,
    plan: Setting | None,
    shown: Setting | None,
    bounds: str,
    words: str,
    seen: Set[Path],
) -> Row:
    differs = shown is not None and shown != plan
    said = UNKNOWN_WORD if plan is None else str(plan)
    return with_trouble(
        loaded,
        Row(
            label=label,
            value=printable(f"{shown}, plan {said}" if differs else said),
            range=bounds,
            aside="; ".join(part for part in (SEEN if path in seen else "", printable(words)) if part),
            kind="ask",
            ref=loaded.ref,
            path=path,
            severity="serious" if differs else "",
            known=plan is not None,
        ),
    )


def _shown_last(path: Path, session: Session, before: Session | None, bike: Bike) -> Setting | None:
    """Return what the dash showed last on one row: other than planned now, or in the session before."""
    now = session.dash.values.get(path[-1])
    if now is not None or before is None:
        return now
    then = before.dash.values.get(path[-1])
    return then if then is not None else planned(before, bike, path)


def _reached(control: Control) -> tuple[str, ...]:
    """Say how a control is reached on the dash, and when the bike lets it be changed."""
    return tuple(filter(None, (control.reached, control.change_when)))


def _asides(
    name: str, control: Control, plan: Setting | None, session: Session, bike: Bike, limit: Quantity | None
) -> Iterator[str]:
    """Say what matters of one row: reset by the key, fixed by the mode, launch, the posted limit."""
    if control.key_off == "resets":
        then = control.value_after_key_off
        yield "resets at ignition off" + ("" if then is None else f", to {then}")
    elif control.key_off is None:
        yield "after ignition off: not known"
    here = control_in_force(name, session.setup, bike)
    if here.fixed is not None:
        yield "fixed by mode"
    elif not here.mode_known:
        yield "riding mode not known"
    function = function_of(name, control)
    if function == "launch" and plan is not None and not is_off(control, plan):
        yield "armed"
    if function == "pit-limiter":
        yield _posted(plan, limit)


def _posted(plan: Setting | None, limit: Quantity | None) -> str:
    if limit is None:
        return "posted limit: not known"
    speed = speed_of(plan) if plan is not None else None
    over = speed is not None and speed.to("km/h") > limit.to("km/h")
    return f"over the posted {limit}" if over else f"posted {limit}"


def _happenings(session: Session) -> Iterator[Row]:
    for what in HAPPENINGS:
        times = [event.at for event in session.events.values() if event.what == what and event.at is not None]
        last = f"last {max(times):%H:%M}" if times else ""
        yield Row(what, last, kind="ask", path=("events", what), key="note")


def _nothing(words: str) -> Row:
    return Row("", words, kind="text", key="nothing")
