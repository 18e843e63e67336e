"""The bench page: every calculator a section of inputs with their origin and answers with their working."""

from decimal import Decimal

from paddock_tui.advice.bench import calculators
from paddock_tui.pages.bench import bench_page, input_at
from paddock_tui.pages.rows import Page, Row
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, about, sample

FILLED = calculators(sample("session", "2026-06-20-4-magpie"))
EMPTY = calculators(about())
TITLES = [
    "tyre pressures",
    "altitude and afternoon",
    "sag and spring, front",
    "sag and spring, rear",
    "another rider",
    "gearing",
    "sprockets and chain",
    "fuel",
    "levels of the aids",
    "gears that lift the front",
    "balance, wheelie and stoppie limit",
    "lean in a corner",
    "stopping",
    "wet against dry",
    "air and weather",
    "noise",
    "load and speed of the tyres",
    "pressures on warmers",
    "steering geometry",
    "chain pull and anti-squat",
    "centre of mass by weighing",
    "thrust and shift points",
    "laps and sectors",
    "chain wear",
    "a spring on the bench",
    "front pads",
    "rear pads",
    "front tread",
    "rear tread",
]

LACKS = ("needs the", "laps: ", "sectors: ", "front pads: no wear", "rear pads: no wear")
"""How an answer without its facts begins: it names what is missing."""


def row(page: Page, *path: str) -> Row:
    return next(one for one in page.rows() if one.path == ("bench", *path))


def test_every_calculator_is_a_section_filled_or_not() -> None:
    for made in (FILLED, EMPTY):
        page = bench_page(made, {}, "session 4", BAR)

        assert [section.title for section in page.sections] == TITLES
        assert page.heading == "calculators · session 4"
        assert not page.judged
        assert "come first" in page.caution


def test_rows_can_be_told_apart() -> None:
    identities = [one.identity for one in bench_page(FILLED, {}, "", BAR).rows()]

    assert len(set(identities)) == len(identities)


def test_an_input_says_where_its_value_comes_from_and_an_unknown_one_what_it_is() -> None:
    page = bench_page(FILLED, {}, "", BAR)

    teeth, gas = row(page, "gearing", "rear"), row(page, "pressures", "front_gas")
    assert (teeth.value, teeth.range, teeth.aside, teeth.edit) == ("43", "teeth", "this session", "43")
    assert (gas.value, gas.aside, gas.known) == ("not known", "learnt from hot readings", False)
    assert "comes from: this session" in teeth.working


def test_every_answer_has_a_working_and_is_offered_where_it_has_a_place() -> None:
    page = bench_page(FILLED, {}, "", BAR)

    answers = [one for one in page.rows() if one.kind == "text"]
    assert all(one.working for one in answers)
    assert row(page, "sprockets", "answer", "15 / 41").offer
    assert not row(page, "gearing", "answer", "limiter").offer


def test_nothing_known_gives_needs_and_no_offer_anywhere() -> None:
    answers = [one for one in bench_page(EMPTY, {}, "", BAR).rows() if one.kind == "text"]

    assert [one.value for one in answers if not one.value.startswith(LACKS)] == []
    assert not any(one.offer for one in answers)


def test_what_is_typed_recalculates_its_own_calculator_only() -> None:
    typed = {("pressures", "front_gas"): Quantity(Decimal(48), "C")}

    before, after = (bench_page(FILLED, tried, "", BAR) for tried in ({}, typed))

    assert row(after, "pressures", "front_gas").aside == "tried here"
    assert row(after, "pressures", "answer", "front_start").known
    assert after.sections[0].note == "1 tried here"
    assert after.sections[1:] == before.sections[1:]


def test_a_path_leads_to_its_input_and_to_nothing_else() -> None:
    found = input_at(FILLED, ("bench", "fuel", "rate"))

    assert found is not None
    assert (found[0].id, found[1].key) == ("fuel", "rate")
    assert input_at(FILLED, ("bench", "fuel", "answer", "needed")) is None
    assert input_at(FILLED, ("bench", "fuel", "nothing")) is None
    assert input_at(FILLED, ("setup", "fuel", "rate")) is None
