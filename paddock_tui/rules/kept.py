"""Reviews that still stand: of the same records, while nothing that looks at the clock reads otherwise.

A page is made anew for every key, and a review is half of its work. Nothing stands by a guess: records are
the same when they are the very same objects, and each fact that takes the time is asked again at the new one.
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

import attrs

from paddock_tui.facts.core import Facts
from paddock_tui.facts.past import PastSession
from paddock_tui.facts.situation import Situation
from paddock_tui.rules.core import RULES
from paddock_tui.rules.engine import Review, is_due, review

MOST = 8
"""So many are kept: what is looked at and what is in hand, for going out too, and those of a board."""

_BY_VALUE = frozenset({"going_out", "dangling", "disputed", "not_understood", "impossible", "refs"})
"""Small things that are made anew for each situation from records that are compared themselves."""

_COMPARED = tuple(one.name for one in attrs.fields(Situation) if one.init and one.name != "now")


class _Kept(NamedTuple):
    situation: Situation
    facts: Facts
    review: Review

    def at(self, other: Situation) -> "_Kept | None":
        """Return this for another situation, whose review would say the very same; None where it may not."""
        before = self.situation
        if not same_but_for_now(before, other):
            return None
        if before.now == other.now:
            return self
        to_do = (rule for rule in RULES.values() if rule.todo is not None)
        if any(is_due(rule, before) != is_due(rule, other) for rule in to_do):
            return None
        facts = self.facts.at(other.now)
        return None if facts is None else _Kept(other, facts, self.review)


class KeptReviews:
    """Judges situations, and gives a review again while a new one would be the same."""

    def __init__(self) -> None:
        self._kept: list[_Kept] = []
        self.made = 0
        """How many reviews were made."""

    def review(self, situation: Situation) -> Review:
        """Judge a situation, whole."""
        return self._of(situation).review

    def facts(self, situation: Situation) -> Facts:
        """Return the facts of a situation; where it was judged, what that asked for is known."""
        found = self._known(situation)
        return found.facts if found is not None else situation.facts()

    def _of(self, situation: Situation) -> _Kept:
        found = self._known(situation)
        if found is None:
            found = _Kept(situation, situation.facts(), review(situation))
            self.made += 1
            self._kept = [found, *self._kept][:MOST]
        return found

    def _known(self, situation: Situation) -> _Kept | None:
        for before in self._kept:
            found = before.at(situation)
            if found is not None:
                self._kept = [found, *(one for one in self._kept if one is not before)]
                return found
        return None


def same_but_for_now(before: Situation, other: Situation) -> bool:
    """Return whether two situations are of the very same records, whatever the time of either."""
    return all(_same(name, getattr(before, name), getattr(other, name)) for name in _COMPARED)


def _same(name: str, before: Any, now: Any) -> bool:
    if before is now:
        return True
    if name in _BY_VALUE:
        return bool(before == now)
    if isinstance(before, tuple) and isinstance(now, tuple):
        return len(before) == len(now) and all(map(_same_past, before, now))
    if isinstance(before, Mapping) and isinstance(now, Mapping):
        return before.keys() == now.keys() and all(one is now[key] for key, one in before.items())
    return False


def _same_past(before: Any, now: Any) -> bool:
    """Return whether an earlier session is the same: what stands around its record may be made anew."""
    if before is now:
        return True
    both = isinstance(before, PastSession) and isinstance(now, PastSession)
    return both and before.session is now.session and bool(before == now)
