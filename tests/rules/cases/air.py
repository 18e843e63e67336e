"""Cases of the rules about the air: a pressure that cannot be of its venue's altitude."""

from tests.rules.case import Cases, raises, silent
from tests.rules.situations import put, without

HIGH = put("venue", "altitude", "1000 m")
RULE = "air-pressure-not-of-the-altitude"


def read(pressure: str) -> tuple[str, tuple[str, ...], str]:
    """Read a barometer, or a forecast."""
    return "session", ("air_pressure",), pressure


CASES = {
    RULE: Cases(
        raising=(
            raises("air_pressure", "note", HIGH, read("1013 hPa"), says="reduced to sea level"),
            raises("air_pressure", "note", HIGH, read("700 hPa"), says="one of the two is wrong"),
            raises(
                "air_pressure",
                "note",
                put("venue", "altitude", "0 m"),
                read("880 hPa"),
                says="one of the two",
            ),
        ),
        silent=(
            silent(HIGH, read("905 hPa")),
            silent(HIGH, read("945 hPa")),
            silent(HIGH, read("849 hPa")),
            silent(read("1013 hPa")),
            silent(HIGH),
            silent(put("venue", "altitude", "20000 m"), read("1013 hPa")),
            silent(HIGH, read("1013 hPa"), without("venue")),
        ),
        asks=True,
    )
}
