"""Runs of lines exchanged and put back, and the check that no other line moved."""

from paddock_tui.records.edits import Raw
from paddock_tui.store.splice import Splice, go_back, line_ending, only_touched, splice, way_back
from tests.every import every

OLD = ("a\n", "b\n", "c\n")


def test_lines_take_the_ending_that_most_lines_have() -> None:
    assert line_ending(("a\r\n", "b\n", "c\r\n")) == "\r\n"
    assert line_ending(("a\r\n", "b\n")) == "\n"
    assert line_ending(()) == "\n"
    assert splice(("a\r\n", "b\r\n"), [Splice(1, 1, ("x",))]) == ["a\r\n", "x\r\n", "b\r\n"]


def test_several_splices_count_in_the_old_lines() -> None:
    assert splice(OLD, [Splice(2, 3), Splice(0, 1, ("x", "y"))]) == ["x\n", "y\n", "b\n"]


def test_a_missing_final_newline_stays_missing() -> None:
    assert splice(("a\n", "b"), [Splice(2, 2, ("x",))]) == ["a\n", "b\n", "x"]
    assert splice(("a\n", "b"), [Splice(1, 2)]) == ["a"]
    assert splice(("a\n", "\n", "b"), [Splice(2, 3)]) == ["a\n", "\n"]


@every(
    ("new", "part", "fine"),
    [
        (("a\n", "x\n", "c\n"), Splice(1, 2, ("x",)), True),
        (("a\n", "x\n", "C\n"), Splice(1, 2, ("x",)), False),
        (("a\n", "x\n", "c\r\n"), Splice(1, 2, ("x",)), False),
        (("a\n", "x\n", "c"), Splice(1, 2, ("x",)), True),
        (("c\n", "x\n", "a\n"), Splice(1, 2, ("x",)), False),
        (("a\n", "x\n", "y\n", "c\n"), Splice(1, 2, ("x",)), False),
        (("a\n", "x\n"), Splice(1, 2, ("x",)), False),
        (("a\n", "c\n"), Splice(1, 2), True),
    ],
)
def test_a_change_outside_the_splice_is_seen(new: tuple[str, ...], part: Splice, fine: bool) -> None:
    assert only_touched(OLD, new, [part]) is fine


def test_the_way_back_of_a_removal_carries_both_neighbours() -> None:
    assert way_back(OLD, ("a\n", "c\n")) == Raw(0, ("a\n", "c\n"), OLD)
    assert way_back(OLD, ("b\n", "c\n")) == Raw(0, ("b\n",), ("a\n", "b\n"))
    assert way_back(OLD, ("a\n", "b\n")) == Raw(1, ("b\n",), ("b\n", "c\n"))
    assert way_back(("a",), ()) == Raw(0, (), ("a",))


def test_lines_go_back_to_their_place_or_the_only_other_one() -> None:
    raw = Raw(0, ("a\n", "c\n"), OLD)

    assert go_back(("a\n", "c\n", "a\n", "c\n"), raw) == [*OLD, "a\n", "c\n"]
    assert go_back(("x\n", "a\n", "c\n"), raw) == ["x\n", *OLD]
    assert go_back(("x\n", "a\n", "c\n", "a\n", "c\n"), raw) is None
    assert go_back(("a\n", "x\n", "c\n"), raw) is None


def test_lines_without_ending_go_back_to_the_end_only() -> None:
    raw = Raw(0, ("a\n",), ("a\n", "b"))

    assert go_back(("a\n",), raw) == ["a\n", "b"]
    assert go_back(("a\n", "c\n"), raw) is None
