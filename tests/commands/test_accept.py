"""`accept`: the reason is written, taken back, and only for what is to be answered."""

from pathlib import Path

from tests.commands.running import EARLY, FILE, NEXT, Runner
from tests.small import snapshot

RULE, SUBJECT = "little-traction-help-in-the-wet", "traction"


def test_a_serious_finding_is_accepted_and_that_is_taken_back_byte_for_byte(
    run: Runner, garage: Path
) -> None:
    before = snapshot(garage)

    ran = run("accept", garage, RULE, SUBJECT, "--reason", "behind the instructor", "--at", EARLY)

    assert (ran.status, ran.err) == (0, "")
    assert ran.out == "accepted: Traction control low for a wet track: 3 (range 0-10).\n"
    text = (garage / FILE).read_text()
    assert text.startswith(before[FILE].decode())
    assert 'by = "IS"\nat = 08:00:00\n' in text
    checked = run("check", garage, "--at", EARLY)
    assert checked.status == 1
    assert "CARE 2 (0 to answer)" in checked.out
    assert "Accepted by IS: behind the instructor" in " ".join(checked.out.split())
    back = run("accept", garage, RULE, SUBJECT, "--withdraw")
    assert (back.status, back.out) == (0, f"no longer accepted: {RULE} {SUBJECT}\n")
    assert snapshot(garage) == before


def test_what_is_not_accepted_cannot_be_taken_back(run: Runner, garage: Path) -> None:
    ran = run("accept", garage, RULE, SUBJECT, "--withdraw")

    assert ran.status == 3
    assert ran.err == f"{RULE} {SUBJECT} is not accepted in session/{NEXT}\n"


def test_a_reason_has_to_be_given(run: Runner, garage: Path) -> None:
    assert run("accept", garage, RULE, SUBJECT).status == 64
    assert run("accept", garage, RULE, SUBJECT, "--reason", "x", "--withdraw").status == 64
    ran = run("accept", garage, RULE, SUBJECT, "--reason", "  ")
    assert (ran.status, ran.err) == (64, "say why you ride with it: --reason TEXT\n")


def test_a_finding_that_is_not_there_is_answered_with_those_that_are(run: Runner, garage: Path) -> None:
    ran = run("accept", garage, "no-such-rule", "x", "--reason", "y", "--at", EARLY)

    assert ran.status == 3
    assert ran.err.splitlines() == [
        f"there is no finding no-such-rule x in session/{NEXT}",
        "  to answer are:",
        f"  {RULE} {SUBJECT}",
    ]


def test_a_caution_needs_no_answer_and_a_hold_stands(run: Runner, garage: Path) -> None:
    before = snapshot(garage)
    caution = run("accept", garage, RULE, "slide", "--reason", "x", "--at", EARLY)
    assert caution.status == 3
    assert caution.err.startswith("a caution needs no answer: ")
    assert snapshot(garage) == before

    run("set", garage, NEXT, "setup.controls.traction=99")
    hold = run("accept", garage, "level-not-on-the-bike", "traction", "--reason", "x", "--at", EARLY)
    assert hold.status == 3
    assert hold.err.startswith("a hold stands until it is put right: ")


def test_only_findings_of_a_session_are_accepted(run: Runner, garage: Path) -> None:
    ran = run("accept", garage, RULE, SUBJECT, "--reason", "x", "--session", "profile/magpie-ines-wet")

    assert ran.status == 3
    assert ran.err == "profile/magpie-ines-wet is not a session\n"
