"""What came of the last step: what was expected against what was felt, and how to settle it."""

from collections.abc import Iterator

from paddock_tui.advice.in_force import undone_by
from paddock_tui.advice.ledger.changes import because_of
from paddock_tui.advice.ledger.entries import judged_changes
from paddock_tui.advice.ledger.settling import KEEP, outings_left, to_settle
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.start_pressure import learnt_with
from paddock_tui.matters import Outing
from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.records.differences import differences
from paddock_tui.records.session_parts import SYMPTOMS
from paddock_tui.records.shown_words import shown


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
    yield from _to_settle(given)


def _what_came(why: str, felt: set[str], told: bool) -> str:
    """Say whether what a change was made for was felt again; else what was felt since."""
    again = [what for what in felt if _leads(what, why)]
    if again:
        return f"you wrote {shown(again[0])} again"
    if not told:
        return "what came is not answered"
    if any(_leads(what, why) for what in SYMPTOMS):
        return "it was not felt again"
    return f"since then you wrote {' and '.join(sorted(map(shown, felt))) or 'nothing'}"


def _leads(what: str, why: str) -> bool:
    """Return whether a reason begins with a symptom, as files keep it or as it is shown."""
    return why.casefold().startswith((what, shown(what).casefold()))


def _to_settle(given: Given) -> Iterator[str]:
    """Say which outings would tell what the last change did, where enough are left and it is worth them."""
    name = given.about.id_of("bike")
    own = given.about.id_of("session") or "this session"
    if name is None or not given.block:
        return
    left = outings_left(given.about.situation.day, given.session, given.about.situation.now)
    acted = {one.path for one in given.block}
    history = learnt_with(given.about).history
    past = history.of(own)
    if left is None or past is None:
        return
    for entry in judged_changes(history, (past,), name, given.about.situation.bike, given.case.limits):
        if acted == {one.path for one in entry.changes}:
            said = to_settle(entry, left, given.case.clean_laps() or 0, given.case.limits)
            if said:
                change = entry.changes[0]
                yield f"{change}: {said}" if said.startswith(KEEP) else f"to settle {change}: {said}"
