"""A risk that was accepted and came: the help that was ridden without goes back in."""

from typing import Final

from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.levels import freer_rear, more_help
from paddock_tui.advice.next_change.words import Kind, Move, Passed, Proposal, Refusal, Spoken
from paddock_tui.records.electronics import function_of

ANSWERED_BY: Final = {
    "slides on drive": ("traction", "slide", "throttle"),
    "traction lamp with slip": ("traction", "slide", "throttle"),
    "loose on entry": ("engine-braking", "rear-abs", "abs"),
    "skips on the brakes": ("engine-braking", "rear-abs", "abs"),
    "rear locks": ("engine-braking", "rear-abs", "abs"),
    "front locks": ("front-abs", "abs"),
    "bars wobble": ("wheelie",),
}
"""Which aids answer a symptom: a risk accepted about one of them is the first suspect."""


def accepted(given: Given) -> Spoken:
    """Propose help back where a risk that was accepted is the one that came."""
    if not _subjects(given):
        return Passed("no risk was accepted today")
    refused: list[str] = []
    for case, _ in given.felt:
        what = case.symptom.what or ""
        if what == "bars wobble" and case.symptom.cause != "landing a wheelie":
            continue
        for name in _accepted_controls(given, ANSWERED_BY.get(what, ())):
            made = _back(case, name)
            if isinstance(made, Refusal):
                refused.append(made.reason)
                continue
            why = f"the risk that was accepted came, {case.named}: the help goes back before a setting"
            helped = given.takes_back(made)
            if helped:
                why = f"{why}; of less {helped}, but the risk came with it"
            expect, watch = "the aid steps in where it came", "no aid holds everything: ride up to it again"
            return Proposal(Kind.CHANGE, case.named, made.reads, why, expect, watch, made)
    if refused:
        return Passed("; ".join(refused))
    return Passed("what was accepted is not what was felt")


def _accepted_controls(given: Given, functions: tuple[str, ...]) -> list[str]:
    bike = given.about.situation.bike
    subjects = _subjects(given)
    controls = bike.controls if bike is not None else {}
    of = {name: function_of(name, control) for name, control in controls.items()}
    found = [name for name in controls if name in subjects and of[name] in functions]
    return sorted(found, key=lambda name: functions.index(of[name]))


def _subjects(given: Given) -> set[str]:
    """Return what risks were accepted about, in this session or earlier that day on this bike."""
    outings = (*given.about.situation.earlier, given.session)
    return {subject for one in outings for by_subject in one.accepted.values() for subject in by_subject}


def _back(case: Case, name: str) -> Move | Refusal:
    control = case.bike.controls[name]
    if function_of(name, control) == "engine-braking":
        return freer_rear(case)
    return more_help(case, name)
