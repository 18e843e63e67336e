"""Taking back the step that brought a symptom, as one block where it was one: danger first."""

from collections.abc import Iterator
from typing import Any, Final

from paddock_tui.advice.ledger.changes import key_of, reversed_key
from paddock_tui.advice.ledger.entries import LedgerEntry, judged_changes
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import CauseQuestion, Kind, Move, Passed, Proposal, Spoken
from paddock_tui.calc.change_effect import Verdict
from paddock_tui.facts.outing import COLUMN, track_moved_k
from paddock_tui.facts.past import PastSession
from paddock_tui.limits.next_change import LIKE_TRACK, TELLING_LAPS
from paddock_tui.matters import Outing
from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.quantities import Quantity
from paddock_tui.records.control_levels import levels_of
from paddock_tui.records.differences import SetUpDifference
from paddock_tui.records.edits import Value
from paddock_tui.records.electronics import function_of
from paddock_tui.records.session_parts import DANGERS
from paddock_tui.records.shown_words import shown
from paddock_tui.rules.core import SetValue

_REPAIRS: Final = {
    "front_spring": ("suspension",),
    "rear_spring": ("suspension",),
    "front_sprocket": ("chain", "sprocket"),
    "rear_sprocket": ("chain", "sprocket"),
    "links": ("chain", "sprocket"),
}
NO_STEP_BRINGS: Final = ("no change felt", "arms sore", "missed shifts")
"""What is felt, and is no doing of a change of the set-up."""

_HELPED: Final[Verdict] = "helped"
_LOOKS: Final = {
    "bars wobble": "head bearings, front tyre, axle and pinch bolts, damper mount",
    "weaves": "rear tyre, swingarm and wheel bearings, axle",
    "front locks": "front tyre and pressure, pads, fork",
    "rear locks": "rear tyre and pressure, rear brake",
    "tucks": "front tyre and pressure, fork",
}
WAS_IT_THERE: Final = CauseQuestion(
    "Was anything like it there in the session before?",
    (("nothing", "nothing unwanted then"), ("noted", "yes, it was there too")),
)
TAKE_BACK: Final = CauseQuestion(
    "This step helped here, or another such one did. Take it back all the same?",
    (("yes", "take it back"), ("no", "keep it")),
)


def danger(given: Given) -> Spoken:
    """Take back now what brought a shake, a weave, a tuck or a lock."""
    return _undo(given, [case for case, _ in given.felt if case.symptom.what in DANGERS], True)


def undo(given: Given) -> Spoken:
    """Take back the last step where a symptom is new after it."""
    cases = [case for case, _ in given.felt if case.symptom.what not in (*DANGERS, *NO_STEP_BRINGS)]
    return _undo(given, cases, False)


def _undo(given: Given, cases: list[Case], danger: bool) -> Spoken:
    if not cases:
        return Passed(
            "nothing of that was felt" if danger else "nothing was felt that a step may have brought"
        )
    barred = _barred(given)
    if barred:
        return Passed(barred)
    reasons: list[str] = []
    for case in cases:
        said = _of_one(given, case, danger)
        if isinstance(said, Proposal):
            return said
        reasons.append(said.reason)
    return Passed("; ".join(dict.fromkeys(reasons)))


def _barred(given: Given) -> str:
    """Say what keeps the last step from being looked at as a cause at all; empty where nothing does."""
    before = given.before
    if before is None:
        return "no ridden session is on record that this one was copied from"
    if not given.block:
        return "nothing that acts was changed for this session"
    columns = [COLUMN.get(one.surface or "") for one in (before.session, given.session)]
    if None in columns or columns[0] != columns[1]:
        return "the surface was another one, or is not known: that set-up may be for other conditions"
    limits = given.case.limits
    if track_moved_k(before.session, given.session, limits) is not None:
        return f"the track was more than {limits[LIKE_TRACK]:g} C warmer or colder"
    felt = [one.what for one in before.session.symptoms.values() if one.what in DANGERS]
    if felt:
        return f"the set-up before had a danger of its own ({shown(felt[0])})"
    laps = given.case.clean_laps()
    if laps is not None and laps < limits[TELLING_LAPS]:
        return f"{laps} clean laps: too few to tell what the step did"
    return ""


def _of_one(given: Given, case: Case, danger: bool) -> Spoken:
    before = given.before
    assert before is not None
    what = case.symptom.what or ""
    if case.symptom.cause is not None:
        return Passed(f"{case.felt}: {case.symptom.cause} is named as the reason")
    if case.symptom.each_lap == "differs" and not danger:
        return Passed(f"{case.felt}: the corner is ridden differently each lap")
    if any(one.what == what for one in before.session.symptoms.values()):
        return Passed(f"{case.felt} was there before the step too")
    unknown = _not_debriefed(before, case, danger)
    if unknown is not None:
        return unknown
    block, kept = _that_goes_back(given)
    if not block:
        return Passed("; ".join(kept))
    move = _back(block)
    helped = _helped(given, block) or given.takes_back(move)
    if helped and not danger:
        if case.answer == "no":
            return Passed(f"{case.felt}: the step helped here, and you keep it")
        if case.answer != "yes":
            text, at = TAKE_BACK.text, (*case.at, "answer")
            return Proposal(Kind.ASK, case.named, text, helped, question=TAKE_BACK, answer_at=at)
    if helped:
        helped = f"{helped}, {'but a danger came with it' if danger else 'and you take it back'}"
    return _proposal(given, case, move, kept, helped)


def _not_debriefed(before: PastSession, case: Case, danger: bool) -> Spoken | None:
    """Ask about the session before, or say that it tells nothing; None where it was debriefed without it."""
    if before.session.did == "noted" and not before.session.symptoms:
        return Passed("something was noted in the session before, and is not written down as a symptom")
    if debriefed(Outing(before.id, before.session, limits=case.limits)):
        return None
    asked = before.session.did is not None or before.session.symptoms
    if asked:
        return Passed("the session before was too short to tell")
    why = "what the bike did then is not answered, and a step can only be blamed for what is new"
    now = "" if not danger else "; until then nobody rides on with it"
    return Proposal(
        Kind.ASK,
        case.named,
        WAS_IT_THERE.text,
        why + now,
        question=WAS_IT_THERE,
        answer_at=("did",),
        answer_of=before.id,
    )


def _that_goes_back(given: Given) -> tuple[list[SetUpDifference], list[str]]:
    """Part the last step into what may go back, and why the rest of it stays."""
    back: list[SetUpDifference] = []
    stays: list[str] = []
    for one in given.block:
        reason = next(_stays(given, one), "")
        if reason:
            stays.append(reason)
        else:
            back.append(one)
    return back, stays


def _stays(given: Given, one: SetUpDifference) -> Iterator[str]:
    case, bike = given.case, given.case.bike
    works = {work.what for work in given.session.work.values()}
    if works.intersection(_REPAIRS.get(one.key, ())):
        yield f"{one.label} {one.words} was work on the bike: no step to take back"
    if one.kind == "controls":
        yield from _level_stays(case, one)
    if one.kind == "adjusters" and isinstance(one.old, int | float):
        adjuster = bike.adjusters.get(one.key)
        low, high = sorted(adjuster.range) if adjuster is not None and adjuster.range else (one.old, one.old)
        if adjuster is None or not low <= one.old <= high:
            yield f"{one.label} {one.old_text} is outside its range"
    if one.key in ("fork_height", "rear_height") and isinstance(one.old, Quantity):
        clear = case.bike_end("front" if one.key == "fork_height" else "rear").highest_clear
        if clear is not None and one.old.to("mm") > clear.to("mm"):
            yield f"{one.label} {one.old_text} is not ticked clear"


def _level_stays(case: Case, one: SetUpDifference) -> Iterator[str]:
    control = case.bike.controls.get(one.key)
    levels = levels_of(one.key, control) if control is not None else None
    if control is None or levels is None or not levels.offers(one.old) or not levels.offers(one.new):
        yield f"{one.label} {one.words} is not within the levels of the bike"
    elif function_of(one.key, control) != "engine-braking":
        scale = levels.help_if_known()
        if scale is None:
            yield f"it is not known which end of {one.label} helps most"
        elif scale.help_of(one.old) < scale.help_of(one.new):
            yield f"{one.label} stays at {one.new_text}: going back would be less help"


def _back(block: list[SetUpDifference]) -> Move:
    return Move(
        "; ".join(f"{one.label} {one.back}" for one in block),
        tuple(SetValue(one.path, _stored(one.old)) for one in block),
        tuple(one.about for one in block),
    )


def _proposal(given: Given, case: Case, move: Move, kept: list[str], helped: str) -> Proposal:
    what = case.symptom.what or ""
    named = _changed_too(given)
    why = f"new since this step: {case.named}"
    if named:
        why = f"{'; '.join(named)} changed too, so it is a trial; {why}"
    if helped:
        why = f"{why}; {helped}"
    looks = _LOOKS.get(what, "")
    watch = f"look as well: {looks}" if looks else f"whether {case.felt} is gone, and what came in its place"
    reads = f"Back: {move.reads}"
    return Proposal(
        Kind.CHANGE, case.named, reads, why, f"gone again: {case.felt}", watch, move, passed_over=tuple(kept)
    )


def _changed_too(given: Given) -> list[str]:
    before = given.before
    assert before is not None
    old, new = before.session, given.session
    wheels = any(one.what in ("wheel out", "axle") for one in new.work.values())
    pairs = (
        ("the tyres", old.tyres != new.tyres),
        ("a wheel", wheels),
        ("the rider", old.rider != new.rider),
        ("the riding mode", old.setup.mode != new.setup.mode),
        ("the venue", before.venue != given.case.venue),
    )
    return [label for label, changed in pairs if changed]


def _helped(given: Given, block: list[SetUpDifference]) -> str:
    """Say where the ledger called a part of the step a help, whichever session it stands in."""
    name = given.about.id_of("bike")
    if name is None:
        return ""
    wanted = {key_of([(one.path, one.old, one.new)]) for one in block}
    asked = {*wanted, *map(reversed_key, wanted)}

    def is_wanted(entry: LedgerEntry) -> bool:
        return entry.may_tell and key_of((one.path, one.old, one.new) for one in entry.changes) in asked

    history, bike = given.about.history, given.about.situation.bike
    all_of_it = reversed(history.whole())
    for entry in judged_changes(history, all_of_it, name, bike, given.case.limits, is_wanted):
        key = key_of((one.path, one.old, one.new) for one in entry.changes)
        opposite = entry.verdict == "made it worse" and reversed_key(key) in wanted
        if (entry.verdict == _HELPED and key in wanted) or opposite:
            return f"it helped in session {entry.session.id}"
    return ""


def _stored(value: Any) -> Value:
    """Return a value as a file keeps it."""
    if isinstance(value, Quantity):
        return str(value)
    whole = isinstance(value, float) and value == int(value)
    found: Value = int(value) if whole else value
    return found
