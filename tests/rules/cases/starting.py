"""Cases of the rules about the cold pressures that a bike goes out with."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, without

RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")
PLAN = put("session", "setup.front_start", "2.10 bar"), put("session", "setup.rear_start", "1.90 bar")

WINDOW = put("tyres", "front.cold_from", "2.20 bar"), put("tyres", "front.cold_to", "2.35 bar")


def cold(front: str, rear: str, **more: str) -> Change:
    """Read both tyres cold."""
    return put("session", "pressures.cold", {"front": front, "rear": rear, **more})


def kinds(kind: str) -> tuple[Change, ...]:
    """Fit tyres of one kind at both ends."""
    return put("tyres", "front.kind", kind), put("tyres", "rear.kind", kind)


CASES = {
    "starting-pressure-too-low": Cases(
        raising=(
            raises("front", "caution", cold("1.6 bar", "1.9 bar"), says="1.6 bar cold: far too little"),
            raises("rear", "caution", cold("2.1 bar", "1.4 bar")),
            raises("rear", "serious", cold("2.1 bar", "1.1 bar")),
            raises("front", "caution", *kinds("road"), cold("24 psi", "28 psi")),
            raises("front", "caution", cold("2.1 bar", "1.9 bar", set_to_front="1.5 bar")),
            raises(
                "front",
                "serious",
                without("session", "pressures"),
                put("session", "setup.front_start", "1 bar"),
            ),
            # What is far too low is said once, not once more against the plan.
            raises("front", "caution", *PLAN, cold("1.6 bar", "1.9 bar")),
        ),
        silent=(
            silent(),
            silent(cold("1.7 bar", "1.5 bar")),
            silent(*kinds("slick"), cold("1.4 bar", "0.9 bar"), put("session", "warmers", "used")),
            silent(*kinds("wet"), cold("1.4 bar", "1.2 bar")),
            silent(cold("1.2 bar", "1.1 bar", set_to_front="2.1 bar", set_to_rear="1.9 bar")),
            silent(cold("1.2 bar", "1.1 bar"), ROAD),
            silent(cold("1.2 bar", "1.1 bar"), RIDDEN),
            silent(without("session", "pressures")),
        ),
        missing=(
            lacks("the tyre set", cold("1.2 bar", "1.1 bar"), without("tyres")),
            lacks("the kind of the rear tyre", cold("2.1 bar", "1.1 bar"), without("tyres", "rear.kind")),
        ),
    ),
    "start-outside-the-vendors-window": Cases(
        raising=(
            raises("front", "caution", *WINDOW, says="0.10 bar under the vendor's window cold"),
            raises("rear", "caution", put("tyres", "rear.cold_to", "1.80 bar"), says="0.10 bar over"),
            # What it was left with counts, and on the warmers the figure for them.
            raises("front", "caution", *WINDOW, cold("2.30 bar", "1.90 bar", set_to_front="2.50 bar")),
            raises(
                "front",
                "caution",
                *WINDOW,
                put("tyres", "front.on_warmers", "2.30 bar"),
                put("session", "pressures.warmers", {"front": "2.50 bar"}),
                says="0.20 bar over the vendor's window on warmers",
            ),
        ),
        silent=(
            silent(),
            silent(*WINDOW, cold("2.20 bar", "1.90 bar")),
            silent(*WINDOW, cold("2.10 bar", "1.90 bar", set_to_front="2.30 bar")),
            silent(*WINDOW, RIDDEN),
            silent(*WINDOW, without("session", "pressures")),
            # On warmers a cold window says nothing.
            silent(*WINDOW, put("session", "pressures.warmers", {"front": "2.50 bar"})),
        ),
        missing=(lacks("the tyre set", without("tyres")),),
    ),
    "starting-pressure-off-the-plan": Cases(
        raising=(
            raises(
                "front",
                "caution",
                *PLAN,
                cold("1.80 bar", "1.90 bar"),
                says="1.80 bar cold; the plan is 2.10",
            ),
            raises("rear", "caution", *PLAN, cold("2.10 bar", "2.15 bar")),
            raises("front", "caution", *PLAN, cold("2.40 bar", "1.90 bar"), ROAD),
        ),
        silent=(
            silent(*PLAN),
            silent(*PLAN, cold("2.30 bar", "1.70 bar")),
            silent(*PLAN, cold("1.80 bar", "1.90 bar", set_to_front="2.10 bar")),
            silent(cold("1.80 bar", "1.90 bar")),
            silent(*PLAN, without("session", "pressures")),
            silent(*PLAN, cold("1.80 bar", "1.90 bar"), RIDDEN),
        ),
        asks=True,
    ),
}
