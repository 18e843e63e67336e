"""Cases of the rules about work on the bike and service that is due."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.situations import Change, put, went_before, without

RIDDEN = put("session", "parked", dt.time(10, 59))
MAY, RAIN = {"front": {"kind": "track-day"}}, {"front": {"kind": "wet"}}
RAIN_FRONT = {"front": {"kind": "track-day", "continues": "may"}, "rear": {"kind": "wet"}}

ON_RAIN = went_before({"tyres": "rain", "parked": dt.time(9, 40)}, tyres={"may": MAY, "rain": RAIN})
ON_MIXED = went_before({"tyres": "rain", "parked": dt.time(9, 40)}, tyres={"may": MAY, "rain": RAIN_FRONT})
ON_MAY = went_before({"parked": dt.time(9, 40)})
NEVER_RIDDEN = went_before({"tyres": "rain"})
OTHER_TEETH = went_before({"parked": dt.time(9, 40), "setup.rear_sprocket": 42})
SAME_TEETH = went_before({"parked": dt.time(9, 40), "setup.rear_sprocket": 44})


def work(what: str | None, **ticks: object) -> Change:
    """Write one piece of work down."""
    return put("session", "work.1", {**({"what": what} if what else {}), **ticks})


def done(what: str, **ticks: object) -> dict[str, object]:
    """Give one piece of work as an earlier session's table."""
    return {"work.1": {"what": what, **ticks}, "parked": dt.time(9, 40)}


COVERED = put("bike", "start", {"kilometres": "1000 km"})


def service(name: str, **values: object) -> Change:
    """Give the bike an item of service."""
    return put("bike", f"service.{name}", values)


WHOLE = {"torqued": True, "pumped": True}
TEETH = put("session", "setup.rear_sprocket", 44)
SLACK = put("session", "chain_slack", "34 mm")
HOURS = put("bike", "start", {"on": dt.date(2026, 1, 1), "hours": "10 h"})
RODE = {"parked": dt.time(9, 40)}
STEERS = {**WHOLE, "steering_free": True, "checked_by": "TM"}
RODE_AN_HOUR = went_before({"ridden_time": "60 min"})

TURNED = {"what": "shift pattern"}
PATTERN = put("session", "work.1", TURNED)
REVERSED = put("bike", "drive.shift_pattern", "reversed")

CASES = {
    "wheel-work-not-checked": Cases(
        raising=(
            *(
                raises("wheels", "hold", work(what), going_out=True)
                for what in ("wheel out", "caliper", "brake", "axle")
            ),
            raises("wheels", "hold", work("caliper", torqued=False), going_out=True, says="caliper"),
            raises("wheels", "hold", history=ON_RAIN, going_out=True, says="front and rear wheels out"),
            raises("wheels", "hold", history=ON_MIXED, going_out=True, says="rear wheel out"),
            raises("wheels", "hold", history=went_before(done("axle")), going_out=True, says="axle"),
            # A tick for one kind of work says nothing of another.
            raises(
                "wheels",
                "hold",
                work("wheel out", **WHOLE),
                history=went_before(done("caliper")),
                going_out=True,
            ),
            raises("wheels", "hold", work("oil", torqued=True), history=ON_RAIN, going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(work("wheel out", **WHOLE), history=ON_RAIN, going_out=True),
            silent(work(None, **WHOLE), history=ON_RAIN, going_out=True),
            silent(work("axle", **WHOLE), history=went_before(done("axle")), going_out=True),
            silent(work("wheel out", **WHOLE), history=went_before(done("axle")), going_out=True),
            silent(work("chain"), going_out=True),
            silent(work("wheel out"), RIDDEN, going_out=True),
            silent(history=ON_MAY, going_out=True),
            silent(history=NEVER_RIDDEN, going_out=True),
            silent(without("session", "tyres"), history=ON_RAIN, going_out=True),
        ),
        asks=True,
    ),
    "chain-slack-not-measured": Cases(
        raising=(
            raises("chain", "serious", TEETH, history=OTHER_TEETH, going_out=True, says="42 -> 44"),
            raises("chain", "serious", history=ON_RAIN, going_out=True, says="rear wheel out"),
            raises("chain", "serious", work("sprocket"), going_out=True),
            raises("chain", "serious", work("wheel out", **WHOLE), going_out=True),
        ),
        silent=(
            silent(going_out=True),
            silent(TEETH, SLACK, history=OTHER_TEETH, going_out=True),
            silent(TEETH, history=SAME_TEETH, going_out=True),
            silent(work("oil"), going_out=True),
            silent(TEETH, RIDDEN, history=OTHER_TEETH, going_out=True),
        ),
        asks=True,
    ),
    "wheel-work-not-looked-at-again": Cases(
        raising=(
            raises("wheels", "caution", history=went_before(done("axle", **WHOLE)), going_out=True),
            raises(
                "wheels",
                "caution",
                history=went_before({"work.1": {"what": "yokes", **STEERS}}, RODE),
                going_out=True,
            ),
        ),
        silent=(
            silent(going_out=True),
            silent(work("axle", **WHOLE), going_out=True),
            silent(history=went_before(done("axle", rechecked_hot=True, **WHOLE)), going_out=True),
            # Done on return: nobody rode it since.
            silent(
                history=went_before(
                    {"work.1": {"what": "axle", "at": dt.time(9, 50), **WHOLE}, "parked": dt.time(9, 40)}
                ),
                going_out=True,
            ),
        ),
        asks=True,
    ),
    "oil-work-not-secured": Cases(
        raising=(
            *(raises("oil", "hold", work(what), going_out=True) for what in ("oil", "filter", "plug")),
            raises("oil", "hold", history=went_before(done("plug")), going_out=True, says="plug in session"),
        ),
        silent=(
            silent(going_out=True),
            silent(work("oil", torqued=True), going_out=True),
            silent(work("plug", torqued=True), history=went_before(done("plug")), going_out=True),
        ),
        asks=True,
    ),
    "oil-work-not-checked-hot": Cases(
        raising=(
            *(
                raises("oil", "serious", history=went_before(done(what)))
                for what in ("oil", "filter", "plug")
            ),
            raises("oil", "serious", history=went_before(done("filter", torqued=True, rechecked_hot=False))),
            raises("oil", "serious", history=went_before(done("plug")), says="plug in session"),
        ),
        silent=(
            silent(),
            silent(work("oil", torqued=True)),
            silent(work("oil", rechecked_hot=True)),
            silent(work("plug", rechecked_hot=True), history=went_before(done("plug"))),
            silent(work("axle")),
            silent(history=went_before(done("oil", rechecked_hot=True))),
        ),
        asks=True,
    ),
    "brake-fluid-old": Cases(
        raising=(
            raises("brake-fluid", "caution", service("brake-fluid", last=dt.date(2025, 5, 15))),
            raises(
                "brake-fluid", "caution", service("brake-fluid", every="6 months", last=dt.date(2025, 11, 15))
            ),
            raises("front-brake-fluid", "caution", service("front-brake-fluid", last=dt.date(2024, 5, 16))),
        ),
        silent=(
            silent(),
            silent(service("brake-fluid", last=dt.date(2025, 5, 16))),
            silent(service("brake-fluid", every="24 months", last=dt.date(2025, 5, 15))),
            silent(service("brake-fluid", every="6 months")),
            silent(service("fork-oil", every="6 months", last=dt.date(2020, 1, 1))),
            silent(service("brake-fluid", last=dt.date(2020, 1, 1)), RIDDEN),
            silent(service("brake-fluid", last=dt.date(2020, 1, 1)), without("session", "date")),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "service-due": Cases(
        raising=(
            raises(
                "oil",
                "caution",
                HOURS,
                service("oil", every_hours="5 h", last_hours="6 h"),
                history=RODE_AN_HOUR,
                says="0.0 h over",
            ),
            raises(
                "oil",
                "caution",
                service("oil", every="6 months", last=dt.date(2025, 1, 1)),
                says="2025-07-01",
            ),
            raises("chain", "note", HOURS, service("chain", every_hours="5 h", last_hours="4 h")),
            raises(
                "chain", "note", COVERED, service("chain", every_distance="800 km", last_distance="200 km")
            ),
        ),
        silent=(
            silent(),
            silent(HOURS, service("oil", every_hours="5 h", last_hours="6 h")),
            silent(service("oil", every_hours="5 h", last_hours="0 h")),
            silent(COVERED, service("oil", every_distance="801 km", last_distance="200 km")),
            silent(service("oil", every_distance="5 km", last_distance="0 km")),
            silent(service("oil", every="6 months")),
            silent(service("brake-fluid", every="1 months", last=dt.date(2020, 1, 1))),
            silent(service("oil", every="6 months", last=dt.date(2025, 1, 1)), RIDDEN),
        ),
        missing=(lacks("the bike", without("bike")),),
    ),
    "shift-pattern-changed": Cases(
        raising=(
            raises("shift-pattern", "caution", PATTERN, says="which way is not written down"),
            raises("shift-pattern", "caution", PATTERN, REVERSED, says="first is up"),
            raises(
                "shift-pattern",
                "caution",
                history=went_before({"parked": dt.time(9, 0), "work.1": {**TURNED, "at": dt.time(9, 30)}}),
            ),
        ),
        silent=(
            silent(REVERSED),
            silent(put("session", "work.1", {"what": "chain"})),
            silent(PATTERN, RIDDEN),
            silent(history=went_before({"parked": dt.time(9, 0), "work.1": TURNED})),
            silent(history=went_before({"work.1": TURNED}, {"parked": dt.time(9, 40)})),
        ),
        missing=(lacks("the bike", PATTERN, without("bike")),),
    ),
}
