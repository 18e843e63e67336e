"""Cases of the rules about the brakes: the lever and the pads."""

import datetime as dt

from tests.rules.case import Cases, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
POSTED = put("day", "limits.pads", "2.0 mm")


def lever(word: str) -> Change:
    """Feel the lever."""
    return put("session", "lever", word)


BLED = {
    "of": "before-1",
    "found": "old fluid",
    "done": "bled",
    "by": "TM",
    "test": "pumped, firm, walking pace",
}

CASES = {
    "brake-lever-not-firm": Cases(
        raising=(
            raises("lever", "hold", lever("to the bar")),
            raises("lever", "hold", lever("spongy hot")),
            raises("lever", "caution", lever("long")),
            raises("lever", "hold", lever("to the bar"), RIDDEN),
            raises("lever", "hold", history=went_before({"lever": "spongy hot"}), says="16 May session"),
            # Firm when cold answers a long way to go, and nothing else.
            raises("lever", "hold", lever("firm"), history=went_before({"lever": "to the bar"})),
            raises("lever", "caution", history=went_before({"lever": "firm"}, {"lever": "long"})),
        ),
        silent=(
            silent(),
            silent(lever("firm")),
            silent(lever("firm"), history=went_before({"lever": "long"})),
            silent(
                put("bike", "answers.brake-lever-not-firm.1", BLED),
                history=went_before({"lever": "spongy hot"}),
            ),
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
