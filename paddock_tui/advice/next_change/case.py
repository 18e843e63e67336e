"""The case that a proposal is made for: the session that was ridden, one symptom of it, and what is known."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import About, End, PastSession
from paddock_tui.advice.in_force import undone_by
from paddock_tui.calc.cooling_pressure import Freshness, freshness
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.tyre_targets import hot_target_of, target_untold
from paddock_tui.limits import Limits
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike, BikeEnd
from paddock_tui.records.fields import value_at
from paddock_tui.records.hot_target import HotTarget
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Symptom
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shown_words import shown


@attrs.frozen
class Case:
    """One symptom of one ridden session, with the records around it; `at` is its table in the session.

    `answered_in` says where the answer to its question was given, where that was not beside it. `danger` is
    whether something that has a rider down was felt or is open.
    """

    about: About
    symptom: Symptom
    key: str = ""
    at: Path = ()
    answered_in: str = ""
    danger: bool = False

    @property
    def felt(self) -> str:
        """The symptom alone, as it is shown."""
        return shown(self.symptom.what or "")

    @property
    def named(self) -> str:
        """The symptom with its end and its corner, in words."""
        end = f", {self.symptom.end}" if self.symptom.end and self.symptom.end not in self.felt else ""
        corner = f", corner {self.symptom.corner}" if self.symptom.corner else ""
        return f"{self.felt}{end}{corner}"

    @property
    def session(self) -> Session:
        """The session that was ridden."""
        return self.about.session

    @property
    def setup(self) -> SetUp:
        """The set-up as it was ridden."""
        return self.session.setup

    @property
    def bike(self) -> Bike:
        """The bike; an empty one where it is not known."""
        return self.about.situation.bike or Bike()

    @property
    def limits(self) -> Limits:
        """The limits in force."""
        return self.about.situation.limits

    @property
    def end(self) -> End:
        """The end that the symptom names; the front where it names none."""
        return "rear" if self.symptom.end == "rear" else "front"

    @property
    def group(self) -> str:
        """The rider's group; a rider who says none is treated as a novice."""
        rider = self.about.situation.rider
        return (rider.group if rider is not None else None) or "novice"

    @property
    def column(self) -> str:
        """The surface as it is judged: dry, damp or wet; empty where it is not known."""
        return COLUMN.get(self.session.surface or "", "")

    @property
    def answer(self) -> str:
        """The answer to the question about this symptom; empty where it was not given."""
        return self.symptom.answer or ""

    def bike_end(self, end: End) -> BikeEnd:
        """Return one end of the bike."""
        return self.bike.front if end == "front" else self.bike.rear

    def over_target_kpa(self, end: End) -> float | None:
        """Return how far the hot reading stands above this tyre's hot target; None where either is
        missing.
        """
        hot, target = self.hot(end), self.target(end)
        return None if hot is None or target is None else 100.0 * target.over_bar(hot)

    def target(self, end: End) -> HotTarget | None:
        """Return the hot target of one tyre for this surface; None where it has none or that is not known."""
        return hot_target_of(self.about.tyre(end), self.session.surface)

    def no_target(self, end: End) -> str:
        """Say why there is no hot target; empty where there is one."""
        if target_untold(self.about.tyre(end), self.session.surface):
            return "the surface was not written down"
        return "no hot target entered" if self.target(end) is None else ""

    def hot(self, end: End) -> Quantity | None:
        """Return the hot reading of one tyre, where it was taken soon enough to count."""
        reading, minutes = self.session.pressures.get("hot"), self._read_after_min
        if reading is None or (minutes is not None and not _within(minutes, Freshness.HOT, Freshness.WARM)):
            return None
        return reading.front if end == "front" else reading.rear

    def hot_in_time(self, end: End) -> bool:
        """Return whether the hot reading was taken hot: where a time is missing it is taken to be."""
        minutes = self._read_after_min
        return self.hot(end) is not None if minutes is None else _within(minutes, Freshness.HOT)

    @property
    def _read_after_min(self) -> int | None:
        """How long after parking the hot pressures were read; None where a time is missing."""
        reading, parked = self.session.pressures.get("hot"), self.session.parked
        if reading is None or reading.at is None or parked is None:
            return None
        return (reading.at.hour - parked.hour) * 60 + reading.at.minute - parked.minute

    def closed_by(self, name: str) -> str:
        """Say what keeps an adjuster from doing anything, and what frees it; empty where it works."""
        does, frees = undone_by(("setup", "adjusters", name), self.setup, self.bike)
        return f"{does}: {frees}" if does else ""

    def all_laps(self) -> int | None:
        """Count the laps, clean or not; None where nobody knows."""
        return len(self.session.laps) if self.session.laps else self.session.ridden_laps

    def ridden_before(self) -> Iterator[PastSession]:
        """Return the sessions on this bike that this rider rode before this one, newest first."""
        for past in reversed(self.about.history.past):
            if past.rider == self.session.rider and past.ridden:
                yield past

    @property
    def venue(self) -> str | None:
        """The venue of the session's day."""
        return self.about.id_of("venue")

    def clean_laps(self) -> int | None:
        """Count the clean laps, else those that were only counted; None where nobody knows."""
        if self.session.laps:
            return sum(1 for lap in self.session.laps.values() if not lap.mark)
        return self.session.ridden_laps

    def moved_before(self, key: str) -> float | None:
        """Return how far a height in mm was moved since the session that this one was copied from."""
        source = self.about.situation.source
        now = value_at(self.session, ("setup", key))
        before = value_at(source, ("setup", key)) if source is not None else None
        if not isinstance(now, Quantity) or not isinstance(before, Quantity):
            return None
        return now.to("mm") - before.to("mm")


def _within(minutes: int, *wanted: Freshness) -> bool:
    return minutes >= 0 and freshness(minutes) in wanted
