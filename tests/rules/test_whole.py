"""Whole situations, each with everything that is found in it: no finding more, none less."""

from paddock_tui.rules import CAUTION
from tests.every import every
from tests.rules.situations import look
from tests.rules.whole import SITUATIONS
from tests.rules.whole.situation import Whole


@every("whole", SITUATIONS, ids=lambda whole: whole.name)
def test_exactly_this_is_found(whole: Whole) -> None:
    found = look(*whole.changes, **whole.more)
    bad = {(one.rule, one.subject, str(one.severity)) for one in found.findings if one.severity >= CAUTION}
    assert bad == whole.expected
    if whole.to_do is not None:
        assert {one.rule for one in found.to_do} == whole.to_do


def test_no_two_whole_situations_share_a_name() -> None:
    names = [whole.name for whole in SITUATIONS]
    assert len(set(names)) == len(names)
