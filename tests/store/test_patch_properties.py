"""Whatever the document and the edits: data as asked, other lines untouched, undo and redo to the byte."""

import tomllib
from collections.abc import Sequence
from typing import Any

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.edits import MISSING, Edit
from paddock_tui.store.data import same
from paddock_tui.store.lines import split_lines
from paddock_tui.store.patch import Patched, patch
from tests.examples import examples
from tests.store.documents import Document, documents, edits


def parsed(text: str) -> dict[str, Any]:
    return tomllib.loads(text.removeprefix("\ufeff"))


def done(text: str, steps: Sequence[Edit]) -> Patched:
    outcome = patch(text, steps)
    assert isinstance(outcome, Patched), outcome
    return outcome


def expected(data: dict[str, Any], edit: Edit) -> dict[str, Any]:
    """Set or delete, without a thought for tables that stand by themselves."""
    *parents, key = edit.path
    here = data
    for parent in parents:
        here = here.setdefault(parent, {})
    if edit.new is MISSING:
        del here[key]
    else:
        here[key] = edit.new
    return data


def without_empty(data: dict[str, Any]) -> dict[str, Any]:
    """Leave out tables with nothing in them, at every depth."""
    cleaned = {key: without_empty(value) if isinstance(value, dict) else value for key, value in data.items()}
    return {key: value for key, value in cleaned.items() if value != {}}


def in_order(lines: Sequence[str], among: Sequence[str]) -> bool:
    rest = iter(among)
    return all(line in rest for line in lines)


def stripped(text: str) -> list[str]:
    return [line.rstrip("\r\n") for line in split_lines(text.removeprefix("\ufeff"))]


@examples(50)
@given(documents(), st.data())
def test_an_edit_gives_the_data_asked_for(document: Document, data: st.DataObject) -> None:
    before = parsed(document.text)
    edit = data.draw(edits(before))

    outcome = done(document.text, [edit])

    assert same(without_empty(parsed(outcome.text)), without_empty(expected(before, edit)))


@examples(50)
@given(documents(), st.data())
def test_an_edit_leaves_the_lines_of_all_other_values_and_headers(
    document: Document, data: st.DataObject
) -> None:
    edit = data.draw(edits(parsed(document.text)))

    outcome = done(document.text, [edit])

    length = len(edit.path)
    others = [
        line
        for chunk in document.chunks
        if chunk.path[:length] != edit.path and edit.path[: len(chunk.path)] != chunk.path
        for line in stripped(chunk.text)
    ]
    assert in_order(others, stripped(outcome.text))


@examples(50)
@given(documents(), st.data())
def test_edits_of_one_value_leave_every_comment_and_blank_line(
    document: Document, data: st.DataObject
) -> None:
    edit = data.draw(edits(parsed(document.text)).filter(lambda edit: not isinstance(edit.old, dict)))

    outcome = done(document.text, [edit])

    assert in_order(document.free, stripped(outcome.text))


@examples(50)
@given(documents(), st.data())
def test_undo_and_redo_of_a_sequence_give_back_the_same_bytes(
    document: Document, data: st.DataObject
) -> None:
    steps: list[Edit] = []
    text = document.text
    for _ in range(data.draw(st.integers(1, 4))):
        steps.append(data.draw(edits(parsed(text))))
        text = done(text, steps[-1:]).text

    outcome = done(document.text, steps)
    back = done(outcome.text, outcome.undo)
    again = done(back.text, back.undo)
    back_again = done(again.text, again.undo)

    assert outcome.text == text
    assert back.text == document.text
    assert again.text == text
    assert back_again.text == document.text


@examples(50)
@given(documents(), st.data())
def test_line_endings_mark_and_final_newline_stay_as_found(document: Document, data: st.DataObject) -> None:
    edit = data.draw(edits(parsed(document.text)))
    before = document.text

    outcome = done(before, [edit]).text

    assert outcome.startswith("\ufeff") == before.startswith("\ufeff")
    body = outcome.removeprefix("\ufeff")
    if "\n" in before:
        assert body.count("\r\n") == (body.count("\n") if "\r\n" in before else 0)
    if before.endswith("\n") and body:
        assert body.endswith("\n")


@examples(50)
@given(documents(), st.data())
def test_an_undo_whose_lines_are_lost_still_brings_back_the_meaning(
    document: Document, data: st.DataObject
) -> None:
    before = parsed(document.text)
    edit = data.draw(edits(before).filter(lambda edit: not isinstance(edit.old, dict)))
    outcome = done(document.text, [edit])
    by_meaning = [attrs.evolve(step, raw=None) for step in outcome.undo]

    back = patch(outcome.text, by_meaning)

    # Arrays of tables, and nan, can be kept but not written anew.
    assert isinstance(back, Patched) or "no way to write" in back.reason or "not a number" in back.reason
    if isinstance(back, Patched):
        assert same(parsed(back.text), before)


@examples(25)
@given(documents(), st.data())
def test_a_value_that_is_not_the_expected_one_is_a_clash(document: Document, data: st.DataObject) -> None:
    edit = data.draw(edits(parsed(document.text)))
    wrong = attrs.evolve(edit, old="what nobody wrote")

    outcome = patch(document.text, [wrong])

    assert not isinstance(outcome, Patched)
    assert outcome.why == "clash"
    assert same(outcome.found, edit.old)
