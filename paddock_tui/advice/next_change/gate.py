"""What comes before any change: how pressures, tyres, chain and bearings stand."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.next_change.case import Case
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION
from paddock_tui.records.common import Check
from paddock_tui.records.day import DayEntry
from paddock_tui.records.session_parts import Symptom


@attrs.frozen
class Looked:
    """One thing that comes before a change: whether it is right (None: nobody looked), and in words."""

    what: str
    right: bool | None
    said: str

    @property
    def is_pressure(self) -> bool:
        """Whether it is about a pressure, which is a cause of its own."""
        return self.what.endswith("pressure")


def looked_at(about: About) -> tuple[Looked, ...]:
    """Return how pressures, tyres, chain and bearings stand: they come before any change."""
    return (*_pressures(about), _tyres(about), _chain(about), _bearings(about))


def _pressures(about: About) -> Iterator[Looked]:
    case = Case(about, Symptom())
    for end in ENDS:
        over = case.over_target_kpa(end)
        if over is None:
            lacks = case.no_target(end) or "not read hot"
            yield Looked(f"{end} pressure", None, lacks)
        elif abs(over) <= 100.0 * case.limits[OFF_TARGET_CAUTION]:
            near = figures.pressure(100.0 * case.limits[OFF_TARGET_CAUTION], about.units)
            yield Looked(f"{end} pressure", True, f"within {near} of its hot target")
        else:
            way = "over" if over > 0 else "under"
            by = figures.pressure(abs(over), about.units)
            yield Looked(f"{end} pressure", False, f"{by} {way} its hot target")


def _tyres(about: About) -> Looked:
    looks = about.session.look
    if not looks:
        return Looked("tyres", None, "not looked at")
    compared = 0
    for end in ENDS:
        tyre = about.tyre(end)
        treads = [
            one.to("mm") for one in (tyre.tread_left, tyre.tread_middle, tyre.tread_right) if one is not None
        ]
        later = _after(tyre.tread_measured, about.session.date)
        if not treads or later or tyre.worn_at is None:
            continue
        if min(treads) <= tyre.worn_at.to("mm"):
            return Looked("tyres", False, f"the {end} one is worn")
        compared += 1
    if compared < len(ENDS):
        return Looked("tyres", None, "seen, tread not compared with its wear limit")
    return Looked("tyres", True, "tread over its wear limit at both ends")


def _after(measured: dt.date | None, day: dt.date | None) -> bool:
    """Return whether a tread was measured after the session, and so says nothing of it."""
    return measured is not None and day is not None and measured > day


def _chain(about: About) -> Looked:
    slack = about.session.chain_slack
    if slack is not None:
        return Looked("chain", None, f"{slack} at the tight point: compare with the manual")
    return _ticked(about, "chain", "chain")


def _bearings(about: About) -> Looked:
    return _ticked(about, "bearings", "bearing")


def _ticked(about: About, what: str, word: str) -> Looked:
    """Tell by the checks of the day and of the session whose item or text names the thing."""
    found = [check for name, check in _checks(about) if word in name]
    if any(check.status == "to fix" for check in found):
        return Looked(what, False, "to fix, says the checklist")
    if any(check.status == "ok" for check in found):
        return Looked(what, True, "ok, says the checklist")
    return Looked(what, None, "not looked at today")


def _checks(about: About) -> Iterator[tuple[str, Check]]:
    situation = about.situation
    day, session = situation.day, about.session
    entry = DayEntry()
    if day is not None:
        entry = day.entry_of(session.rider, session.bike)
    texts: dict[str, str] = {}
    for one in situation.checklists.values():
        texts.update({name: item.text or "" for name, item in one.items.items()})
    for checks in (entry.checks, session.checks):
        for name, check in checks.items():
            yield f"{name} {texts.get(name, '')}".casefold(), check
