"""The reviews of the raising cases of rules, each by its rule and what may take it over: done once."""

from paddock_tui.rules import Review
from tests.rules.case import Raises
from tests.rules.situations import look_for

_LOOKED: dict[int, tuple[Raises, Review]] = {}


def looked(rule: str, case: Raises) -> Review:
    """Review a case by its rule and what may take it over; once, for a review never changes."""
    if id(case) not in _LOOKED:
        _LOOKED[id(case)] = case, look_for(rule, *case.changes, **case.more)
    return _LOOKED[id(case)][1]
