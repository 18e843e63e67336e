"""What advice is asked about in tests: sessions of the sample garage, and small records written as TOML."""

import datetime as dt
import functools
import tomllib
from typing import Any

from paddock_tui.advice.about import About, History, PastSession
from paddock_tui.advice.calculators import Answer, Calculator
from paddock_tui.desk.situations import assemble
from paddock_tui.facts import Situation
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.reading import read_record
from paddock_tui.records.session import Session
from paddock_tui.records.tyres import TyreSet
from paddock_tui.store.garage import GarageFiles
from tests.sample import SAMPLE

NOON = dt.datetime(2026, 6, 20, 12, 40)
BAR = Units(pressure="bar", temperature="C", speed="km/h", distance="km", mass="kg", volume="l")
PSI = Units(pressure="psi", temperature="F", speed="mph", distance="mi", mass="lb", volume="US gal")
_FILES = GarageFiles(SAMPLE)


@functools.cache
def sample(kind: str, name: str, units: Units = BAR) -> About:
    """Give a session or profile of the sample garage with what went before it."""
    ref = Ref(kind, name)
    situation = assemble(_FILES, ref, NOON).situation
    return About(situation, situation.history, units)


def session(toml: str, bike: Bike | None = None) -> Session:
    found = read_record("session", tomllib.loads(toml), bike)
    assert isinstance(found.record, Session)
    assert not found.troubles, found.troubles
    return found.record


def bike(toml: str) -> Bike:
    found = read_record("bike", tomllib.loads(toml))
    assert isinstance(found.record, Bike)
    assert not found.troubles, found.troubles
    return found.record


def tyres(toml: str) -> TyreSet:
    found = read_record("tyres", tomllib.loads(toml))
    assert isinstance(found.record, TyreSet)
    return found.record


def rider(toml: str) -> Rider:
    found = read_record("rider", tomllib.loads(toml))
    assert isinstance(found.record, Rider)
    return found.record


def venue(toml: str) -> Venue:
    found = read_record("venue", tomllib.loads(toml))
    assert isinstance(found.record, Venue)
    return found.record


ROLES = {
    "bike": Ref("bike", "plain"),
    "rider": Ref("rider", "ann"),
    "venue": Ref("venue", "here"),
    "tyres": Ref("tyres", "set"),
}


def about(history: History | None = None, units: Units = BAR, rider_id: str = "ann", **records: Any) -> About:
    """Make what advice is asked about from records by their roles."""
    refs = {role: ref for role, ref in ROLES.items() if role in records}
    if "rider" in refs:
        refs["rider"] = Ref("rider", rider_id)
    situation = Situation(refs=refs, now=NOON, **records)
    return About(situation, history or History(), units)


def past(number: int, toml: str, bike: Bike | None = None, day: str = "2026-05-16") -> PastSession:
    """Write an earlier session here on the plain bike, with tyres `set`, laps of 4 km."""
    lead = f'date = {day}\nnumber = {number}\nbike = "plain"\nrider = "ann"\ntyres = "set"\n'
    return PastSession(f"{day}-{number}", session(lead + toml, bike), "here", 4.0)


def answers(calculator: Calculator, units: Units = BAR, /, **typed: Any) -> dict[str, Answer]:
    return {one.key: one for one in calculator.answers(units, typed)}
