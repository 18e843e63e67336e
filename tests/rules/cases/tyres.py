"""Cases of the rules about tyres: for the surface, cold, on warmers, new, seen, ridden, old."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, went_before, without

NO_SURFACE = without("session", "surface")
NO_TYRES = without("tyres")
RIDDEN = put("session", "parked", dt.time(11, 0))


def on(surface: str) -> Change:
    """Say what the track is like."""
    return put("session", "surface", surface)


def both(kind: str) -> Change:
    """Fit both ends with tyres of a kind."""
    return put("tyres", "", {"front": {"kind": kind}, "rear": {"kind": kind}})


def ends(front: str, rear: str) -> Change:
    """Fit the ends with tyres of different kinds."""
    return put("tyres", "", {"front": {"kind": front}, "rear": {"kind": rear}})


def track(text: str) -> Change:
    """Give the track temperature."""
    return put("session", "track", text)


def seen(end: str, *looks: str) -> Change:
    """Write down what was seen on a tyre."""
    return put("session", f"look.{end}", {"seen": list(looks)})


SLICKS, TREADED, WETS, INTER = both("slick"), both("race-treaded"), both("wet"), both("intermediate")
USED = put("session", "warmers", "used")


def soaked(minutes: int) -> tuple[Change, ...]:
    """Warmers on so many minutes before the start at 10:40."""
    start = dt.datetime(2026, 5, 16, 10, 40) - dt.timedelta(minutes=minutes)
    return USED, put("session", "warmers_on", start.time())


def queued(minutes: int) -> tuple[Change, ...]:
    """Off the warmers so many minutes before going out."""
    out = dt.datetime(2026, 5, 16, 10, 40) + dt.timedelta(minutes=minutes)
    return (
        USED,
        put("session", "warmers_off", dt.time(10, 40)),
        put("session", "went_out", out.time()),
        RIDDEN,
    )


def made(code: str) -> Change:
    """Give the front tyre a date code."""
    return put("tyres", "front.date_code", code)


def cycles(count: int, limit: int = 10) -> tuple[Change, ...]:
    """Heat cycles of the front before the record, and the rider's limit."""
    return put("tyres", "front.cycles_before", count), put("rider", "limits.heat_cycles", limit)


HOT_BEFORE = went_before({"parked": dt.time(10, 20), "tyres": "may"})

MARKS = (put("tyres", "rear.worn_at", "1.6 mm"), put("tyres", "rear.tread_middle", "1.6 mm"))

DEEP = put("tyres", "rear.tread_middle", "4.0 mm")

CASES = {
    "standing-water": Cases(
        raising=(
            raises("surface", "serious", on("standing water"), WETS, says="Water stands on the track"),
            raises("surface", "serious", on("standing water"), WETS, put("rider", "group", "novice")),
            raises("surface", "caution", on("standing water"), WETS, put("rider", "group", "advanced")),
            raises("surface", "caution", on("standing water"), WETS, put("rider", "group", "race")),
            raises("surface", "serious", on("standing water"), INTER, put("rider", "group", "race")),
            # Tyres that nobody knows are no wets.
            raises("surface", "serious", on("standing water"), NO_TYRES, put("rider", "group", "race")),
        ),
        silent=(
            silent(on("wet"), WETS),
            silent(on("standing water"), RIDDEN),
        ),
        missing=(
            lacks("the surface", NO_SURFACE),
            lacks("the rider's group", on("standing water"), without("rider", "group")),
        ),
    ),
    "slicks-in-the-wet": Cases(
        raising=(
            raises("front", "hold", on("wet"), SLICKS, says="front and rear"),
            raises("rear", "hold", on("standing water"), ends("wet", "slick"), says=": rear."),
        ),
        silent=(
            silent(SLICKS),
            silent(on("damp"), SLICKS),
            silent(on("wet")),
            silent(on("wet"), WETS),
            silent(on("wet"), SLICKS, RIDDEN),
        ),
        missing=(
            lacks("the surface", NO_SURFACE, SLICKS),
            lacks("the kind of the front tyre", on("wet"), put("tyres", "", {"front": {}})),
            lacks("the tyre set", on("wet"), NO_TYRES),
        ),
    ),
    "race-tyres-off-a-dry-track": Cases(
        raising=(
            raises("front", "serious", on("damp"), SLICKS),
            raises("front", "serious", on("drying"), SLICKS, says="drying track"),
            raises("front", "caution", on("damp"), TREADED),
            raises("front", "serious", on("wet"), TREADED),
            raises("front", "serious", on("standing water"), TREADED, says="in standing water"),
        ),
        silent=(silent(SLICKS), silent(TREADED), silent(on("wet")), silent(on("damp"), SLICKS, RIDDEN)),
        missing=(lacks("the surface", NO_SURFACE, SLICKS),),
    ),
    "rain-tyres-in-the-dry": Cases(
        raising=(
            raises("front", "serious", WETS),
            raises("front", "caution", WETS, on("drying")),
        ),
        silent=(silent(WETS, on("wet")), silent(WETS, on("damp")), silent(INTER), silent(WETS, RIDDEN)),
        missing=(lacks("the surface", NO_SURFACE, WETS),),
    ),
    "intermediates-out-of-their-range": Cases(
        raising=(
            raises("front", "caution", INTER),
            raises("front", "caution", INTER, without("session", "track")),
            raises("front", "serious", INTER, on("standing water")),
        ),
        silent=(silent(INTER, on("damp")), silent(INTER, on("wet")), silent(INTER, track("10 C")), silent()),
        missing=(lacks("the surface", NO_SURFACE, INTER),),
    ),
    "tyres-of-two-worlds": Cases(
        raising=(
            raises("tyres", "caution", ends("wet", "track-day")),
            raises("tyres", "caution", ends("road", "intermediate")),
        ),
        silent=(silent(), silent(ends("wet", "intermediate")), silent(ends("road", "slick"))),
        missing=(lacks("the kinds of both tyres", put("tyres", "", {"front": {}})),),
    ),
    "race-tyres-without-heat": Cases(
        raising=(
            raises("warmers", "serious", SLICKS, track("12 C")),
            raises("warmers", "serious", TREADED, track("cold")),
            raises("warmers", "caution", SLICKS, track("18 C")),
            raises("warmers", "caution", SLICKS, track("40 C")),
            raises("warmers", "caution", TREADED, track("18 C")),
            raises("warmers", "note", TREADED, track("30 C")),
        ),
        silent=(
            silent(track("12 C")),
            silent(SLICKS, track("12 C"), USED),
            silent(SLICKS, USED, without("session", "track")),
            silent(TREADED, put("session", "kind", "road"), without("session", "track")),
            silent(SLICKS, track("12 C"), on("wet")),
            silent(SLICKS, track("12 C"), RIDDEN),
        ),
        missing=(
            lacks("whether tyre warmers are used", SLICKS, without("session", "warmers")),
            lacks("track temperature", SLICKS, without("session", "track")),
        ),
    ),
    "warmers-on-too-short": Cases(
        raising=(raises("warmers_on", "caution", SLICKS, *soaked(20), says="20 min only"),),
        silent=(
            silent(SLICKS, *soaked(60)),
            silent(*soaked(20)),
            silent(SLICKS, *soaked(20), RIDDEN),
            silent(SLICKS, USED),
            silent(
                SLICKS,
                *soaked(15),
                earlier=tuple(one.session for one in HOT_BEFORE.past),
            ),
        ),
        missing=(lacks("the kinds of the tyres", *soaked(20), put("tyres", "", {"front": {}})),),
    ),
    "off-the-warmers-too-long": Cases(
        raising=(raises("went_out", "note", SLICKS, *queued(7), says="7 min"),),
        silent=(silent(SLICKS, *queued(2)), silent(*queued(7)), silent(SLICKS, USED)),
        missing=(lacks("the kinds of the tyres", *queued(7), put("tyres", "", {"front": {}})),),
    ),
    "warmers-too-hot": Cases(
        raising=(
            raises("front", "caution", both("road"), USED, put("session", "warmers_at", "80 C")),
            raises("front", "serious", SLICKS, USED, put("session", "warmers_at", "99 C")),
        ),
        silent=(
            silent(SLICKS, USED, put("session", "warmers_at", "80 C")),
            silent(both("road"), put("session", "warmers_at", "80 C")),
            silent(both("road"), USED),
        ),
        missing=(
            lacks(
                "the kind of the front tyre",
                USED,
                put("session", "warmers_at", "80 C"),
                put("tyres", "", {"front": {}}),
            ),
        ),
    ),
    "tyre-not-scrubbed-in": Cases(
        raising=(
            raises("rear", "caution", put("tyres", "rear.scrubbed", False)),
            raises("rear", "serious", put("tyres", "rear.scrubbed", False), on("wet"), says="on a wet track"),
            raises(
                "rear", "serious", put("tyres", "rear.scrubbed", False), track("9 C"), says="on a cold track"
            ),
        ),
        silent=(
            silent(),
            silent(put("tyres", "rear.scrubbed", True)),
            silent(put("tyres", "rear.scrubbed", False), RIDDEN),
            silent(put("tyres", "rear.scrubbed", False), history=HOT_BEFORE),
        ),
        missing=(lacks("the surface", put("tyres", "rear.scrubbed", False), NO_SURFACE),),
    ),
    "tyre-finished": Cases(
        raising=(
            raises("rear", "hold", seen("rear", "cord"), says="cord"),
            raises("rear", "hold", seen("rear", "bubble"), NO_TYRES),
            # A later look that does not say it again ends nothing.
            raises(
                "rear",
                "hold",
                seen("rear", "fine balls"),
                history=went_before({"look.rear": {"seen": ["cord"]}}),
            ),
            raises("front", "hold", seen("front", "fine balls", "split"), RIDDEN),
            raises(
                "rear",
                "hold",
                history=went_before({"look.rear": {"seen": ["below the marks"]}, "parked": dt.time(9, 0)}),
                says="session before-1",
            ),
            # The front went on from another set, and what was seen on it goes with it.
            raises(
                "front",
                "hold",
                put("tyres", "front.continues", "spring"),
                history=went_before(
                    {"look.front": {"seen": ["cord"]}, "tyres": "spring"},
                    tyres={"spring": {}, "may": {"front": {"kind": "track-day", "continues": "spring"}}},
                ),
            ),
        ),
        silent=(
            silent(seen("rear", "blueing")),
            silent(
                put("tyres", "front.continues", "spring"),
                history=went_before(
                    {"look.rear": {"seen": ["cord"]}, "tyres": "spring"},
                    tyres={"spring": {}, "may": {"front": {"kind": "track-day", "continues": "spring"}}},
                ),
            ),
            silent(),
            silent(
                put("tyres", "rear.fitted", dt.date(2026, 5, 16)),
                history=went_before({"look.rear": {"seen": ["cord"]}, "date": dt.date(2026, 5, 2)}),
            ),
            silent(history=went_before({"look.rear": {"seen": ["cord"]}, "tyres": "others"})),
        ),
        asks=True,
    ),
    "tyre-blued-or-cracked": Cases(
        raising=(
            raises("rear", "caution", seen("rear", "blueing")),
            raises("rear", "caution", seen("rear", "blueing"), SLICKS),
            raises("front", "caution", seen("front", "cracks", "blueing"), says="cracks and blueing"),
        ),
        silent=(silent(seen("rear", "fine balls")), silent(seen("rear", "cord"))),
        missing=(lacks("the tyre set", seen("rear", "cracks"), NO_TYRES),),
    ),
    "tyre-past-its-cycles": Cases(
        raising=(
            raises("front", "caution", *cycles(10), says="10 heat cycles"),
            raises("front", "caution", *cycles(9), history=HOT_BEFORE, says="10 heat cycles"),
        ),
        silent=(
            silent(*cycles(9)),
            silent(put("tyres", "front.cycles_before", 99)),
            silent(*cycles(10), RIDDEN),
            silent(*cycles(99), put("tyres", "front.kind", "road")),
            silent(put("rider", "limits.heat_cycles", 1)),
        ),
        missing=(lacks("the rider", put("tyres", "front.cycles_before", 10), without("rider")),),
    ),
    "tyre-old": Cases(
        raising=(
            raises("front", "caution", made("2019"), says="7.0 years"),
            raises("front", "caution", ends("slick", "slick"), made("2022"), says="4.0 years"),
        ),
        silent=(
            silent(made("2022")),
            silent(TREADED, made("2022")),
            silent(made("2026")),
            silent(made("9919")),
            silent(made("2019"), RIDDEN),
            silent(),
        ),
        missing=(
            lacks("the kind of the front tyre", put("tyres", "front", {"date_code": "2019"})),
            lacks("the tyre set", NO_TYRES),
        ),
    ),
    "tread-at-its-limit": Cases(
        raising=(
            raises("rear", "serious", *MARKS, says="1.6 mm of tread, worn at 1.6 mm"),
            raises("rear", "hold", *MARKS, put("session", "surface", "damp")),
            raises("rear", "hold", *MARKS, put("session", "surface", "wet")),
            raises("rear", "hold", *MARKS, put("session", "surface", "standing water")),
            raises("rear", "serious", *MARKS[:1], put("session", "rear_tread", "1.5 mm"), says="now"),
            raises(
                "rear",
                "serious",
                *MARKS[:1],
                history=went_before({"rear_tread": "1.5 mm"}, {}),
                says="1.5 mm of tread (measured 2026-05-16, session 3)",
            ),
            # Where the file does not say when it was measured, the lesser counts.
            raises("rear", "serious", *MARKS, history=went_before({"rear_tread": "2.5 mm"})),
            raises("rear", "serious", *MARKS[:1], DEEP, history=went_before({"rear_tread": "1.5 mm"})),
        ),
        silent=(
            silent(),
            silent(*MARKS[:1], history=went_before({"rear_tread": "1.5 mm", "tyres": "others"})),
            silent(*MARKS[:1], history=went_before({"rear_tread": "1.5 mm"}, {"rear_tread": "1.7 mm"})),
            silent(*MARKS[:1], put("session", "rear_tread", "1.5 mm"), RIDDEN),
            silent(
                *MARKS[:1],
                DEEP,
                put("tyres", "rear.tread_measured", dt.date(2026, 5, 16)),
                history=went_before({"rear_tread": "1.5 mm", "date": dt.date(2026, 5, 15)}),
            ),
            silent(*MARKS, put("tyres", "rear.tread_middle", "1.7 mm")),
            silent(*MARKS, put("tyres", "rear.tread_measured", dt.date(2026, 5, 17))),
            silent(*MARKS, put("session", "kind", "road")),
            silent(*MARKS, RIDDEN),
        ),
        missing=(
            lacks("the surface", *MARKS, without("session", "surface")),
            lacks("the tyre set", NO_TYRES),
        ),
    ),
}
