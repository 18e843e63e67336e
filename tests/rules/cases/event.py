"""Cases of the rules about the organiser's day, and of the cautions of the pit box."""

import datetime as dt

from tests.rules.case import Cases, lacks, raises, silent
from tests.rules.cases.incidents import today
from tests.rules.situations import Change, put, without

RIDDEN = put("session", "parked", dt.time(10, 59))
ROAD = put("session", "kind", "road")
ENTRY = "entries.ines.kestrel"
LIMIT = put("day", "limits.noise", "102 dB(A)")
ELSEWHERE = put("day", f"{ENTRY}.noise.elsewhere", "quernstone")
HERE = put("day", "venue", "anvilfen")
FORBIDDEN = put("day", "timing", "forbidden")
TIMER = put("bike", "lap_timer", "fitted")
LUNCH = put("day", "stops.1", {"from": dt.time(9, 40), "to": dt.time(10, 40), "what": "lunch"})


def noise(reading: str) -> Change:
    """Measure the bike."""
    return put("day", f"{ENTRY}.noise.reading", reading)


def visor(word: str) -> Change:
    """Wear a visor."""
    return put("session", "visor", word)


def camera(place: str, tethered: bool | None = None) -> tuple[Change, Change]:
    """Carry a camera."""
    return put("day", f"{ENTRY}.camera", place), put("day", f"{ENTRY}.tethered", tethered)


CASES = {
    "noise-over-the-limit": Cases(
        raising=(
            raises("noise", "hold", LIMIT, noise("102.5 dB(A)")),
            raises("noise", "hold", LIMIT, noise("110 dB(A)")),
        ),
        silent=(
            silent(LIMIT, noise("102 dB(A)")),
            silent(LIMIT),
            silent(noise("120 dB(A)")),
            silent(LIMIT, noise("110 dB(A)"), RIDDEN),
            silent(LIMIT, noise("110 dB(A)"), ELSEWHERE),
            silent(LIMIT, noise("110 dB(A)"), ROAD),
        ),
        missing=(lacks("the day", without("day")),),
    ),
    "noise-near-the-limit": Cases(
        raising=(
            raises("noise", "caution", LIMIT, noise("100.5 dB(A)"), says="only 1.5 dB under"),
            raises("noise", "caution", LIMIT, noise("102 dB(A)"), says="only 0 dB under"),
        ),
        silent=(
            silent(LIMIT, noise("99.5 dB(A)")),
            silent(LIMIT, noise("103 dB(A)")),
            silent(LIMIT, noise("101 dB(A)"), RIDDEN),
        ),
        missing=(lacks("the day", without("day")),),
    ),
    "camera-not-allowed-so": Cases(
        raising=(
            raises("camera", "serious", *camera("helmet"), says="on the helmet"),
            raises("camera", "serious", *camera("helmet", True)),
            raises("camera", "serious", *camera("bike", False), says="not tied on"),
            raises("camera", "caution", *camera("bike"), says="is not known"),
        ),
        silent=(
            silent(),
            silent(*camera("none")),
            silent(*camera("bike", True)),
            silent(*camera("helmet"), RIDDEN),
            silent(*camera("helmet"), ROAD),
        ),
        missing=(lacks("the day", without("day")),),
    ),
    "timer-where-timing-is-forbidden": Cases(
        raising=(raises("lap-timer", "serious", TIMER, FORBIDDEN, going_out=True),),
        silent=(
            silent(TIMER),
            silent(TIMER, put("day", "timing", "allowed")),
            silent(put("bike", "lap_timer", "none"), FORBIDDEN),
            silent(TIMER, FORBIDDEN, RIDDEN),
        ),
        missing=(lacks("whether a lap timer is on the bike", FORBIDDEN),),
    ),
    "first-laps-after-a-stop": Cases(
        raising=(
            raises("stop", "note", LUNCH, says="lunch"),
            raises("stop", "note", LUNCH, rider_today=today({"start": dt.time(9, 20)})),
        ),
        silent=(
            silent(),
            silent(LUNCH, put("session", "start", dt.time(10, 39))),
            silent(
                LUNCH, put("session", "start", dt.time(11, 40)), rider_today=today({"start": dt.time(10, 40)})
            ),
            silent(LUNCH, RIDDEN),
            silent(LUNCH, ROAD),
        ),
        asks=True,
    ),
    "frost-near": Cases(
        raising=(
            raises("frost", "note", put("session", "air", "2 C"), says="Air 2 C"),
            raises(
                "frost",
                "note",
                put("session", "air", "9 C"),
                put("session", "track", "1 C"),
                says="Track 1 C",
            ),
            raises(
                "frost",
                "caution",
                put("session", "air", "2 C"),
                put("bike", "drive.coolant", "plain water"),
                says="the engine holds plain water",
            ),
            raises("frost", "note", put("session", "air", "2 C"), put("bike", "drive.coolant", "antifreeze")),
        ),
        silent=(
            silent(),
            silent(put("session", "air", "cold")),
            silent(put("session", "air", "4 C")),
            silent(put("session", "air", "2 C"), RIDDEN),
        ),
        asks=True,
    ),
    "fumes-in-a-closed-space": Cases(
        raising=(
            raises("fumes", "note", put("session", "warmers", "used")),
            raises("fumes", "note", put("session", "air", "8 C")),
            raises("fumes", "note", put("session", "air", "cold")),
        ),
        silent=(
            silent(),
            silent(put("session", "warmers", "none"), put("session", "air", "9 C")),
            silent(put("session", "warmers", "used"), RIDDEN),
        ),
        asks=True,
    ),
    "noise-measured-elsewhere": Cases(
        raising=(
            raises("noise", "note", LIMIT, noise("102 dB(A)"), ELSEWHERE, says="is posted here"),
            raises("noise", "note", LIMIT, noise("110 dB(A)"), ELSEWHERE),
        ),
        silent=(
            silent(LIMIT, noise("101.5 dB(A)"), ELSEWHERE),
            silent(LIMIT, noise("110 dB(A)"), put("day", f"{ENTRY}.noise.elsewhere", "anvilfen"), HERE),
            silent(LIMIT, noise("110 dB(A)")),
            silent(noise("110 dB(A)"), ELSEWHERE),
            silent(LIMIT, noise("110 dB(A)"), ELSEWHERE, RIDDEN),
        ),
        missing=(lacks("the day", without("day")),),
    ),
    "tinted-visor-in-poor-light": Cases(
        raising=(
            raises("visor", "caution", visor("dark"), put("session", "surface", "wet"), says="in the rain"),
            raises("visor", "caution", visor("tinted"), put("session", "start", dt.time(20, 40))),
            raises("visor", "caution", ROAD, visor("dark"), put("session", "start", dt.time(21, 0))),
        ),
        silent=(
            silent(visor("clear"), put("session", "surface", "wet")),
            silent(visor("dark")),
            silent(visor("dark"), put("session", "surface", "damp")),
            silent(visor("dark"), put("session", "surface", "wet"), RIDDEN),
        ),
        asks=True,
    ),
}
