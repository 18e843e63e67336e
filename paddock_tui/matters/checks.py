"""What a checklist found to fix stays to fix, session after session and day after day, until it is ok."""

from collections.abc import Iterator, Mapping

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.order import Place, is_later
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE, SERIOUS, Severity
from paddock_tui.records.checklist import DAY_STAGES, ROAD, ChecklistItem, unlisted_item
from paddock_tui.records.common import Check
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.text import printable

TO_FIX = "to fix"
ITEM_TO_FIX = "checklist-item-to-fix"

_SEVERITIES: dict[str, Severity] = {"hold": HOLD, "serious": SERIOUS, "caution": CAUTION, "note": NOTE}

_MEANS = {
    "hold": "The list says hold: it is put right before the bike goes out.",
    "serious": "The list says serious: it is put right, or there is a reason why it can wait.",
    "caution": "The list says caution.",
    "note": "The list says note.",
}


def _opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    yield from _marked(outing, session.checks, (), {})
    if session.day is not None and session.rider is not None and session.bike is not None:
        place = ("entries", session.rider, session.bike)
        yield from _marked(outing, outing.entry.checks, place, {"record": "day", "day": session.day})


def _marked(
    outing: Outing, checks: Mapping[str, Check], place: tuple[str, ...], more: Mapping[str, str]
) -> Iterator[Opened]:
    for name, check in sorted((name, check) for name, check in checks.items() if check.status == TO_FIX):
        yield opened(
            ITEM_TO_FIX,
            outing.session.bike,
            outing,
            (*place, "checks", name, "status"),
            at=check.at,
            what=check.by or "",
            subject=name,
            **more,
        )


def _closes(one: Opened, outing: Outing) -> bool:
    """Return whether it was answered ok later; not applicable never answers what is to fix."""
    if outing.session.bike != one.whom:
        return False
    if one.record == "day":
        # Another day's answer, or the same day's entry of another rider's hand.
        check = outing.entry.checks.get(one.subject)
        later = is_later(Place(outing.session.date, stage="morning"), one.place)
        return later and check is not None and check.status in ("ok", TO_FIX)
    check = outing.session.checks.get(one.subject)
    return check is not None and check.status in ("ok", TO_FIX)


def _says(one: Opened, now: Present) -> Said | None:
    item, listed = _item(one, now)
    severity = _severity(item, now)
    # A note stays a note of its own session, or day.
    own = now.here(one) if one.record == "session" else now.today(one)
    if severity is NOTE and not own:
        return None
    text = _plain(item.text or label_of(one.subject))
    where = text if listed or item.to_fix else f"{text}, on none of the lists"
    means = _means(item, severity, listed=listed)
    marked = _how_marked(one, own)
    return Said(
        severity,
        f"To fix: {where}.",
        f"{means} {marked[:1].upper()}{marked[1:]}.",
        "Fix it, look at it again, and only then answer the item ok.",
        # A new mark is a new fact: what was accepted before it does not count for it.
        f"to fix: {text}; {marked}",
        (text,),
    )


def _severity(item: ChecklistItem, now: Present) -> Severity:
    """Return how bad it is: what is for the road alone is a caution on a track that is left by road.

    Where that bike goes home in a van it is a note of the session that found it.
    """
    severity = _SEVERITIES.get(item.to_fix or "", CAUTION)
    if not item.of_the_road or now.session.kind in (ROAD, None):
        return severity
    return min(severity, NOTE if _in_a_van(now) else CAUTION)


def _means(item: ChecklistItem, severity: Severity, *, listed: bool) -> str:
    if item.to_fix is None:
        return "No list says how bad that is: at least a caution."
    if severity < _SEVERITIES[item.to_fix]:
        return (
            f"On the road it is a {item.to_fix}."
            if item.to_fix != "serious"
            else "On the road it is serious."
        )
    if listed:
        return _MEANS[item.to_fix]
    return "It is put right before the bike goes out." if severity is HOLD else "It is put right first."


def _in_a_van(now: Present) -> bool:
    """Return whether somebody said that the bike goes home in a van: not said is not by van."""
    if now.day is None:
        return False
    entry = now.day.entries.get(now.session.rider or "", {}).get(now.session.bike or "")
    travel = (entry.travel if entry is not None else None) or now.day.travel
    return travel not in (None, ROAD)


def _item(one: Opened, now: Present) -> tuple[ChecklistItem, bool]:
    """Return the item as the lists have it, the one that says worst; and whether any list has it."""
    in_day = one.record == "day"
    found = [
        made.items[one.subject]
        for _, made in sorted(now.checklists.items())
        if one.subject in made.items and ((made.stage or "") in DAY_STAGES) == in_day
    ]
    worst = max(found, key=lambda item: _SEVERITIES.get(item.to_fix or "", CAUTION), default=None)
    return (worst, True) if worst is not None else (unlisted_item(one.subject), False)


def _how_marked(one: Opened, own: bool) -> str:
    words = ["marked"]
    if not own:
        words.append(f"in session {one.number}" if one.record == "session" else f"on {one.date}")
    if one.at is not None:
        words.append(f"at {one.at:%H:%M}")
    if one.what.strip():
        words.append(f"by {_plain(one.what)}")
    return " ".join(words) if len(words) > 1 else "marked, nobody wrote when"


def _plain(text: str) -> str:
    return " ".join(printable(text).split()).rstrip(".")


declare(
    MatterKind(
        ITEM_TO_FIX,
        "bike",
        CAUTION,
        "brakes",
        "ok, later than it was to fix; not applicable never",
        _opens,
        _says,
        closes=_closes,
        guard="a note stays where it was written",
        at="day:entries.{subject}.{subject}.checks.{subject}.status",
    )
)
