"""Each kind of matter: opened, kept, closed as it says and by nothing else, silent by its guard."""

import datetime as dt
from typing import Any

from paddock_tui.matters import KINDS, AidHelp
from paddock_tui.records.answers import MatterAnswer
from tests.every import every
from tests.matters.row import ANSWER, QUIET, RIDDEN, Row
from tests.matters.rows import ROWS
from tests.matters.walk import FIRST, found_after, open_after, outing

NEXT_DAY = dt.date(2026, 6, 20)

BY_ROW = every("row", ROWS, ids=lambda row: row.kind)

NOTHING_TO_DO_WITH_IT: tuple[dict[str, Any], ...] = (
    {"setup.adjusters.front-rebound": 9, "setup.mode": "open"},
    {"setup.front_start": "2.2 bar", "copied_from": "2026-05-16-1"},
    {"accepted.leak-not-mended.bike": {"reason": "looks dry", "by": "IS", "facts": "any"}},
    {"checks.horn.status": "not applicable"},
    {"notes.1.text": "fine now"},
    {"went_out": dt.time(9, 30)},
)


def test_every_kind_has_a_row() -> None:
    assert {row.kind for row in ROWS} == set(KINDS)


@BY_ROW
def test_it_is_opened_and_a_new_session_keeps_it_open(row: Row) -> None:
    if row.here:
        assert row.kind in open_after(*row.started(), **row.now)
    assert row.kind in open_after(*row.started(), row.after(2, {}), **row.now)


@BY_ROW
def test_a_ridden_session_and_a_new_day_leave_it_as_it_was(row: Row) -> None:
    if row.until_ridden:
        return
    opened = row.started()

    assert row.kind in open_after(*opened, row.after(2, RIDDEN), row.after(3, {}), **row.now)
    next_day = outing(1, row.keeps, NEXT_DAY)
    assert (row.kind in open_after(*opened, row.after(2, RIDDEN), next_day, **row.now)) == row.days


@BY_ROW
def test_nothing_else_closes_it(row: Row) -> None:
    others = [row.after(number, one) for number, one in enumerate(NOTHING_TO_DO_WITH_IT, 2)]

    assert row.kind in open_after(*row.started(), *others, row.after(9, {}), **row.now)


@BY_ROW
def test_it_is_closed_as_it_says(row: Row) -> None:
    opened = row.started()
    if row.beside:
        assert row.kind not in open_after(*row.started(row.beside), row.after(2, {}), **row.now)
    if row.later:
        after = [row.after(number, one) for number, one in enumerate(row.later, 2)]
        assert row.kind in open_after(*opened, *after[:-1], row.after(8, {}), **row.now)
        assert row.kind not in open_after(*opened, *after, **row.now)
    if row.record:
        whole = MatterAnswer(of=opened[-1].id, **ANSWER)
        assert row.kind not in open_after(*opened, row.after(2, {}), answers={row.kind: whole}, **row.now)
        assert row.kind not in open_after(
            *opened,
            row.after(2, {}),
            answers={row.kind: MatterAnswer(on=NEXT_DAY, **ANSWER)},
            **row.now,
        )


@BY_ROW
def test_a_guard_keeps_it_silent(row: Row) -> None:
    for one in row.silent:
        assert row.kind not in open_after(*row.started(opens=one), row.after(2, {}), **row.now)


@BY_ROW
def test_every_value_of_an_answer_beside_it_is_wanted(row: Row) -> None:
    for key in row.beside if len(row.beside) > 1 else ():
        if key.split(".")[-1] in NOT_WANTED.get(row.kind, ("test",)):
            continue
        less = {one: value for one, value in row.beside.items() if one != key}
        assert row.kind in open_after(*row.started(less), row.after(2, {}), **row.now), key


NOT_WANTED = {
    "leak-not-mended": (),
    "brakes-fade": (),
    "throttle-or-engine-danger": (),
    "off-or-contact-not-looked-over": ("done", "test"),
}
"""Values of an answer that a kind can do without, where that is not the test alone."""


@every("gone", ["found", "done", "by", "test"])
def test_an_answer_in_the_bikes_file_is_whole_or_none(gone: str) -> None:
    opened = outing(1, {"lever": "spongy hot", **RIDDEN})
    less = MatterAnswer(of=opened.id, **{key: value for key, value in ANSWER.items() if key != gone})

    assert open_after(opened, outing(2, {}), answers={"brake-lever-not-firm": less}) == [
        "brake-lever-not-firm"
    ]


@every(
    ("answer", "closes"),
    [
        # Another session, the same day without a time, or the day before: the opening counts as later.
        ({"of": "2026-05-16-7"}, False),
        ({"on": FIRST}, False),
        ({"on": FIRST, "at": dt.time(18, 0)}, False),
        ({"on": dt.date(2026, 5, 15)}, False),
        ({}, False),
        ({"on": dt.date(2026, 5, 17)}, True),
        ({"of": "2026-05-16-1"}, True),
    ],
)
def test_an_answer_counts_where_it_is_told_to_be_later(answer: dict[str, Any], closes: bool) -> None:
    opened = outing(1, {"lever": "to the bar", **RIDDEN})
    found = open_after(
        opened, outing(2, {}), answers={"brake-lever-not-firm": MatterAnswer(**ANSWER, **answer)}
    )
    assert (found == []) == closes


def test_where_the_order_is_not_told_the_opening_counts_as_later() -> None:
    long, firm = outing(1, {"lever": "long"}), outing(1, {"lever": "firm"})
    assert open_after(long, firm, outing(2, {})) == ["brake-lever-not-firm"]
    assert open_after(firm, long, outing(2, {})) == ["brake-lever-not-firm"]


@every(
    "after",
    [
        # Nothing written, too short, another surface: no debriefed session like it.
        RIDDEN,
        {**QUIET, "ridden_laps": 2},
        {**QUIET, "surface": "wet"},
        {"did": "nothing"},
    ],
)
def test_only_a_debriefed_session_of_the_same_surface_speaks_for_a_behaviour(after: dict[str, Any]) -> None:
    felt = outing(1, {"symptoms.1.what": "tucks", **RIDDEN})
    others = [outing(number, after) for number in (2, 3, 4)]
    assert open_after(felt, *others, outing(5, {})) == ["tuck-or-rear-lock"]


def test_a_behaviour_that_came_back_begins_anew() -> None:
    felt = {"symptoms.1.what": "tucks", **RIDDEN}
    twice = (outing(1, felt), outing(2, QUIET), outing(3, QUIET), outing(4, felt), outing(5, QUIET))
    assert open_after(*twice, outing(6, {})) == ["tuck-or-rear-lock"]


def test_five_riding_days_make_a_behaviour_history_and_a_part_never() -> None:
    both = {"symptoms.1.what": "tucks", "symptoms.2.what": "throttle sticks", **RIDDEN}
    days = [outing(1, RIDDEN, dt.date(2026, 6, day)) for day in range(1, 6)]

    assert open_after(outing(1, both), *days[:4]) == ["throttle-or-engine-danger", "tuck-or-rear-lock"]
    assert open_after(outing(1, both), *days) == ["throttle-or-engine-danger"]


def test_parts_bind_both_riders_of_a_bike_and_a_head_goes_with_its_rider() -> None:
    parts = {"incidents.1.what": "leak", "symptoms.1": {"what": "weaves", "grade": 3}}
    head = {"incidents.2": {"what": "contact", "head_contact": True}}
    opened = outing(1, {**parts, **head, **RIDDEN})

    other = open_after(opened, outing(2, {"rider": "tobin"}))
    assert {"leak-not-mended", "bars-shake-or-weave"} <= set(other)
    assert {"helmet-hit", "concussion-suspected"}.isdisjoint(other)
    mine = open_after(opened, outing(2, {"bike": "heron"}))
    assert {"helmet-hit", "concussion-suspected"} <= set(mine)
    assert {"leak-not-mended", "bars-shake-or-weave"}.isdisjoint(mine)


def test_what_was_gone_through_together_is_answered_but_for_what_holds() -> None:
    both = {"symptoms.1.what": "tucks", "symptoms.2.what": "throttle sticks", **RIDDEN}
    opened, after = outing(1, both), outing(1, {}, NEXT_DAY)

    assert open_after(opened, after, before=FIRST) == ["throttle-or-engine-danger"]
    assert "tuck-or-rear-lock" in open_after(opened, after, before=FIRST - dt.timedelta(days=1))


def test_sessions_made_ahead_open_what_they_show_once() -> None:
    before = outing(1, {**RIDDEN, "setup.rear_sprocket": 44})
    ahead = [outing(number, {"setup.rear_sprocket": 45, "tyres": "others"}) for number in (2, 3)]

    for one in found_after(before, *ahead):
        assert "more of this kind" not in one.why, one.kind
    assert open_after(before, *ahead) == ["chain-slack-not-measured", "wheel-work-not-checked"]


def test_help_that_one_outing_does_not_tell_is_as_it_was_before() -> None:
    much, little = AidHelp(0.8, 10, 0.5, "8"), AidHelp(0.3, 10, 0.5, "3")
    first = outing(1, RIDDEN, helps={"traction": much})
    untold = outing(2, RIDDEN, helps={"wheelie": much})
    (found,) = found_after(first, untold, outing(3, {}, helps={"traction": little}))

    assert found.kind == "help-lowered"
    assert "since session 2026-05-16-1" in found.message


def test_a_cold_reading_without_a_gauge_is_by_the_one_last_named() -> None:
    def read(bar: str, at: dt.time, gauge: str | None) -> dict[str, Any]:
        named = {} if gauge is None else {"gauge": gauge}
        return {"pressures.cold": {"front": bar, "temperature": "20 C", "at": at, **named}}

    def left(*gauges: str | None) -> list[str]:
        bars = ("2.20 bar", "2.20 bar", "2.00 bar")
        days = [
            outing(number, read(bar, dt.time(8 + number, 0), gauge))
            for number, (bar, gauge) in enumerate(zip(bars, gauges, strict=True), 1)
        ]
        return open_after(*days, outing(4, {}))

    lost = "pressure-lost-unanswered"
    assert lost in left("round", None, None)
    assert lost in left("round", None, "round")
    assert lost in left(None, None, None)
    assert lost not in left("round", None, "another")
    assert lost not in left(None, None, "round"), "which gauge it was before nobody wrote"
