"""The next spring: whom it would serve, how sure that is, and what is more likely a sag misread."""

from paddock_tui.advice.spring_rates import DOUBT
from tests.advice.next_change.cases import advised, felt, sag
from tests.every import every
from tests.rules.situations import put, without

SPRUNG = (
    put("bike", "front.spring", "9.0 N/mm"),
    put("bike", "front.motion_ratio", 1.0),
    put("bike", "front.technician_rider_sag", "30 mm"),
    put("bike", "front.technician_free_sag", "15 mm"),
    put("bike", "adjusters.front-preload.range", [0, 6.5]),
)


@every(
    ("alone", "rate", "doubted"),
    # (rider sag - free sag) / (wanted 30 - 15) of the fitted 9.0 N/mm: Hooke's law.
    [
        (22.0, "10.8 N/mm", False),
        (20.5, "11.7 N/mm", False),
        (20.0, "12.0 N/mm", True),
        (28.0, "7.2 N/mm", False),
    ],
)
def test_a_rate_far_from_the_fitted_one_is_doubted(alone: float, rate: str, doubted: bool) -> None:
    found = advised(felt("dives"), *SPRUNG, sag("front", 40.0), sag("front", alone, "alone")).proposal
    assert found.text.startswith(f"The spring at the front is next: about {rate} each leg; fitted 9.0 N/mm")
    assert (DOUBT in found.text) is doubted
    assert "leave it" in found.text


def test_whom_it_serves_is_said_or_what_lacks_for_it() -> None:
    sagged = (felt("dives"), *SPRUNG, sag("front", 40.0), sag("front", 22.0, "alone"))
    weighed = advised(*sagged, put("rider", "weight", "80 kg")).proposal.text
    assert "it serves riders of about 78.0 kg to 82.0 kg in kit" in weighed
    unknown = advised(*sagged, without("rider", "weight")).proposal.text
    assert "enter the rider's weight for whom it serves" in unknown
