"""Lines and exactly what they set, or exactly why they set nothing."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.entry import LineContext, answered, read_line
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from tests.entry.contexts import MAGPIE, RIDDEN, by_path, context, without_bike
from tests.entry.lines_refused import ERRORS, QUESTIONS, Wrong
from tests.entry.lines_that_set import OTHERS, SETS, A, C
from tests.every import every
from tests.sample import bike


@every(("line", "expected"), SETS, ids=[line for line, _ in SETS])
def test_a_line_sets_exactly_what_it_says(line: str, expected: dict[str, Any]) -> None:
    found = read_line(line, context(MAGPIE))

    assert (found.errors, found.questions) == ((), ())
    assert found.edits == by_path(expected)


@every(("ref", "line", "expected"), OTHERS, ids=[f"{ref.id} {line}" for ref, line, _ in OTHERS])
def test_the_same_words_mean_what_the_record_and_its_bike_have(
    ref: Ref, line: str, expected: dict[str, Any]
) -> None:
    found = read_line(line, context(ref))

    assert (found.errors, found.questions) == ((), ())
    assert found.edits == by_path(expected)


@every(("ref", "line", "wrong"), ERRORS, ids=[ascii(f"{ref.id} {line[:40]}") for ref, line, _ in ERRORS])
def test_a_line_with_one_wrong_piece_sets_nothing_and_points_at_it(ref: Ref, line: str, wrong: Wrong) -> None:
    found = read_line(line, context(ref))

    assert [(line[one.start : one.end], one.message) for one in found.errors] == wrong
    assert found.edits == {}


@every(("ref", "line", "piece", "ask", "answers"), QUESTIONS, ids=[line for _, line, *_ in QUESTIONS])
def test_a_piece_that_may_mean_several_things_is_asked_about_and_sets_nothing(
    ref: Ref, line: str, piece: str, ask: str, answers: list[str]
) -> None:
    found = read_line(line, context(ref))

    assert found.errors == ()
    assert found.edits == {}
    (question,) = found.questions
    assert (line[question.start : question.end], question.ask) == (piece, ask)
    assert [answered(line, question, choice) for choice in question.choices] == answers


@every(("ref", "line"), [(ref, line) for ref, line, *_ in QUESTIONS], ids=[line for _, line, *_ in QUESTIONS])
def test_every_answer_to_a_question_can_be_read(ref: Ref, line: str) -> None:
    (question,) = read_line(line, context(ref)).questions

    for choice in question.choices:
        again = read_line(answered(line, question, choice), context(ref))
        assert not again.errors
        assert question not in again.questions


def test_a_bare_pressure_far_from_this_bikes_last_one_is_asked_about() -> None:
    before = context(MAGPIE, last={("pressures", "hot", "front"): "2.46 bar"})

    far, near = read_line("hot 2.95 2.05", before), read_line("hot 2.85 2.05", before)

    (question,) = far.questions
    assert question.ask == "hot front 2.95 bar, while the last was 2.46 bar?"
    assert [answered(far.text, question, one) for one in question.choices] == ["hot 2.95 bar 2.05"]
    assert far.edits == {}
    assert near.clear
    assert read_line("hot 2.95 bar 2.05", before).clear


def test_a_pressure_that_this_session_has_counts_before_an_earlier_one() -> None:
    last = {("pressures", "hot", "front"): "1.5 bar", ("pressures", "hot", "rear"): "1.5 bar"}

    assert read_line("hot 2.4 2.3", context(RIDDEN, last=last)).clear
    assert len(read_line("hot 2.4 2.3", context(MAGPIE, last=last)).questions) == 2


def test_a_bare_pressure_in_no_band_is_pointed_at_with_what_to_write() -> None:
    found = read_line("hot 5.1 2.05", context(MAGPIE))

    (error,) = found.errors
    assert found.text[error.start : error.end] == "5.1"
    assert error.mend == 'write "5.1 bar" or "5.1 psi" or "5.1 kPa"'


def test_a_bare_number_is_in_the_unit_that_the_garage_prefers() -> None:
    found = read_line("air 66 pl 60", context(MAGPIE, units=Units(temperature="F")))

    assert found.edits == by_path({"air": "66 F", C + "pit-limiter": "60 km/h"})


def test_what_a_level_means_is_not_judged_but_read() -> None:
    assert read_line("slide control off", context(MAGPIE)).edits == by_path({C + "slide": "off"})


def test_the_choice_of_units_follows_the_pieces_in_the_order_typed() -> None:
    found = read_line("w3 fuel 4.5 t4", context(MAGPIE))

    assert [piece.label for piece in found.pieces] == ["wheelie control", "fuel added", "traction control"]
    assert [found.text[piece.start : piece.end] for piece in found.pieces] == ["w3", "fuel 4.5", "t4"]


def test_a_pair_with_one_end_on_this_bike_takes_one_figure() -> None:
    whole = bike("magpie")
    adjusters = {name: held for name, held in whole.adjusters.items() if name != "front-preload"}
    rear_only = context(MAGPIE, bike=attrs.evolve(whole, adjusters=adjusters))

    assert read_line("preload 4.5", rear_only).edits == by_path({A + "rear-preload": 4.5})
    (error,) = read_line("preload 6 4.5", rear_only).errors
    assert error.message == "Magpie has no front preload"


def test_without_a_bike_its_words_say_so_and_all_others_are_read() -> None:
    alone = without_bike(Session(), {})

    assert read_line("damp parked 1102", alone).edits == by_path(
        {"surface": "damp", "parked": dt.time(11, 2)}
    )
    (error,) = read_line("t4", alone).errors
    assert error.message == "traction control: the bike is not known"


def test_a_bike_that_does_not_say_whether_all_is_listed_may_have_more() -> None:
    unknown: LineContext = context(MAGPIE, bike=Bike(name="Shrew"))

    (error,) = read_line("t4", unknown).errors
    assert error.message == "traction control is not in the file of Shrew"


def test_a_control_that_the_bike_lost_can_be_cleared_but_not_set() -> None:
    data = {"setup": {"controls": {"nitro": 3}}}
    record = Session(setup=attrs.evolve(Session().setup, controls={"nitro": 3}))
    held = context(MAGPIE, record=record, data=data)

    assert read_line("setup.controls.nitro clear", held).edits == by_path({C + "nitro": MISSING})
    assert not read_line("setup.controls.nitro 2", held).clear
    assert not read_line("nitro 2", held).clear


def test_presets_and_offsets_are_those_of_the_damping_mode_on_the_same_line() -> None:
    assert not read_line("damping motor-set preset keen", context(MAGPIE)).clear
    assert not read_line("damping by-hand kerbs 1", context(MAGPIE)).clear
    assert read_line("kerbs 1 damping by-hand", context(MAGPIE)).clear
