"""Cases of the rules about the brakes: the lever and the pads."""

import datetime as dt

from tests.rules.case import Cases, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
POSTED = put("day", "limits.pads", "2.0 mm")


def lever(word: str) -> Change:
    """Feel the lever."""
    return put("session", "lever", word)


CASES = {
    "brake-lever-not-firm": Cases(
        raising=(
            raises("lever", "hold", lever("to the bar")),
            raises("lever", "serious", lever("spongy hot")),
            raises("lever", "caution", lever("long")),
            raises("lever", "hold", lever("to the bar"), RIDDEN),
            raises("lever", "serious", history=went_before({"lever": "spongy hot"}), says="in session"),
        ),
        silent=(
            silent(),
            silent(lever("firm")),
            silent(lever("firm"), history=went_before({"lever": "to the bar"})),
        ),
        asks=True,
    ),
    "pads-below-the-least": Cases(
        raising=(
            raises("front", "hold", put("session", "front_pads", "1.4 mm"), says="thinner than 1.5 mm"),
            raises("rear", "hold", put("session", "rear_pads", "1.9 mm"), POSTED, says="organiser's 2.0 mm"),
            raises("front", "hold", history=went_before({"front_pads": "1.0 mm"})),
            raises("front", "hold", put("session", "front_pads", "1.4 mm"), RIDDEN),
        ),
        silent=(
            silent(),
            silent(put("session", "front_pads", "1.5 mm")),
            silent(put("session", "front_pads", "1.2 mm"), put("day", "limits.pads", "1.0 mm")),
            silent(put("session", "front_pads", "4 mm"), history=went_before({"front_pads": "1.0 mm"})),
            silent(put("session", "front_pads", "2 mm"), without("day")),
        ),
        asks=True,
    ),
}
