"""What comes before a change: wrong or finished tyres, work that nobody checked, tyres just changed."""

from collections.abc import Iterator

from paddock_tui.advice.about import ENDS
from paddock_tui.advice.next_change.cause_stop import LOOKED_AT_FIRST
from paddock_tui.advice.next_change.gate import looked_at
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.words import Kind, Passed, Proposal, Spoken
from paddock_tui.matters import KINDS
from paddock_tui.matters.severity import HOLD, SERIOUS

WRONG = {"slick": ("damp", "wet"), "race-treaded": ("wet",), "wet": ("dry",), "intermediate": ("dry",)}
"""Kinds of tyre, and the surfaces on which no set-up makes up for them."""

_AFTER_WHEEL_WORK = ("bars wobble", "weaves", "vibrates", "pulls to one side", "chatters")


def first_right(given: Given) -> Spoken:
    """Say what is changed or looked at before any set-up, pressure included."""
    tyres = [one for one in given.matters if KINDS[one.kind].theme == "tyres" and one.severity >= SERIOUS]
    if tyres:
        kind = Kind.MEND if tyres[0].severity >= HOLD else Kind.LOOK
        return Proposal(kind, "", tyres[0].message, f"{tyres[0].why} {tyres[0].remedy}")
    work = [one for one in given.matters if one.kind in LOOKED_AT_FIRST and one.severity >= SERIOUS]
    if work:
        return Proposal(Kind.LOOK, "", work[0].message, f"{work[0].why} {work[0].remedy}")
    for said, why in (*_wrong(given), *_not_right(given), *_just_changed(given)):
        return Proposal(Kind.LOOK, "", said, why)
    return Passed("nothing on record says that tyres or work have to be put right first")


def _wrong(given: Given) -> Iterator[tuple[str, str]]:
    column = given.case.column
    for end in ENDS:
        kind = given.tyre_kind(end)
        if column in WRONG.get(kind, ()):
            yield (
                f"Change the tyres first: {kind} at the {end} on a {column} track.",
                "no setting and no pressure makes up for a tyre of the wrong kind",
            )


def _not_right(given: Given) -> Iterator[tuple[str, str]]:
    wrong = [one for one in looked_at(given.about) if one.right is False and not one.is_pressure]
    if wrong:
        said = "; ".join(f"{one.what}: {one.said}" for one in wrong)
        yield f"Put right first: {said}.", "it comes before any change of set-up"


def _just_changed(given: Given) -> Iterator[tuple[str, str]]:
    session, last = given.session, given.last_ridden
    ridden = {one.tyres for one in given.about.history.ridden}
    if given.felt and last is not None and session.tyres is not None and session.tyres not in ridden:
        yield (
            f"Ride on the tyre set {session.tyres} once more: this was its first outing on this bike.",
            "another tyre has other heights, other grip and another feel: what was felt may be its doing",
        )
    wheels = [one for one in session.work.values() if one.what in ("wheel out", "axle")]
    felt = [case.felt for case, _ in given.felt if case.symptom.what in _AFTER_WHEEL_WORK]
    if wheels and felt:
        yield (
            f"Look at the wheel that was out: {felt[0]} since.",
            "axle, pinch bolts, spacers, bearings and balance come before any setting",
        )
