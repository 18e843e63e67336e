"""What went before: this bike's earlier sessions as plain records, and what they refer to."""

from typing import Any

import attrs

from paddock_tui.facts.pace import usual_lap
from paddock_tui.facts.past import ENDS, NOTHING, End, History, PastSession, first_set, tyre_of
from paddock_tui.facts.sags_taken import is_whole, last_sag, sag_of_rider
from paddock_tui.facts.situation import Situation
from paddock_tui.records.common import Units
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import SagReading
from paddock_tui.records.setup import SetUp
from paddock_tui.records.tyres import Tyre

__all__ = [
    "ENDS",
    "NOTHING",
    "About",
    "End",
    "History",
    "MeasuredSag",
    "PastSession",
    "first_set",
    "latest_sag",
    "tyre_of",
    "usual_lap",
]


@attrs.frozen(eq=False)
class About:
    """What is looked at: a situation, what went before it, and the units that figures are shown in."""

    situation: Situation
    history: History = NOTHING
    units: Units = attrs.field(factory=Units)
    worked_out: dict[object, Any] = attrs.field(factory=dict, init=False, repr=False)
    """What was worked out for it already, by how."""

    @property
    def setup(self) -> SetUp:
        """The set-up in question; an empty one where there is none."""
        return self.situation.setup or SetUp()

    @property
    def session(self) -> Session:
        """The session in question; an empty one on a profile."""
        return self.situation.session or Session()

    @property
    def place(self) -> str:
        """How the session or profile is called where values come from it."""
        return "this session" if self.situation.session is not None else "this profile"

    def id_of(self, role: str) -> str | None:
        """Return the id of the record that plays a role; None where there is none."""
        ref = self.situation.refs.get(role)
        return ref.id if ref is not None else None

    def tyre(self, end: End) -> Tyre:
        """Return the tyre at one end; an empty one where the set is not known."""
        return tyre_of(self.situation.tyres, end)


@attrs.frozen
class MeasuredSag:
    """A reading of sag with what it was taken under: the session, its rider, and the preload then."""

    reading: SagReading
    where: str
    rider: str | None


def latest_sag(about: About, end: End, load: str, rider: str | None = None) -> MeasuredSag | None:
    """Return the last full reading of one end, this session's first; of one rider where named."""
    own = about.session.sag.get(end, {}).get(load)
    if own is not None and is_whole(own) and rider in (None, about.session.rider):
        return MeasuredSag(own, "this session", about.session.rider)
    history = about.history
    found = last_sag(history, end, load) if rider is None else sag_of_rider(history, end, load, rider)
    if found is None:
        return None
    return MeasuredSag(found.reading, f"session {found.past.id}", found.past.session.rider)
