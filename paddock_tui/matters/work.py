"""Work on the bike, written down or shown by other tyres, until it was checked."""

from collections.abc import Iterator

from paddock_tui.matters.core import (
    MatterKind,
    Opened,
    Outing,
    Present,
    Said,
    Seen,
    declare,
    numbered,
    opened,
)
from paddock_tui.matters.severity import HOLD, SERIOUS
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Work

WHEELS = ("wheel out", "caliper", "brake", "axle")
"""Work after which fasteners of wheels and brakes have to be tightened and seen by a second person."""

OIL = ("oil", "filter", "plug")
"""Work after which oil may come out once it is hot."""

_LISTS = "organisers' inspection lists; the torques are the manual's"


def _waiting(kind: str, outing: Outing, what: tuple[str, ...], tick: str) -> Iterator[Opened]:
    """Open the last work of each of these words that has not its tick."""
    found: dict[str, Opened] = {}
    for number, work in numbered(outing.session.work):
        if work.what not in what:
            continue
        found.pop(work.what, None)
        if not getattr(work, tick):
            found[work.what] = _opened(kind, outing, number, work, tick)
        elif work.what == "wheel out":
            found.pop("axle", None)
    yield from found.values()


def _opened(kind: str, outing: Outing, number: str, work: Work, tick: str) -> Opened:
    return opened(
        kind,
        outing.session.bike,
        outing,
        ("work", number, tick),
        at=work.at,
        what=work.what or "",
        subject=_SUBJECTS[kind],
    )


_SUBJECTS = {
    "wheel-work-not-checked": "wheels",
    "oil-work-not-checked-hot": "oil",
}


def _again(one: Opened, outing: Outing) -> bool:
    """Return whether the same work was done again, or a wheel was ticked that held the axle."""
    if outing.session.bike != one.whom:
        return False
    for work in outing.session.work.values():
        wheel_ticked = work.torqued and work.what in ("wheel out", None)
        if work.what == one.what or (wheel_ticked and one.what in ("axle", OTHER_TYRES)):
            return True
        if one.what == OTHER_TYRES and work.torqued and work.what == "axle":
            return True
    return False


OTHER_TYRES = "other tyres than last time"


def changed_ends(outing: Outing, seen: Seen) -> tuple[str, ...]:
    """Return the ends at which another tyre is on than when the bike was last ridden."""
    before = seen.tyres.get(outing.session.bike or "", {})
    known = ((end, before.get(end), outing.tyres.get(end)) for end in ("front", "rear"))
    return tuple(end for end, old, new in known if old is not None and new is not None and old != new)


def _wheel_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    waiting = list(_waiting("wheel-work-not-checked", outing, WHEELS, "torqued"))
    yield from waiting
    session = outing.session
    ticked = any(one.torqued and one.what in (None, "wheel out", "axle") for one in session.work.values())
    ends = changed_ends(outing, seen)
    if ends and not ticked and not waiting:
        wheels = f"{' and '.join(ends)} wheel{'s' if len(ends) > 1 else ''}"
        path = ("work", _next(session), "torqued")
        yield opened(
            "wheel-work-not-checked",
            session.bike,
            outing,
            path,
            what=OTHER_TYRES,
            subject="wheels",
            missing=(f"{wheels} out: {OTHER_TYRES}",),
        )


def _next(session: Session) -> str:
    return str(max((int(key) for key in session.work if key.isdigit()), default=0) + 1)


def work_words(one: Opened, now: Present) -> str:
    """Say which work it was, when, and in which session where that is another one."""
    if one.missing:
        return one.missing[0] + ("" if now.here(one) else f", in session {one.of}")
    at = f" {one.at:%H:%M}" if one.at is not None else ""
    return f"{one.what}{at}" + ("" if now.here(one) else f" in session {one.of}")


def _wheels(one: Opened, now: Present) -> Said:
    words = work_words(one, now)
    return Said(
        HOLD,
        f"Not torqued and seen by a second person: {words}.",
        "A job that was interrupted leaves an axle or a caliper loose; it does not show standing.",
        f"Torque axles, pinch bolts and calipers to the manual's figures{now.torques}; a second person "
        "looks, paint marks on. Direction arrow, spacers, wheel-speed sensor and its gap; spin the wheel. "
        "Pump both brakes until hard, try them at walking pace. Then tick torqued under work done.",
        words,
        (words,),
    )


def _oil_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _waiting("oil-work-not-checked-hot", outing, OIL, "rechecked_hot")


def _oil(one: Opened, now: Present) -> Said:
    words = work_words(one, now)
    return Said(
        SERIOUS,
        f"Not looked at again hot: {words}.",
        "An old gasket left on, a loose plug: the oil comes once it is hot, onto the rear tyre.",
        "Warm the engine up on the stand, look under it and at plug, filler and filter, wire them where "
        "the organiser asks; then tick checked again hot under work done.",
        words,
        (words,),
    )


declare(
    MatterKind(
        "wheel-work-not-checked",
        "bike",
        HOLD,
        "brakes",
        "torqued, spun, both brakes pumped, seen by a second person",
        _wheel_opens,
        _wheels,
        closes=_again,
        guard="a wheel that was tried once is never asked for again",
        at="session:work",
        source=_LISTS,
        todo="torque wheels and brakes, second person looks",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "oil-work-not-checked-hot",
        "bike",
        SERIOUS,
        "brakes",
        "seen dry hot",
        _oil_opens,
        _oil,
        closes=_again,
        at="session:work",
        source="organisers' inspection lists: drain, filler and filter secured",
        afterwards=False,
    )
)
