"""No change felt twice on one adjuster: back to where it stood before both."""

from collections.abc import Iterator
from typing import Any

from paddock_tui.advice.in_force import undone_by
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import Kind, Move, Passed, Proposal, Spoken
from paddock_tui.facts.past import PastSession
from paddock_tui.records.differences import SetUpDifference, differences, setting_difference
from paddock_tui.records.session import Session
from paddock_tui.rules.core import SetValue

NOT_FELT = "no change felt"


def back_to_base(given: Given) -> Spoken:
    """Propose the value before two turns of one adjuster that nobody felt."""
    if not _felt_nothing(given.session):
        return Passed("it was felt what the last change did, or not asked")
    own = PastSession("", given.session)
    for change in _adjusters(given, own):
        for past in reversed(given.about.history.past):
            if past.rider != given.session.rider or not _felt_nothing(past.session):
                continue
            earlier = {one.path: one for one in _adjusters(given, past)}
            found = earlier.get(change.path)
            if found is None:
                continue
            made = _move(given, change, found.old)
            kept = undone_by(change.path, given.case.setup, given.case.bike)[0] or given.takes_back(made)
            return Passed(f"back to base, {made.reads}: {kept}") if kept else _proposal(made)
    return Passed("one adjuster was not yet turned twice without being felt")


def _move(given: Given, change: SetUpDifference, base: Any) -> Move:
    value = int(base) if isinstance(base, float) and base == int(base) else base
    back = setting_difference(change.kind, change.key, change.new, base, given.case.bike)
    return Move(str(back), (SetValue(change.path, value),), (change.about,))


def _proposal(move: Move) -> Proposal:
    return Proposal(
        Kind.CHANGE,
        NOT_FELT,
        f"Back to base: {move.reads}",
        "two changes of it that nobody felt are on the wrong thing",
        "it is as before both",
        "have a technician look at what was meant to change",
        move,
    )


def _felt_nothing(session: Session) -> bool:
    return any(one.what == NOT_FELT for one in session.symptoms.values())


def _adjusters(given: Given, past: PastSession) -> Iterator[SetUpDifference]:
    """List the adjusters and offsets that were turned for a session, by the one it was copied from."""
    source = _source(given, past.session.copied_from)
    if source is None:
        return
    for one in differences(source.setup, past.session.setup, given.about.situation.bike):
        if one.known and one.kind in ("adjusters", "offsets"):
            yield one


def _source(given: Given, name: str | None) -> Session | None:
    past = given.about.history.of(name)
    return past.session if past is not None else None
