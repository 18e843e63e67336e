"""The conditions of two sessions side by side, and what of them may be the cause instead of a change."""

from collections.abc import Iterator
from weakref import WeakKeyDictionary

import attrs

from paddock_tui.advice.session_laps import fall_words, lap_words, stint_of
from paddock_tui.facts.outing import COLUMN, track_moved_k
from paddock_tui.facts.past import History, PastSession
from paddock_tui.limits import Limits
from paddock_tui.limits.next_change import LIKE_TRACK
from paddock_tui.quantities import Quantity, rounded
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Feel

FEEL = tuple((one.name, one.metadata["spec"].label) for one in attrs.fields(Feel))
"""The five phases at which feel is scored: attribute and label."""


@attrs.frozen
class ConditionPair:
    """One line of a comparison: what it is, before and after; empty where not known."""

    label: str
    before: str
    after: str

    @property
    def differs(self) -> bool:
        """Whether the two are known and differ."""
        return bool(self.before and self.after) and self.before != self.after


def tyre_age(history: History, past: PastSession) -> int | None:
    """Return which outing of its tyre set a session was, as far as the garage tells; None without a set."""
    name = past.tyres
    if name is None:
        return None
    ages, whole = _ages(history)
    age = ages.get(past.id)
    return age if age is not None else 1 + whole.get(name, 0)


_AGES: WeakKeyDictionary[History, tuple[dict[str, int], dict[str, int]]] = WeakKeyDictionary()


def _ages(history: History) -> tuple[dict[str, int], dict[str, int]]:
    """Return which outing of its set each session was, and how often each set was ridden; counted once."""
    kept = _AGES.get(history)
    if kept is None:
        ages: dict[str, int] = {}
        ridden: dict[str, int] = {}
        for one in history.past:
            name = one.tyres
            if name is not None:
                ages[one.id] = 1 + ridden.get(name, 0)
                ridden[name] = ridden.get(name, 0) + one.ridden
        kept = _AGES[history] = ages, ridden
    return kept


def unlike(before: PastSession, after: PastSession, limits: Limits) -> Iterator[str]:
    """Say what makes two sessions no fair comparison; what is not known makes no difference."""
    if before.date != after.date:
        yield "another day"
    if None not in (before.venue, after.venue) and before.venue != after.venue:
        yield f"venue {before.venue}, then {after.venue}"
    if None not in (before.rider, after.rider) and before.rider != after.rider:
        yield f"rider {before.rider}, then {after.rider}"
    one, other = before.session, after.session
    here, there = (COLUMN.get(each.surface or "") for each in (one, other))
    if here is not None and there is not None and here != there:
        yield f"surface {one.surface}, then {other.surface}"
    if one.tyres != other.tyres:
        yield f"tyre set {one.tyres or 'not known'}, then {other.tyres or 'not known'}"
    if track_moved_k(one, other, limits) is not None:
        yield f"track {one.track}, then {other.track}: more than {limits[LIKE_TRACK]:g} C apart"


def ageing(history: History, before: PastSession, after: PastSession) -> str:
    """Say how much older the same tyre set was; empty where it is not the same, or no older."""
    if before.tyres is None or before.tyres != after.tyres:
        return ""
    ages = tyre_age(history, before), tyre_age(history, after)
    if None in ages or ages[0] == ages[1]:
        return ""
    return f"the tyre set was in outing {ages[0]}, then {ages[1]}"


def side_by_side(history: History, before: PastSession, after: PastSession) -> Iterator[ConditionPair]:
    """List the conditions and what came of it for two sessions."""
    pairs = [dict(_said(history, one)) for one in (before, after)]
    for label in dict.fromkeys((*pairs[0], *pairs[1])):
        found = ConditionPair(label, pairs[0].get(label, ""), pairs[1].get(label, ""))
        if found.before or found.after:
            yield found


def feel_shift(before: Session, after: Session) -> Iterator[tuple[str, int, int]]:
    """List the moments at which feel changed, with the scores; 5 is best."""
    for name, label in FEEL:
        old, new = getattr(before.feel, name), getattr(after.feel, name)
        if old is not None and new is not None and old != new:
            yield label, old, new


def _said(history: History, past: PastSession) -> Iterator[tuple[str, str]]:
    session = past.session
    age = tyre_age(history, past)
    yield "day", "" if session.date is None else f"{session.date:%Y-%m-%d}"
    yield "session", "" if session.number is None else str(session.number)
    yield "venue", past.venue or ""
    yield "rider", session.rider or ""
    yield "surface", session.surface or ""
    yield "air", _text(session.air)
    yield "track", _text(session.track)
    yield "tyre set", session.tyres or ""
    yield "outing of the tyre set", "" if age is None else str(age)
    hot = session.pressures.get("hot")
    yield "hot, front", _text(hot.front) if hot is not None else ""
    yield "hot, rear", _text(hot.rear) if hot is not None else ""
    yield from _laps(past)
    for name, label in FEEL:
        score = getattr(session.feel, name)
        yield f"feel {label}", "" if score is None else str(score)
    for label in ("confidence", "fatigue"):
        score = getattr(session, label)
        yield label, "" if score is None else str(score)


def _laps(past: PastSession) -> Iterator[tuple[str, str]]:
    found = stint_of(past.session) if past.may_time else None
    if found is None or not (found.clean or found.aside):
        return
    yield "clean laps", str(len(found.clean))
    yield "laps left out", str(len(found.aside))
    yield "best lap", lap_words(found.best_s) if found.best_s is not None else ""
    yield "usual lap", lap_words(found.usual_s) if found.usual_s is not None else ""
    yield "spread", f"{rounded(found.spread_s, 2)} s" if found.spread_s is not None else ""
    yield "fall-off", fall_words(found).partition(" (")[0]


def _text(value: Quantity | str | None) -> str:
    return "" if value is None else str(value)
