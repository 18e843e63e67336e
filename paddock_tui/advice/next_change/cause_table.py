"""The table of symptoms: of several felt together the change that answers most, or what parts them."""

import math
from collections.abc import Iterator
from itertools import combinations

import attrs

from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import Cure, Option
from paddock_tui.advice.next_change.evidence import evidence
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.tried import TriedBefore, taken_back, tried_already
from paddock_tui.advice.next_change.words import (
    CauseQuestion,
    Kind,
    Move,
    Passed,
    Proposal,
    Refusal,
    Spoken,
)
from paddock_tui.calc.session_comparison import FEWEST
from paddock_tui.limits.next_change import FEW_SESSIONS
from paddock_tui.records.fields import value_at

WHICH_END = CauseQuestion("Which end?", (("front", "the front"), ("rear", "the rear")))

URGENT = 4
"""Cures that come first whatever else was felt: their place is below this."""


def of_table(given: Given) -> Spoken:
    """Propose the change of the symptom that comes first, or the one that answers most of what was felt."""
    found = proposals(given)
    if not found:
        return Passed("nothing was felt that asks for a change")
    first = found[0]
    if first.kind is Kind.SAME and not first.question:
        return Passed(first.why if first.text.startswith("None:") else f"{first.symptom}: {first.text}")
    return first


def proposals(given: Given) -> list[Proposal]:
    """List a proposal for each symptom, the one that answers most first; each change stands once."""
    before = given.tried
    found = [_proposed(case, cure, before) for case, cure in given.felt]
    held = [_held_back(one, case, cure) for one, (case, cure) in zip(found, given.felt, strict=True)]
    against = _contradiction(held)
    if against is not None:
        return [against, *held]
    return _most_explained(given, held, before)


def _most_explained(given: Given, held: list[Proposal], before: TriedBefore) -> list[Proposal]:
    """Bring the change forward that most symptoms have among theirs; danger stays before everything.

    Where that rests on an answer that is not given yet, its question comes forward.
    """
    answers = [frozenset(_ways(case, cure, before)) for case, cure in given.felt]
    ways = {one for ways in answers for one in ways}
    case = given.case
    measured = [(one, {way_of(move, case) for move in one.moves}) for one in evidence(case)]
    counts = {one: sum(one in ways for ways in (*answers, *(found for _, found in measured))) for one in ways}
    most = max(counts.values(), default=0)
    order = list(range(len(held)))
    if most > 1:
        # The first symptom in the order of phases that has one of the best answers speaks for them.
        best = {one for one, count in counts.items() if count == most}
        speaker = next(place for place in order if answers[place] & best)
        urgent = [place for place in order if given.felt[place][1].first < URGENT]
        order.sort(key=lambda place: (place not in urgent, place not in urgent and place != speaker))
        shared = [held[place].symptom for place in order if answers[place] & best and place != order[0]]
        if order[0] == speaker and shared:
            held[speaker] = _with_why(held[speaker], f"it may answer {' and '.join(shared)} too")
        for one in (one for one, found in measured if found & best and order[0] == speaker):
            held[speaker] = _with_why(held[speaker], f"{one.text}: that points the same way")
    seen: set[str] = set()
    kept: list[Proposal] = []
    for place in order:
        if held[place].text not in seen or held[place].move is None:
            kept.append(held[place])
            seen.add(held[place].text)
    return kept


def _with_why(proposal: Proposal, more: str) -> Proposal:
    return attrs.evolve(proposal, why=f"{proposal.why}; {more}")


def _ways(case: Case, cure: Cure, before: TriedBefore) -> Iterator[tuple[object, ...]]:
    """Give which things would be changed for a symptom and which way, under any answer still open."""
    known = _answered(case, cure)
    for option in cure.options:
        if not option.if_(case) or (option.needs and known and case.answer not in option.needs):
            continue
        made = option.make(case)
        if isinstance(made, Move) and not _refused(made, case, before):
            yield way_of(made, case)


def way_of(move: Move, case: Case) -> tuple[object, ...]:
    """Return what a move changes and which way, whatever by how much."""
    found: list[object] = []
    for put in move.puts:
        old = value_at(case.session, put.path)
        numbers = isinstance(old, int | float) and isinstance(put.value, int | float)
        found.append((put.path, put.value > old if numbers else put.value))
    return tuple(found)


def _proposed(case: Case, cure: Cure, before: TriedBefore) -> Proposal:
    if cure.asks_end and case.symptom.end is None and case.at[:1] == ("symptoms",):
        why = f"{cure.why}; what is changed depends on the end"
        at = (*case.at, "end")
        return Proposal(Kind.ASK, case.named, WHICH_END.text, why, question=WHICH_END, answer_at=at)
    if cure.question is None or _answered(case, cure):
        return _with_where(_of_options(case, cure, before), case)
    outcomes = [_of_options(_with(case, word), cure, before) for word, _ in cure.question.answers]
    if len({(one.kind, one.text) for one in outcomes}) == 1:
        # No answer changes what is proposed: nothing is asked.
        return outcomes[0]
    at = (*case.at, "answer")
    return Proposal(Kind.ASK, case.named, cure.question.text, cure.why, question=cure.question, answer_at=at)


def _with(case: Case, answer: str) -> Case:
    return attrs.evolve(case, symptom=attrs.evolve(case.symptom, answer=answer))


def _with_where(proposal: Proposal, case: Case) -> Proposal:
    return _with_why(proposal, f"answered in {case.answered_in}") if case.answered_in else proposal


def _of_options(case: Case, cure: Cure, before: TriedBefore) -> Proposal:
    passed: list[str] = []
    own = False
    fitting = [one for one in cure.options if one.if_(case) and (not one.needs or case.answer in one.needs)]
    for option in fitting:
        made = option.make(case)
        reason = _refused(made, case, before)
        if reason:
            passed.append(reason)
            own = own or (isinstance(made, Refusal) and made.own)
        elif isinstance(made, Move):
            return _change(case, cure, option, made, tuple(passed))
    said = passed[-1] if passed else cure.otherwise
    kind = Kind.OWN if own else Kind.LOOK if cure.first < URGENT else Kind.SAME
    # What answer or measurement has ruled out is no reason for what is said instead.
    why = f"ruled out here: {cure.why}" if cure.options and not fitting else cure.why
    return Proposal(kind, case.named, f"{said[:1].upper()}{said[1:]}.", why, passed_over=tuple(passed))


def _refused(made: Move | Refusal, case: Case, before: TriedBefore) -> str:
    if isinstance(made, Refusal):
        return made.reason
    again = tried_already(made, case.session, before)
    if again is not None:
        return f"{made.reads}: tried that way here before and {again.says} ({again.when})"
    back = taken_back(made, case.session, before)
    return f"{made.reads}: it would take back what helped here ({back.when})" if back is not None else ""


def _change(case: Case, cure: Cure, option: Option, move: Move, passed: tuple[str, ...]) -> Proposal:
    return Proposal(
        Kind.CHANGE, case.named, move.reads, cure.why, option.expect, option.watch, move, passed_over=passed
    )


def _answered(case: Case, cure: Cure) -> bool:
    return cure.question is not None and case.answer in dict(cure.question.answers)


def _held_back(proposal: Proposal, case: Case, cure: Cure) -> Proposal:
    """Turn a change into none where none is wiser: learning, few laps, ridden differently, a novice."""
    if proposal.kind is not Kind.CHANGE:
        return proposal
    reason = _reason_for_none(proposal, case, cure)
    if not reason:
        return proposal
    return attrs.evolve(
        proposal,
        kind=Kind.SAME,
        text="None: same again.",
        why=f"{reason}; {cure.why}",
        move=None,
        passed_over=(*proposal.passed_over, f"{proposal.text}: later"),
    )


def _reason_for_none(proposal: Proposal, case: Case, cure: Cure) -> str:
    concerns = next(
        (one.concerns for one in cure.options if one.expect == proposal.expect and one.concerns), ""
    )
    if case.symptom.each_lap == "differs":
        return "the same corner is ridden differently each lap"
    if "safety" in concerns:
        return ""
    ridden = list(case.ridden_before())
    here = [one for one in ridden if one.venue == case.venue]
    learn = case.limits[FEW_SESSIONS]
    if "pressure" not in concerns and len(ridden) < learn:
        return _learning(learn, "on a bike")
    if "pressure" not in concerns and case.venue is not None and len(here) < learn:
        return _learning(learn, "at a venue")
    laps = case.clean_laps()
    if laps is not None and laps < FEWEST:
        return f"{laps} clean lap{'' if laps == 1 else 's'}: too few to tell"
    if case.group == "novice" and not concerns:
        return "for a novice the riding is the next thing to change"
    return ""


def _learning(sessions: float, where: str) -> str:
    """Say that the first sessions somewhere are for learning it."""
    few = math.ceil(sessions)
    return f"the first {f'{few} sessions {where} are' if few > 1 else f'session {where} is'} for learning it"


def _contradiction(found: list[Proposal]) -> Proposal | None:
    """Return why nothing is changed yet where two symptoms ask for the opposite."""
    for first, other in combinations((one for one in found if one.move is not None), 2):
        assert first.move is not None
        assert other.move is not None
        values = {put.path: put.value for put in first.move.puts}
        if any(values.get(put.path, put.value) != put.value for put in other.move.puts):
            text = "None yet: two of the symptoms ask for opposite changes."
            why = f"{first.symptom}: {first.text}; {other.symptom}: {other.text}. Ride again, mind the end"
            return Proposal(Kind.SAME, f"{first.symptom}; {other.symptom}", text, why)
    return None
