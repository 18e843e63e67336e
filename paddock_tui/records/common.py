"""Shapes that several kinds of record use, each with the band of figures that can be."""

import datetime as dt

import attrs

from paddock_tui.records.fields import one
from paddock_tui.records.shapes import (
    Amount,
    AmountOrWord,
    AnySetting,
    Day,
    Flag,
    Number,
    Text,
    TimeOfDay,
    Whole,
    Word,
)

TEXT = Text()
FLAG = Flag()
DAY = Day()
CLOCK = TimeOfDay()
SETTING = AnySetting()
SCORE = Whole(1, 5, strict=True)
ADJUSTER = Number(-100, 200, step=1)

TYRE_PRESSURE = Amount("pressure", "bar", 0.7, 3.5, step=0.05)
PRESSURE_STEP = Amount("pressure", "bar", -1, 1, step=0.05)
AIR_PRESSURE = Amount("pressure", "hPa", 600, 1100)
TRACK_TEMPERATURE = Amount("temperature", "C", -5, 70)
AIR_TEMPERATURE = Amount("temperature", "C", -20, 50)
TYRE_TEMPERATURE = Amount("temperature", "C", -20, 150)
HUMIDITY = Amount("ratio", "%", 0, 100)
FELT_AIR = AmountOrWord(AIR_TEMPERATURE, "cold", "mild", "hot")
FELT_TRACK = AmountOrWord(TRACK_TEMPERATURE, "cold", "mild", "hot")
WIND = Amount("speed", "km/h", 0, 150)
SPEED = Amount("speed", "km/h", 0, 400)
PIT_SPEED = Amount("speed", "km/h", 5, 120)
MASS = Amount("mass", "kg", 30, 400)
WET_MASS = Amount("mass", "kg", 80, 450)
LENGTH = Amount("length", "mm", 0, 3000)
TRAVEL = Amount("length", "mm", 0, 400)
SMALL = Amount("length", "mm", 0, 80, step=1)
TREAD = Amount("length", "mm", 0, 15, step=0.1)
DISTANCE = Amount("length", "km", 0, 2_000_000)
LAP_LENGTH = Amount("length", "km", 0.3, 30, step=0.1)
RADIUS = Amount("length", "m", 3, 2000)
LENGTH_OF_STRAIGHT = Amount("length", "m", 50, 5000)
ALTITUDE = Amount("length", "m", -450, 5000)
VOLUME = Amount("volume", "l", 0, 30, step=0.5)
CONSUMPTION = Amount("consumption", "l/100km", 1, 40, step=0.1)
SPRING = Amount("spring rate", "N/mm", 1, 300, step=0.5)
TORQUE = Amount("torque", "N m", 0.5, 400)
POWER = Amount("power", "kW", 1, 300)
REVS = Amount("rotation", "rpm", 500, 25_000, step=100)
NOISE = Amount("sound", "dB(A)", 50, 140, step=0.5)
MINUTES = Amount("time", "min", 1, 24 * 60)
NIGHT = Amount("time", "h", 0, 24, step=0.5)
HOURS = Amount("time", "h", 0, 100_000)
SURFACE = Word("dry", "damp", "drying", "wet", "standing water")
STANCE = Word("side stand", "rear stand", "rider on")
GROUP = Word("novice", "intermediate", "advanced", "race")
TEETH = Whole(8, 100, unit="teeth")
LINKS = Whole(40, 200, unit="links")


@attrs.frozen
class Units:
    """The units that bare numbers are in, and that computed figures are shown in."""

    pressure: str | None = one(
        Word("bar", "psi", "kPa"), "pressure", "the unit in which pressures are computed and shown"
    )
    temperature: str | None = one(Word("C", "F"), "temperature", "the unit of a bare temperature")
    speed: str | None = one(Word("km/h", "mph"), "speed", "the unit of a bare speed")
    distance: str | None = one(Word("km", "mi"), "distance", "the unit of a bare distance")
    mass: str | None = one(Word("kg", "lb"), "mass", "the unit of a bare mass")
    volume: str | None = one(Word("l", "US gal", "imp gal"), "volume", "the unit of a bare volume")


@attrs.frozen
class Check:
    """One answered item of a checklist."""

    status: str | None = one(
        Word("ok", "to fix", "not applicable"), "answer", "ok, to fix, or not applicable to this bike or day"
    )
    at: dt.time | None = one(CLOCK, "answered at", "when the item was answered")
    by: str | None = one(TEXT, "answered by", "initials of who answered")
