"""Comparing and changing plain data, strictly."""

import datetime as dt
from typing import NoReturn

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.store.data import after, blocked, lookup, outermost_missing, same
from tests.every import every

ZONE = dt.timezone(dt.timedelta(hours=2))
UNLIKE: list[tuple[object, object]] = [
    (True, 1),
    (1, 1.0),
    ("1", 1),
    (dt.date(2026, 5, 16), dt.datetime(2026, 5, 16)),
    (dt.datetime(2026, 5, 16, 12, tzinfo=dt.UTC), dt.datetime(2026, 5, 16, 14, tzinfo=ZONE)),
    ([1], [True]),
    ([1], [1, 1]),
    ({"a": 1}, {"a": 1, "b": 2}),
    ({"a": {"b": 1}}, {"a": {"b": 1.0}}),
    ({}, MISSING),
    ([], {}),
    ("ab", ["a", "b"]),
]


@every(("one", "other"), UNLIKE)
def test_type_counts_as_well_as_value(one: object, other: object) -> None:
    assert same(one, one)
    assert same(other, other)
    assert not same(one, other)
    assert not same(other, one)


def test_a_tuple_is_the_same_array_as_a_list_and_nan_is_itself() -> None:
    assert same((1, "a"), [1, "a"])
    assert same([float("nan")], [float("nan")])
    assert not same(float("nan"), 1.0)


def test_lookup_leads_through_tables_only() -> None:
    data = {"a": {"b": [1]}, "c": "text"}

    assert lookup(data, ("a", "b")) == [1]
    assert lookup(data, ("a", "b", "0")) is MISSING
    assert lookup(data, ("c", "t")) is MISSING
    assert blocked(data, ("c", "t")) == "text"
    assert blocked(data, ("a", "t")) is MISSING


def test_the_outermost_missing_table_is_found() -> None:
    assert outermost_missing({"a": {}}, ("a", "b", "c")) == ("a", "b")
    assert outermost_missing({"a": {"b": 1}}, ("a", "b")) == ("a", "b")


def test_tables_that_do_not_stand_by_themselves_go_with_their_last_value() -> None:
    data = {"a": {"b": {"c": 1}}, "d": 1}
    edit = Edit(("a", "b", "c"), 1, MISSING)

    assert after(data, edit, lambda path: path == ("a", "b")) == {"a": {"b": {}}, "d": 1}
    assert after(data, edit, lambda path: path == ("a",)) == {"a": {}, "d": 1}
    assert after(data, edit, lambda path: path == ()) == {"d": 1}
    assert data == {"a": {"b": {"c": 1}}, "d": 1}


def test_what_an_edit_leaves_alone_is_the_same_object_and_what_was_there_stays() -> None:
    data: dict[str, dict[str, dict[str, object]]] = {
        "a": {"b": {"c": 1, "l": [1]}, "d": {"e": 2}},
        "f": {"g": {}},
    }

    for edit in (
        Edit(("a", "b", "c"), 1, 3),
        Edit(("a", "b", "c"), 1, MISSING),
        Edit(("a", "n", "o"), MISSING, 4),
    ):
        made = after(data, edit, lambda _: True)
        assert made["f"] is data["f"]
        assert made["a"]["d"] is data["a"]["d"]
        assert made["a"] is not data["a"]
        assert lookup(made, edit.path) == edit.new
    assert data == {"a": {"b": {"c": 1, "l": [1]}, "d": {"e": 2}}, "f": {"g": {}}}


def test_what_is_the_same_object_is_not_gone_through() -> None:
    class Closed(dict[str, object]):
        def keys(self) -> NoReturn:
            raise AssertionError("compared by its values")

    table = Closed(a=1)

    assert same({"t": table}, {"t": table})
