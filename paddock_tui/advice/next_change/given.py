"""What the causes of a next change look at: the session ridden, what is open, what was before."""

from collections.abc import Iterator
from functools import cached_property

import attrs

from paddock_tui.advice.about import ENDS, About, End, PastSession
from paddock_tui.advice.in_force import undone_by
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import ELSEWHERE, Cure
from paddock_tui.advice.next_change.kept_answers import with_answer
from paddock_tui.advice.next_change.table import SUSPENSION
from paddock_tui.advice.next_change.table_rest import LOOKS
from paddock_tui.advice.next_change.tried import TriedBefore, taken_back
from paddock_tui.advice.next_change.words import Move
from paddock_tui.facts.core import ABSENT, NotKnown
from paddock_tui.matters import Matter
from paddock_tui.records.differences import SetUpDifference, differences
from paddock_tui.records.electronics import HELP_FUNCTIONS, function_of
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import DANGERS, Symptom

BEHAVIOURS = ("bars-shake-or-weave", "front-wheel-locked", "tuck-or-rear-lock")
"""The kinds of open matter that are about such behaviour, and no part."""

_STEP = Cure(
    ELSEWHERE,
    "a step at the groove edges comes from quick rebound, mostly at the shock",
    tuple(SUSPENSION["vague"].options),
    SUSPENSION["vague"].question,
    SUSPENSION["vague"].otherwise,
)


@attrs.frozen(eq=False)
class Given:
    """One ridden session with everything that a cause may ask about; each thing is found once."""

    about: About

    @property
    def session(self) -> Session:
        """The session that was ridden."""
        return self.about.session

    @property
    def case(self) -> Case:
        """The session without a symptom, for what is asked about the whole of it."""
        return Case(self.about, Symptom(), danger=self.danger)

    @cached_property
    def matters(self) -> tuple[Matter, ...]:
        """What is open after this session, worst first; nothing where that cannot be told."""
        found = self.about.situation.facts().get("open_matters")
        return () if found is ABSENT or isinstance(found, NotKnown) else found

    @cached_property
    def danger(self) -> bool:
        """Whether something that has a rider down was felt, or is open."""
        felt = any(one.what in DANGERS for one in self.session.symptoms.values())
        return felt or any(one.kind in BEHAVIOURS for one in self.matters)

    @cached_property
    def felt(self) -> tuple[tuple[Case, Cure], ...]:
        """What was felt and seen, each with its cure: danger first, then the earlier phase of a corner."""
        return tuple(sorted(self._cases(), key=lambda pair: (pair[1].first, pair[1].phase, pair[0].key)))

    def _cases(self) -> Iterator[tuple[Case, Cure]]:
        for key, symptom in self.session.symptoms.items():
            cure = SUSPENSION.get(symptom.what or "")
            if cure is not None:
                case = Case(self.about, symptom, key, ("symptoms", key), danger=self.danger)
                yield with_answer(case, cure), cure
        for end in ENDS:
            look = self.session.look.get(end)
            for seen in (look.seen or ()) if look is not None else ():
                cure = LOOKS.get(seen, _STEP if seen == "step at the grooves" else None)
                if cure is not None and look is not None:
                    symptom = Symptom(what=seen, end=end, answer=look.answer)
                    yield Case(self.about, symptom, at=("look", end), danger=self.danger), cure

    @cached_property
    def tried(self) -> TriedBefore:
        """What was tried before: what failed, and what helped here."""
        return TriedBefore(self.about)

    def takes_back(self, move: Move) -> str:
        """Say that a move would take back what helped here, and who says so; empty where it would not."""
        found = taken_back(move, self.session, self.tried)
        return f"it helped here ({found.says}, {found.when})" if found is not None else ""

    @cached_property
    def before(self) -> PastSession | None:
        """The session that this one was copied from; None where it is not on record, or was not ridden."""
        past = self.about.history.of(self.session.copied_from)
        return past if past is not None and past.ridden else None

    @cached_property
    def last_ridden(self) -> PastSession | None:
        """The session ridden on this bike before this one, by whomever."""
        ridden = self.about.history.ridden
        return ridden[-1] if ridden else None

    @cached_property
    def block(self) -> tuple[SetUpDifference, ...]:
        """What was changed for this session and acted: levels, adjusters, offsets, springs, heights, gearing.

        Starting pressures follow the conditions, states such as the limiter the day: they are no part of it.
        """
        if self.before is None:
            return ()
        old, new = self.before.session.setup, self.session.setup
        bike = self.about.situation.bike
        found = (one for one in differences(old, new, bike) if one.known and self._counts(one))
        return tuple(
            one
            for one in found
            if not (undone_by(one.path, old, bike)[0] and undone_by(one.path, new, bike)[0])
        )

    def _counts(self, one: SetUpDifference) -> bool:
        if one.path[1] in ("front_start", "rear_start", "mode"):
            return False
        if one.kind != "controls":
            return True
        bike = self.about.situation.bike
        control = bike.controls.get(one.key) if bike is not None else None
        return control is not None and function_of(one.key, control) in (*HELP_FUNCTIONS, "engine-braking")

    def tyre_kind(self, end: End) -> str:
        """Return the kind of one tyre; empty where it is not known."""
        return self.about.tyre(end).kind or ""
