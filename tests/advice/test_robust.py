"""Whatever is typed or stands in the records, every calculator answers: with a figure or a sentence."""

from decimal import Decimal
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.about import History
from paddock_tui.advice.bench import calculators
from paddock_tui.advice.beside_setup import beside_session, beside_setup
from paddock_tui.quantities import Quantity
from paddock_tui.records.shapes import Amount, AmountOrWord, Flag, Number, Series, Shape, Whole
from tests.advice.given import BAR, PSI, about, bike, past, rider, sample, session, tyres, venue
from tests.every import every
from tests.examples import examples
from tests.sample import FILES

FILLED = calculators(sample("session", "2026-06-20-4-magpie"))
DECIMALS = st.decimals(-500, 5000, places=1)


def values_of(shape: Shape[Any]) -> st.SearchStrategy[Any]:
    if isinstance(shape, AmountOrWord):
        return st.sampled_from(shape.choices) | values_of(shape.amount)
    if isinstance(shape, Amount):
        return DECIMALS.map(lambda number: Quantity(number, shape.unit))
    if isinstance(shape, Series):
        item = st.integers(0, 120) if shape.whole else st.floats(0, 5)
        return st.lists(item, min_size=shape.least, max_size=shape.most).map(tuple)
    if isinstance(shape, Whole):
        return st.integers(-10, 500)
    if isinstance(shape, Number):
        return st.floats(-200, 5000)
    if isinstance(shape, Flag):
        return st.booleans()
    words = shape.words()
    return st.sampled_from(words) if words else st.integers(-1, 12)


@st.composite
def tries(draw: st.DrawFn) -> tuple[int, dict[str, Any]]:
    """Draw the place of a calculator and what is typed into up to six of its inputs."""
    place = draw(st.integers(0, len(FILLED) - 1))
    inputs = FILLED[place].inputs
    chosen = draw(st.lists(st.integers(0, len(inputs) - 1), max_size=6, unique=True))
    return place, {inputs[at].key: draw(st.none() | values_of(inputs[at].shape)) for at in chosen}


@examples(25)
@given(tries(), st.sampled_from([BAR, PSI]))
def test_anything_that_can_be_typed_gets_a_line_and_no_offer_without_a_figure(
    tried: tuple[int, dict[str, Any]], units: Any
) -> None:
    place, typed = tried

    for one in FILLED[place].answers(units, typed):
        assert one.text
        assert "\n" not in one.text
        assert one.working[0] == one.text
        assert one.known or not one.puts


@every("ref", [ref for ref in FILES if ref.kind in ("session", "profile")], ids=str)
def test_every_session_and_profile_of_the_sample_is_answered(ref: Any) -> None:
    told = sample(ref.kind, ref.id)

    answers = [one for each in calculators(told) for one in each.answers(told.units)]
    assert any(one.known for one in answers)
    assert all(one.missing or ": " in one.text for one in answers if not one.known)
    assert beside_setup(told)


def test_records_that_cannot_be_true_do_not_stop_the_page() -> None:  # size: one garage of absurd records
    made = bike("""
[front]
travel = "1 mm"
motion_ratio = 900
[rear]
tyre_size = "999/99 ZR99"
[tank]
capacity = "0 l"
[drive]
primary = 0
gearbox = [0, 0]
chain = "520"
rev_limit = "900000 rpm"
[adjusters.front-preload]
end = "front"
what = "preload"
unit = "turn"
step = -3
range = [4, 4]
[controls.traction]
kind = "level"
levels = [5, 5]
most_help = 9
[controls.pit-limiter]
kind = "speed"
""")
    odd = """
surface = "dry"
air = "-80 C"
air_pressure = "1 hPa"
parked = 10:00:00
planned_laps = -4
ridden_laps = 100000
fuel_added = "99999 l"
filled_to_brim = true
top_speed = "9000 km/h"
[setup]
front_sprocket = -3
rear_sprocket = 1000000
links = 0
front_start = "900 bar"
[setup.controls]
traction = 77
pit-limiter = "0 km/h"
[pressures.cold]
front = "900 bar"
temperature = "-300 C"
[pressures.hot]
at = 09:00:00
front = "-5 bar"
[sag.front.rider]
extended = "1 mm"
pushed = "900 mm"
lifted = "-3 mm"
preload = 77
"""
    history = History((past(1, odd, made), past(2, odd, made)))
    told = about(
        history,
        session=session(odd, made),
        bike=made,
        rider=rider('weight = "9000 kg"\n'),
        venue=venue('length = "0 km"\naltitude = "90000 m"\n'),
        tyres=tyres('[front]\nhot_dry = "900 bar"\n[rear]\nkind = "slick"\nsize = "999/99 ZR99"\n'),
    )

    for calculator in calculators(told):
        for one in calculator.answers(BAR):
            assert one.text
    assert beside_setup(told)
    assert beside_session(told)


def test_a_quantity_of_very_many_digits_is_refused_not_hung_upon() -> None:
    huge = {"front_hot": Quantity(Decimal("9" * 12), "bar")}

    found = {one.key: one for one in FILLED[0].answers(BAR, huge)}

    assert not found["front_start"].known


def test_figures_beyond_all_size_are_refused_in_a_sentence() -> None:
    gearing = next(one for one in FILLED if one.id == "gearing")

    found = {one.key: one for one in gearing.answers(BAR, {"primary": 1e-199})}

    assert found["limiter"].text == "primary ratio: 1e-199 is outside the range here, 0.5 to 5"
