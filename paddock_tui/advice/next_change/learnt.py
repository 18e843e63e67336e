"""What came of the last step: what was expected against what was felt, and how to settle it."""

from collections.abc import Iterator

from paddock_tui.advice.in_force import undone_by
from paddock_tui.advice.ledger.changes import because_of
from paddock_tui.advice.ledger.entries import entries_of
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.outings_left import outings_left
from paddock_tui.advice.next_change.start_pressure import learnt_with
from paddock_tui.facts.past import PastSession
from paddock_tui.matters import Outing
from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.records.differences import differences
from paddock_tui.records.session_parts import DANGERS, SYMPTOMS, Symptom
from paddock_tui.trade.outings_to_tell import FEWEST_LEFT, outings_to_tell


def learnt(given: Given) -> Iterator[str]:
    """Say of each change what was expected and what came, and whether it was a trial."""
    before, session = given.before, given.session
    if before is None:
        return
    bike = given.about.situation.bike
    felt = {one.what for one in session.symptoms.values() if one.what}
    told = debriefed(Outing("", session))
    for one in differences(before.session.setup, session.setup, bike):
        does, frees = undone_by(one.path, session.setup, bike)
        if does and undone_by(one.path, before.session.setup, bike)[0]:
            yield f"{one}: no trial, {does}; {frees}"
            continue
        because = because_of(session, one)
        if because is None or not because.expect:
            continue
        yield f"{one}: expected {because.expect}; {_what_came(because.why or '', felt, told)}"
    yield from _to_settle(given, before)


def _what_came(why: str, felt: set[str], told: bool) -> str:
    """Say whether what a change was made for was felt again; else what was felt since."""
    again = [what for what in felt if why.casefold().startswith(what)]
    if again:
        return f"you wrote {again[0]} again"
    if not told:
        return "what came is not answered"
    if any(why.casefold().startswith(what) for what in SYMPTOMS):
        return "it was not felt again"
    return f"since then you wrote {' and '.join(sorted(felt)) or 'nothing'}"


def _to_settle(given: Given, before: PastSession) -> Iterator[str]:
    """Say which outings would tell what the last change did, where enough are left and it is worth them."""
    name = given.about.id_of("bike")
    own = given.about.id_of("session") or "this session"
    if name is None or len(given.block) != 1:
        return
    if any(one.what in DANGERS for one in _all(given, before)):
        # Nothing is ridden again, or gone back into, for the sake of knowing, that brought a danger.
        return
    left = outings_left(given.about)
    if left is None or left < FEWEST_LEFT:
        return
    change = given.block[0]
    for entry in entries_of(learnt_with(given.about).history, name, given.about.situation.bike):
        if entry.session.id != own or entry.path != change.path or entry.judgement is None:
            continue
        judgement = entry.judgement
        if judgement.verdict in ("helped", "made it worse") or judgement.gain_s is None:
            return
        order = outings_to_tell(judgement, given.case.clean_laps() or 0, left)
        if order:
            yield f"to settle {change}: {len(order)} of the {left} outings left, {', then '.join(order)}"
        else:
            yield f"{change}: keep what you like; the outings left cannot tell the cause"


def _all(given: Given, before: PastSession) -> Iterator[Symptom]:
    yield from before.session.symptoms.values()
    yield from given.session.symptoms.values()
