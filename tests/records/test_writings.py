"""What riders and sheets write on a row, and what each writing gives: a value, or a question with its fix."""

from pathlib import Path
from typing import Any

from paddock_tui.records import common as c
from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import Amount, Number, Shape, TyreSizeMarking
from tests.every import every

ROWS: dict[str, Shape[Any]] = {
    "tyre": c.TYRE_PRESSURE,
    "air": c.AIR_PRESSURE,
    "track": c.TRACK_TEMPERATURE,
    "humidity": c.HUMIDITY,
    "mass": c.MASS,
    "length": c.LENGTH,
    "distance": c.DISTANCE,
    "lap": c.LAP_LENGTH,
    "revs": c.REVS,
    "speed": c.SPEED,
    "volume": c.VOLUME,
    "use": c.CONSUMPTION,
    "spring": c.SPRING,
    "torque": c.TORQUE,
    "power": c.POWER,
    "noise": c.NOISE,
    "rake": Amount("angle", "deg", 15, 40, step=0.1),
    "time": c.MINUTES,
    "clicks": Number(0, 40, unit="click"),
    "turns": Number(0, 15, unit="turn", step=0.25),
    "teeth": c.TEETH,
    "links": c.LINKS,
    "ratio": Number(0.2, 1.2),
    "gear": Number(0.5, 5, step=0.001),
    "size": TyreSizeMarking(),
}

WRITINGS = [
    tuple(line.split("\t"))
    for line in Path(__file__).with_name("writings.tsv").read_text(encoding="utf-8").splitlines()
]


def given(row: str, typed: str) -> str:
    """Return what a writing gives: the value as the row shows it, or "?" with everything it is answered."""
    shape = ROWS[row]
    found = shape.read(typed)
    if isinstance(found, InputError):
        return f"? {found.found} expected {found.expected}; {found.mend}"
    return shape.show(found)


@every(("row", "typed", "gives"), WRITINGS, ids=[f"{row} {typed}" for row, typed, _ in WRITINGS])
def test_each_writing_gives_its_value_or_the_fix(row: str, typed: str, gives: str) -> None:
    found = given(row, typed)

    if gives.startswith("? "):
        assert found.startswith("? ")
        assert gives.removeprefix("? ") in found
    else:
        assert gives == found


def test_there_are_two_hundred_of_them_and_none_twice() -> None:
    assert len(WRITINGS) >= 200
    assert len({(row, typed) for row, typed, _ in WRITINGS}) == len(WRITINGS)


@every(("row", "typed", "gives"), [one for one in WRITINGS if one[2].startswith('? write "')])
def test_a_fix_that_says_what_to_write_can_be_written(row: str, typed: str, gives: str) -> None:
    for fix in gives.removeprefix("? write ").split(" or "):
        assert not given(row, fix.strip('"')).startswith("?"), typed
