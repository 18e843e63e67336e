"""An answer that was given once is not asked for again: by the same question, at the same end, that day."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import PRESSED, Cure
from paddock_tui.advice.next_change.table import SUSPENSION
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Symptom


def with_answer(case: Case, cure: Cure) -> Case:
    """Return the case with the answer that its question was given elsewhere, where it has none itself."""
    if cure.question is None or case.answer:
        return case
    for where, symptom in _answered(case):
        other = SUSPENSION.get(symptom.what or "")
        if other is None or other.question != cure.question or not symptom.answer:
            continue
        # A push test says the same of whatever is felt there; any other question is about its symptom.
        if cure.question is PRESSED and cure.end_of(case) == other.end_of(
            attrs.evolve(case, symptom=symptom)
        ):
            answered = attrs.evolve(case.symptom, answer=symptom.answer)
            return attrs.evolve(case, symptom=answered, answered_in=where)
        if cure.question is not PRESSED and symptom.what == case.symptom.what:
            answered = attrs.evolve(case.symptom, answer=symptom.answer)
            return attrs.evolve(case, symptom=answered, answered_in=where)
    return case


def _answered(case: Case) -> Iterator[tuple[str, Symptom]]:
    """List the symptoms of this session, then of the earlier ones of the day on the same damping."""
    for key, symptom in case.session.symptoms.items():
        if key != case.key:
            yield "this session", symptom
    for past in reversed(case.about.history.past):
        if past.date != case.session.date or past.rider != case.session.rider:
            continue
        session = past.session
        if not _same_suspension(session, case.session):
            return
        for symptom in session.symptoms.values():
            yield f"session {session.number}" if session.number is not None else past.id, symptom


def _same_suspension(one: Session, other: Session) -> bool:
    first, second = one.setup, other.setup
    return (first.damping, first.adjusters, first.offsets) == (
        second.damping,
        second.adjusters,
        second.offsets,
    )
