"""The groups of a return: fixed lengths that fill by themselves, in the unit of the rider."""

from paddock_tui.entry.return_rows import ReturnRow, groups, is_no_answer, is_skipped, read_group, rule_of
from paddock_tui.records.common import Units
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from tests.every import every

BY_KEY = {one.key: one for one in groups()}
FRONT, FUEL, CORNER = (BY_KEY[key] for key in ("pressures.hot.front", "fuel_added", "symptoms.1.corner"))


@every(
    ("group", "typed", "units", "value"),
    [
        (FRONT, "238", Units(), "2.38 bar"),
        (FRONT, "345", Units(pressure="psi"), "34.5 psi"),
        (FRONT, "238", Units(pressure="kPa"), "238 kPa"),
        (FRONT, "23", Units(), None),
        (FRONT, "2.38", Units(), None),
        (FUEL, "065", Units(), "6.5 l"),
        (FUEL, "012", Units(volume="US gal"), "1.2 US gal"),
        (CORNER, "07", Units(), "7"),
        (CORNER, "7", Units(), None),
        (CORNER, "12", Units(), "12"),
        (BY_KEY["feel.straight"], "5", Units(), 5),
        (BY_KEY["symptoms.1.what"], "ch", Units(), "chatters"),
        (BY_KEY["symptoms.1.end"], "f", Units(), "front"),
        (BY_KEY["symptoms.1.end"], "2", Units(), "rear"),
        (BY_KEY["symptoms.1.each_lap"], "d", Units(), "differs"),
    ],
)
def test_a_group_is_read_once_it_is_whole_and_waits_before(
    group: ReturnRow, typed: str, units: Units, value: object
) -> None:
    assert read_group(group, typed, units) == value


def test_a_nought_passes_a_group_over_and_two_a_corner_whose_number_may_begin_with_one() -> None:
    assert is_skipped(BY_KEY["symptoms.1.end"], "0")
    assert not is_skipped(CORNER, "0")
    assert is_skipped(CORNER, "00")


@every(("typed", "no_answer"), [("", False), ("R", False), ("2", False), ("7", True), ("x", True)])
def test_what_cannot_become_an_answer_is_known_at_its_first_key(typed: str, no_answer: bool) -> None:
    assert is_no_answer(BY_KEY["symptoms.1.end"], typed) is no_answer
    assert not is_no_answer(CORNER, typed)


@every(
    ("group", "typed", "units"),
    [
        (FRONT, "999", Units()),
        (FRONT, "050", Units(pressure="psi")),
        (FRONT, "2388", Units()),
        (FUEL, "999", Units()),
        (BY_KEY["feel.straight"], "7", Units()),
    ],
)
def test_what_cannot_be_is_refused_at_once(group: ReturnRow, typed: str, units: Units) -> None:
    assert isinstance(read_group(group, typed, units), InputError)


def test_every_group_says_its_rule_and_names_a_value_of_a_session() -> None:
    for group in groups():
        assert 5 <= len(rule_of(group, Units())) <= 40
        assert group.reads == "change" or field_at("session", group.path) is not None


def test_hot_pressures_come_first_then_feel_then_one_symptom_then_the_next_session() -> None:
    assert [one.label for one in groups()] == [
        "front, hot",
        "rear, hot",
        "braking",
        "turn-in",
        "mid-corner",
        "exit, drive",
        "straight",
        "symptom",
        "corner",
        "end",
        "every lap",
        "fuel added",
        "next change",
    ]
    assert [one.label for one in groups(1)][7:12] == ["symptom", "corner", "end", "every lap", "2 symptom"]
