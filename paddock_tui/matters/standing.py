"""A bike that stood, or came from a workshop; heights that were never ridden; ice; noise over at a venue."""

from collections.abc import Iterator

from paddock_tui.limits.matters import HEIGHT_CAUTION, STOOD_DAYS
from paddock_tui.matters.core import (
    TODAY,
    MatterKind,
    Opened,
    Outing,
    Present,
    Said,
    declare,
    numbered,
    opened,
)
from paddock_tui.matters.order import Place, is_early, is_later
from paddock_tui.matters.remember import heights_of
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE
from paddock_tui.records.day import measured_elsewhere
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Work

_STOOD = "bike-stood-or-workshop"


def _stood_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    last = seen.bike(session.bike).date
    words = ""
    if last is not None and session.date is not None:
        days = (session.date - last).days
        words = f"stood {days} days" if days > outing.limits[STOOD_DAYS] else ""
    work = [(number, one) for number, one in numbered(session.work) if one.what == "workshop"]
    shops = [number for number, one in work if not _gone_through(one, session)]
    if words or shops:
        yield opened(
            _STOOD,
            session.bike,
            outing,
            ("work", shops[-1], "done") if shops else ("answers", _STOOD),
            record="session" if shops else "bike",
            what="back from a workshop" if shops else words,
            derived=not shops,
        )


def _gone_through(work: Work, session: Session) -> bool:
    """Return whether the answer stands beside the work: what was done, and by whom."""
    written = (work.done or "").strip() and (work.by or "").strip()
    return bool(written) and not is_early(work, session)


def _stood(one: Opened, now: Present) -> Said:
    where = "in the bike's file" if one.record == "bike" else "beside that work"
    return Said(
        CAUTION,
        f"The bike {_was(one)}: look at brakes, tyres, chain, battery.",
        "Brakes seize and tyres lose air while a bike stands; what a workshop undid is for you to check.",
        f"Brakes, tyres, chain, battery, and what was done: go through them once, and enter it {where} with "
        "your initials.",
        f"{one.what}, session {one.of}; not gone through",
    )


def _was(one: Opened) -> str:
    return one.what if one.what.startswith("stood") else "came back from a workshop"


_HEIGHTS = {
    "front": ("fork further through the yokes", "radiator, guard or fairing"),
    "rear": ("rear set lower", "seat, guard or exhaust"),
    "front-tyre": ("front tyre taller", "radiator, guard or fairing"),
    "rear-tyre": ("rear tyre taller", "seat, guard or exhaust"),
}


def _height_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    before = seen.bike(outing.bike).heights
    for key, value in heights_of(outing).items():
        known = before.get(key)
        more = value - known.value if known is not None else 0.0
        if more > 0.05:
            yield opened(
                "height-never-ridden",
                outing.session.bike,
                outing,
                ("answers", "height-never-ridden"),
                record="bike",
                subject=key,
                what=f"{more:.1f}",
                value=known.value if known is not None else 0.0,
                cause=known.of if known is not None else "",
                derived=True,
            )


def _height_closes(one: Opened, outing: Outing) -> bool:
    """Return whether it was set back to what was ridden: an opening of the same end takes its place."""
    value = heights_of(outing).get(one.subject)
    same = outing.session.bike == one.whom and outing.id != one.of
    return same and value is not None and value <= one.value + 0.05


def _height(one: Opened, now: Present) -> Said | None:
    if one.subject == "front" and now.bike is not None and now.bike.front.highest_clear is not None:
        # Up to where the fork was checked clear is in the bike's file: that says it.
        return None
    what, hits = _HEIGHTS[one.subject]
    little = float(one.what) <= now.limits[HEIGHT_CAUTION] + 1e-9
    return Said(
        CAUTION if little else HOLD,
        f"{what[:1].upper()}{what[1:]} by {one.what} mm than it was ever ridden.",
        f"At full travel the tyre may hit {hits}, and stop dead. Nearest so far in session {one.cause}.",
        "Suspension fully compressed, bars lock to lock, look that nothing touches, a second person beside: "
        "then enter it in the bike's file with the test and your initials; or set it back.",
        f"{what} by {one.what} mm, session {one.of}; last ridden so in session {one.cause}",
    )


def _ice_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    if outing.session.ice:
        yield opened("ice-on-the-track", outing.session.day or outing.session.bike, outing, ("ice",))


def _ice_closes(one: Opened, outing: Outing) -> bool:
    there = one.whom in (outing.session.day, outing.session.bike)
    return there and outing.session.ice is False


def _ice(one: Opened, now: Present) -> Said | None:
    if not now.today(one):
        return None
    return Said(
        HOLD,
        f"Ice on the track, {now.when(one)}.",
        "Frost in the shade of a tree or a bridge gives no grip at all, and no tyre helps.",
        "Wait until the organiser says that the track is free of it, look yourself, and enter ice: no.",
        f"ice {one.stamp}",
    )


def _noise_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    limit = outing.day.limits.noise if outing.day is not None else None
    read, day = outing.entry.noise.reading, outing.session.day
    if limit is None or read is None or day is None or read.to("dB(A)") <= limit.to("dB(A)"):
        return
    if outing.day is not None and measured_elsewhere(outing.entry, outing.day):
        return
    yield opened(
        "noise-over-last-time",
        outing.session.bike,
        outing,
        ("entries", outing.session.rider or "", outing.bike, "noise", "reading"),
        record="day",
        day=day,
        home=TODAY,
        what=str(read),
        cause=outing.outside.place or "",
    )


def _noise_closes(one: Opened, outing: Outing) -> bool:
    later = is_later(Place(outing.session.date, stage="morning"), one.place)
    read = outing.entry.noise.reading is not None
    here = outing.day is None or not measured_elsewhere(outing.entry, outing.day)
    return outing.session.bike == one.whom and later and read and here


def _noise(one: Opened, now: Present) -> Said | None:
    if one.date is not None and now.today(one):
        return None
    there = now.day.venue if now.day is not None else None
    return Said(
        HOLD if one.cause and one.cause == there else NOTE,
        f"Too loud on {one.date}: {one.what}, not measured under since.",
        "The next noise test finds the same bike; over the limit it goes home.",
        "Baffle, silencer packing, gaskets: find it, measure again, and enter the reading of the day.",
        f"noise {one.what} {one.stamp}; not measured under",
    )


declare(
    MatterKind(
        _STOOD,
        "bike",
        CAUTION,
        "brakes",
        "brakes, tyres, chain, battery gone through, and what was done, by whom",
        _stood_opens,
        _stood,
        guard="up to 90 days; once, not once a day",
        at="bike:answers",
        todo="the bike stood: brakes, tyres, chain, battery",
        afterwards=False,
        wants=("done", "by"),
        limits=(STOOD_DAYS,),
    )
)
declare(
    MatterKind(
        "height-never-ridden",
        "bike",
        CAUTION,
        "suspension",
        "fully compressed, lock to lock, by whom; or put back",
        _height_opens,
        _height,
        closes=_height_closes,
        guard="no earlier height on record; where the bike's file says how far it is clear",
        at="bike:answers",
        todo="compress fully, lock to lock: does anything touch?",
        afterwards=False,
        wants=("test", "by"),
        limits=(HEIGHT_CAUTION,),
    )
)
declare(
    MatterKind(
        "ice-on-the-track",
        "track",
        HOLD,
        "event",
        "ice: no, entered later that day; another day",
        _ice_opens,
        _ice,
        closes=_ice_closes,
        guard="on another day",
        at="session:ice",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "noise-over-last-time",
        "bike",
        NOTE,
        "event",
        "measured again",
        _noise_opens,
        _noise,
        closes=_noise_closes,
        guard="another venue's reading: a note; on its own day the day says it",
        at="day:limits.noise",
        afterwards=False,
    )
)
