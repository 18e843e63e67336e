"""What a step would do is told before it is done, and nothing is changed by telling it."""

import threading
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.remedies import Preview, compared, mending
from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.rules import CAUTION, HOLD, SERIOUS, Finding, Remedy, Review, Severity, Where, review
from paddock_tui.rules.core import SetValue
from paddock_tui.store.saving import save
from tests.desk.opened import NEXT, at_desk, typed
from tests.small import snapshot

TRACTION = ("little-traction-help-in-the-wet", "traction")


def ids(found: tuple[Finding, ...]) -> list[tuple[str, str]]:
    return [(one.rule, one.subject) for one in found]


def raised(rule: str, severity: Severity = SERIOUS, *puts: SetValue, message: str = "Something.") -> Finding:
    where = Where(NEXT, ("surface",))
    return Finding(
        rule, "x", severity, "danger", where, message, "Why.", "fact", Remedy("Do it.", puts), "s", None
    )


def test_a_preview_names_what_goes_and_what_comes(garage: Path) -> None:
    desk = at_desk(garage)

    more = desk.previewed(typed(desk, NEXT, ("setup.controls.traction", "9")), NEXT)
    slip = desk.previewed(typed(desk, NEXT, ("setup.controls.traction", "99")), NEXT)

    assert TRACTION in ids(more.goes)
    assert more.comes == ()
    assert more.words().startswith(f"traction control 3 -> 9 (more help), {len(more.goes)} finding")
    assert ("level-not-on-the-bike", "traction") in ids(slip.comes)
    assert "would come: hold, Traction control 99 is not on this bike" in slip.words()


def test_a_preview_says_the_same_as_doing_it(garage: Path) -> None:
    desk = at_desk(garage)
    step = typed(desk, NEXT, ("surface", "dry"), ("setup.controls.wheelie", "off"))
    before = desk.review(NEXT)
    told = desk.previewed(step, NEXT)

    desk.do(step)

    assert compared(step.label, before, desk.review(NEXT)) == told
    assert told.goes
    desk.close()


def test_a_preview_changes_nothing_on_disk_or_in_memory(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    loaded, judged = desk.files.read(NEXT), desk.review(NEXT)

    desk.previewed(typed(desk, NEXT, ("setup.controls.traction", "9"), ("surface", "dry")), NEXT)

    assert desk.files.read(NEXT) is loaded
    assert desk.review(NEXT) == judged
    assert (desk.can_undo(), desk.settled()) == (None, ())
    assert snapshot(garage) == before
    assert desk.poll() == ()
    desk.close()


def test_a_preview_over_edits_that_are_not_on_disk_yet_leaves_them_as_they_are(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    go = threading.Event()
    monkeypatch.setattr("paddock_tui.desk.desk.save", lambda *given: (go.wait(), save(*given))[1])
    desk = at_desk(garage)
    desk.do(typed(desk, NEXT, ("setup.controls.traction", "4")))
    text = file_text(desk)

    told = desk.previewed(typed(desk, NEXT, ("setup.controls.traction", "9")), NEXT)

    assert told.label == "traction control 4 -> 9 (more help)"
    assert TRACTION in ids(told.goes)
    assert desk.files.data(NEXT)["setup"]["controls"]["traction"] == 4
    assert file_text(desk) == text
    assert desk.pending(NEXT)
    go.set()
    desk.settled()
    assert desk.files.data(NEXT)["setup"]["controls"]["traction"] == 4
    assert b"traction = 4 " in snapshot(garage)["sessions/2026/2026-06-20-4-magpie.toml"]
    desk.close()


def file_text(desk: Desk) -> str:
    loaded = desk.files.read(NEXT)
    assert loaded is not None
    return loaded.text


def test_an_edit_that_lands_while_it_is_previewed_is_read_from_its_file_afterwards(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    go, landed = threading.Event(), threading.Event()

    def slow(*given: object) -> object:
        go.wait()
        return save(*given)  # type: ignore[arg-type]

    monkeypatch.setattr("paddock_tui.desk.desk.save", slow)
    desk = at_desk(garage)
    desk.on_change.append(lambda told: landed.set() if told.outcome is not None else None)
    desk.do(typed(desk, NEXT, ("fatigue", "4")))
    step = typed(desk, NEXT, ("setup.controls.traction", "9"))

    def meanwhile(situation: object) -> Review:
        go.set()
        assert landed.wait(5)
        return review(situation)  # type: ignore[arg-type]

    monkeypatch.setattr("paddock_tui.desk.edits.remedies.review", meanwhile)

    told = desk.previewed(step, NEXT)

    assert TRACTION in ids(told.goes)
    assert desk.files.data(NEXT)["fatigue"] == 4
    file = garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml"
    file.write_text(file.read_text().replace("fatigue = 4", "fatigue = 5"))
    desk.poll()
    assert desk.files.data(NEXT)["fatigue"] == 5
    desk.close()


def test_a_step_that_would_clash_is_previewed_without_a_word(garage: Path) -> None:
    desk = at_desk(garage)
    step = Step("x", (Change(NEXT, (Edit(("date", "inner"), 1, 2),)),))

    assert desk.previewed(step, NEXT) == Preview("x", (), ())


def test_the_same_rule_and_subject_at_another_severity_goes_and_comes() -> None:
    old, new = raised("r", CAUTION), raised("r", HOLD, message="Worse.")

    told = compared("label", Review((old, raised("same"))), Review((raised("same"), new)))

    assert told == Preview("label", (old,), (new,))
    assert told.words() == "label, 1 finding would go, would come: hold, Worse."
    assert Preview("label", (old, old), ()).words() == "label, 2 findings would go"
    assert Preview("label", (), ()).words() == "label"


def test_a_remedy_is_one_step_over_all_that_it_names(garage: Path) -> None:
    desk = at_desk(garage)
    puts = (
        SetValue(("setup", "controls", "traction"), 7),
        SetValue(("setup", "controls", "slide"), 6),
        SetValue(("surface",), "wet", "session"),
        SetValue(("group",), "novice", "rider"),
        SetValue(("nothing",), 1, "venue"),
    )
    rider = Ref("rider", "ines")

    step = mending(desk.files, raised("r", SERIOUS, *puts), NEXT, {"rider": rider})

    assert step is not None
    assert [(change.ref, len(change.edits)) for change in step.changes if isinstance(change, Change)] == [
        (NEXT, 2),
        (rider, 1),
    ]
    levels = "traction control 3 -> 7 (more help); slide control 3 -> 6 (more help); group "
    assert step.label.startswith(levels)


def test_a_remedy_that_stands_already_or_names_no_value_is_no_step(garage: Path) -> None:
    desk = at_desk(garage)

    assert mending(desk.files, raised("r", SERIOUS, SetValue(("surface",), "wet")), NEXT, {}) is None
    assert mending(desk.files, raised("r"), NEXT, {}) is None


def test_the_samples_remedies_do_what_they_say(garage: Path) -> None:
    desk = at_desk(garage)
    refs = desk.assembled(NEXT).situation.refs
    mended = []
    for finding in desk.review(NEXT).findings:
        step = mending(desk.files, finding, NEXT, refs)
        if step is not None:
            mended.append(finding)
            assert (finding.rule, finding.subject) in ids(desk.previewed(step, NEXT).goes)

    assert mended
