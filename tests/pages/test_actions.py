"""The registry of actions: told apart, on keys that every terminal sends, each with its function."""

import re
import string
from collections.abc import Iterator

from paddock_tui.pages.actions import (
    ROW_KEYS,
    ActionContext,
    ActionRow,
    actions_page,
    hints,
    printed,
)
from paddock_tui.pages.help import room_help
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.rows import Page, Row, RowKind, Section
from paddock_tui.records.paths import Ref
from paddock_tui.records.session_parts import Acceptance
from paddock_tui.rules import CAUTION, HOLD, NOTE, SERIOUS, Finding, Remedy, Severity, Where
from paddock_tui.rules.core import SetValue
from paddock_tui.screens.registry import ACTIONS, ROOMS, action_of
from paddock_tui.store.key_names import PRINTED
from paddock_tui.text import width
from tests.every import every

REF = Ref("session", "a")
PUT = SetValue(("surface",), "dry")


def finding(
    severity: Severity, puts: tuple[SetValue, ...] = (), accepted: Acceptance | None = None
) -> Finding:
    where = Where(REF, ("surface",))
    remedy = Remedy("Look at the track.", puts)
    return Finding("r", "x", severity, "danger", where, "Something.", "Why.", "facts", remedy, "s", accepted)


def contexts() -> Iterator[ActionContext]:
    """List situations in which actions are asked whether they can act."""
    kinds: tuple[RowKind | None, ...] = (None, "field", "text", "finding", "link", "add", "check")
    found = (None, *(finding(one) for one in Severity), finding(SERIOUS, (PUT,)))
    for session, profile in ((False, False), (True, False), (False, True)):
        for kind in kinds:
            row = None if kind is None else Row("row", kind=kind, ref=REF, path=("surface",))
            for one in found:
                for label in (None, "traction control 3 -> 4"):
                    yield ActionContext("setup", session, profile, row, one, label, label)
    yield ActionContext(session=True, row=Row("row", offer=(PUT,)))
    yield ActionContext(unkept=True)
    yield ActionContext(room="ledger", row=Row("row", path=("ledger", "one", "tyres")))


EVERY = list(contexts())


def test_ids_are_told_apart_and_so_are_keys_and_labels() -> None:
    for values in (
        [one.id for one in ACTIONS],
        [one.key for one in ACTIONS if one.key],
        [one.label for one in ACTIONS],
        [one.help for one in ACTIONS],
    ):
        assert len(set(values)) == len(values)
    assert all(action_of(one.id) is one for one in ACTIONS)


def test_keys_are_letters_without_shift_or_signs_that_every_terminal_sends() -> None:
    for one in ACTIONS:
        assert one.key == "" or one.key in string.ascii_lowercase or one.key in PRINTED, one.id
        assert len(printed(one)) <= 1


def test_no_key_of_an_action_is_a_key_of_a_row() -> None:
    of_rows = set("0123456789-+= ")

    assert not of_rows & {printed(one) for one in ACTIONS}


def test_an_action_without_a_key_stands_in_the_palette_that_has_one() -> None:
    assert action_of("actions").key
    assert action_of("help").key
    assert action_of("quit").key
    assert {row.key for row in actions_page(ACTIONS, ActionContext()).rows()} == {one.id for one in ACTIONS}


@every("one", ACTIONS, ids=[one.id for one in ACTIONS])
def test_label_and_help_are_short_words(one: ActionRow) -> None:
    assert 0 < len(one.label) <= 20
    assert 8 <= len(one.help) <= 70
    assert not one.help.endswith(".")
    assert one.label == one.label.lower()


@every("one", ACTIONS, ids=[one.id for one in ACTIONS])
def test_what_cannot_act_says_why_in_a_sentence_that_fits_the_last_line(one: ActionRow) -> None:
    for context in EVERY:
        reason = one.off(context)
        if reason:
            assert len(reason.split()) >= 4, reason
            assert len(reason) <= 80, reason
            assert reason[0].islower(), reason
            assert _says_what_to_do(reason), reason


NOTHING_TO_DO = ("there is nothing to undo", "all that was entered is saved", "a profile's findings")
"""Reasons that leave nothing to press: nothing is there yet, or nothing is wrong."""


def _says_what_to_do(reason: str) -> bool:
    """Whether a refusal names a key, or what to do instead, behind a colon."""
    return bool(re.search(r": .*\w", reason)) or reason.startswith(NOTHING_TO_DO)


GATED = {
    "setup",
    "session",
    "checklist",
    "review",
    "day",
    "entry",
    "accept",
    "remedy",
    "why",
    "offer",
    "undo",
    "redo",
    "take",
    "save",
    "again",
    "elsewhere",
}


def test_every_action_can_act_somewhere_and_those_that_need_something_say_so_in_an_empty_garage() -> None:
    for one in ACTIONS:
        assert any(not one.off(context) for context in EVERY), one.id
    assert {one.id for one in ACTIONS if one.off(ActionContext())} >= GATED


@every(
    ("context", "off"),
    [
        (ActionContext(), "there is no finding to accept"),
        (ActionContext(session=True), "there is no finding to accept"),
        (ActionContext(profile=True, finding=finding(SERIOUS)), "a profile's findings cannot be accepted"),
        (ActionContext(session=True, finding=finding(HOLD)), "a hold stands until the fact is put right"),
        (ActionContext(session=True, finding=finding(CAUTION)), "only a serious finding needs an answer"),
        (ActionContext(session=True, finding=finding(NOTE)), "only a serious finding needs an answer"),
        (ActionContext(session=True, finding=finding(SERIOUS)), ""),
        (ActionContext(session=True, finding=finding(SERIOUS, (), Acceptance(reason="x"))), ""),
    ],
)
def test_only_a_serious_finding_of_a_session_is_accepted(context: ActionContext, off: str) -> None:
    found = action_of("accept").off(context)

    assert found.startswith(off)
    assert bool(found) == bool(off)


def test_a_remedy_that_no_key_can_do_says_what_it_is() -> None:
    off = action_of("remedy").off

    assert off(ActionContext()) == "there is no finding to fix: r shows the review"
    assert off(ActionContext(finding=finding(HOLD))) == "no key can do this: Look at the track."
    assert off(ActionContext(finding=finding(HOLD, (PUT,)))) == ""


def test_undo_and_redo_act_while_there_is_a_step() -> None:
    assert action_of("undo").off(ActionContext(redo="x"))
    assert not action_of("undo").off(ActionContext(undo="x"))
    assert action_of("redo").off(ActionContext(undo="x"))
    assert not action_of("redo").off(ActionContext(redo=""))


# ---- hints -----------------------------------------------------------------------------------------------


def test_hints_name_only_what_can_act_and_end_with_help() -> None:
    for context in EVERY:
        said = hints(ACTIONS, context)
        assert said[-1] == "? help"
        named = {one.id for one in ACTIONS for hint in said if hint == f"{printed(one)} {one.label}"}
        assert not [name for name in named if action_of(name).off(context)]
        assert len(set(said)) == len(said)


def test_the_room_one_is_in_is_not_offered() -> None:
    for one in ACTIONS:
        if one.id in ROOMS and one.hint:
            said = hints(ACTIONS, ActionContext(room=one.id, session=True, row=Row("row")))
            assert f"{printed(one)} {one.label}" not in said
            elsewhere = "review" if one.id != "review" else "garage"
            assert f"{printed(one)} {one.label}" in hints(
                ACTIONS, ActionContext(room=elsewhere, session=True, row=Row("row"))
            )


def test_on_a_checklist_the_answers_are_said() -> None:
    said = hints(ACTIONS, ActionContext(session=True, hint="1 ok 2 to fix 3 n.a."))

    assert said[-2:] == ("1 ok 2 to fix 3 n.a.", "? help")
    assert not any("n.a." in hint for hint in hints(ACTIONS, ActionContext(row=Row("x"))))


@every(("wide", "least"), [(38, 3), (40, 3), (60, 4), (80, 6)])
def test_hints_fit_the_last_line_with_the_most_wanted_kept(wide: int, least: int) -> None:
    context = ActionContext(
        session=True, row=Row("row"), undo="x", redo="x", finding=finding(SERIOUS, (PUT,))
    )
    page = Page("h", (Section("s", (Row("row", "3", path=("a",)),)),))
    said = hints(ACTIONS, context)

    last = layout(page, View(wide, 20, 0, hints=said)).text().split("\n")[-1]

    assert width(last) <= wide
    shown = re.split(r"\s{2,}", last.strip())
    kept = [hint for hint in shown if hint in said]
    assert len(kept) >= least
    assert kept == list(said[len(said) - len(kept) :])


# ---- the help, the palette -------------------------------------------------------------------


def test_the_help_says_the_page_then_every_action_every_key_of_a_row_and_the_caution() -> None:
    page = room_help("setup", ACTIONS)
    sections = {section.title: section for section in page.sections}

    assert [section.title for section in page.sections][:2] == ["this page", "its keys"]
    assert [row.key for row in sections["all keys"].rows] == [one.id for one in ACTIONS]
    assert all(row.label for row in sections["all keys"].rows)
    assert [(row.label, row.value) for row in sections["on a row"].rows] == list(ROW_KEYS)
    assert "manual" in sections["before anything else"].rows[0].value


def test_the_palette_says_what_each_does_else_why_it_cannot() -> None:
    rows = {row.key: row for row in actions_page(ACTIONS, ActionContext()).rows()}

    assert rows["undo"].aside == "there is nothing to undo"
    assert rows["garage"].aside == action_of("garage").help
    assert all(row.kind == "link" for row in rows.values())
    identities = [row.identity for row in rows.values()]
    assert len(set(identities)) == len(ACTIONS)
