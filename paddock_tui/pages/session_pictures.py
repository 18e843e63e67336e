"""Pictures of sessions: laps in their order, and pressures cold to hot in the band of their target."""

import functools
import itertools
from collections.abc import Iterable, Mapping

from paddock_tui.advice.session_laps import stint_of
from paddock_tui.facts.past import ENDS, End, History, first_set, tyre_of
from paddock_tui.facts.tyre_targets import hot_target_of
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.pictured import picture_row, with_picture
from paddock_tui.pages.pictures import Lanes
from paddock_tui.pages.pictures.laps import LEGEND as OF_LAPS
from paddock_tui.pages.pictures.laps import laps_chart
from paddock_tui.pages.pictures.readings import LEGEND as OF_PRESSURES
from paddock_tui.pages.pictures.readings import TyreReading, pressure_lanes
from paddock_tui.pages.rows import Page, Row
from paddock_tui.quantities import Quantity
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet

_MOST = 9
"""Sessions of a tyre set that are drawn: the last ones."""

_COLD = ("leaving", "cold")
"""Readings that a tyre went out with, the later first."""


def with_session_pictures(
    page: Page, session: Session, tyres: TyreSet | None, within: float, *, timed: bool
) -> Page:
    """Put laps and pressures of a session on top of their sections; laps only where timing is allowed."""
    if timed:
        page = with_picture(page, "laps", laps_row(session), OF_LAPS)
    lanes = pressure_picture(session, tyres, within)
    row = picture_row("pressures, cold to hot", lanes) if lanes is not None else None
    return with_picture(page, "pressures hot", row, OF_PRESSURES)


def pressure_picture(session: Session, tyres: TyreSet | None, within: float) -> Lanes | None:
    """Return the pressures of both tyres cold to hot, `within` bar beside their target; None without one."""
    return pressure_lanes([reading(session, tyres, end, end, within) for end in ENDS])


def laps_row(session: Session) -> Row | None:
    """Make the row of a session's lap chart; None with too few laps."""
    chart = laps_chart(stint_of(session))
    return picture_row("laps in their order", chart) if chart is not None else None


def tyre_pressures_row(name: str, tyres: TyreSet, history: History, end: End, within: float) -> Row | None:
    """Make the row of one tyre's readings over its sessions, the last ones; None without one.

    A tyre that another set began with is followed to there.
    """
    known = history.with_sets({name: tyres})
    first = first_set(known, name, end)
    same = functools.cache(lambda other: first_set(known, other, end) == first)
    on_it = (one.session for one in reversed(history.past) if one.tyres is not None and same(one.tyres))
    last = itertools.islice((one for one in on_it if _hot(one, end) is not None), _MOST)
    lanes = pressure_lanes([reading(one, tyres, end, _named(one), within) for one in reversed(list(last))])
    return picture_row(f"{end} pressures over sessions", lanes) if lanes is not None else None


def reading(session: Session, tyres: TyreSet | None, end: End, label: str, within: float) -> TyreReading:
    """Return what one tyre read in a session, in bar, and its hot target there."""
    target = hot_target_of(tyre_of(tyres, end), session.surface)
    return TyreReading(
        label,
        _first(_of(session.pressures, name, end) for name in _COLD),
        _hot(session, end),
        target.pressure.to("bar") if target is not None else None,
        within,
        target.high.to("bar") if target is not None else None,
    )


def _hot(session: Session, end: End) -> float | None:
    return _of(session.pressures, "hot", end)


def _of(readings: Mapping[str, object], name: str, end: End) -> float | None:
    found = getattr(readings.get(name), end, None)
    return found.to("bar") if isinstance(found, Quantity) else None


def _first(found: Iterable[float | None]) -> float | None:
    return next((one for one in found if one is not None), None)


def _named(session: Session) -> str:
    """Name a session shortly: its day, its number and its surface."""
    day = short_date(session.date) if session.date is not None else ""
    number = str(session.number) if session.number is not None else ""
    return " ".join(filter(None, (day, number, session.surface)))
