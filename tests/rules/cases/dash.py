"""Cases of the rules about the dash, the lamps, and tyres and sprockets that are new to the aids."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.aids import DAMP, NO_SURFACE, NOVICE, WET
from tests.rules.cases.before import LONG_AGO, RIDDEN, ridden
from tests.rules.cases.incidents import earlier, happened
from tests.rules.situations import BIKE_UP, Change, at, counts_down, put, went_before, without

AFTER = dt.time(10, 38)
KEEPS = tuple(put("bike", f"controls.{name}.key_off", "keeps") for name in BIKE_UP["controls"])
NO_CONTROLS = (put("bike", "controls", {}), put("session", "setup.controls", {}))
SLIPPERY = put("bike", "modes.showers.fixes", {"throttle": "soft", "traction": 2})


def event(what: str, at_: dt.time | None = AFTER) -> Change:
    """Note what happened to the electrics."""
    return put("session", "events.1", {"what": what, **({"at": at_} if at_ else {})})


def dash(name: str, value: int | str) -> Change:
    """Say what the dash shows."""
    return put("session", f"dash.values.{name}", value)


def shows(mode: str) -> Change:
    """Say which riding mode the dash shows."""
    return put("session", "dash.shown_mode", mode)


def tyres(front: str, rear: str) -> tuple[Change, Change]:
    """Mark both tyres."""
    return put("tyres", "front.size", front), put("tyres", "rear.size", rear)


SIZES = tyres("120/70 ZR17", "190/55 ZR17")
OTHER = {"april": {"front": {"size": "120/70 ZR17 M/C (58W)"}, "rear": {"size": "180/60 ZR17"}}}
SAME = {"april": {"front": {"size": "120/70 ZR17 M/C (58W)"}, "rear": {"size": "190/55R17"}}}
UNMARKED = {"april": {"front": {"kind": "road"}, "rear": {"kind": "road"}}}
TEETH = (put("session", "setup.front_sprocket", 16), put("session", "setup.rear_sprocket", 43))
OTHER_TEETH = {"setup.front_sprocket": 16, "setup.rear_sprocket": 45}

ON_OWN = {"april": {"wheels": "standard"}}


def on_wheels(name: str) -> Change:
    """Name the wheels that the tyre set is on."""
    return put("tyres", "wheels", name)


CASES = {
    "dash-not-read": Cases(
        raising=(
            raises("read", "serious", without("session", "dash"), going_out=True),
            raises("read", "serious", event("stall"), going_out=True, says="was read before this: stall."),
            # Nobody wrote when it was: it may have come after the reading.
            raises("read", "serious", event("fuse", None), going_out=True),
            raises("read", "serious", *KEEPS, event("battery"), going_out=True),
            raises("read", "serious", *KEEPS, happened("fall", at=AFTER, moving=False), going_out=True),
            raises(
                "read",
                "serious",
                put("session", "dash.planned_mode", "showers"),
                going_out=True,
                says="riding mode showers -> open",
            ),
        ),
        silent=(
            silent(going_out=True),
            silent(event("key-on", dt.time(10, 35)), going_out=True),
            silent(event("key-off"), *KEEPS, going_out=True),
            silent(happened("fall", moving=False), going_out=True),
            silent(happened("off the track", at=AFTER), going_out=True),
            silent(put("session", "dash.planned_mode", "open"), going_out=True),
            silent(without("session", "dash"), put("bike", "electronics", "none"), going_out=True),
            silent(without("session", "dash"), *NO_CONTROLS, going_out=True),
            silent(without("session", "dash"), RIDDEN, going_out=True),
        ),
        missing=(
            lacks("the bike", without("bike")),
            lacks("the bike's electronics (listed or none)", without("bike", "electronics")),
        ),
    ),
    "dash-differs-from-the-plan": Cases(
        raising=(
            raises(
                "traction", "serious", dash("traction", 4), says="shows traction control 4, the plan is 8."
            ),
            raises("traction", "hold", WET, dash("traction", 7)),
            raises("traction", "hold", *counts_down(WET, dash("traction", 4))),
            raises("traction", "hold", WET, dash("traction", "off")),
            # More help than planned is another bike than was judged, but no less of a net.
            raises("traction", "note", WET, dash("traction", 10), says="shows traction control 10"),
            raises("traction", "serious", DAMP, dash("traction", 7)),
            # Nobody said what the track is like, or which end helps: neither passes for the better one.
            raises("traction", "hold", NO_SURFACE, dash("traction", 7)),
            raises(
                "traction",
                "hold",
                WET,
                dash("traction", 7),
                without("bike", "controls.traction.most_help"),
            ),
            raises("engine-braking", "serious", WET, dash("engine-braking", 1)),
            # What is in force is the plan, not what was set.
            raises(
                "throttle",
                "hold",
                WET,
                put("session", "setup.mode", "showers"),
                at("throttle", "sharp"),
                dash("throttle", "even"),
            ),
        ),
        silent=(
            silent(dash("traction", 8)),
            silent(dash("traction", 4), RIDDEN),
            silent(
                put("session", "setup.mode", "showers"), at("throttle", "sharp"), dash("throttle", "soft")
            ),
        ),
        missing=(
            lacks("what the dash shows of traction control", at("traction", None), dash("traction", 4)),
        ),
    ),
    "dash-in-another-riding-mode": Cases(
        raising=(
            raises("mode", "caution", shows("showers"), says="shows riding mode showers, the plan is open."),
            raises("mode", "hold", WET, SLIPPERY, shows("showers"), says="riding mode showers"),
            raises("mode", "caution", WET, shows("showers")),
            # What a mode that is not on the bike fixes nobody knows; one for the dry is none for the wet.
            raises("mode", "hold", WET, shows("snow")),
            raises("mode", "hold", WET, put("session", "setup.mode", "showers"), shows("open")),
        ),
        silent=(
            silent(shows("open")),
            silent(shows("showers"), RIDDEN),
            silent(shows("showers"), without("session", "setup.mode"), without("bike", "modes")),
        ),
        missing=(lacks("the bike", shows("showers"), without("bike")),),
    ),
    "aid-lamp-lit": Cases(
        raising=(
            raises(
                "ABS",
                "serious",
                happened("warning lamp", lamp="ABS"),
                says="The ABS warning light was on 09:47",
            ),
            raises("traction", "hold", WET, NOVICE, happened("warning lamp", lamp="traction")),
            raises("engine", "serious", WET, NOVICE, happened("warning lamp", lamp="engine")),
            raises("ABS", "serious", history=went_before(earlier("warning lamp", LONG_AGO, lamp="ABS"))),
        ),
        silent=(
            silent(happened("warning lamp", lamp="ABS", mended="sensor cleaned, lamp out")),
            silent(happened("warning lamp", lamp="oil", mended="topped up")),
            silent(happened("warning lamp", lamp="ABS"), RIDDEN),
            silent(happened("leak", mended="hose clip")),
        ),
        asks=True,
    ),
    "tyre-sizes-new-to-the-aids": Cases(
        raising=(
            raises("tyres", "caution", *SIZES, **ridden({"tyres": "april"}, tyres=OTHER)),
            raises(
                "tyres",
                "caution",
                *tyres("120/60 ZR17", "190/55 ZR17"),
                **ridden({"tyres": "april"}, tyres=SAME),
            ),
        ),
        silent=(
            silent(*SIZES),
            silent(*SIZES, **ridden({"tyres": "april"}, tyres=SAME)),
            # This pair was on before, and another one since.
            silent(*SIZES, **ridden({}, {"tyres": "april"}, tyres=OTHER)),
            silent(*SIZES, **ridden({"tyres": "april"}, tyres=UNMARKED)),
            silent(*SIZES, *NO_CONTROLS, **ridden({"tyres": "april"}, tyres=OTHER)),
            silent(*SIZES, RIDDEN, **ridden({"tyres": "april"}, tyres=OTHER)),
        ),
        missing=(lacks("the tyre set", without("tyres")),),
    ),
    "sprockets-new-to-the-aids": Cases(
        raising=(
            raises("sprockets", "caution", *TEETH, **ridden(OTHER_TEETH), says="These sprockets are new"),
        ),
        silent=(
            silent(*TEETH),
            silent(*TEETH, **ridden({})),
            silent(*TEETH, **ridden({"setup.front_sprocket": 16, "setup.rear_sprocket": 43}, OTHER_TEETH)),
            silent(TEETH[0], **ridden(OTHER_TEETH)),
            silent(*TEETH, *NO_CONTROLS, **ridden(OTHER_TEETH)),
            silent(*TEETH, RIDDEN, **ridden(OTHER_TEETH)),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "wheels-new-to-the-bike": Cases(
        raising=(raises("wheels", "caution", on_wheels("rain"), **ridden({"tyres": "april"}, tyres=ON_OWN)),),
        silent=(
            silent(on_wheels("rain")),
            silent(on_wheels("standard"), **ridden({"tyres": "april"}, tyres=ON_OWN)),
            silent(**ridden({"tyres": "april"}, tyres=ON_OWN)),
            silent(on_wheels("rain"), **ridden({"tyres": "april"}, tyres=OTHER)),
            silent(on_wheels("rain"), RIDDEN, **ridden({"tyres": "april"}, tyres=ON_OWN)),
        ),
        missing=(lacks("the tyre set", without("tyres")),),
    ),
}
