"""A head that was hit, and the helmet: a day off the bike, who cleared the rider, and another helmet."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, numbered, opened
from paddock_tui.matters.order import is_early
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS

_HEAD = "suspected concussion ends the day, a helmet that was hit is out of service: paddock practice"


def _hits(kind: str, outing: Outing) -> Iterator[Opened]:
    """Open what touched the helmet, or after which a concussion is suspected."""
    for number, one in numbered(outing.session.incidents):
        if not (one.head_contact or one.concussion):
            continue
        gaps = []
        if not (one.cleared_by or "").strip():
            gaps.append("cleared_by")
        if one.cleared_at is None:
            gaps.append("cleared_at")
        yield opened(
            kind,
            outing.session.rider,
            outing,
            ("incidents", number, gaps[0] if kind == "head-hit-not-cleared" and gaps else "concussion"),
            at=one.at,
            subject="rider",
            what={True: "suspected", None: "not answered", False: ""}[one.concussion],
            missing=tuple(gaps),
        )


def _suspected(one: Opened, now: Present) -> bool:
    """Return whether a concussion is suspected on its own day: said so, or not answered after a knock."""
    return now.today(one) and bool(one.what)


def _concussion(one: Opened, now: Present) -> Said | None:
    if not _suspected(one, now):
        return None
    return Said(
        HOLD,
        f"Head hit {now.when(one)}, concussion {one.what}: no riding today.",
        "Blank counts as suspected. Signs come late, a second knock can kill; nothing cures it today.",
        "Stay off the bike for the rest of the day, be with somebody, see a doctor, ask the local rules. "
        "Only a doctor or the medical post can say that there is none.",
        f"head hit {one.stamp}; concussion {one.what}",
    )


_GAPS = {"cleared_by": "who cleared you", "cleared_at": "when you were cleared"}


def _not_cleared(one: Opened, now: Present) -> Said | None:
    if _suspected(one, now):
        return None
    gaps = [_GAPS[key] for key in one.missing]
    return Said(
        HOLD,
        f"Head hit {now.when(one)}: {gaps[0]}{' and more' if len(gaps) > 1 else ''} missing.",
        f"It takes who cleared the rider, and when. Missing: {', '.join(gaps)}.",
        "See a doctor or the medical post, be with somebody, ask the local rules; enter who cleared you "
        "and when.",
        f"head hit {one.stamp}; missing: {', '.join(gaps)}",
    )


def _helmet(one: Opened, now: Present) -> Said:
    return Said(
        HOLD,
        f"The helmet was hit {now.when(one)}: another one is not written down.",
        "A helmet protects once; what broke inside it does not show.",
        "Put on another helmet, and enter it under the incident. A look at this one answers nothing.",
        f"helmet hit {one.stamp}; not replaced",
    )


def _dropped_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in numbered(outing.session.incidents):
        looked = (one.found or "").strip() or one.helmet_replaced is True
        if one.what == "helmet dropped" and (not looked or is_early(one, outing.session)):
            path = ("incidents", number, "found")
            yield opened("helmet-dropped", outing.session.rider, outing, path, at=one.at, subject="helmet")


def _dropped(one: Opened, now: Present) -> Said:
    return Said(
        NOTE,
        f"The helmet was dropped {now.when(one)}: have it looked at.",
        "Empty it seldom breaks, and what breaks inside does not show.",
        "Have somebody who sells or tests helmets look at it, and enter what was found.",
        f"helmet dropped {one.stamp}; not looked at",
    )


def _unanswered(one: Opened, now: Present) -> Said | None:
    if not now.today(one):
        return None
    return Said(
        SERIOUS,
        f"Fall {now.when(one)}: did the head touch anything? Nobody said.",
        "A knock is easily missed after a fall; scratches on the helmet say more than memory does.",
        "Look the helmet over, ask whoever saw it, go to the medical post, and enter it.",
        f"fall {one.stamp}; head contact not answered",
    )


def _concussion_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _hits("concussion-suspected", outing)


def _not_cleared_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return (one for one in _hits("head-hit-not-cleared", outing) if one.missing)


def _helmet_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in numbered(outing.session.incidents):
        if one.head_contact and one.helmet_replaced is not True:
            path = ("incidents", number, "helmet_replaced")
            yield opened("helmet-hit", outing.session.rider, outing, path, at=one.at, subject="helmet")


def _unanswered_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    for number, one in numbered(outing.session.incidents):
        fell = one.what == "fall" and one.moving is not False
        if fell and one.head_contact is None and not one.concussion:
            path = ("incidents", number, "head_contact")
            yield opened(
                "head-contact-not-answered", outing.session.rider, outing, path, at=one.at, subject="rider"
            )


declare(
    MatterKind(
        "concussion-suspected",
        "rider",
        HOLD,
        "head",
        "the day is over; then who cleared the rider, and when",
        _concussion_opens,
        _concussion,
        guard="on later days it is asked who cleared the rider",
        source=_HEAD,
    )
)
declare(
    MatterKind(
        "head-hit-not-cleared",
        "rider",
        HOLD,
        "head",
        "who cleared the rider, doctor or medical post, and when",
        _not_cleared_opens,
        _not_cleared,
        source=_HEAD,
    )
)
declare(
    MatterKind(
        "helmet-hit",
        "helmet",
        HOLD,
        "head",
        "another helmet",
        _helmet_opens,
        _helmet,
        source=_HEAD,
    )
)
declare(
    MatterKind(
        "head-contact-not-answered",
        "rider",
        SERIOUS,
        "head",
        "whether the head touched anything",
        _unanswered_opens,
        _unanswered,
        guard="on later days",
        source=_HEAD,
    )
)
declare(
    MatterKind(
        "helmet-dropped",
        "helmet",
        NOTE,
        "rider",
        "what was found when it was looked at, or another helmet",
        _dropped_opens,
        _dropped,
    )
)
