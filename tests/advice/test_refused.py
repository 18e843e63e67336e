"""What lies outside a method's own domain is refused with the reason, and never printed as a figure."""

from decimal import Decimal
from typing import Any

from paddock_tui.advice.balance import balance
from paddock_tui.advice.calculators import Calculator
from paddock_tui.advice.pressures import pressures
from paddock_tui.advice.sag import sag
from paddock_tui.advice.sag_of_another_rider import riders
from paddock_tui.advice.session_laps import needs_words, stint_of
from paddock_tui.quantities import Quantity
from tests.advice.given import BAR, about, answers, session
from tests.every import every


def amount(number: float | str, unit: str) -> Quantity:
    return Quantity(Decimal(str(number)), unit)


def lengths(load: str, extended: float, pushed: float, lifted: float) -> dict[str, Any]:
    first = "extended" if load == "alone" else "rider_extended"
    return {
        first: amount(extended, "mm"),
        f"{load}_pushed": amount(pushed, "mm"),
        f"{load}_lifted": amount(lifted, "mm"),
    }


BLANK = about(session=session(""))
HOT = {
    "front_read": amount("2.40", "bar"),
    "front_hot": amount("2.35", "bar"),
    "minutes": amount(2, "min"),
    "front_gas": amount(70, "C"),
    "air_pressure": amount(1013, "hPa"),
}
ALONE = lengths("alone", 700, 680, 684)
RIDER = lengths("rider", 700, 666, 670)
SPRING = {
    "rate": amount(85, "N/mm"),
    "ratio": 0.5,
    "wanted_rider": amount(30, "mm"),
    "wanted_free": amount(10, "mm"),
}
STANDS = {
    "wheelbase": amount(1400, "mm"),
    "height": amount(660, "mm"),
    "ahead": amount(700, "mm"),
    "bike": amount(200, "kg"),
    "rider": amount(80, "kg"),
}


@every(
    ("calculator", "typed", "key", "reason"),
    [
        (pressures(BLANK), HOT | {"gas_now": amount(80, "C")}, "front_now", "a standing tyre only cools"),
        (
            pressures(BLANK),
            HOT | {"front_cold": amount("2.5", "bar")},
            "front_now",
            "it is under the cold pressure",
        ),
        (
            pressures(BLANK),
            HOT | {"front_read": amount(0, "bar")},
            "front_now",
            "0 bar is outside the range here, 0.7",
        ),
        (
            pressures(BLANK),
            HOT | {"front_hot": amount(0, "bar"), "cold_at": amount(20, "C")},
            "front_start",
            "0 bar is outside the range here",
        ),
        (
            sag(BLANK, "rear"),
            lengths("alone", 700, 620, 690),
            "free",
            "70 mm between push and lift is no friction",
        ),
        (sag(BLANK, "rear"), lengths("alone", 700, 684, 680), "free", "are the two swapped?"),
        (
            sag(BLANK, "rear"),
            ALONE | lengths("rider", 712, 666, 670) | SPRING,
            "serve",
            "are not the same points",
        ),
        (sag(BLANK, "rear"), ALONE | lengths("rider", 712, 666, 670), "verdict", "are not the same points"),
        (
            sag(BLANK, "rear"),
            ALONE | RIDER | SPRING | {"top_out": "fitted"},
            "serve",
            "they pull at both sags",
        ),
        (
            sag(BLANK, "rear"),
            lengths("alone", 700, 700, 700) | RIDER | {"top_out": "fitted"},
            "verdict",
            "none, with top-out springs at work",
        ),
        (
            riders(BLANK),
            {
                "front_free": amount(0, "mm"),
                "front_rider": amount(30, "mm"),
                "measured": amount(70, "kg"),
                "other": amount(90, "kg"),
            },
            "front",
            "free sag (must be more than 0)",
        ),
        (balance(BLANK), STANDS | {"braking": 0.5, "slope": 5.0}, "moved", "is worked out on the level only"),
    ],
)
def test_the_answer_is_refused_with_its_reason(
    calculator: Calculator, typed: dict[str, Any], key: str, reason: str
) -> None:
    found = answers(calculator, BAR, **typed)[key]

    assert not found.known
    assert reason in found.text
    assert (found.short, found.puts) == ("", ())


def test_laps_that_nobody_rides_to_find_out_are_no_figure() -> None:
    wild = "\n".join(f'{lap} = "{60 + 9 * (lap % 3)}.{lap}00"' for lap in range(1, 7))

    said = needs_words(stint_of(session(f"[laps]\n{wild}\n")))
    assert said == "0.3 s cannot be told by these laps: they scatter too much"
