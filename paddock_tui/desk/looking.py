"""What a garage in hand is looked at for: situations, reviews, advice.

What judges is loaded once it is asked for.
"""

import datetime as dt
from collections.abc import Callable
from functools import cached_property
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

import attrs

from paddock_tui.desk.lookup import session_in_hand
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.store.garage import GarageFiles

if TYPE_CHECKING:
    from paddock_tui.advice.about import About
    from paddock_tui.desk.edits.remedies import Preview
    from paddock_tui.desk.histories import Histories
    from paddock_tui.desk.situations import Assembled
    from paddock_tui.facts import Facts, Situation
    from paddock_tui.facts.past import History
    from paddock_tui.rules import Review
    from paddock_tui.rules.kept import KeptReviews

Now = Callable[[], dt.datetime]


class LooksAt:
    """A garage's files and a clock, and what is seen there; commands that judge nothing load no rules."""

    def __init__(self, files: GarageFiles, now: Now) -> None:
        self.files = files
        """The files of the garage, edits that are not on disk yet included."""
        self.now = now

    @property
    def root(self) -> FilePath:
        """The folder of the garage."""
        return self.files.root

    @cached_property
    def histories(self) -> "Histories":
        """What went before each session, as far as it was asked for."""
        from paddock_tui.desk.histories import Histories

        return Histories()

    @cached_property
    def _kept_reviews(self) -> "KeptReviews":
        from paddock_tui.rules import registered  # noqa: F401 - nothing is judged by some of the rules
        from paddock_tui.rules.kept import KeptReviews

        return KeptReviews()

    def session_in_hand(self) -> Ref | None:
        """Return the session that everything is about when nobody says otherwise."""
        return session_in_hand(self.files, self.now())

    def assembled(self, ref: Ref, going_out: bool = False) -> "Assembled":
        """Return the situation of a session or a profile, with what could not be read."""
        from paddock_tui.desk.situations import assemble

        return assemble(self.files, ref, self.now(), going_out, self.histories)

    def assembled_without_past(self, ref: Ref) -> "Assembled":
        """Return the situation of a session or a profile without its past: nothing is judged by it."""
        from paddock_tui.desk.histories import Untold
        from paddock_tui.desk.situations import assemble

        return assemble(self.files, ref, self.now(), histories=Untold())

    def as_if_made(self, ref: Ref, step: Step) -> "Situation":
        """Return the situation of a session that a step would make; nothing is changed."""
        from paddock_tui.desk.situations import assemble
        from paddock_tui.store.aside import aside

        files = aside(self.files)
        files.make(step)
        return assemble(files, ref, self.now(), histories=self.histories.aside()).situation

    def about(self, ref: Ref | None, assembled: "Assembled | None" = None) -> "About":
        """Return what advice may look at: a situation, this bike's sessions before it, the rider's units."""
        from paddock_tui.advice.about import About
        from paddock_tui.facts import Situation, registered  # noqa: F401 - advice asks for facts

        if ref is None:
            return About(Situation(now=self.now()), units=self.units())
        situation = (assembled or self.assembled(ref)).situation
        rider = situation.refs.get("rider")
        units = self.units(rider.id if rider is not None else None)
        return About(situation, situation.history, units)

    def history_of(self, bike: Ref) -> "History":
        """Return every session of a bike that is not retired, as its ledger is made from."""
        from paddock_tui.facts import Situation

        return self.histories.of(self.files, bike, Situation(refs={"bike": bike}, now=self.now()))

    def review(self, ref: Ref | None = None, going_out: bool = False) -> "Review":
        """Judge a session (the one in hand) or a profile, whole."""
        from paddock_tui.rules import Review

        about = ref or self.session_in_hand()
        if about is None:
            return Review(about_a_session=False)
        return self.judged(self.assembled(about, going_out).situation)

    def judged(self, situation: "Situation") -> "Review":
        """Judge a situation, whole; while nothing of it is different the same review is given again."""
        return self._kept_reviews.review(situation)

    def facts_of(self, situation: "Situation") -> "Facts":
        """Return the facts of a situation, for which nothing is judged; where it was, most are known."""
        judged = "_kept_reviews" in vars(self)
        return self._kept_reviews.facts(situation) if judged else situation.facts()

    def units(self, rider: str | None = None) -> Units:
        """Return the units of bare numbers: a rider's own where they have some, over the garage's."""
        own = Units()
        loaded = self.files.read(Ref("rider", rider)) if rider is not None else None
        if loaded is not None and isinstance(loaded.record, Rider):
            own = loaded.record.units
        base = self.files.garage().units
        return Units(*(getattr(own, one.name) or getattr(base, one.name) for one in attrs.fields(Units)))

    def previewed(self, step: Step, subject: Ref, before: "Review | None" = None) -> "Preview":
        """Return what a step would do to the review of a session or profile; nothing is changed.

        `before` is the review as it is, where it is at hand.
        """
        from paddock_tui.desk.edits.remedies import previewed

        return previewed(self.files, self.now(), self.histories, step, subject, before)
