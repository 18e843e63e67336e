"""Work on wheels and brakes, written down or shown by other tyres, until it was checked, and once again."""

import datetime as dt
from collections.abc import Iterator

import attrs

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, numbered, opened
from paddock_tui.matters.order import is_early
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD
from paddock_tui.records.session import Session, was_done_back_in
from paddock_tui.records.session_parts import Work

WHEELS = ("wheel out", "caliper", "brake", "axle", "pads", "yokes")
"""Work after which fasteners of wheels and brakes have to be tightened and the brakes pumped."""

_LISTS = "organisers' inspection lists; the torques are the manual's"

_APART_MINUTES = 10
"""Minutes after the work from which somebody alone looks with other eyes."""

OTHER_TYRES = "other tyres than last time"

_TICKS = {
    "torqued": "torqued",
    "pumped": "brakes pumped and tried",
    "steering_free": "steering free lock to lock",
    "checked_by": "looked at by a second person, or alone a second time ten minutes on",
}


def in_time(outing: Outing) -> list[tuple[str, Work]]:
    """List the work of an outing as it was done: by the clock where all has one, else by number."""
    found = numbered(outing.session.work)
    if any(work.at is None for _, work in found):
        return found
    return sorted(found, key=lambda one: one[1].at or dt.time.min)


def ticks_missing(work: Work, outing: Outing) -> tuple[str, ...]:
    """Return the ticks that work on wheels and brakes still wants, each by its key.

    Ticks that are dated before the work are of something else.
    """
    early = is_early(work, outing.session)
    missing = [key for key in ("torqued", "pumped") if early or not getattr(work, key)]
    if work.what == "yokes" and not work.steering_free:
        missing.append("steering_free")
    if outing.racing and not _seen_twice(work):
        missing.append("checked_by")
    return tuple(missing)


def _seen_twice(work: Work) -> bool:
    """Return whether a second person looked, or whoever did it once more ten minutes on."""
    second = (work.checked_by or "").strip()
    if second and second != (work.by or "").strip():
        return True
    if work.second_look is None or work.at is None:
        return False
    apart = (work.second_look.hour - work.at.hour) * 60 + work.second_look.minute - work.at.minute
    return apart >= _APART_MINUTES


def run_since(outing: Outing, work: Work) -> int:
    """Return 1 where the bike was ridden in this very session after the work: it was not done on return."""
    return int(outing.ridden and not was_done_back_in(outing.session, work))


def changed_ends(outing: Outing, seen: Seen) -> tuple[str, ...]:
    """Return the ends at which another tyre is on than when the bike was last ridden."""
    before = seen.bike(outing.bike).tyres
    known = ((end, before.get(end), outing.tyres.get(end)) for end in ("front", "rear"))
    return tuple(end for end, old, new in known if old is not None and new is not None and old != new)


def work_words(one: Opened, now: Present) -> str:
    """Say which work it was, when, and in which session where that is another one."""
    if one.cause:
        return one.cause + ("" if now.here(one) else f", in session {one.of}")
    at = f" {one.at:%H:%M}" if one.at is not None else ""
    return f"{one.what}{at}" + ("" if now.here(one) else f" in session {one.of}")


def _wheel_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    """Open the last work of each of these words that has not all its ticks; other tyres are wheels out."""
    found: dict[str, Opened] = {}
    for number, work in in_time(outing):
        if work.what not in WHEELS:
            continue
        found.pop(work.what, None)
        missing = ticks_missing(work, outing)
        if missing:
            found[work.what] = _job("wheel-work-not-checked", outing, number, work, missing)
        elif work.what == "wheel out":
            found.pop("axle", None)
    yield from found.values()
    ends = changed_ends(outing, seen)
    if ends and not found and not any(_done_on_wheels(one, outing) for one in outing.session.work.values()):
        wheels = f"{' and '.join(ends)} wheel{'s' if len(ends) > 1 else ''}"
        yield opened(
            "wheel-work-not-checked",
            outing.session.bike,
            outing,
            ("work", _next(outing.session), "torqued"),
            what=OTHER_TYRES,
            subject="wheels",
            cause=f"{wheels} out: {OTHER_TYRES}",
            missing=("torqued", "pumped"),
            derived=True,
        )


def _done_on_wheels(work: Work, outing: Outing) -> bool:
    return work.what in (None, "wheel out", "axle") and not ticks_missing(work, outing)


def _job(kind: str, outing: Outing, number: str, work: Work, missing: tuple[str, ...]) -> Opened:
    return opened(
        kind,
        outing.session.bike,
        outing,
        ("work", number, missing[0] if missing else "rechecked_hot"),
        at=work.at,
        what=work.what or "",
        subject="wheels",
        missing=missing,
        rides=run_since(outing, work),
    )


def _next(session: Session) -> str:
    return str(max((int(key) for key in session.work if key.isdigit()), default=0) + 1)


def again(one: Opened, outing: Outing) -> bool:
    """Return whether the same work was done again, or a wheel was ticked that held the axle."""
    if outing.session.bike != one.whom:
        return False
    for work in outing.session.work.values():
        if work.what == one.what:
            return True
        whole = not ticks_missing(work, outing)
        if whole and work.what in ("wheel out", None) and one.what in ("axle", OTHER_TYRES):
            return True
        if whole and work.what == "axle" and one.what == OTHER_TYRES:
            return True
    return False


def _wheels(one: Opened, now: Present) -> Said:
    words = work_words(one, now)
    missing = ", ".join(_TICKS[key] for key in one.missing)
    return Said(
        HOLD,
        _wheels_message(one, words),
        "A job that was interrupted leaves an axle or a caliper loose; it does not show standing."
        + ("" if one.early else f" Missing: {missing}."),
        f"Torque axles, pinch bolts and calipers to the manual's figures{now.torques}; a second person "
        "looks, paint marks on. Direction arrow, spacers, wheel-speed sensor and its gap; spin the wheel. "
        "Pump both brakes until hard, try them at walking pace. Then tick torqued and "
        "pumped under work done.",
        f"{words}; missing: {missing}",
        (words,),
    )


def _wheels_message(one: Opened, words: str) -> str:
    if one.early:
        return f"Ticked at {one.early}, before it was done: {words}."
    if one.missing[0] == "torqued":
        return f"Not torqued and seen by a second person: {words}."
    return f"Work not checked: {words}."


def _recheck_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    found: dict[str, Opened] = {}
    for number, work in in_time(outing):
        if work.what in WHEELS:
            found.pop(work.what, None)
            if not work.rechecked_hot and not ticks_missing(work, outing):
                found[work.what] = _job("wheel-work-not-looked-at-again", outing, number, work, ())
    yield from found.values()


def ridden_on(one: Opened, outing: Outing) -> Opened:
    """Count the rides since."""
    if outing.session.bike != one.whom or not outing.ridden:
        return one
    return attrs.evolve(one, rides=one.rides + 1)


def _recheck_closes(one: Opened, outing: Outing) -> bool:
    if outing.session.bike != one.whom:
        return False
    return any(work.what in (one.what, None) for work in outing.session.work.values())


def _recheck(one: Opened, now: Present) -> Said | None:
    if one.rides == 0:
        return None
    words = work_words(one, now)
    return Said(
        CAUTION,
        f"Ridden since, paint marks not looked at again: {words}.",
        "What was torqued once can settle with the first heat; the marks show it in a second.",
        "Look whether the paint marks of axles, pinch bolts and calipers are still in line; then tick "
        "checked again hot under work done.",
        words,
        (words,),
    )


declare(
    MatterKind(
        "wheel-work-not-checked",
        "bike",
        HOLD,
        "brakes",
        "torqued, spun, both brakes pumped and tried; in a race a second person, or alone a second look; "
        "yokes: steering free",
        _wheel_opens,
        _wheels,
        closes=again,
        guard="a wheel that was tried once is never asked for again",
        at="session:work",
        source=_LISTS,
        todo="torque wheels and brakes, second person looks",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "wheel-work-not-looked-at-again",
        "bike",
        CAUTION,
        "brakes",
        "paint marks looked at after the first ride, one tick",
        _recheck_opens,
        _recheck,
        closes=_recheck_closes,
        carried=ridden_on,
        guard="before the first ride; once a job, not once a day",
        at="session:work",
        source=_LISTS,
        todo="look at the paint marks again",
        afterwards=False,
    )
)
