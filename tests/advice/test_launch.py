"""Launch control: where to begin with it, from its gentlest level, where a start is what is wanted."""

from typing import Any

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.launch import launch_answers
from paddock_tui.facts.past import NOTHING, History
from paddock_tui.rules.core import SetValue
from tests.rules.cases.wheels import A_RACE, LAUNCH, STARTED
from tests.rules.situations import files, put, situation, went_before

GENTLE = put("bike", "controls.launch.gentlest", "armed")


def answers(*changes: Any, history: History = NOTHING) -> list[Answer]:
    found = situation(files(*changes), history=history)
    return list(launch_answers(About(found, found.history)))


def test_who_has_made_no_start_with_it_begins_at_the_gentlest() -> None:
    (found,) = answers(A_RACE, LAUNCH, GENTLE)
    assert found.puts == (SetValue(("setup", "controls", "launch"), "armed"),)
    assert found.short == "usual armed"


def test_after_a_start_the_level_is_the_riders_own() -> None:
    (found,) = answers(A_RACE, LAUNCH, GENTLE, history=went_before(STARTED))
    assert (found.puts, found.short) == ((), "")
    assert "1 on record" in found.working[1]


def test_without_the_gentlest_end_nothing_is_guessed() -> None:
    (found,) = answers(A_RACE, LAUNCH)
    assert found.missing == ("gentlest level",)
    assert not found.known


def test_where_nobody_starts_from_a_line_nothing_is_said() -> None:
    assert answers(LAUNCH, GENTLE) == []
    assert answers(A_RACE) == []
