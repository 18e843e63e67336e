"""A table gets another key: its headings change, and not a line moves."""

import tomllib

import pytest

from paddock_tui.records.edits import Rekey, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.rekey import rekey
from paddock_tui.store.saving import Saved, save
from tests.every import every
from tests.small import changed_lines, write

DAY = """date = 2026-05-16  # a day

# Ann comes first.
[entries.ann.plain]   # hers
group = "novice"  # as asked
# a word inside

[entries.ann."plain".checks.oil]
status = "ok"

[ entries . 'ann' . other ]
group = "fast"
[limits]
ann = "no rider"
"""


def test_only_headings_change_and_comments_stay_where_they_are() -> None:
    found = rekey(DAY, ("entries", "ann"), "zoe")

    assert found is not None
    assert changed_lines(DAY, found.text) == [
        ("[entries.ann.plain]   # hers", "[entries.zoe.plain]   # hers"),
        ('[entries.ann."plain".checks.oil]', '[entries.zoe."plain".checks.oil]'),
        ("[ entries . 'ann' . other ]", "[ entries . 'zoe' . other ]"),
    ]
    back = rekey(found.text, ("entries", "zoe"), "ann")
    assert back is not None
    assert back.text == DAY


@every(
    ("text", "path", "new"),
    [
        (
            '[entries]\nann.plain.group = "a" # x\n',
            ("entries", "ann"),
            '[entries]\nzoe.plain.group = "a" # x\n',
        ),
        ("entries.ann.plain = {}\r\nz = 1\r\n", ("entries", "ann"), "entries.zoe.plain = {}\r\nz = 1\r\n"),
        ("\ufeff[entries.ann]\nx = 1", ("entries", "ann"), "\ufeff[entries.zoe]\nx = 1"),
        ("[entries.b.ann]\n[entries.c.ann]\n", ("entries", "b", "ann"), "[entries.b.zoe]\n[entries.c.ann]\n"),
        ("[entries]\nann = { plain = {} }\n", ("entries", "ann"), "[entries]\nzoe = { plain = {} }\n"),
        # A table of that name elsewhere is in nobody's way.
        ("[entries.b.ann]\n[entries.zoe]\n", ("entries", "b", "ann"), "[entries.b.zoe]\n[entries.zoe]\n"),
    ],
)
def test_other_ways_of_writing_a_table(text: str, path: tuple[str, ...], new: str) -> None:
    found = rekey(text, path, "zoe")

    assert found is not None
    assert found.text == new


@every(
    "text",
    ["[entries.ann]\n[entries.zoe]\n", "[entries]\nann = 1\n", "[entries.bob]\n", "[entries.ann\n", ""],
    ids=["both", "no table", "not there", "no TOML", "empty"],
)
def test_what_cannot_be_is_left(text: str) -> None:
    assert rekey(text, ("entries", "ann"), "zoe") is None


def test_a_table_inside_an_inline_one_goes_by_its_values_and_comes_back() -> None:
    text = "entries = { ann = { plain = { group = 'a' } } } # said\n"

    found = rekey(text, ("entries", "ann"), "zoe")

    assert found is not None
    assert tomllib.loads(found.text) == {"entries": {"zoe": {"plain": {"group": "a"}}}}


def test_it_is_kept_as_a_step_and_undone_to_the_same_bytes(tmp_path_factory: pytest.TempPathFactory) -> None:
    root = write(tmp_path_factory.mktemp("garage"), days__one=DAY)
    files = GarageFiles(root)

    kept = save(files, Step("", (Rekey(Ref("day", "one"), ("entries", "ann"), "zoe"),)))

    assert isinstance(kept, Saved)
    assert "[entries.zoe.plain]   # hers" in (root / "days" / "one.toml").read_text()
    assert isinstance(save(files, kept.undo), Saved)
    assert (root / "days" / "one.toml").read_text() == DAY
