"""The order of the record, and answers beside what they answer: when they were given is read."""

import datetime as dt
import itertools
from typing import Any

from paddock_tui.matters.fold import Folded, advance
from paddock_tui.matters.order import STAGE_OF, STAGES, Place, is_later, ridden_at
from tests.every import every
from tests.matters.row import ANSWER, QUIET, RIDDEN, Row, felt, incident
from tests.matters.rows import ROWS
from tests.matters.walk import FIRST, found_after, open_after, outing

EARLIER, LATER = FIRST - dt.timedelta(days=1), FIRST + dt.timedelta(days=1)


def test_date_comes_before_number_before_stage_before_the_clock() -> None:
    early, late = dt.time(8, 0), dt.time(20, 0)
    ordered = [
        Place(EARLIER, 9, "evening", late),
        Place(FIRST, 1, "morning", late),
        Place(FIRST, 1, "before", late),
        Place(FIRST, 1, "out", late),
        Place(FIRST, 1, "return", early),
        Place(FIRST, 1, "return", late),
        Place(FIRST, 2, "before", early),
        Place(FIRST, 1, "evening", early),
    ]
    assert {one.stage for one in ordered} == set(STAGES)
    for (at, one), (other_at, other) in itertools.product(enumerate(ordered), repeat=2):
        assert is_later(one, other) == (at > other_at), (one, other)


@every(
    "untold",
    [Place(None, 2, "evening", dt.time(20, 0)), Place(FIRST), Place(FIRST, 1), Place(FIRST, None, "return")],
)
def test_what_the_record_does_not_tell_is_later_on_neither_side(untold: Place) -> None:
    other = Place(FIRST, 1, None, dt.time(9, 0))
    assert not is_later(untold, other)
    assert not is_later(other, untold)


@every("row", ROWS, ids=lambda row: row.kind)
def test_whatever_opens_a_matter_has_a_stage_and_the_morning_opens_before_the_return(row: Row) -> None:
    folded = Folded()
    for ridden in row.started():
        folded = advance(folded, (ridden,))
    opened = [one for one in folded.open if one.kind == row.kind]
    assert opened
    for one in opened:
        assert one.place.stage == ("morning" if one.record == "day" else STAGE_OF[one.path[0]])
        assert one.place.stage != "morning" or one.record == "day"
        # A morning of the same day is not after it, an evening is.
        assert not is_later(Place(one.date, stage="morning"), one.place)
        assert is_later(Place(one.date, stage="evening"), one.place)


def test_of_one_session_what_was_ridden_is_after_what_was_done_before_it_and_not_after_the_return() -> None:
    ridden = ridden_at(outing(1, {**RIDDEN, "start": dt.time(9, 0)}).session)
    assert is_later(ridden, Place(FIRST, 1, STAGE_OF["setup"], dt.time(9, 30)))
    assert not is_later(ridden, Place(FIRST, 1, STAGE_OF["lever"], dt.time(8, 0)))
    assert set(STAGE_OF.values()) | {ridden.stage, "evening"} == set(STAGES)


PARTS: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {
    "leak-not-mended": (incident("leak", at=dt.time(10, 0)), {"incidents.1": ANSWER}),
    "stopped-by-officials": (
        incident("refused by inspection", at=dt.time(10, 0)),
        {"incidents.1": {"found": "pin", "shown_to": "inspection"}},
    ),
    "mend-by-a-date": (incident("mend by", at=dt.time(10, 0)), {"incidents.1": {"done": "new pads"}}),
    "airbag-fired": (incident("airbag fired", at=dt.time(10, 0)), {"incidents.1": {"rearmed": True}}),
    "off-or-contact-not-looked-over": (
        incident("contact", at=dt.time(10, 0)),
        {"incidents.1": {"found": "nothing", "by": "TM"}},
    ),
    "helmet-dropped": (incident("helmet dropped", at=dt.time(10, 0)), {"incidents.1": {"found": "whole"}}),
    "tyre-cut": (
        {"look.rear.seen": ["cut"], "look.rear.at": dt.time(10, 0)},
        {"look.rear": {"found": "tread only", "by": "fitter"}},
    ),
    "wheel-work-not-checked": (
        {"work.1.what": "caliper", "work.1.at": dt.time(10, 0)},
        {"work.1": {"torqued": True, "pumped": True}},
    ),
    "oil-work-not-secured": (
        {"work.1.what": "plug", "work.1.at": dt.time(10, 0)},
        {"work.1": {"torqued": True}},
    ),
    "bike-stood-or-workshop": (
        {"work.1.what": "workshop", "work.1.at": dt.time(10, 0)},
        {"work.1": {"done": "gone through", "by": "TM"}},
    ),
}
"""What was opened at ten by the clock, and its whole answer."""


@every("kind", PARTS)
@every(
    ("when", "closes"),
    [
        ({}, True),
        ({"done_at": dt.time(10, 20)}, True),
        ({"on": LATER, "done_at": dt.time(9, 0)}, True),
        ({"done_at": dt.time(9, 40)}, False),
        ({"on": EARLIER}, False),
    ],
)
def test_an_answer_beside_a_part_counts_unless_it_is_dated_before_it(
    kind: str, when: dict[str, Any], closes: bool
) -> None:
    opens, answer = PARTS[kind]
    values = {**opens, **{f"{at}.{key}": one for at, of in answer.items() for key, one in of.items()}}
    values |= {f"{at}.{key}": one for at in answer for key, one in when.items()}

    assert (kind not in open_after(outing(1, values), outing(2, {}))) == closes


@every("kind", PARTS)
def test_an_answer_that_is_too_early_is_called_that_and_not_missing(kind: str) -> None:
    opens, answer = PARTS[kind]
    values = {**opens, **{f"{at}.{key}": one for at, of in answer.items() for key, one in of.items()}}
    values |= {f"{at}.done_at": dt.time(9, 40) for at in answer}

    (found,) = [one for one in found_after(outing(1, values), outing(2, {})) if one.kind == kind]
    assert "dated 09:40, before it" in found.why
    assert "09:40" in found.message, found.message
    for words in ("issing", "not done", "not inspected", "ot torqued", "not checked", "nothing", "nobody"):
        assert words not in found.message


@every(
    ("when", "closed"),
    [
        ({}, True),
        # Between the two rides, after both, on another day.
        ({"at": dt.time(9, 40)}, True),
        ({"at": dt.time(17, 0)}, False),
        ({"on": LATER}, False),
        ({"on": EARLIER}, False),
    ],
)
def test_only_what_was_ridden_after_the_answer_speaks_for_a_behaviour(
    when: dict[str, Any], closed: bool
) -> None:
    weaved = {**felt("weaves", grade=1, found="loose axle", done="torqued", **when), "parked": dt.time(9, 20)}
    first = outing(1, {"ridden_laps": 6, **weaved})
    second = outing(2, {**QUIET, "went_out": dt.time(10, 0), "parked": dt.time(10, 20)})

    found = open_after(first, second, outing(3, {}))
    assert (found == []) == closed
    later = FIRST + dt.timedelta(days=2)
    third = outing(1, QUIET, later)
    still = ["bars-shake-or-weave"] if when.get("on") == EARLIER else []
    assert open_after(first, second, third, outing(9, {}, later)) == still


def test_a_symptoms_clock_is_that_of_its_answer_not_of_the_ride() -> None:
    begun = {**felt("throttle sticks", found="cable", at=dt.time(17, 30)), **RIDDEN}
    after = outing(2, {})

    (one,) = found_after(outing(1, begun), after)
    assert "17:30" not in one.message
    assert "session 1" in one.message


def test_an_inspection_answers_the_falls_before_it_by_the_clock_not_by_their_numbers() -> None:
    first = {"what": "fall", "moving": True, "at": dt.time(11, 0), "head_contact": False}
    second = {**first, "at": dt.time(10, 0), "inspected_again": dt.time(10, 30)}

    def left(**falls: dict[str, Any]) -> list[str]:
        values = {f"incidents.{number[1:]}": one for number, one in falls.items()}
        return open_after(outing(1, {**values, **RIDDEN}), outing(2, {}))

    assert left(n1=first, n2=second) == ["fall-not-inspected"]
    assert left(n1=first, n2={**second, "inspected_again": dt.time(11, 30)}) == []
    assert left(n1={**first, "inspected_again": dt.time(10, 50)}) == ["fall-not-inspected"]


def test_the_last_work_by_the_clock_counts() -> None:
    ticked = {"what": "caliper", "torqued": True, "pumped": True, "rechecked_hot": True}
    open_again = {"what": "caliper", "at": dt.time(15, 0)}

    def left(ticked_at: dt.time) -> list[str]:
        values = {"work.1": open_again, "work.2": {**ticked, "at": ticked_at}}
        return open_after(outing(1, values), outing(2, {}))

    assert left(dt.time(9, 0)) == ["wheel-work-not-checked"]
    assert left(dt.time(15, 30)) == []
