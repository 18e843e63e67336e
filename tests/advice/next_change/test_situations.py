"""Every situation with its exact answer: the cause that speaks, what is set to what, what is asked."""

import functools

from paddock_tui.advice.about import About
from paddock_tui.advice.next_change import CAUSES, Advised, next_change
from tests.advice.next_change.cases import advised, felt
from tests.advice.next_change.told import SITUATIONS
from tests.advice.next_change.told.given import Expected
from tests.rules.situations import put, without


def answer(found: Advised) -> tuple[str, str, dict[str, object], str]:
    """Give what is compared: cause, kind, what is set, and where the answer to a question goes."""
    proposal = found.proposal
    puts: dict[str, object] = {}
    for each in proposal.move.puts if proposal.move else ():
        puts[".".join(each.path[1:])] = each.value
    asks = ".".join(proposal.answer_at) if proposal.question is not None else ""
    return found.cause, proposal.kind.name, puts, f"{proposal.answer_of} {asks}".strip()


@functools.cache
def answers() -> dict[str, Advised]:
    """Give the answer of each situation, by its name."""
    return {name: next_change(one) for name, one in looked_at().items()}


@functools.cache
def looked_at() -> dict[str, About]:
    """Give what is looked at in each situation, by its name."""
    return {one.name: one.about() for one in SITUATIONS}


def wanted(one: Expected) -> tuple[str, str, dict[str, object], str]:
    return one.cause, one.kind, dict(one.puts), one.asks


def test_each_situation_has_its_exact_answer() -> None:
    found = {one.name: answer(answers()[one.name]) for one in SITUATIONS}
    wrong = {one.name: (found[one.name], wanted(one)) for one in SITUATIONS if found[one.name] != wanted(one)}
    assert wrong == {}


def test_there_are_enough_situations_and_each_cause_speaks_in_some() -> None:
    assert len({one.name for one in SITUATIONS}) == len(SITUATIONS) >= 80
    assert {one.cause for one in SITUATIONS} == {cause.id for cause in CAUSES}


def test_those_before_the_one_that_spoke_say_why_they_did_not() -> None:
    labels = [cause.label for cause in CAUSES]
    for one in SITUATIONS:
        found = answers()[one.name]
        place = [cause.id for cause in CAUSES].index(found.cause)
        assert [each.label for each in found.silent] == labels[:place], one.name
        assert all(each.reason for each in found.silent), one.name


def test_a_danger_is_found_whatever_record_is_missing() -> None:
    for role in ("day", "rider", "bike", "tyres", "venue"):
        found = advised(without(role), put("session", "lever", "to the bar"), felt("dives"))
        assert (found.cause, found.proposal.kind.name) == ("stop", "MEND"), role
