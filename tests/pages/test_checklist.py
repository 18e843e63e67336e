"""The checklist page as rows: what applies, how each item stands and from what, where to begin, its fit."""

import datetime as dt
from typing import Any

import attrs
import pytest

from paddock_tui.facts import Situation
from paddock_tui.facts.checklists import day_place
from paddock_tui.pages.checklist import checklist_page, first_open
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.layout.fields import RAILS
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.checklist import STAGES
from tests.every import every
from tests.rules.cases.checklists import BEFORE, EVERY, MORNING, OF_DAY, RETURN, before, check, lists
from tests.rules.situations import Change, files, put, situation, went_before, without


def looked_at(*changes: Change, **more: Any) -> Situation:
    return situation(files(*changes), **{"checklists": EVERY, "now": dt.datetime(2026, 5, 16, 8, 0), **more})


def page(*changes: Change, **more: Any) -> Page:
    return checklist_page(looked_at(*changes, **more), "session 3")


def section(shown: Page, title: str) -> Section:
    return next(one for one in shown.sections if one.title == title)


def row(shown: Page, text: str) -> Row:
    return next(one for one in shown.rows() if one.value == text)


def test_the_lists_that_apply_stand_in_the_order_of_the_day() -> None:
    assert [one.title for one in page().sections] == [
        "Bike, morning",
        "paper",
        "before each session",
        "on return",
    ]
    race = page(put("session", "kind", "race"), put("session", "surface", "wet"), earlier=before())
    assert [one.title for one in race.sections][-2:] == ["wet swap", "grid"]


def test_a_list_is_there_while_it_is_not_known_whether_it_applies() -> None:
    unknown = page(without("session", "surface"), without("session", "kind"))
    assert {"wet swap", "grid"} <= {one.title for one in unknown.sections}


def test_items_are_for_their_kinds_and_surfaces_only() -> None:
    given = lists(
        mine={
            "stage": "on return",
            "items": {
                "a": {"text": "for all"},
                "b": {"text": "for races", "kinds": ["race"]},
                "c": {"text": "for the wet", "surfaces": ["wet"]},
            },
        }
    )
    assert [one.value for one in page(checklists=given).rows()] == ["for all"]
    both = page(put("session", "kind", "race"), put("session", "surface", "wet"), checklists=given)
    assert len(section(both, "on return").rows) == 3


def test_each_item_says_how_it_stands_with_time_and_initials() -> None:
    shown = page(
        check(f"{OF_DAY}.lever-firm", "ok"),
        check(f"{OF_DAY}.chain-slack", "to fix"),
        check(f"{OF_DAY}.stickers", "not applicable"),
    )
    rows = section(shown, "Bike, morning").rows
    assert [(one.label, one.aside, one.severity) for one in rows if one.kind == "check"] == [
        ("ok", "07:55 IS", ""),
        ("to fix", "serious 07:55 IS", "serious"),
        ("not applicable", "07:55 IS", ""),
    ]
    assert section(shown, "Bike, morning").note == "0 open of 3, 1 to fix"
    assert section(shown, "paper").note == "1 open of 1"


def test_what_the_record_answers_is_answered_and_says_from_what() -> None:
    found = row(page(), "pressures set")
    assert (found.label, found.aside) == ("answered", "from cold front: 2.10 bar")
    assert row(page(without("session", "pressures")), "pressures set").label == "open"
    assert row(page(check("checks.pressures-set", "to fix")), "pressures set").label == "to fix"


def test_the_days_entry_answers_the_days_lists() -> None:
    given = lists(
        paper={"stage": "paper", "items": {"brief": {"text": "briefing", "answered_by": "briefing"}}}
    )
    assert row(page(checklists=given), "briefing").aside == "from briefing attended: yes"
    no = row(page(put("day", "entries.ines.kestrel.briefing", False), checklists=given), "briefing")
    assert (no.label, no.aside) == ("open", "briefing attended: no")


def test_a_value_that_was_only_carried_over_answers_nothing() -> None:
    copied = put("session", "copied_from", "2026-05-16-2-kestrel")
    carried = row(page(copied, source=before()[0]), "first gear to leave in")
    assert (carried.label, carried.aside) == ("open", "carried over, riding mode: open")
    changed = before(setup={"mode": "showers"})[0]
    assert row(page(copied, source=changed), "first gear to leave in").label == "answered"
    assert row(page(copied), "first gear to leave in").label == "open"


def test_an_item_answered_by_no_value_stays_open_and_says_so() -> None:
    given = lists(mine={"stage": "on return", "items": {"a": {"text": "a", "answered_by": "laps"}}})
    assert (row(page(checklists=given), "a").label, row(page(checklists=given), "a").aside) == (
        "open",
        "no value is called laps",
    )


def test_what_an_earlier_session_found_is_to_fix_until_it_is_answered_here() -> None:
    marked = {"status": "to fix", "at": dt.time(10, 21), "by": "IS"}
    earlier = went_before({"checks.leaks": marked, "number": 2})
    found = row(page(history=earlier), "no leak")
    assert (found.label, found.aside) == ("to fix", "hold session 2 10:21 IS")
    assert found.path == ("checks", "leaks", "status")
    assert row(page(check("checks.leaks", "ok"), history=earlier), "no leak").label == "ok"
    another_day = went_before({"checks.leaks": marked, "date": dt.date(2026, 4, 18)})
    found = row(page(history=another_day), "no leak")
    assert (found.label, found.aside) == ("to fix", "hold still open since Sat 18 Apr 10:21 IS")


def test_answers_on_none_of_the_lists_are_shown_all_the_same() -> None:
    shown = page(check("checks.horn", "to fix"), check("checks.mirrors", "not applicable"))
    assert [one.value for one in section(shown, "answered, on none of these lists").rows] == ["horn"]


def test_without_a_day_the_days_items_say_why_they_take_no_key() -> None:
    shown = page(without("day"))
    rows = section(shown, "Bike, morning").rows
    assert rows[1].value == "there is no day to save it in: choose the day on the session page"
    assert all(one.shut and one.ref is None for one in rows if one.kind == "check")
    assert not any(one.shut for one in section(shown, "before each session").rows)


@pytest.mark.parametrize(("gone", "word"), [("rider", "choose the rider"), ("bike", "choose the bike")])
def test_without_rider_or_bike_the_day_has_no_place_and_says_which_is_missing(gone: str, word: str) -> None:
    looked = looked_at(without("session", gone))
    assert looked.session is not None
    assert word in str(day_place(looked.session, looked.day))


def test_on_the_road_without_a_day_its_lists_are_left_out_in_words() -> None:
    shown = page(put("session", "kind", "road"), without("session", "day"), without("day"))
    assert [one.title for one in shown.sections] == ["before each session", "on return", "left out"]


def test_a_garage_without_lists_and_a_list_without_a_stage_say_so() -> None:
    assert [one.value for one in page(checklists={}).rows()] == ["There is no checklist in this garage yet."]
    lost = page(checklists=lists(club={"items": {"a": {"text": "a"}}}))
    assert [one.value for one in lost.rows()] == ["club: no stage, so it is shown nowhere"]
    retired = page(checklists=lists(old={**MORNING, "retired": dt.date(2025, 1, 1)}))
    assert len(retired.rows()) == 1


def test_the_heading_says_what_is_at_hand_and_why_and_the_cursor_begins_there() -> None:
    looked = looked_at(check(f"{OF_DAY}.lever-firm", "ok"))
    shown = checklist_page(looked, "session 3")
    assert shown.heading == "bike, morning: no earlier session of the day was ridden · session 3"
    assert section(shown, "Bike, morning").rows[0].kind == "heading"
    assert first_open(looked) == row(shown, "slack at the tight point").identity


def test_where_nothing_is_open_no_stage_is_at_hand_and_nothing_reads_as_leave() -> None:
    looked = looked_at(put("session", "parked", dt.time(11)), checklists=lists(before=BEFORE))
    assert checklist_page(looked, "session 3").heading == "checklist, no stage at hand · session 3"
    assert first_open(looked) is None


def test_text_from_files_is_made_printable() -> None:
    odd = lists(mine={**RETURN, "name": "on\x1b[31m", "items": {"a": {"text": "a\x07\u202eb"}}})
    for one in page(checklists=odd).sections:
        assert one.title.isprintable()
        assert all(found.value.isprintable() for found in one.rows)


@every(("width", "height"), [(80, 24), (40, 20), (20, 10), (120, 40)])
def test_every_item_is_whole_at_every_size(width: int, height: int) -> None:
    shown = page(check(f"{OF_DAY}.chain-slack", "to fix"), without("session", "pressures"))
    rows = [at for at, one in enumerate(shown.rows()) if one.kind == "check"]
    for at in rows:
        laid = layout(attrs.evolve(shown, judged=False), View(width, height, at))
        mine = [
            "".join(text for text, _ in line)
            for line, owner in zip(laid.lines, laid.owners, strict=True)
            if owner == at
        ]
        wanted = f"{shown.rows()[at].label}{shown.rows()[at].value}{shown.rows()[at].aside}"
        rail = RAILS.get(shown.rows()[at].severity, "")
        assert "".join(mine).replace(" ", "") == f">{rail}" + wanted.replace(" ", "")


def test_every_stage_has_its_place() -> None:
    """A list of any stage is shown for a race in the wet, after a fall."""
    given = lists(
        **{stage.replace(" ", "-"): {"stage": stage, "items": {"a": {"text": stage}}} for stage in STAGES}
    )
    shown = page(
        put("session", "kind", "race"),
        put("session", "surface", "wet"),
        put("session", "incidents", {"1": {"what": "fall"}}),
        checklists=given,
    )
    assert [one.title for one in shown.sections] == list(STAGES)
