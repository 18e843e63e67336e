"""Shapes: what is read is shown so that it is read again, what is not is refused with what was expected."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.quantities import EVERYDAY_UNITS, Quantity, dimension_of
from paddock_tui.records import common as c
from paddock_tui.records.electronics import Bounds, OffValue
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.shapes import (
    Amount,
    AnySetting,
    DateCode,
    Day,
    Flag,
    LapTime,
    LevelSetting,
    Named,
    Number,
    Reference,
    Series,
    Shape,
    SpeedSetting,
    Text,
    TimeOfDay,
    TyreSizeMarking,
    Whole,
    Word,
    WordList,
    WordSetting,
)
from paddock_tui.records.shapes.limits import LimitValue
from tests.every import every
from tests.examples import examples

SETTINGS = examples(25)

SHAPES: dict[str, tuple[Shape[Any], tuple[str, ...]]] = {
    "amount": (c.TYRE_PRESSURE, ("2.1 bar", "2,10", "30 psi", "30", "210kPa", "0.1 bar", "99 psi")),
    "temperature": (c.TRACK_TEMPERATURE, ("21 C", "-3", "70 F", "21,5 C")),
    "amount or word": (c.FELT_TRACK, ("cold", "mi", "31 C", "88 F", "12.5")),
    "whole": (c.TEETH, ("43", " 15 ", "999", "-1")),
    "score": (c.SCORE, ("1", "5")),
    "number": (Number(0, 24, step=0.5), ("12", "6,5", "0.1", "99", "1.123456789012", "-0.0", "0.000001")),
    "series": (Series(2, 2, "two numbers"), ("0 10", "0 to 10", "[0, 10]", "1.5; 2.25", "6 1")),
    "words": (WordList("names"), ("calm, firm", "a", "one two, three")),
    "text": (Text(), ("slow over the ripples", "  spaced ", "42", "true", "é")),
    "word": (c.SURFACE, ("dry", "DAMP", "sta", "dryi")),
    "flag": (Flag(), ("yes", "N", "true")),
    "day": (Day(), ("2026-05-16", "2026-5-6", "2024-02-29")),
    "clock": (TimeOfDay(), ("10:40", "9.05", "1040", "940", "10:40:59", "00:00")),
    "lap": (
        LapTime(),
        ("1:44.310", "1:44,3", "59.9", "1:58.900 out", "2:00 traffic", "104.31", "1:04.005 In"),
    ),
    "date code": (DateCode(), ("2623", "0126", "5325")),
    "tyre size": (
        TyreSizeMarking(),
        ("190/55 ZR17 M/C (75W)", "120/70ZR17", "160/60  R 17", "180/55-17 73W"),
    ),
    "reference": (Reference("bike"), ("otter", "bike/otter", "2026-05-16-3-otter")),
    "name": (Named("a mode", ("showers", "show", "open")), ("showers", "SHOW", "o")),
    "any name": (Named("a mode"), ("showers", "Whatever it is")),
    "any setting": (AnySetting(), ("4", "-3", "off", "60 km/h")),
    "level": (LevelSetting(0, 10, can_be_off=True), ("4", "OFF", "99", "-2")),
    "word setting": (WordSetting("sharp", "even", "soft"), ("soft", "ev", "SHARP")),
    "speed": (SpeedSetting(("40 km/h", "60 km/h"), can_be_off=True), ("60", "37 mph", "off", "60km/h")),
    "off": (OffValue(), ("yes", "no", "0", "-1", "standby")),
    "bounds": (Bounds(), ("6 10", "6 to 10", "even, soft", "even")),
    "limit": (LimitValue(), ("0.35", "4", "2.1 bar", "0,5")),
}


@every(("shape", "text"), [(shape, text) for shape, texts in SHAPES.values() for text in texts])
def test_what_is_read_is_shown_and_written_so_that_it_comes_back(shape: Shape[Any], text: str) -> None:
    value = shape.read(text)
    assert not isinstance(value, InputError), value
    assert shape.read(shape.show(value)) == value
    assert shape.load(shape.dump(value)) == value
    assert shape.dump(shape.load(shape.dump(value))) == shape.dump(value)


ANYTHING = st.one_of(
    st.text(max_size=60),
    st.from_regex(r"[+-]?[0-9]{1,13}([.,][0-9]{0,13})?( ?[a-zA-Z%/]{1,6})?", fullmatch=True),
    st.from_regex(r"[0-9]{1,2}:[0-9]{2}([.:][0-9]{1,4})?( out| in| traffic)?", fullmatch=True),
    st.sampled_from([text for _, texts in SHAPES.values() for text in texts]),
)


@SETTINGS
@given(ANYTHING)
def test_whatever_is_typed_is_refused_or_comes_back_the_same(text: str) -> None:
    for shape, _ in SHAPES.values():
        value = shape.read(text)
        if isinstance(value, InputError):
            assert value.found
            assert value.expected
            continue
        assert shape.read(shape.show(value)) == value, (shape, text)
        assert shape.load(shape.dump(value)) == value, (shape, text)


RAW = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.sampled_from([10**400, -(10**50), float("inf"), float("nan"), 1e300, "", " ", "x" * 5000, "\x1b[2J"])
    | st.floats()
    | st.text(max_size=20)
    | st.dates()
    | st.times()
    | st.datetimes(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=4,
)


@SETTINGS
@given(RAW)
def test_whatever_stands_in_a_file_is_taken_or_refused_in_words(raw: object) -> None:
    for shape, _ in SHAPES.values():
        value = shape.load(raw)
        if isinstance(value, InputError):
            assert 0 < len(value.found) < 200
            assert value.expected
            assert "Error" not in value.sentence()
        else:
            assert shape.show(value) or value == ()


def test_a_number_too_long_to_write_out_is_refused_in_words() -> None:
    """A hexadecimal number in a file may be longer than Python is willing to write in decimals."""
    for shape, _ in SHAPES.values():
        for raw in (16**5000, -(16**5000)):
            found = shape.load(raw)
            assert isinstance(found, InputError), shape
            assert "digits" in found.found or found.expected == "true or false"


REFUSED: list[tuple[str, object, str]] = [
    ("amount", "2,3 bar", 'write "2.3 bar"'),
    ("amount", "2.3", "write the unit after the number"),
    ("amount", 2.3, 'write it with its unit, e.g. "2.3 bar"'),
    ("amount", 33, 'write it with its unit, e.g. "33 psi"'),
    ("amount", 5, 'write it with its unit, e.g. "1.4 bar"'),
    ("amount", True, ""),
    ("amount", "9**9**9 mm", 'write it, e.g. "1.4 bar"'),
    ("amount", "", 'write a number and its unit, e.g. "1.4 bar"'),
    ("amount", "1" * 5000, "write one number and its unit"),
    ("amount", "2.3 bra", "write it in bar, psi, kPa, Pa"),
    ("amount", "21 C", ""),
    ("temperature", "warm", 'write a number and its unit, e.g. "13.8 C"'),
    ("whole", "43", "write 43, without quotes"),
    ("whole", True, ""),
    ("whole", 43.5, ""),
    ("number", "6,5", "write 6.5, without quotes"),
    ("number", True, ""),
    ("number", float("nan"), ""),
    ("level", "4", "write 4, without quotes"),
    ("level", "a", ""),
    ("level", True, 'write "on" or "off"'),
    ("word setting", 3, ""),
    ("speed", 60, 'write "60 km/h"'),
    ("speed", True, ""),
    ("speed", "60", "write the unit after the number"),
    ("word", "damb", "did you mean damp?"),
    ("flag", "yes", "write true or false, without quotes"),
    ("flag", 1, "write true or false, without quotes"),
    ("text", 42, 'write "42"'),
    ("text", "", "leave the line out while it is not known"),
    ("day", "2026-05-16", "write it as 2026-05-16, without quotes"),
    ("clock", "10:40", "write it as 10:40:00, without quotes"),
    ("lap", 104.31, 'write "104.31"'),
    ("lap", "1:44,310", 'write "1:44.310"'),
    ("lap", "1:75", "seconds go to 59"),
    ("lap", "1:44.3 slow", ""),
    ("lap", "0", ""),
    ("date code", 2623, 'write "2623", in quotes'),
    ("date code", "9923", "the week goes from 01 to 53"),
    ("tyre size", "big", ""),
    ("reference", "../etc/passwd", "an id has lower-case letters, digits and hyphens"),
    ("reference", "Otter", "an id has lower-case letters, digits and hyphens"),
    ("series", 4, "write [4]"),
    ("series", [1, 2, 3], ""),
    ("series", [1, "2"], ""),
    ("series", [1, 10**400], ""),
    ("words", "calm", 'write ["calm"]'),
    ("words", ["calm", "calm"], ""),
    ("bounds", [1], ""),
    ("bounds", [], ""),
    ("off", "", ""),
    ("limit", True, ""),
]


@every(("name", "raw", "mend"), REFUSED)
def test_a_value_in_a_file_that_cannot_be_read_says_what_was_expected_and_how_to_mend_it(
    name: str, raw: object, mend: str
) -> None:
    found = SHAPES[name][0].load(raw)
    assert isinstance(found, InputError)
    assert found.expected
    assert found.mend == mend
    assert len(found.found) <= 140


TYPED: list[tuple[str, str, str]] = [
    ("amount", "5", "write "),
    ("amount", "9**9**9 mm", "write it, e.g."),
    ("amount", "2.1 kg", 'write "2.1 kgf/cm2"'),
    ("amount", "1e3 bar", "write the number out"),
    ("temperature", "hot", "write a number and its unit"),
    ("word", "d", "type more of it: dry, damp, drying"),
    ("word", "", ""),
    ("level", "4.5", ""),
    ("level", "four", ""),
    ("clock", "25:00", "hours go to 23"),
    ("clock", "10:60", "hours go to 23"),
    ("day", "2026-02-30", "there is no such day"),
    ("name", "sh", ""),
    ("bounds", "5", ""),
    ("series", "1 x", "put spaces between the numbers"),
    ("score", "6", ""),
    ("flag", "maybe", ""),
]


@every(("name", "text", "mend"), TYPED)
def test_a_text_that_cannot_be_read_is_refused_with_a_mend(name: str, text: str, mend: str) -> None:
    found = SHAPES[name][0].read(text)
    assert isinstance(found, InputError)
    assert found.expected
    assert found.mend.startswith(mend)


def test_a_text_is_at_most_two_thousand_characters_when_it_is_typed() -> None:
    assert Text().read("x" * 2000) == "x" * 2000
    found = Text().read("x" * 2001)
    assert isinstance(found, InputError)
    assert found.found == "a text of 2001 characters"


def test_a_pressure_without_unit_is_in_the_unit_whose_band_it_fits() -> None:
    read = [str(c.TYRE_PRESSURE.read(text)) for text in ("2,1", "31", "215")]
    assert read == ["2.1 bar", "31 psi", "215 kPa"]


def test_a_bare_number_takes_the_unit_that_is_preferred_for_the_row() -> None:
    assert str(c.TRACK_TEMPERATURE.read_in("70", "F")) == "70 F"
    assert str(c.FELT_TRACK.read_in("70", "F")) == "70 F"
    assert str(c.FELT_TRACK.read_in("col", "F")) == "cold"
    assert str(c.TYRE_PRESSURE.read_in("2.1", "psi")) == "2.1 bar"


AMOUNTS = sorted(
    {
        id(one.shape): one.shape
        for cls in CLASSES.values()
        for one in declared(cls)
        if isinstance(one.shape, Amount)
    }.values(),
    key=lambda shape: shape.expected,
)


@every("shape", AMOUNTS, ids=lambda shape: f"{shape.dimension}-{shape.low}-{shape.unit}")
def test_the_unit_of_each_amount_measures_it_and_its_example_can_be_read(shape: Amount) -> None:
    assert dimension_of(shape.unit) == shape.dimension
    assert shape.low < shape.high
    found = shape.load(str(shape.example()))
    assert isinstance(found, Quantity)
    assert shape.low <= found.to(shape.unit) <= shape.high
    assert not shape.expected.startswith(("a a", "a e", "a o"))


@SETTINGS
@given(st.sampled_from(AMOUNTS), st.decimals(-10, 3000, places=3), st.integers(-5, 5).filter(bool))
def test_steps_of_an_amount_never_leave_the_range(shape: Amount, number: Any, by: int) -> None:
    stepped = shape.step(Quantity(number, shape.unit), by)
    assert stepped is not None
    assert shape.low <= float(stepped.number) <= shape.high
    assert shape.load(shape.dump(stepped)) == stepped


def test_steps_of_an_amount_are_exact_and_keep_its_digits() -> None:
    value = c.TYRE_PRESSURE.read("2.10 bar")
    assert isinstance(value, Quantity)
    assert str(c.TYRE_PRESSURE.step(value, 1)) == "2.15 bar"
    fine = c.AIR_TEMPERATURE.read("21.5 C")
    assert isinstance(fine, Quantity)
    assert str(c.AIR_TEMPERATURE.step(fine, 1)) == "22.5 C"
    low = c.TORQUE.read("1 N m")
    assert isinstance(low, Quantity)
    assert str(c.TORQUE.step(low, -1)) == "0.5 N m"


def test_an_amount_in_another_unit_has_no_steps() -> None:
    psi = c.TYRE_PRESSURE.read("30 psi")
    assert isinstance(psi, Quantity)
    assert c.TYRE_PRESSURE.step(psi, 1) is None
    assert c.FELT_TRACK.step("cold", 1) is None


STEPS: list[tuple[Shape[Any], object, int, object]] = [
    (Number(0, 24), 12, 1, 13),
    (Number(0, 24), 24, 1, 24),
    (Number(0, 24), 0, -1, 0),
    (Number(0, 15, step=0.5), 6.5, -1, 6),
    (Number(0, 15, step=0.5), 6.7, 1, 7),
    (Number(0, 15, step=0.5), 6.7, -1, 6.5),
    (Number(0, 24), 99, 1, 24),
    (Whole(8, 100), 100, 1, 100),
    (Whole(8, 100), 3, -1, 8),
    (LevelSetting(0, 10, can_be_off=True), 10, 1, 10),
    (LevelSetting(0, 10, can_be_off=True), 0, -1, 0),
    (LevelSetting(0, 10, can_be_off=True), "off", 1, 0),
    (LevelSetting(0, 10, can_be_off=True), "off", -1, "off"),
    (WordSetting("sharp", "even", "soft"), "soft", 1, "soft"),
    (WordSetting("sharp", "even", "soft"), "soft", -1, "even"),
    (WordSetting("sharp", "even", "soft"), "wild", 1, "sharp"),
    (SpeedSetting(("40 km/h", "60 km/h"), can_be_off=True), "off", 1, "40 km/h"),
    (SpeedSetting(("40 km/h", "60 km/h"), can_be_off=True), "60 km/h", 1, "60 km/h"),
    (SpeedSetting((), can_be_off=True), "60 km/h", 1, None),
    (Word("a", "b"), "b", 1, "b"),
    (Word("a", "b"), "b", -1, "a"),
    (Named("x", ("a", "b")), "b", 5, "b"),
    (Named("x"), "b", 1, None),
    (Flag(), True, -1, False),
    (Text(), "any", 1, None),
]


@every(("shape", "value", "by", "after"), STEPS)
def test_steps_stop_at_the_ends(shape: Shape[Any], value: object, by: int, after: object) -> None:
    assert shape.step(value, by) == after


@SETTINGS
@given(
    st.floats(-1000, 1000), st.sampled_from([0.01, 0.1, 0.25, 0.5, 1, 3]), st.integers(-40, 40).filter(bool)
)
def test_steps_of_a_number_never_leave_the_range(value: float, step: float, by: int) -> None:
    shape = Number(-5.5, 24, step=step)
    assert -5.5 <= shape.step(value, by) <= 24


def test_steps_of_dates_and_times_stop_at_their_ends() -> None:
    day, clock = Day(), TimeOfDay()
    first, late = day.read("0001-01-01"), clock.read("23:59")
    assert not isinstance(first, InputError)
    assert not isinstance(late, InputError)
    assert day.step(first, -1) is None
    assert str(day.step(first, 1)) == "0001-01-02"
    assert clock.show(clock.step(late, 1)) == "23:59"
    assert clock.show(clock.step(late, -2000)) == "00:00"


def test_every_word_that_completes_can_be_read() -> None:
    for cls in CLASSES.values():
        for one in declared(cls):
            for word in one.shape.words():
                assert not isinstance(one.shape.read(word), InputError), (one.path, word)


def test_no_everyday_unit_is_taken_for_a_word_of_an_amount() -> None:
    assert not set(c.FELT_TRACK.choices) & set(EVERYDAY_UNITS)
