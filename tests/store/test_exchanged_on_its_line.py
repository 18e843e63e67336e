"""Plain values exchanged on their own line, without a map of the text: the same text as with one."""

import tomllib
from typing import cast

import pytest

from paddock_tui.records.edits import Edit, Value
from paddock_tui.store import inplace
from paddock_tui.store.data import leaves
from paddock_tui.store.patch import Patched, patch
from tests.examples import one_in
from tests.sample import FILES


def other_than(old: object) -> Value:
    if isinstance(old, bool):
        return not old
    return old + 1 if isinstance(old, int) else 'x "y" \\ é'


def mapped(text: str, edit: Edit) -> str | None:
    """Make an edit by the map of the whole text."""
    with pytest.MonkeyPatch.context() as patch_:
        patch_.setattr(inplace, "respelled", lambda *_: None)
        found = patch(text, [edit])
    return found.text if isinstance(found, Patched) else None


def test_plain_values_of_the_sample_are_exchanged_on_their_line_as_by_the_map_of_the_text() -> None:
    by_line = 0
    for path in FILES.values():
        text = path.read_text(encoding="utf-8")
        for place, old in list(leaves(tomllib.loads(text)))[:: one_in(12)]:
            new: Value = (
                not old if isinstance(old, bool) else old + 1 if isinstance(old, int) else 'x "y" \\ é'
            )
            edit = Edit(place, cast("Value", old), new)
            found = patch(text, [edit])
            assert isinstance(found, Patched)
            assert found.text == mapped(text, edit), (path, place)
            by_line += inplace.respelled(text, edit) == found.text

    assert by_line > 100


@pytest.mark.parametrize(
    "text",
    [
        't = """\n[a]\nb = 1\n"""\n[a]\nb = 1\n',
        "t = '''\n[a]\nb = 1\n'''\n[a]\nb = 1 # note\n",
        "[[c]]\n[a]\nb = 1\n[[c]]\n",
        "a.b = 1\n",
        "a = { b = 1 }\n",
        '["a"]\nb = 1\n',
    ],
)
def test_a_line_that_only_looks_like_that_of_the_value_is_not_taken_for_it(text: str) -> None:
    found = patch(text, [Edit(("a", "b"), 1, 2)])

    assert isinstance(found, Patched)
    data = tomllib.loads(text)
    data["a"]["b"] = 2
    assert tomllib.loads(found.text) == data
    back = patch(found.text, found.undo)
    assert isinstance(back, Patched)
    assert back.text == text
