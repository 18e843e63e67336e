"""Reading quantities from files and from the keyboard."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.quantities import (
    EVERYDAY_UNITS,
    PRESSURE_BANDS,
    Quantity,
    Unreadable,
    convert,
    dimension_of,
    parse,
    parse_pressure,
    parse_typed,
)
from tests.every import every
from tests.examples import examples


def unreadable(read: Quantity | Unreadable) -> Unreadable:
    assert isinstance(read, Unreadable)
    return read


@every(
    ("text", "number", "unit"),
    [
        ("2.10 bar", "2.10", "bar"),
        ("2.10bar", "2.10", "bar"),
        ("-5 C", "-5", "C"),
        ("-5 °C", "-5", "C"),
        ("21°C", "21", "C"),
        ("85 Nm", "85", "N m"),
        ("63 lb ft", "63", "lbf ft"),
        ("5.2 l/100km", "5.2", "l/100km"),
        ("4 US gal", "4", "US gal"),
        ("95 dB(A)", "95", "dB(A)"),
        ("12%", "12", "%"),
        ("1.2 kg/m3", "1.2", "kg/m3"),
        ("3 years", "3", "years"),
        ("2 clicks", "2", "click"),
    ],
)
def test_a_file_text_is_read_and_kept_as_written(text: str, number: str, unit: str) -> None:
    read = parse(text)

    assert isinstance(read, Quantity)
    assert (number, unit, text) == (str(read.number), read.unit, str(read))


@every(
    ("text", "why", "mend"),
    [
        ("2,3 bar", "a comma in the number", 'write "2.3 bar"'),
        ("2.3 Bar", 'unknown unit "Bar"', 'write "2.3 bar"'),
        ("2.3  bar", "not spaced or spelt as in a file", 'write "2.3 bar"'),
        (" 2.3 bar", "not spaced or spelt as in a file", 'write "2.3 bar"'),
        ("2.3 bar\n", "not spaced or spelt as in a file", 'write "2.3 bar"'),
        (".5 bar", "not spaced or spelt as in a file", 'write "0.5 bar"'),
        ("+5 C", "not spaced or spelt as in a file", 'write "5 C"'),
        ("−5 C", "not spaced or spelt as in a file", 'write "-5 C"'),
        ("2.3", "no unit", "write the unit after the number"),
        ("2.3 baar", 'unknown unit "baar"', 'did you mean "2.3 bar"?'),
        ("3 Mm", 'unknown unit "Mm"', 'did you mean "3 mm"?'),
        ("15 gal", '"gal" differs between countries', "write it in US gal or imp gal"),
        ("9**9**9 mm", "not one number and one unit", 'write it, e.g. "2.1 bar"'),
        ("2 * 3 bar", "not one number and one unit", 'write it, e.g. "2.1 bar"'),
        ("1/0 bar", "not one number and one unit", 'write it, e.g. "2.1 bar"'),
        ("1:32.5", "not one number and one unit", 'write it, e.g. "2.1 bar"'),
        ("1.2.3 bar", "not one number and one unit", 'write it, e.g. "2.1 bar"'),
        ("1e999 bar", "a number with an exponent", "write the number out"),
        ("1234567890123 mm", "more than 12 digits", "round the number"),
        ("0 km/l", "a consumption that is not above zero", "write the measured one"),
    ],
)
def test_a_file_text_that_is_not_a_quantity_names_its_mend(text: str, why: str, mend: str) -> None:
    assert Unreadable(text, why, mend) == parse(text)


@every(
    "text",
    [
        "",
        "  ",
        "bar",
        "nan bar",
        "inf bar",
        "∞ bar",
        "-",
        ".",
        '__import__("os")',
        "٢ bar",
        "Ⅷ bar",
        "\x1b[2J",
        "--5 C",
    ],
)
def test_without_a_plain_number_nothing_is_read(text: str) -> None:
    assert unreadable(parse(text)).why in {"no number", "not one number and one unit"}


@every("text", ["2 damp", "2 J", "2 c", "3 dBm", "21 kK", "2 mm*bar", "2 bar)", "1 bar/0"])
def test_what_pint_would_take_but_a_rider_never_means_is_an_unknown_unit(text: str) -> None:
    assert unreadable(parse(text)).why.startswith("unknown unit")


@every("text", ["2 damp", "2 J", "3 dBm", "2 mm*bar", "2.3 baar", "15 gal"])
def test_an_unknown_unit_is_answered_alike_in_a_file_and_at_the_keyboard(text: str) -> None:
    assert unreadable(parse(text)) == parse_typed(text, None)


def test_a_very_long_text_is_refused_and_cut() -> None:
    read = unreadable(parse("9" * 1_000_000 + " bar"))

    assert (read.why, len(read.found)) == ("longer than 48 characters", 48)


def test_a_bare_number_in_a_file_is_mended_with_the_usual_unit() -> None:
    assert Unreadable("201", "no unit", 'write "201 kg"') == parse("201", "kg")


@every(
    ("text", "read"),
    [
        ("2,1 bar", "2.1 bar"),
        ("2.1bar", "2.1 bar"),
        ("2,10BAR", "2.10 bar"),
        ("34PSI", "34 psi"),
        ("230 KPA", "230 kPa"),
        ("21 c", "21 C"),
        ("70 °f", "70 F"),
        ("-3,5 °C", "-3.5 C"),
        ("−3 C", "-3 C"),
        ("+3 C", "3 C"),
        (",5 bar", "0.5 bar"),
        ("2. bar", "2 bar"),
        ("  85 nm ", "85 N m"),
        ("85 N·m", "85 N m"),
        ("85 N*m", "85 N m"),
        ("60 KM/H", "60 km/h"),
        ("12 us GAL", "12 US gal"),
        ("5,2 L/100 KM", "5.2 l/100km"),
        ("35 mm", "35 mm"),
        ("10 M", "10 m"),
        ("55 MPH", "55 mph"),
    ],
)
def test_a_typed_text_gets_its_usual_spelling(text: str, read: str) -> None:
    assert read == str(parse_typed(text, None))


@every("text", ["35 Mm", "35 MM", "5 Mbar", "5 ML", "5 MmHg"])
def test_a_capital_m_is_never_read_as_a_milli_nor_as_a_million(text: str) -> None:
    assert unreadable(parse_typed(text, None)).why.startswith("unknown unit")


def test_a_bare_number_takes_the_unit_of_its_row_or_is_refused() -> None:
    assert Quantity(Decimal("12.5"), "mm") == parse_typed("12,5", "mm")
    assert Unreadable("12,5", "no unit", "write the unit after the number") == parse_typed("12,5", None)


@every(
    ("text", "read"),
    [
        ("0.7", "0.7 bar"),
        ("2,1", "2.1 bar"),
        ("3.5", "3.5 bar"),
        ("10", "10 psi"),
        ("34", "34 psi"),
        ("50", "50 psi"),
        ("70", "70 kPa"),
        ("230", "230 kPa"),
        ("350", "350 kPa"),
        ("5 psi", "5 psi"),
        ("2.1BAR", "2.1 bar"),
    ],
)
def test_a_bare_pressure_takes_the_unit_of_its_band(text: str, read: str) -> None:
    assert read == str(parse_pressure(text))


@every("text", ["0", "0.69", "3.51", "9.9", "50.1", "69", "351", "-2.1"])
def test_a_bare_pressure_outside_every_band_asks_for_the_unit(text: str) -> None:
    read = unreadable(parse_pressure(text))

    assert read.why == "no unit, and in no band (bar 0.7 to 3.5, psi 10 to 50, kPa 70 to 350)"
    assert read.mend == f'write "{text} bar" or "{text} psi" or "{text} kPa"'


def test_a_pressure_must_be_a_pressure() -> None:
    assert unreadable(parse_pressure("21 C")).why == "C is temperature, not pressure"
    assert unreadable(parse_pressure("high")).why == "no number"


def test_the_pressure_bands_do_not_overlap() -> None:
    edges = [edge for band in PRESSURE_BANDS.values() for edge in band]

    assert edges == sorted(edges)
    assert len(set(edges)) == len(edges)


numbers = st.from_regex(r"-?[1-9][0-9]{0,5}(\.[0-9]{1,5})?", fullmatch=True)
positive = numbers.map(lambda number: number.removeprefix("-"))


@given(positive, st.sampled_from(EVERYDAY_UNITS), st.sampled_from(["", " "]))
@examples(25)
def test_every_table_unit_reads_back_as_written(number: str, unit: str, space: str) -> None:
    text = f"{number}{space}{unit}"

    assert Quantity(Decimal(number), unit, text=text) == parse(text)
    assert Quantity(Decimal(number), unit) == parse_typed(text, None)
    typed = parse_typed(text.replace(".", ","), None)
    if isinstance(typed, Unreadable):
        assert len(number.partition(".")[2]) == 3
        assert Quantity(Decimal(number), unit) == unreadable(typed).either[0]
    else:
        assert Quantity(Decimal(number), unit) == typed


@given(st.text(max_size=60) | st.text("0123456789.,eE+-*/^() barpsiKCmM", max_size=20))
@examples(100)
def test_any_text_is_answered_and_a_mend_that_says_write_can_be_written(text: str) -> None:
    read = parse(text)

    if isinstance(read, Quantity):
        assert str(read) == text
        assert dimension_of(read.unit) == read.dimension
        assert convert(read.number, read.unit, read.unit) == float(read.number)
    elif read.mend.startswith('write "'):
        assert isinstance(parse(read.mend.removeprefix('write "').removesuffix('"')), Quantity)
