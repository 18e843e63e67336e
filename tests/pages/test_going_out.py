"""The page before going out: what is open in the order of the clock, and the row that stamps it."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.desk.day.what_now import not_done
from paddock_tui.facts import Situation
from paddock_tui.pages.going_out import NOW, first_row, holds_of, out_page, to_mend
from paddock_tui.pages.rows import Page
from paddock_tui.rules import RULES, Review, review
from tests.rules.cases.incidents import happened
from tests.rules.cases.work import ON_RAIN
from tests.rules.situations import Change, at, files, put, situation, without

WET = (put("session", "surface", "wet"), at("traction", 3))
NOTHING_DONE = (without("day", "entries"), without("session", "pressures"))


def judged_going_out(made: Situation) -> Review:
    return review(attrs.evolve(made, going_out=True))


def page(*changes: Change, **more: Any) -> Page:
    made = situation(files(*changes), **more)
    return out_page(made, judged_going_out(made), "session 3")


def titles(found: Page) -> list[str]:
    return [section.title for section in found.sections]


def asides(found: Page, section: str) -> list[str]:
    return [row.aside for one in found.sections if one.title == section for row in one.rows]


def test_with_all_done_the_first_row_is_the_one_that_stamps() -> None:
    found = page()

    assert titles(found) == ["the last minutes", "out"]
    assert first_row(found)[-1] == NOW
    assert found.caution.startswith("A starting point, not a guarantee")


def test_what_is_to_mend_comes_before_what_is_to_do_and_last_stands_going_out() -> None:
    found = page(*WET, *NOTHING_DONE)

    assert titles(found)[:2] == ["fix first, or say why", "to do, in the order of the clock"]
    assert found.rows()[-1].key == NOW
    assert first_row(found) == found.rows()[0].identity


def test_a_hold_alone_is_mended_for_no_word_answers_it() -> None:
    assert titles(page(at("wheelie", 99)))[0] == "fix first"


def test_on_the_road_nothing_is_said_of_laps() -> None:
    last = next(
        one for one in page(put("session", "kind", "road")).sections if one.title == "the last minutes"
    )

    assert [row.label for row in last.rows][-1] == "to begin"
    assert not any("laps" in f"{row.label} {row.value}" for row in last.rows)


def test_what_is_to_do_stands_in_the_order_in_which_it_is_due() -> None:
    made = situation(files(*NOTHING_DONE), history=ON_RAIN)
    found = not_done(judged_going_out(made))

    due = [RULES[one.rule].todo.minutes for one in found]  # type: ignore[union-attr]
    assert due == sorted(due, reverse=True)
    assert len(due) >= 5
    assert found[0].rule == "wheel-work-not-checked"


def test_each_to_do_says_by_when_and_what_to_do() -> None:
    (aside,) = asides(page(without("session", "pressures")), "to do, in the order of the clock")

    assert aside.startswith("by 10:30: Read both tyres cold")


def test_without_a_start_it_is_due_before_going_out() -> None:
    found = page(without("session", "pressures"), without("session", "start"))

    assert asides(found, "to do, in the order of the clock")[0].startswith("before going out: Read both")


def test_what_is_accepted_is_asked_no_more() -> None:
    (serious,) = to_mend(judged_going_out(situation(files(*WET))))
    accepted = put(
        "session",
        f"accepted.{serious.rule}.{serious.subject}",
        {"reason": "behind the instructor", "by": "IS", "facts": serious.facts},
    )

    assert to_mend(judged_going_out(situation(files(*WET, accepted)))) == []


def test_a_hold_is_said_on_the_row_that_stamps() -> None:
    one, two = page(happened("leak")), page(happened("leak"), put("session", "lever", "to the bar"))

    assert one.rows()[-1].aside == "1 hold stands: enter asks once more"
    assert two.rows()[-1].aside == "2 holds stand: enter asks once more"
    assert page().rows()[-1].aside == "u takes it back"
    assert holds_of(judged_going_out(situation(files()))) == []


def test_it_says_when_it_was_stamped() -> None:
    assert page().rows()[-1].value == "enter stamps 20:00"
    assert page(put("session", "went_out", dt.time(10, 41))).rows()[-1].value.startswith("went out 10:41")


def test_a_ridden_session_goes_out_no_more() -> None:
    found = page(put("session", "parked", dt.time(10, 59)))

    assert [row.value for row in found.rows()] == ["This session was ridden: n makes the next one."]
    assert first_row(found)[-1] == "over"


def test_a_profile_goes_nowhere() -> None:
    assert [row.value for row in page(without("session")).rows()] == ["There is no session here."]


def test_the_last_minutes_name_warmers_only_where_they_are_used_and_brakes_only_after_work() -> None:
    def labels(*changes: Change) -> list[str]:
        section = next(one for one in page(*changes).sections if one.title == "the last minutes")
        return [row.label for row in section.rows]

    assert labels() == ["fuel", "clear", "first laps"]
    assert labels(put("session", "warmers", "used")) == ["fuel", "warmers", "first laps"]
    assert "brakes" in labels(put("session", "work.1", {"what": "axle", "torqued": True}))
