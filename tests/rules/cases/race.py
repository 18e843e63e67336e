"""Cases of the rules about a race meeting, and about what stops an outing."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, at, put, without

RACE = put("session", "kind", "race")
RIDDEN = put("session", "parked", dt.time(11, 20))
OUT = put("session", "went_out", dt.time(10, 40))
ENTRY = "entries.ines.kestrel"


def rules(**of_class: object) -> tuple[Change, ...]:
    """Enter the rules of the only class of the day."""
    return (RACE, put("day", "classes.open", of_class))


def marked(*ends: str, tyres: str = "may") -> Change:
    """Have tyres marked."""
    made = {str(number): {"tyres": tyres, "end": end} for number, end in enumerate(ends, 1)}
    return put("day", f"{ENTRY}.marked", made)


def stop(what: str, minute: int = 50, **more: object) -> Change:
    """Write down a stop."""
    return put("session", "events.1", {"what": what, "at": dt.time(10, minute), **more})


CHOICE = put("session", "race.tyre_choice", dt.time(10, 30))


def wheel_out(hour: int, minute: int) -> Change:
    """Have a wheel out at a time."""
    return put("session", "work.1", {"what": "wheel out", "at": dt.time(hour, minute)})


LAUNCH = put("bike", "controls.launch", {"kind": "switch"})

CASES = {
    "goes-on-after-a-stop": Cases(
        raising=(
            raises("stop", "caution", OUT, stop("red flag"), says="Red flag 10:50"),
            raises(
                "stop",
                "caution",
                RACE,
                OUT,
                stop("red flag", laps_ridden=4, laps_left=6, restart=dt.time(11, 10)),
                says="Red flag 10:50, 6 laps left, goes on 11:10",
            ),
            raises("stop", "caution", OUT, stop("wait in the lane"), says="Wait in the lane"),
            raises("stop", "caution", OUT, stop("stall"), says="Stall 10:50"),
        ),
        silent=(
            silent(stop("red flag")),
            silent(OUT),
            silent(OUT, stop("key-off")),
            silent(OUT, stop("stall", 30)),
            silent(OUT, stop("red flag"), RIDDEN),
        ),
        asks=True,
    ),
    "more-tyres-than-the-class-counts": Cases(
        raising=(
            raises(
                "tyres", "hold", *rules(tyres=2), marked("front", "rear", "rear"), says="3 tyres are marked"
            ),
            raises("tyres", "hold", *rules(tyres=1), marked("front", "rear"), says="the class counts 1"),
        ),
        silent=(
            silent(*rules(tyres=2), marked("front", "rear")),
            silent(*rules(tyres_marked=True), marked("front", "rear")),
            silent(RACE, marked("front", "rear")),
            silent(marked("front", "rear"), put("day", "classes.open", {"tyres": 1})),
            silent(*rules(tyres=1), marked("front", "rear"), RIDDEN),
        ),
        asks=True,
    ),
    "tyres-not-marked": Cases(
        raising=(
            raises("tyres", "serious", *rules(tyres_marked=True), says="front and rear", going_out=True),
            raises(
                "tyres", "serious", *rules(tyres_marked=True), marked("front"), says="rear", going_out=True
            ),
            raises(
                "tyres",
                "serious",
                *rules(tyres_marked=True),
                marked("front", "rear", tyres="june"),
                going_out=True,
            ),
        ),
        silent=(
            silent(*rules(tyres_marked=True), marked("front", "rear")),
            silent(*rules(tyres_marked=False)),
            silent(*rules(tyres_marked=True), RIDDEN),
            silent(put("day", "classes.open", {"tyres_marked": True})),
        ),
        asks=True,
    ),
    "wheel-out-after-the-tyre-choice": Cases(
        raising=(
            raises("tyres", "serious", RACE, CHOICE, wheel_out(10, 31), says="out at 10:31; the tyre choice"),
            raises(
                "tyres", "serious", *rules(tyre_choice="20 min"), wheel_out(10, 35), says="closed at 10:20"
            ),
        ),
        silent=(
            silent(RACE, CHOICE, wheel_out(10, 30)),
            silent(RACE, CHOICE),
            silent(CHOICE, wheel_out(10, 31)),
            silent(RACE, wheel_out(10, 31)),
            silent(RACE, put("session", "race.tyre_choice", dt.time(10, 38)), wheel_out(10, 36)),
            silent(RACE, CHOICE, wheel_out(10, 31), RIDDEN),
        ),
        asks=True,
    ),
    "under-the-least-weight": Cases(
        raising=(
            raises(
                "weight",
                "caution",
                *rules(least_weight="160 kg"),
                put("session", "race.weighed", "159.8 kg"),
                RIDDEN,
                says="Weighed 159.8 kg, the class asks for 160 kg.",
            ),
        ),
        silent=(
            silent(*rules(least_weight="160 kg"), put("session", "race.weighed", "160 kg")),
            silent(*rules(least_weight="160 kg")),
            silent(*rules(tyres=2), put("session", "race.weighed", "120 kg")),
            silent(RACE, put("session", "race.weighed", "120 kg")),
        ),
        asks=True,
    ),
    "nobody-holds-the-bike": Cases(
        raising=(raises("grid", "note", RACE, going_out=True),),
        silent=(
            silent(RACE, put("session", "race.holds_bike", "TO")),
            silent(going_out=True),
            silent(RACE, RIDDEN),
        ),
        asks=True,
    ),
    "launch-to-arm": Cases(
        raising=(raises("launch", "note", RACE, LAUNCH, at("launch", "on"), going_out=True),),
        silent=(
            silent(RACE, LAUNCH, at("launch", "on"), put("session", "race.launch_armed", True)),
            silent(RACE, LAUNCH, at("launch", "off")),
            silent(RACE),
            silent(LAUNCH, at("launch", "on")),
        ),
        missing=(lacks("the bike", RACE, without("bike")),),
    ),
}
