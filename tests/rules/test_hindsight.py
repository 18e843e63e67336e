"""Once a session is ridden nothing is asked of it any more but what still stands afterwards."""

import datetime as dt

from paddock_tui.rules import RULES
from tests.every import every
from tests.rules.cases import CASES
from tests.rules.situations import look_for, put, raised

RIDDEN = put("session", "parked", dt.time(10, 59))

STANDS_AFTERWARDS = frozenset(
    {
        # What happened to bike or rider, and what was seen on them.
        "airbag-fired",
        "brake-lever-not-firm",
        "brakes-fade",
        "checklist-item-to-fix",
        "clutch-or-gearbox",
        "concussion-suspected",
        "engine-lamp-not-mended",
        "fall-at-standstill",
        "fall-not-inspected",
        "head-contact-not-answered",
        "head-hit-not-cleared",
        "helmet-dropped",
        "helmet-hit",
        "lamp-not-explained",
        "leak-not-mended",
        "mend-by-a-date",
        "pads-below-the-least",
        "rider-unwell",
        "stopped-by-officials",
        "throttle-or-engine-danger",
        "two-falls-in-a-day",
        "tyre-blued-or-cracked",
        "tyre-cut",
        "tyre-finished",
        # What the readings of the outing say.
        "hot-below-cold",
        "hot-pressure-off-its-target",
        "hot-reading-too-late",
        "off-the-warmers-too-long",
        "tyre-worked-outside-its-range",
        "under-the-least-weight",
        # What the record or the bike's file says that cannot be, or leaves out.
        "adjuster-outside-its-range",
        "air-pressure-not-of-the-altitude",
        "closed-by-the-damping-mode",
        "direction-not-known",
        "fixed-by-the-riding-mode",
        "fork-legs-differ",
        "freeing-end-not-known",
        "impossible-figure",
        "level-not-on-the-bike",
        "not-on-this-bike",
        "outside-the-riding-mode",
        "outside-what-the-preset-leaves",
        "record-at-odds-with-itself",
        "reference-not-found",
        "speed-not-on-the-bike",
        "two-laptops-disagree",
    }
)


@every("rule", sorted(RULES))
def test_a_ridden_session_is_asked_only_what_still_stands(rule: str) -> None:
    found = [
        raised(look_for(rule, *case.changes, RIDDEN, **{**case.more, "going_out": True}), rule)
        for case in CASES[rule].raising
    ]
    if rule in STANDS_AFTERWARDS:
        assert any(found), "it is silent in hindsight: take it off the list"
    else:
        assert not any(found)
