"""Choosing: of all that was felt and seen the one next change, or none, with what was passed over."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.next_change import gate
from paddock_tui.advice.next_change.case import FEW_LAPS, FEW_SESSIONS, Case
from paddock_tui.advice.next_change.cures import ELSEWHERE, Cure, Option
from paddock_tui.advice.next_change.levels import toward_target
from paddock_tui.advice.next_change.table import SUSPENSION
from paddock_tui.advice.next_change.table_rest import LOOKS
from paddock_tui.advice.next_change.tried import Tried, made_worse, tried_already
from paddock_tui.advice.next_change.words import CannotChange, Kind, Move, Proposal
from paddock_tui.records.session_parts import Symptom

_STEP = Cure(
    ELSEWHERE,
    "a step at the groove edges comes from quick rebound, mostly at the shock",
    tuple(one for one in SUSPENSION["vague"].options),
    SUSPENSION["vague"].question,
    SUSPENSION["vague"].otherwise,
)


@attrs.frozen
class Advised:
    """The one proposal, the others that wait behind it, and what comes before any change."""

    proposal: Proposal
    waiting: tuple[Proposal, ...] = ()
    looked_at: tuple[gate.Looked, ...] = ()
    session: str = ""


def next_change(about: About) -> Advised:
    """Return the one next change for a session that was ridden, or none, and why.

    First what must be mended, then what is dangerous, then the rest by corner phase: what goes wrong on the
    brakes shapes everything after it. A change that was tried here and made it worse is passed over.
    """
    looked = gate.looked_at(about)
    mend = tuple(gate.mends(about))
    if mend:
        text = "Do not go out; mend: " + "; ".join(mend) + "."
        why = "nothing else counts before this is right; a qualified person looks at brakes, leaks and tyres"
        return Advised(Proposal(Kind.MEND, "", text, why), (), looked)
    wrong = [one for one in looked if one.right is False]
    cases = sorted(_cases(about), key=lambda pair: (pair[1].first, pair[1].phase, pair[0].key))
    worse = made_worse(about)
    found = [_proposed(case, cure, worse) for case, cure in cases]
    if wrong:
        return Advised(_first_right(about, wrong), tuple(found), looked)
    if not found:
        why = "nothing was felt that asks for one; one session more on this set-up tells more than a change"
        return Advised(Proposal(Kind.SAME, "", "None: same again.", why), (), looked)
    found = [_held_back(one, case, cure) for one, (case, cure) in zip(found, cases, strict=True)]
    against = _contradiction(found)
    if against is not None:
        return Advised(against, tuple(found), looked)
    return Advised(found[0], tuple(found[1:]), looked)


def _cases(about: About) -> Iterator[tuple[Case, Cure]]:
    for key, symptom in about.session.symptoms.items():
        cure = SUSPENSION.get(symptom.what or "")
        if cure is not None:
            yield Case(about, symptom, key, ("symptoms", key)), cure
    for end in ENDS:
        look = about.session.look.get(end)
        for seen in (look.seen or ()) if look is not None else ():
            cure = LOOKS.get(seen, _STEP if seen == "step at the grooves" else None)
            if cure is not None and look is not None:
                case = Case(about, Symptom(what=seen, end=end, answer=look.answer), at=("look", end))
                yield case, cure


def _proposed(case: Case, cure: Cure, worse: tuple[Tried, ...]) -> Proposal:
    named = _named(case)
    passed: list[str] = []
    own = False
    asks = cure.question if cure.question is not None and not _answered(case, cure) else None
    for option in cure.options:
        if not option.if_(case):
            continue
        if asks is not None and option.needs:
            continue
        if option.needs and case.answer not in option.needs:
            continue
        made = option.make(case)
        reason = _refused(made, case, worse)
        if reason:
            passed.append(reason)
            own = own or (isinstance(made, CannotChange) and made.own)
        elif isinstance(made, Move):
            return _change(case, cure, option, made, tuple(passed))
    if asks is not None:
        at = (*case.at, "answer")
        return Proposal(
            Kind.ASK, named, asks.text, cure.why, question=asks, answer_at=at, passed_over=tuple(passed)
        )
    text = (
        passed[-1][:1].upper() + passed[-1][1:] + "."
        if passed
        else cure.otherwise[:1].upper() + cure.otherwise[1:] + "."
    )
    kind = Kind.OWN if own else Kind.LOOK if cure.first < 4 else Kind.SAME
    return Proposal(kind, named, text, cure.why, passed_over=tuple(passed))


def _refused(made: Move | CannotChange, case: Case, worse: tuple[Tried, ...]) -> str:
    if isinstance(made, CannotChange):
        return made.reason
    before = tried_already(made, case.session, worse)
    return f"{made.reads}: tried that way here before and {before.says} ({before.when})" if before else ""


def _change(case: Case, cure: Cure, option: Option, move: Move, passed: tuple[str, ...]) -> Proposal:
    return Proposal(
        Kind.CHANGE,
        _named(case),
        move.reads,
        cure.why,
        option.expect,
        option.watch,
        move,
        passed_over=passed,
    )


def _answered(case: Case, cure: Cure) -> bool:
    return cure.question is not None and case.answer in dict(cure.question.answers)


def _named(case: Case) -> str:
    symptom = case.symptom
    end = f", {symptom.end}" if symptom.end else ""
    corner = f", corner {symptom.corner}" if symptom.corner else ""
    return f"{symptom.what}{end}{corner}"


def _first_right(about: About, wrong: list[gate.Looked]) -> Proposal:
    """Propose what sets a pressure right, else name what has to be put right first."""
    off = [one for one in wrong if one.what.endswith("pressure")]
    moves = [(one, made) for one in off if isinstance(made := _to_target(about, one), Move)]
    if moves:
        said = "; ".join(f"{one.what} {one.said}" for one, _ in moves)
        whole = Move(
            "; ".join(made.reads for _, made in moves),
            tuple(put for _, made in moves for put in made.puts),
            tuple(named for _, made in moves for named in made.about),
        )
        return Proposal(
            Kind.CHANGE,
            " and ".join(one.what for one, _ in moves),
            whole.reads,
            f"{said}; pressures come before everything else",
            "the tyre works in its range; then feel again",
            "the next hot reading",
            whole,
        )
    said = "; ".join(f"{one.what} {one.said}" for one in wrong)
    return Proposal(Kind.LOOK, "", f"Put right first: {said}.", "it comes before any change of set-up")


def _to_target(about: About, looked: gate.Looked) -> Move | CannotChange:
    end: End = "rear" if looked.what.startswith("rear") else "front"
    return toward_target(Case(about, Symptom(end=end)), end)


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
    if "pressure" not in concerns and len(ridden) < FEW_SESSIONS:
        return "the first two sessions on a bike are for learning it"
    if "pressure" not in concerns and case.venue is not None and len(here) < FEW_SESSIONS:
        return "the first two sessions at a venue are for learning it"
    laps = case.clean_laps()
    if laps is not None and laps < FEW_LAPS:
        return f"{laps} clean lap{'' if laps == 1 else 's'}: too few to tell"
    if case.group == "novice" and not concerns:
        return "for a novice laps teach more than a change"
    return ""


def _contradiction(found: list[Proposal]) -> Proposal | None:
    """Say so where two changes would turn the same thing both ways; pressing ones stand all the same."""
    moves = [(one, one.move) for one in found if one.move is not None]
    for place, (first, move) in enumerate(moves):
        for other, against in moves[place + 1 :]:
            shared = {put.path for put in move.puts} & {put.path for put in against.puts}
            values = {put.path: put.value for put in move.puts}
            if any(values[put.path] != put.value for put in against.puts if put.path in shared):
                text = "None yet: two of the symptoms ask for opposite changes."
                why = (
                    f"{first.symptom}: {first.text}; {other.symptom}: {other.text}. Ride again, mind the end"
                )
                return Proposal(Kind.SAME, f"{first.symptom}; {other.symptom}", text, why)
    return None
