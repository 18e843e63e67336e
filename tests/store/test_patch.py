"""Where each edit goes in the text, what it leaves alone, and what is refused."""

import datetime as dt
import tomllib
from typing import Any

import attrs

from paddock_tui.records.edits import MISSING, Edit, Missing, Raw, Value
from paddock_tui.records.paths import Path, parse
from paddock_tui.store.patch import Patched, RefusedPatch, patch
from tests.every import every


def at(path: str) -> Path:
    keys = parse(path)
    assert keys is not None
    return keys


def change(text: str, path: str, old: Value | Missing, new: Value | Missing) -> str:
    """The text after one edit, whose undo and redo are checked on the way."""
    outcome = patch(text, [Edit(at(path), old, new)])
    assert isinstance(outcome, Patched), outcome
    back = patch(outcome.text, outcome.undo)
    assert isinstance(back, Patched), back
    assert back.text == text
    again = patch(back.text, back.undo)
    assert isinstance(again, Patched), again
    assert again.text == outcome.text
    return outcome.text


def refusal(text: str, edit: Edit) -> RefusedPatch:
    outcome = patch(text, [edit])
    assert isinstance(outcome, RefusedPatch), outcome
    return outcome


SET = {
    "comment and spacing stay": ("a  =  1   # one\n", "a", 1, 2, "a  =  2   # one\n"),
    "in a table": ("a = 1\n[t]\n  a = 1\n", "t.a", 1, "x", 'a = 1\n[t]\n  a = "x"\n'),
    "array over several lines": (
        "a = [\n 1, # one\n]  # end\nb = 1\n",
        "a",
        [1],
        [2, 3],
        "a = [2, 3]  # end\nb = 1\n",
    ),
    "multi-line string": ('a = """\n# x\n""" # end\n', "a", "# x\n", "y", 'a = "y" # end\n'),
    "dotted key": ("[t]\na . b = 1\n", "t.a.b", 1, 2, "[t]\na . b = 2\n"),
    "inside an inline table": ("t = { a = 1,b=2 } # x\n", "t.b", 2, 3, "t = { a = 1,b=3 } # x\n"),
    "windows line endings": ("a = 1\r\nb = 2\r\n", "a", 1, 3, "a = 3\r\nb = 2\r\n"),
    "byte order mark": ("\ufeffa = 1\n", "a", 1, 2, "\ufeffa = 2\n"),
    "no final newline": ("a = 1", "a", 1, 2, "a = 2"),
    "array becomes plain": ("a = [1]\n", "a", [1], 1, "a = 1\n"),
    "quoted key": ('"a.b" = 1\n', '"a.b"', 1, 2, '"a.b" = 2\n'),
    "table continued later": (
        "[a.b]\nx = 1\n[c]\n[a.d]\nx = 1\n",
        "a.d.x",
        1,
        2,
        "[a.b]\nx = 1\n[c]\n[a.d]\nx = 2\n",
    ),
    "time": ("at = 10:40:00\n", "at", dt.time(10, 40), dt.time(11, 5), "at = 11:05:00\n"),
}

ADD_LINE = {
    "after the last value of its table, above the next heading's comment": (
        "[t]\na = 1\n\n# about u\n[u]\nb = 1\n",
        "t.c",
        2,
        "[t]\na = 1\nc = 2\n\n# about u\n[u]\nb = 1\n",
    ),
    "below a header with no values": ("[t]\n\n[u]\n", "t.a", 1, "[t]\na = 1\n\n[u]\n"),
    "below an array over several lines": (
        "[t]\na = [\n1,\n]\n[u]\n",
        "t.b",
        1,
        "[t]\na = [\n1,\n]\nb = 1\n[u]\n",
    ),
    "indented like its siblings": ("[t]\n  a = 1 # x\n[u]\n", "t.b", 1, "[t]\n  a = 1 # x\n  b = 1\n[u]\n"),
    "indented like the header": ("  [t]\n", "t.b", 1, "  [t]\n  b = 1\n"),
    "root, after its last value": ("a = 1\n\n[t]\n", "b", 2, "a = 1\nb = 2\n\n[t]\n"),
    "root without values": ("# file\n\n[t]\n", "a", 1, "# file\n\na = 1\n\n[t]\n"),
    "root without values, comment of the first header": ("# t\n[t]\n", "a", 1, "a = 1\n\n# t\n[t]\n"),
    "only comments": ("# file\n", "a", 1, "# file\na = 1\n"),
    "empty file": ("", "a", 1, "a = 1\n"),
    "no final newline": ("[t]\na = 1", "t.b", 2, "[t]\na = 1\nb = 2"),
    "windows line endings": ("a = 1\r\n[t]\r\n", "b", 2, "a = 1\r\nb = 2\r\n[t]\r\n"),
    "byte order mark": ("\ufeff[t]\n", "a", 1, "\ufeffa = 1\n\n[t]\n"),
    "no such table": ("a = 1\n", "t.u.b", 2, "a = 1\n\n[t.u]\nb = 2\n"),
    "no such table, blank line at the end": ("a = 1\n\n", "t.b", 2, "a = 1\n\n[t]\nb = 2\n"),
    "no such table, no final newline": ("a = 1", "t.b", 2, "a = 1\n\n[t]\nb = 2"),
    "table known by its sub-table only": ("[a.b]\nx = 1\n", "a.c", 2, "[a.b]\nx = 1\n\n[a]\nc = 2\n"),
    "dotted siblings": ("a.b = 1\nz = 1\n[t]\n", "a.c", 2, "a.b = 1\na.c = 2\nz = 1\n[t]\n"),
    "dotted siblings in a table": ("[t]\n a.b = 1\n\n[u]\n", "t.a.c", 2, "[t]\n a.b = 1\n a.c = 2\n\n[u]\n"),
    "inline table": ("t = { a = 1 } # x\nz = 1\n", "t.b", 2, "t = { a = 1, b = 2} # x\nz = 1\n"),
    "empty inline table": ("t = {}\n", "t.b", 2, "t = {b = 2}\n"),
    "inline inside inline": ("t = { u = { a = 1 } }\n", "t.u.b", 2, "t = { u = { a = 1, b = 2} }\n"),
    "key that needs quotes": ("a = 1\n", '"b c"', 2, 'a = 1\n"b c" = 2\n'),
    "array": ("a = 1\n", "b", ["x", "y"], 'a = 1\nb = ["x", "y"]\n'),
}

DROP_LINE = {
    "its comment goes, those above and below stay": (
        "[t]\n# above\na = 1 # note\n# below\nb = 2\n",
        "t.a",
        1,
        "[t]\n# above\n# below\nb = 2\n",
    ),
    "the last value leaves the header": ("[t]\na = 1\n[u]\n", "t.a", 1, "[t]\n[u]\n"),
    "array over several lines": ("a = [\n1,\n]\nb = 1\n", "a", [1], "b = 1\n"),
    "dotted": ("a.b = 1\na.c = 2\n", "a.b", 1, "a.c = 2\n"),
    "the only dotted value, and its table": ("a.b = 1\nc = 2\n", "a.b", 1, "c = 2\n"),
    "in an inline table": ("t = { a = 1, b = 2 } # x\n", "t.b", 2, "t = { a = 1  } # x\n"),
    "the last line without newline": ("a = 1\nb = 2", "b", 2, "a = 1"),
    "the only line": ("a = 1", "a", 1, ""),
    "byte order mark": ("\ufeffa = 1\nb = 2\n", "a", 1, "\ufeffb = 2\n"),
}

ADD_TABLE: dict[str, tuple[str, str, Value, str]] = {
    "at the end after one blank line": ("a = 1\n", "t", {"b": 2, "c": "x"}, 'a = 1\n\n[t]\nb = 2\nc = "x"\n'),
    "empty file": ("", "t", {"b": 2}, "[t]\nb = 2\n"),
    "empty table": ("a = 1\n", "t.u", {}, "a = 1\n\n[t.u]\n"),
    "nested tables have headers": (
        "",
        "t",
        {"a": 1, "u": {"b": 2}, "v": {}},
        "[t]\na = 1\n\n[t.u]\nb = 2\n\n[t.v]\n",
    ),
    "only sub-tables": ("", "t", {"u": {"b": 2}}, "[t.u]\nb = 2\n"),
    "parent is an inline table": ("t = { a = 1 }\n", "t.u", {"b": 2}, "t = { a = 1, u = { b = 2 }}\n"),
    "windows line endings": ("a = 1\r\n", "t", {"b": 2}, "a = 1\r\n\r\n[t]\r\nb = 2\r\n"),
    "comment at the end": ("a = 1\n# end\n", "t", {"b": 2}, "a = 1\n# end\n\n[t]\nb = 2\n"),
    "id that needs quotes": ("", 't."a b"', {"b": 2}, '[t."a b"]\nb = 2\n'),
    "under a table of dotted keys": ("a.b = 1\n", "a.c", {"d": 2}, "a.b = 1\n\n[a.c]\nd = 2\n"),
}

DROP_TABLE: dict[str, tuple[str, str, Value, str]] = {
    "its own comments go, the neighbours' stay": (
        "[t]\na = 1\n# t ends\n\n# about u\n# more\n[u] # x\n# in u\nb = 1\n\n# about v\n[v]\n",
        "u",
        {"b": 1},
        "[t]\na = 1\n# t ends\n\n# about v\n[v]\n",
    ),
    "a comment apart from the header stays": (
        "a = 1\n\n# apart\n\n[u]\nb = 1\n",
        "u",
        {"b": 1},
        "a = 1\n\n# apart\n",
    ),
    "at the end, with the blank line above": ("a = 1\n\n[u]\nb = 1\n", "u", {"b": 1}, "a = 1\n"),
    "at the end without newline": ("a = 1\n\n[u]\nb = 1", "u", {"b": 1}, "a = 1"),
    "between tables one blank line is left": ("[t]\n\n[u]\nb = 1\n\n[v]\n", "u", {"b": 1}, "[t]\n\n[v]\n"),
    "no blank lines": ("[t]\n[u]\nb = 1\n[v]\n", "u", {"b": 1}, "[t]\n[v]\n"),
    "blank line only below": ("a = 1\n[u]\nb = 1\n\n[v]\n", "u", {"b": 1}, "a = 1\n\n[v]\n"),
    "sub-tables, also apart": (
        "[u]\nb = 1\n\n[u.x]\n\n[v]\nc = 1\n\n# x\n[u.y]\nd = 1\n\n[w]\n",
        "u",
        {"b": 1, "x": {}, "y": {"d": 1}},
        "[v]\nc = 1\n\n[w]\n",
    ),
    "comment behind its last value": ("[u]\nb = 1\n# c = 2\n\n[v]\n", "u", {"b": 1}, "[v]\n"),
    "comment of a header that follows at once": ("[u]\nb = 1\n# v\n[v]\n", "u", {"b": 1}, "# v\n[v]\n"),
    "values between comments": ("[u]\n\n# one\na = 1\n\nb = 2\n[v]\n", "u", {"a": 1, "b": 2}, "[v]\n"),
    "sub-table of a table with header": ("[t]\n\n[t.u]\na = 1\n", "t.u", {"a": 1}, "[t]\n"),
    "sub-table of a table without header": ("a = 1\n\n[t.u]\nb = 1\n", "t.u", {"b": 1}, "a = 1\n"),
    "written inline": ("t = { a = 1 }\nb = 2\n", "t", {"a": 1}, "b = 2\n"),
    "inside an inline table": ("t = { a = 1, u = { b = 2 } }\n", "t.u", {"b": 2}, "t = { a = 1  }\n"),
    "dotted": ("[t]\na.b = 1\nz = 1\na.c = 1\n", "t.a", {"b": 1, "c": 1}, "[t]\nz = 1\n"),
    "comments inside a multi-line string are no comments": (
        'a = """\n# x\n"""\n[u]\nb = 1\n',
        "u",
        {"b": 1},
        'a = """\n# x\n"""\n',
    ),
}


TABLES: Any = [{"x": 1}]
"""What the parser gives for an array of tables, which no edit may be about."""


@every(("text", "path", "old", "new", "wanted"), SET.values(), ids=SET)
def test_a_value_is_set_where_it_stands(text: str, path: str, old: Value, new: Value, wanted: str) -> None:
    assert change(text, path, old, new) == wanted


@every(("text", "path", "new", "wanted"), ADD_LINE.values(), ids=ADD_LINE)
def test_a_line_is_added(text: str, path: str, new: Value, wanted: str) -> None:
    assert change(text, path, MISSING, new) == wanted


@every(("text", "path", "old", "wanted"), DROP_LINE.values(), ids=DROP_LINE)
def test_a_line_is_dropped(text: str, path: str, old: Value, wanted: str) -> None:
    assert change(text, path, old, MISSING) == wanted


@every(("text", "path", "new", "wanted"), ADD_TABLE.values(), ids=ADD_TABLE)
def test_a_table_is_added(text: str, path: str, new: Value, wanted: str) -> None:
    assert change(text, path, MISSING, new) == wanted


@every(("text", "path", "old", "wanted"), DROP_TABLE.values(), ids=DROP_TABLE)
def test_a_table_is_dropped(text: str, path: str, old: Value, wanted: str) -> None:
    assert change(text, path, old, MISSING) == wanted


def test_edits_of_one_patch_build_on_each_other() -> None:
    steps = [Edit(("t", "a"), MISSING, 1), Edit(("t", "a"), 1, 2), Edit(("t", "b"), MISSING, 3)]

    outcome = patch("", steps)

    assert isinstance(outcome, Patched)
    assert outcome.text == "[t]\na = 2\nb = 3\n"
    assert patch(outcome.text, outcome.undo) == patch("[t]\na = 2\nb = 3\n", outcome.undo)
    assert len(outcome.undo) == 3


def test_the_undo_of_a_line_that_brought_its_table_takes_the_table_too() -> None:
    outcome = patch("", [Edit(("setup", "controls", "traction"), MISSING, 5)])

    assert isinstance(outcome, Patched)
    assert outcome.undo[0].path == ("setup",)
    assert outcome.undo[0].old == {"controls": {"traction": 5}}


def test_setting_the_same_value_changes_nothing() -> None:
    assert change("a = 2.10 # as typed\n", "a", 2.1, 2.1) == "a = 2.10 # as typed\n"


def test_dates_of_every_kind_are_kept() -> None:
    stamp = dt.datetime(2026, 5, 16, 10, 37, tzinfo=dt.timezone(dt.timedelta(hours=2)))
    for value in (dt.date(2026, 5, 16), dt.time(10, 37), dt.datetime(2026, 5, 16, 10, 37), stamp):
        assert tomllib.loads(change("", "a", MISSING, value)) == {"a": value}


@every(
    ("text", "old", "found"),
    [
        ("a = 1\n", 2, 1),
        ("a = 1\n", True, 1),
        ("a = 1\n", 1.0, 1),
        ("a = 2026-05-16\n", "2026-05-16", dt.date(2026, 5, 16)),
        ("a = [1]\n", [True], [1]),
        ("b = 1\n", 1, MISSING),
        ("a = 1\n", MISSING, 1),
        ("[a]\nx = 1\n", {"x": 2}, {"x": 1}),
        ("[a]\nx = 1\n", MISSING, {"x": 1}),
    ],
)
def test_what_was_changed_meanwhile_is_a_clash_and_named(
    text: str, old: Value | Missing, found: Value | Missing
) -> None:
    refused = refusal(text, Edit(("a",), old, 5))

    assert (refused.why, refused.found) == ("clash", found)


def test_a_value_in_the_way_of_a_table_is_a_clash() -> None:
    refused = refusal("a = 1\n", Edit(("a", "b"), MISSING, 2))

    assert (refused.why, refused.found) == ("clash", 1)


def test_one_refused_edit_refuses_all() -> None:
    edits = [Edit(("a",), 1, 2), Edit(("b",), 1, 2)]

    outcome = patch("a = 1\n", edits)

    assert isinstance(outcome, RefusedPatch)
    assert outcome.edit == edits[1]


def test_text_that_is_not_toml_is_not_edited() -> None:
    assert refusal("a = 2,10\n", Edit(("b",), MISSING, 1)).why == "unreadable"


@every(
    "value",
    [float("inf"), float("nan"), "\ud800", 10**5000, dt.time(1, tzinfo=dt.UTC)],
    ids=["inf", "nan", "surrogate", "digits", "zone"],
)
def test_a_value_that_cannot_be_kept_is_refused(value: Value) -> None:
    assert refusal("a = 1\n", Edit(("a",), 1, value)).why == "unsafe"


@every(
    ("text", "edit"),
    [
        ("[a]\nx = 1\n", Edit(("a",), {"x": 1}, 5)),
        ("a = 1\n", Edit(("a",), 1, {"x": 1})),
        ("a = 1\n", Edit((), {"a": 1}, MISSING)),
        ("[[a]]\nx = 1\n", Edit(("a",), TABLES, [1])),
        ("[[a]]\nx = 1\n", Edit(("a",), TABLES, MISSING)),
    ],
)
def test_other_kinds_of_edit_are_refused(text: str, edit: Edit) -> None:
    assert refusal(text, edit).why == "unsafe"


def test_arrays_of_tables_survive_edits_around_them() -> None:
    text = "a = 1\n\n# p\n[[p]]\nn = 1\n\n[[p]]\nn = 2\n[p.q]\nx = 1\n\n[t]\nb = 1\n"

    assert change(text, "t.c", MISSING, 2) == text + "c = 2\n"
    assert change(text, "b", MISSING, 2) == text.replace("a = 1\n", "a = 1\nb = 2\n")
    assert change(text, "t", {"b": 1}, MISSING) == text.removesuffix("\n[t]\nb = 1\n")


def test_the_undo_finds_its_lines_where_they_moved() -> None:
    text = "[t]\na = 0x0A   # ten\n"
    outcome = patch(text, [Edit(("t", "a"), 10, 11)])
    assert isinstance(outcome, Patched)

    back = patch("# added later\n\n" + outcome.text, outcome.undo)

    assert isinstance(back, Patched)
    assert back.text == "# added later\n\n" + text


def test_a_dropped_line_comes_back_between_its_neighbours_after_they_moved() -> None:
    outcome = patch("[t]\na = 1\nb = 2 # two\nc = 3\n", [Edit(("t", "b"), 2, MISSING)])
    assert isinstance(outcome, Patched)

    back = patch("x = 1\n" + outcome.text, outcome.undo)

    assert isinstance(back, Patched)
    assert back.text == "x = 1\n[t]\na = 1\nb = 2 # two\nc = 3\n"


def test_lines_that_stand_elsewhere_by_chance_are_not_taken_for_the_edit() -> None:
    """Both tables hold the line; the one at the old place belongs to the wrong table."""
    outcome = patch("[t]\na = 0x1\n", [Edit(("t", "a"), 1, 2)])
    assert isinstance(outcome, Patched)

    back = patch("[u]\na = 2\n[t]\na = 2\n", outcome.undo)

    assert isinstance(back, Patched)
    assert back.text == "[u]\na = 2\n[t]\na = 1\n"


def test_lines_that_are_gone_leave_the_undo_to_its_meaning() -> None:
    outcome = patch("[t]\na = 1 # one\n", [Edit(("t", "a"), 1, 2)])
    assert isinstance(outcome, Patched)

    back = patch("[t]\na = 2 # two\n", outcome.undo)

    assert isinstance(back, Patched)
    assert back.text == "[t]\na = 1 # two\n"


def test_an_undo_is_verified_like_any_edit() -> None:
    """Lines that would bring other data with them are not put back."""
    edit = Edit(("a",), 2, 1, Raw(0, ("a = 2\n",), ("a = 1\n", "b = 1\n")))

    outcome = patch("a = 2\n", [edit])

    assert isinstance(outcome, Patched)
    assert outcome.text == "a = 1\n"


def test_where_the_library_would_reorder_the_file_the_characters_are_exchanged() -> None:
    text = "[[d]]\nx = 1\n\n# about a\n[a]\ny = 1 # why\n\n[d.x2]\nz = 1\n"

    assert change(text, "a.y", 1, 2) == text.replace("y = 1", "y = 2")
    inline = text.replace("y = 1", "y = { z = 1 }")
    assert change(inline, "a.y.z", 1, 2) == inline.replace("z = 1 }", "z = 2 }")
    assert change(inline, "a.y.v", MISSING, 2) == inline.replace("z = 1 }", "z = 1, v = 2 }")


def test_a_value_that_left_the_file_empty_comes_back_by_its_meaning_where_others_came_since() -> None:
    outcome = patch("a = 1 # one", [Edit(("a",), 1, MISSING)])
    assert isinstance(outcome, Patched)

    back = patch("b = 2\n", outcome.undo)

    assert isinstance(back, Patched)
    assert back.text == "b = 2\na = 1\n"


def test_no_edit_is_no_change() -> None:
    assert patch("not toml", []) == Patched("not toml", ())


def test_raw_lines_do_not_spoil_an_edit_that_clashes() -> None:
    edit = Edit(("a",), 1, 2, Raw(0, ("a = 3\n",), ("a = 2\n",)))

    assert refusal("a = 3\n", edit).why == "clash"
    assert refusal("a = 3\n", attrs.evolve(edit, raw=None)).why == "clash"
