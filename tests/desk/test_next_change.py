"""The next change is taken into the next session with its reason, in one step that undo takes back."""

from pathlib import Path

import pytest

from paddock_tui.advice.next_change import Kind, Proposal, next_change
from paddock_tui.desk import Desk
from paddock_tui.desk.sessions.next_change import next_of, ridden_one, taking_change
from paddock_tui.records.edits import Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from tests.desk.opened import BEFORE, NEXT, at_desk, typed
from tests.small import snapshot

LAST = Ref("session", "2026-06-20-2-magpie")
RODE_THESE = Ref("session", "2026-05-16-3-magpie")
"""An earlier session: on the tyre set of the last one, these are not new to the bike."""

OTTER = Ref("session", "2026-06-20-2-otter")


def proposed(desk: Desk, ref: Ref) -> Proposal:
    found = next_change(desk.about(ref)).proposal
    assert found.kind is Kind.CHANGE
    return found


def taken(desk: Desk, ref: Ref, proposal: Proposal) -> Ref:
    there, step = taking_change(desk.files, ref, proposal, BEFORE)
    assert isinstance(step, Step), step
    desk.do(step)
    desk.settled()
    return there


def test_it_is_about_the_session_that_was_ridden(garage: Path) -> None:
    desk = at_desk(garage)
    assert ridden_one(desk.files, LAST) == LAST
    assert ridden_one(desk.files, NEXT) == LAST
    assert ridden_one(desk.files, Ref("profile", "magpie-ines-wet")) is None
    assert ridden_one(desk.files, None) is None


def set_(desk: Desk, ref: Ref, path: str, text: str) -> None:
    """Enter one value, and wait until it is on disk."""
    desk.do(typed(desk, ref, (path, text)))
    desk.settled()


def test_it_goes_into_the_session_that_was_made_already(garage: Path) -> None:
    desk = at_desk(garage)
    set_(desk, RODE_THESE, "tyres", "magpie-trackday-2")
    set_(desk, LAST, "pressures.hot.front", "2.70 bar")
    set_(desk, NEXT, "surface", "damp")
    before = snapshot(garage)
    assert next_of(desk.files, LAST) == NEXT
    assert taken(desk, LAST, proposed(desk, LAST)) == NEXT
    text = (garage / "sessions/2026/2026-06-20-4-magpie.toml").read_text(encoding="utf-8")
    assert 'front_start = "2.05 bar"' in text
    assert '[because.setup.front_start]\nwhy = "front pressure"\nexpect = "the tyre' in text
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


@pytest.mark.parametrize(
    ("path", "text", "said"),
    [("surface", "wet", "is wet, not"), ("tyres", "magpie-wet", "other tyres")],
)
def test_a_pressure_is_not_taken_into_a_session_with_another_target(
    garage: Path, path: str, text: str, said: str
) -> None:
    desk = at_desk(garage)
    set_(desk, RODE_THESE, "tyres", "magpie-trackday-2")
    set_(desk, LAST, "pressures.hot.front", "2.70 bar")
    set_(desk, NEXT, "surface", "damp")
    set_(desk, NEXT, path, text)

    there, step = taking_change(desk.files, LAST, proposed(desk, LAST), BEFORE)

    assert there == NEXT
    assert isinstance(step, InputError)
    assert said in step.sentence()


def test_it_makes_the_next_session_where_there_is_none(garage: Path) -> None:
    desk = at_desk(garage)
    set_(desk, OTTER, "did", "noted")  # asked first otherwise, which of the symptoms "lazy to turn" is
    set_(desk, OTTER, "pressures.hot.front", "40 psi")
    before = snapshot(garage)
    assert next_of(desk.files, OTTER) is None
    proposal = proposed(desk, OTTER)
    there = taken(desk, OTTER, proposal)
    made, source = (desk.files.read(ref) for ref in (there, OTTER))
    assert made is not None
    assert source is not None
    assert isinstance(made.record, Session)
    assert isinstance(source.record, Session)
    assert made.troubles == ()
    assert made.record.copied_from == OTTER.id
    assert str(made.record.setup.front_start) == "28.0 psi"
    assert made.record.setup.controls == source.record.setup.controls
    assert made.record.because["setup"]["front_start"].why == proposal.symptom
    desk.undo()
    desk.settled()
    assert snapshot(garage) == before


@pytest.mark.parametrize("ref", [OTTER, LAST])
def test_the_same_again_changes_nothing_but_makes_the_next_session(garage: Path, ref: Ref) -> None:
    desk = at_desk(garage)
    there, step = taking_change(desk.files, ref, Proposal(Kind.SAME, "", "None: same again.", ""), BEFORE)
    assert isinstance(step, Step)
    if ref == LAST:
        assert (there, step.changes) == (NEXT, ())
        return
    desk.do(step)
    desk.settled()
    made, source = (desk.files.data(one) for one in (there, ref))
    assert made["setup"] == source["setup"]
    assert "because" not in made
