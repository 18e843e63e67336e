"""What a step takes out that kept something open is named before it is done."""

from pathlib import Path

from paddock_tui.desk.edits.taken_out import taken_out
from paddock_tui.desk.edits.values import clearing
from paddock_tui.records.paths import Ref
from tests.desk.opened import at_desk, typed

LAST = Ref("session", "2026-06-20-2-magpie")


def test_only_what_opened_something_is_named_and_only_when_it_is_taken_out(garage: Path) -> None:
    desk = at_desk(garage)
    desk.do(
        typed(
            desk,
            LAST,
            ("lever", "to the bar"),
            ("incidents.9.what", "leak"),
            ("incidents.9.fluid", "oil"),
            ("look.rear.seen", "cord"),
            ("fatigue", "4"),
            ("slept", "6 h"),
        )
    )
    named = {
        path: taken_out(desk.files, clearing(desk.files, LAST, path))
        for path in (("lever",), ("look", "rear", "seen"), ("fatigue",), ("slept",), ("surface",))
    }
    assert named == {
        ("lever",): "brake lever not firm",
        ("look", "rear", "seen"): "tyre finished: do not ride it",
        ("fatigue",): "too tired: sit this one out",
        ("slept",): "",
        ("surface",): "",
    }
    leak = typed(desk, LAST, ("incidents.9.what", ""), ("incidents.9.fluid", ""))
    assert taken_out(desk.files, leak) == "leak, repair not written down"
    assert taken_out(desk.files, clearing(desk.files, LAST, ("incidents", "9", "fluid"))) == ""
    assert taken_out(desk.files, typed(desk, LAST, ("incidents.9.done", "new hose"))) == ""
