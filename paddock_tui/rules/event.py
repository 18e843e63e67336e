"""Rules about the organiser's day: noise, camera, lap timing, and the first laps after a stop."""

from paddock_tui.calc.noise import Margin
from paddock_tui.facts.event import Camera, NoiseRead, TimetableStop
from paddock_tui.limits import Limits
from paddock_tui.limits.noise import NEAR_LIMIT
from paddock_tui.rules.core import (
    CAUTION,
    EVENT,
    HOLD,
    NOTE,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)
from paddock_tui.text import printable

_HERE = ("organised", "to_come")


@rule(
    "noise-over-the-limit", HOLD, source="the limit as posted", at="day:limits.noise", when=_HERE, rank=EVENT
)
def noise_over_the_limit(noise_read: NoiseRead) -> Result:
    """The venue's own reading is over the posted limit."""
    if noise_read.under >= 0:
        return None
    return RaisedFinding(
        message=f"Noise {noise_read.reading} is over the posted {noise_read.posted}.",
        why="Over the limit on the venue's own meter is a black flag, and a second one sends you home.",
        remedy=Remedy("Baffle in and pinned, engine warm, be measured again, and enter the new reading."),
        subject="noise",
    )


@rule(
    "noise-near-the-limit",
    CAUTION,
    source="the limit as posted",
    at="day:limits.noise",
    when=_HERE,
    limits=(NEAR_LIMIT,),
    rank=EVENT,
)
def noise_near_the_limit(noise_read: NoiseRead, limits: Limits) -> Result:
    """The reading is so near the limit that the next one may be over it."""
    if not Margin(noise_read.under).close(limits[NEAR_LIMIT]):
        return None
    return RaisedFinding(
        message=f"Noise {noise_read.reading}: only {noise_read.under:g} dB under the posted limit.",
        why="Wind, revs and a warm silencer move a reading by that much from one test to the next.",
        remedy=Remedy("Baffle in and pinned; change up early past the meter."),
        subject="noise",
    )


@rule(
    "noise-measured-elsewhere",
    NOTE,
    source="the limit as posted",
    at="day:entries",
    when=_HERE,
    rank=EVENT,
)
def noise_measured_elsewhere(noise_elsewhere: NoiseRead) -> Result:
    """A reading of another venue over, or just under, what is posted here: another meter, another spot."""
    if noise_elsewhere.under > 0:
        return None
    return RaisedFinding(
        message=f"Noise {noise_elsewhere.reading} elsewhere; {noise_elsewhere.posted} is posted here.",
        why="Another meter at another spot: it does not count here, and tells what to expect.",
        remedy=Remedy("Baffle in before the noise test, and enter what is measured here."),
        subject="noise",
    )


@rule(
    "camera-not-allowed-so",
    SERIOUS,
    source="organisers' rules: none on the helmet, tied to the bike",
    at="day:entries",
    when=_HERE,
    rank=EVENT,
)
def camera_not_allowed_so(camera: Camera) -> Result:
    """A camera is on the helmet, or not tied to the bike."""
    why = "What comes off hits whoever is behind; on a helmet it can break the shell or the neck."
    rule_words = f" The organiser says: {printable(camera.rule)}." if camera.rule else ""
    if camera.place == "helmet":
        return RaisedFinding(
            message="The camera is on the helmet.",
            why=why + rule_words,
            remedy=Remedy("Take it off the helmet; on the bike and tied on, where the organiser allows one."),
            subject="camera",
        )
    if camera.tethered is True:
        return None
    known = camera.tethered is False
    return RaisedFinding(
        message="The camera is not tied on." if known else "Whether the camera is tied on is not known.",
        why=why + rule_words,
        remedy=Remedy("Tie it to the bike with a wire or cord of its own, or leave it in the box."),
        severity=SERIOUS if known else CAUTION,
        subject="camera",
    )


@rule(
    "timer-where-timing-is-forbidden",
    SERIOUS,
    source="organisers' terms: no timing, no data logging",
    at="bike:lap_timer",
    when=_HERE,
    rank=EVENT,
    todo=ToDo("take the lap timer off: timing is forbidden"),
)
def timer_on_where_timing_is_forbidden(timer_where_forbidden: str) -> Result:
    """A lap timer is on the bike, and the organiser forbids timing."""
    if timer_where_forbidden != "fitted":
        return None
    return RaisedFinding(
        message="Timing is forbidden today, and a lap timer is on the bike.",
        why="It ends the day where it is seen, and may end the insurance's cover too.",
        remedy=Remedy("Switch it off and tape over it, or take it off; then say so as the reason."),
        subject="lap-timer",
    )


@rule("first-laps-after-a-stop", NOTE, at="session:start", when=_HERE, rank=EVENT)
def first_laps_after_a_stop(stop_before: TimetableStop) -> Result:
    """The first session after lunch or another stop: tyres, brakes and rider are cold again."""
    stop = printable(stop_before.what)
    return RaisedFinding(
        message=f"First laps after a stop ({stop}): two easy ones.",
        quoted=(stop,),
        why="Tyres, pads and head went cold while everything stood; the same after a red flag.",
        remedy=Remedy("Two laps at rising pace before the first one that counts."),
        subject="stop",
    )
