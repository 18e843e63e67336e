"""Spring rates of one end: at the wheel, and the one with which both sags would come out as wanted."""

from paddock_tui.advice import figures
from paddock_tui.advice.about import End
from paddock_tui.advice.calculators import Answer, Answered, Inputs, Method, told
from paddock_tui.advice.sag_lengths import ALONE, RIDER, check_points, sag_mm
from paddock_tui.calc.errors import Inconsistent, above
from paddock_tui.calc.sag import wheel_rate_to_serve_n_per_mm
from paddock_tui.calc.springs import pair_rate_n_per_mm, spring_for_wheel_rate_n_per_mm, wheel_rate_n_per_mm

FAR_SHARE = 0.3
"""A rate further than this share from the fitted one is more likely a sag misread. No source."""

DOUBT = "so far apart a sag is more likely misread: measure both again first"

SERVE = Method(
    "rate x (rider sag - free sag) / (target rider sag - target free sag)",
    "the rider's weight presses this wheel by the difference of both sags; the same springs as measured",
    "while there is some free sag, without top-out springs at work",
    "Hooke's law; Barton and Fieldhouse, Automotive Chassis Engineering, 3.9.2.1 for the wheel rate",
)
WHEEL = Method(
    "rate x motion ratio^2, of a fork both springs together",
    "a linkage that is nearly linear there",
    "motion ratio of 0.2 to 1.2",
    "Barton and Fieldhouse, Automotive Chassis Engineering, 3.9.2.1",
)


def rate_to_serve(end: End, inputs: Inputs) -> Answer:
    """Return the rate of spring with which both sags would come out as wanted."""

    def make() -> Answered:
        check_points(inputs)
        if inputs.value("top_out") == "fitted":
            raise Inconsistent(
                "top-out springs", "they pull at both sags: the difference does not tell a rate"
            )
        at_wheel = at_wheel_n_per_mm(end, inputs)
        free = _positive("free sag", sag_mm(inputs, ALONE))
        pressed = _positive("rider sag over free sag", sag_mm(inputs, RIDER) - free)
        wanted = inputs.amount("wanted_free", "mm"), inputs.amount("wanted_rider", "mm")
        serves = wheel_rate_to_serve_n_per_mm(*wanted, at_wheel * pressed)
        spring = spring_for_wheel_rate_n_per_mm(serves, inputs.number("ratio"))
        each = spring / 2 if end == "front" else spring
        ending = " each leg" if end == "front" else ""
        fitted = figures.rate(inputs.amount("rate", "N/mm"))
        ratio, shares = inputs.number("ratio"), "1/2 of it " if end == "front" else ""
        steps = (
            f"F = wheel rate x (rider sag - free sag) = {figures.rate(at_wheel)} x {pressed:.1f} mm"
            f" = {at_wheel * pressed:.0f} N of the rider on this wheel",
            f"F / (target rider sag - target free sag) = {at_wheel * pressed:.0f} N / ({wanted[1]:g} mm - "
            f"{wanted[0]:g} mm) = {figures.rate(serves)} at the wheel",
            f"{shares}/ motion ratio^2 = {figures.rate(serves)} / {ratio:g}^2 = {figures.rate(each)}".strip(),
        )
        far = abs(each / inputs.amount("rate", "N/mm") - 1.0) > FAR_SHARE
        doubt = f"; {DOUBT}" if far else ""
        return Answered(f"about {figures.rate(each)}{ending}; fitted {fitted}{doubt}", steps=steps)

    needs = (*ALONE, *RIDER, "wanted_rider", "wanted_free", "rate", "ratio")
    return told(inputs, "serve", "suggested rate", needs, SERVE, make, ("top_out",))


def rate_at_wheel(end: End, inputs: Inputs) -> Answer:
    """Return the wheel rate of the springs that are fitted."""

    def make() -> Answered:
        pair = ", both legs together" if end == "front" else ", through the linkage"
        found, one, ratio = (
            figures.rate(at_wheel_n_per_mm(end, inputs)),
            inputs.amount("rate", "N/mm"),
            inputs.number("ratio"),
        )
        legs = "2 x " if end == "front" else ""
        step = f"{legs}rate x motion ratio^2 = {legs}{figures.rate(one)} x {ratio:g}^2 = {found}"
        return Answered(f"{found} at the wheel{pair}", steps=(step,))

    return told(inputs, "wheel_rate", "wheel rate", ("rate", "ratio"), WHEEL, make)


def at_wheel_n_per_mm(end: End, inputs: Inputs) -> float:
    """Return the wheel rate in N/mm; rate and motion ratio have to be known."""
    one = inputs.amount("rate", "N/mm")
    spring = pair_rate_n_per_mm(one, one) if end == "front" else one
    return wheel_rate_n_per_mm(spring, inputs.number("ratio"))


def _positive(what: str, value: float) -> float:
    return above(what, value, 0.0, 200.0, "mm")
