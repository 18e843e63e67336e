"""What wears: pads, tread and chain near their limits, and readings that grew old."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.limits.matters import READING_OLD, WEAR_CLOSE
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.remember import was_on_track
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, NOTE, SERIOUS

_PARTS = {
    "front-pads": "front_pads",
    "rear-pads": "rear_pads",
    "front-tread": "front_tread",
    "rear-tread": "rear_tread",
    "chain": "chain_length",
}
"""What wears, and the value of a session that measures it."""

_LABELS = {
    "front-pads": "front pads",
    "rear-pads": "rear pads",
    "front-tread": "front tread",
    "rear-tread": "rear tread",
    "chain": "chain",
}


def readings(outing: Outing) -> Mapping[str, float]:
    """Return what was measured of each wearing part, in mm."""
    session = outing.session
    return {
        part: value.to("mm") for part, key in _PARTS.items() if (value := getattr(session, key)) is not None
    }


def whose(part: str, outing: Outing) -> str | None:
    """Return whom a part's wear follows: a tread its tyre, all else the bike."""
    if part.endswith("tread"):
        return outing.tyres.get(part.partition("-")[0]) or outing.session.bike
    return outing.session.bike


def _measured(kind: str, outing: Outing) -> Iterator[Opened]:
    for part, value in readings(outing).items():
        yield opened(
            kind,
            outing.session.bike,
            outing,
            (_PARTS[part],),
            subject=part,
            value=value,
            what=f"{value:g} mm",
            home=whose(part, outing) or "",
            rides=int(was_on_track(outing)),
        )


def _near_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _measured("wear-near-its-limit", outing)


def _old_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _measured("wear-reading-old", outing)


def _new_reading(one: Opened, outing: Outing) -> bool:
    """Return whether it was measured again, or another part is on."""
    if outing.session.bike != one.whom:
        return False
    if getattr(outing.session, _PARTS[one.subject]) is not None:
        return True
    end = one.subject.partition("-")[0]
    name = outing.tyres.get(end)
    if one.subject.endswith("tread"):
        return name is not None and one.home not in (name, outing.bike)
    fitted = {"front-pads": "pads", "rear-pads": "pads", "chain": "chain"}[one.subject]
    work = outing.session.work.values()
    return any(
        done.what == fitted and done.end in (None, end, "rear" if end == "chain" else end) for done in work
    )


def _ridden(one: Opened, outing: Outing) -> Opened:
    on_track = was_on_track(outing)
    return attrs.evolve(one, rides=one.rides + 1) if outing.bike == one.whom and on_track else one


def _limit(part: str, now: Present) -> float | None:
    """Return the limit of a part in mm, as somebody wrote it down: nobody's figure is guessed."""
    end = part.partition("-")[0]
    if part.endswith("pads"):
        least = now.day.limits.pads if now.day is not None else None
    elif part.endswith("tread"):
        tyre = now.fitted.get(end)
        least = tyre.worn_at if tyre is not None else None
    else:
        least = now.bike.drive.chain_longest if now.bike is not None else None
    return least.to("mm") if least is not None else None


def _near(one: Opened, now: Present) -> Said | None:
    limit = _limit(one.subject, now)
    if limit is None:
        return None
    left = limit - one.value if one.subject == "chain" else one.value - limit
    if left > now.limits[WEAR_CLOSE] + 1e-9 or (left <= 1e-9 and one.subject != "chain"):
        return None
    label = _LABELS[one.subject]
    worn = left <= 1e-9
    state = "worn out" if worn else "near the limit"
    return Said(
        SERIOUS if worn else CAUTION,
        f"{label[:1].upper()}{label[1:]} {state}: {one.what}, limit {limit:g} mm.",
        "A chain that long climbs its sprockets and can jump or break."
        if one.subject == "chain"
        else "The last millimetre goes quicker than the ones before; it may not last the day.",
        "Fit a new one, or measure again after the next outing and enter it.",
        f"{label} {one.what} {one.stamp}; limit {limit:g} mm",
    )


def _old(one: Opened, now: Present) -> Said | None:
    if one.rides <= now.limits[READING_OLD] or now.session.kind == "road":
        return None
    label = _LABELS[one.subject]
    return Said(
        NOTE,
        f"The last reading of the {label} is {one.rides} track outings old.",
        "What it has worn since is not known, and no trend reaches that far.",
        f"Measure the {label} and enter it.",
        f"{label} {one.what} {one.stamp}; {one.rides} track outings since",
    )


declare(
    MatterKind(
        "wear-near-its-limit",
        "bike",
        CAUTION,
        "brakes",
        "measured again, or another part",
        _near_opens,
        _near,
        closes=_new_reading,
        guard="no limit on record; more than a millimetre left",
        at="session:front_pads",
        afterwards=False,
        limits=(WEAR_CLOSE,),
        needs=("bike",),
    )
)
declare(
    MatterKind(
        "wear-reading-old",
        "bike",
        NOTE,
        "brakes",
        "measured again, or another part",
        _old_opens,
        _old,
        closes=_new_reading,
        carried=_ridden,
        guard="no reading at all; eight track outings or fewer",
        at="session:front_pads",
        todo="measure pads, tread or chain again",
        afterwards=False,
        limits=(READING_OLD,),
    )
)
