"""A session: one outing, with the set-up as ridden in full, and what was measured and felt."""

import datetime as dt
import functools
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import common as c
from paddock_tui.records import race as r
from paddock_tui.records import session_parts as o
from paddock_tui.records.crew import Job
from paddock_tui.records.fields import ENDS, NAMED, NUMBERED, nested, one, table, tables, values
from paddock_tui.records.ridden import laps_ridden, was_ridden
from paddock_tui.records.setup import Counted, SetUp
from paddock_tui.records.shapes import Amount, Lap, LapTime, Reference, Series, Whole, Word
from paddock_tui.records.went_out_with import WentOutWith

TYPED_AFTERWARDS = "typed afterwards"
"""Said of times that no clock stamped: the session was of an earlier day when they were typed."""

CLOCK_IN_DOUBT = "clock in doubt"
"""Said of times that the computer's clock stamped after a jump, or while it was behind the last change."""

SESSION_KINDS = ("road", "track day", "practice", "qualifying", "race", "start practice")


@attrs.frozen
class Session:
    """One outing. It counts as ridden once it has a parked time, a lap, or a hot pressure after going out."""

    date: dt.date | None = one(c.DAY, "date", "the day of the session")
    number: int | None = one(Whole(1, 99), "number", "which session of the day it is")
    kind: str | None = one(Word(*SESSION_KINDS), "kind", "what kind of outing", carry=True)
    day: str | None = one(
        Reference("day"), "day", "the day it belongs to; not needed on the road", carry=True
    )
    bike: str | None = one(Reference("bike"), "bike", "the bike ridden", carry=True)
    rider: str | None = one(Reference("rider"), "rider", "who rides", carry=True)
    tyres: str | None = one(Reference("tyres"), "tyres", "the tyre set on the bike", carry=True)
    copied_from: str | None = one(
        Reference("session"),
        "copied from",
        "the session whose set-up this one started with: a change is the difference",
    )
    taken_from: str | None = one(Reference("profile"), "taken from", "the profile whose set-up was loaded")
    planned_time: Quantity | None = one(
        c.MINUTES, "planned time", "how long the session is to last", call="planned", carry=True
    )
    planned_laps: int | None = one(Whole(1, 200), "planned laps", "how many laps are planned")
    start: dt.time | None = one(c.CLOCK, "start", "when the session starts", call="start")
    went_out: dt.time | None = one(c.CLOCK, "went out", "when the bike left for the track", call="went")
    parked: dt.time | None = one(c.CLOCK, "parked", "when the bike was back in the paddock", call="parked")
    ridden_time: Quantity | None = one(c.MINUTES, "ridden time", "time on track", call="ridden")
    ridden_laps: int | None = one(Whole(0, 300), "ridden laps", "laps ridden, where they were counted")
    distance: Quantity | None = one(c.DISTANCE, "distance", "distance ridden, where laps do not tell it")
    best_lap: Lap | None = one(LapTime(), "best lap", "best lap, where only that is known", call="best")
    top_speed: Quantity | None = one(c.SPEED, "top speed", "at the end of the longest straight", call="top")
    top_revs: Quantity | None = one(c.REVS, "top revs", "at the end of the longest straight", call="revs")
    surface: str | None = one(c.SURFACE, "surface", "what the track is like now", call="surface")
    air: Quantity | str | None = one(c.FELT_AIR, "air", "air temperature, or cold, mild, hot", call="air")
    track: Quantity | str | None = one(
        c.FELT_TRACK, "track temperature", "of the track surface, or cold, mild, hot", call="track"
    )
    humidity: Quantity | None = one(c.HUMIDITY, "humidity", "relative humidity of the air", call="humidity")
    air_pressure: Quantity | None = one(
        c.AIR_PRESSURE, "air pressure", "at the venue, not reduced to sea level"
    )
    wind: Quantity | None = one(c.WIND, "wind", "wind speed", call="wind")
    ice: bool | None = one(
        c.FLAG, "ice on the track", "ice or frost on the track, also in the shade only", call="ice"
    )
    warmers: str | None = one(
        Word("none", "used"), "tyre warmers", "whether warmers are used before this session", call="warmers"
    )
    warmers_on: dt.time | None = one(c.CLOCK, "warmers on", "when they were switched on")
    warmers_off: dt.time | None = one(c.CLOCK, "warmers off", "when they came off")
    warmers_at: Quantity | None = one(c.TYRE_TEMPERATURE, "warmers set to", "temperature they were set to")
    fuel_in_tank: Quantity | None = one(
        c.VOLUME, "fuel in the tank", "litres in the tank before going out, where that is known", call="tank"
    )
    fuel_added: Quantity | None = one(
        c.VOLUME, "fuel added", "litres filled before this session", call="fuel"
    )
    filled_to_brim: bool | None = one(
        c.FLAG, "filled to the brim", "whether that filled the tank to the brim", call="brim"
    )
    front_pressure_change: Quantity | None = one(
        c.PRESSURE_STEP,
        "front, planned change",
        "by how much the front is to be set otherwise next",
        call="pf",
    )
    rear_pressure_change: Quantity | None = one(
        c.PRESSURE_STEP, "rear, planned change", "by how much the rear is to be set otherwise next", call="pr"
    )
    visor: str | None = one(
        Word("clear", "tinted", "dark"), "visor", "which visor is worn", call="visor", carry=True
    )
    slept: Quantity | None = one(c.NIGHT, "hours slept", "the night before", call="slept")
    confidence: int | None = one(c.SCORE, "confidence", "1 = none, 5 = full", call="confidence")
    fatigue: int | None = one(c.SCORE, "fatigue", "1 = fresh, 5 = exhausted", call="fatigue")
    aim: str | None = one(c.TEXT, "aim", "the one thing to ride for in this session", call="aim")
    aim_by: str | None = one(c.TEXT, "aim from", "initials of who set the aim: the rider or a coach")
    aim_met: str | None = one(Word("yes", "partly", "no"), "aim met", "whether it was")
    said: str | None = one(c.TEXT, "said", "three sentences before talking to anyone", call="said")
    front_travel_used: Quantity | None = one(c.TRAVEL, "front travel used", "from the marker on the fork")
    rear_travel_used: Quantity | None = one(
        c.TRAVEL, "rear travel used", "from the marker on the shock, along the shock"
    )
    front_pads: Quantity | None = one(c.TREAD, "front pads", "thickness of the thinnest front pad")
    rear_pads: Quantity | None = one(c.TREAD, "rear pads", "thickness of the thinnest rear pad")
    front_tread: Quantity | None = one(c.TREAD, "front tread", "thinnest depth of the front tyre afterwards")
    rear_tread: Quantity | None = one(c.TREAD, "rear tread", "thinnest depth of the rear tyre afterwards")
    lever: str | None = one(
        Word("firm", "long", "to the bar", "spongy hot"),
        "brake lever",
        "how the front brake lever feels",
        call="lever",
    )
    chain_slack: Quantity | None = one(
        c.SMALL, "chain slack", "at the tightest point of the chain", call="slack"
    )
    chain_slack_stance: str | None = one(
        c.STANCE, "slack measured on", "how the bike stood when the slack was measured", call="stood"
    )
    chain_length: Quantity | None = one(
        Amount("length", "mm", 20, 1200, step=0.1),
        "chain over its links",
        "pin to pin over the links that the bike's manual measures",
    )
    did: str | None = one(
        Word("nothing", "noted"),
        "what the bike did",
        "asked on return: nothing that was not wanted, or noted under symptoms",
    )
    happened: str | None = one(
        Word("nothing", "noted"), "what happened", "asked on return: nothing, or noted under incidents"
    )
    times: str | None = one(
        Word(TYPED_AFTERWARDS, CLOCK_IN_DOUBT),
        "times",
        "where they were typed on a later day and no clock stamped them, or the clock was in doubt",
    )
    retired: dt.date | None = one(c.DAY, "retired", "hidden from lists since this date")
    setup: SetUp = table(SetUp, "set-up", carry=True)
    counted: Mapping[str, Counted] = tables(Counted, "counted", keyed_by="adjuster")
    because: Mapping[str, Mapping[str, o.Because]] = nested(
        o.Because, "changes", keyed_by="what and which", keys=("[a-z_]+", "[a-z0-9_.-]+")
    )
    dash: o.Dash = table(o.Dash, "dash as read")
    out: WentOutWith = table(WentOutWith, "as it went out")
    events: Mapping[str, r.Event] = tables(r.Event, "ignition and stops", keyed_by="number", keys=NUMBERED)
    race: r.Race = table(r.Race, "race")
    penalties: Mapping[str, r.Penalty] = tables(r.Penalty, "penalties", keyed_by="number", keys=NUMBERED)
    jobs: Mapping[str, Job] = tables(Job, "jobs before the start", keyed_by="job", keys=NAMED)
    corner_words: Mapping[str, str] = values(
        c.TEXT,
        "said of corners",
        "what was said of the corner with that number, to read before it is ridden again",
        keyed_by="corner number",
        keys=NUMBERED,
    )
    pressures: Mapping[str, o.PressureReading] = tables(o.PressureReading, "pressures", keyed_by="reading")
    laps: Mapping[str, Lap] = values(
        LapTime(), "laps", "lap times in the order ridden", keyed_by="number", keys=NUMBERED
    )
    sectors: Mapping[str, tuple[float, ...]] = values(
        Series(2, 9, "the sector times of a lap in s, in order"),
        "sectors",
        "sector times of the lap with that number",
        keyed_by="lap",
        keys=NUMBERED,
    )
    feel: o.Feel = table(o.Feel, "feel")
    symptoms: Mapping[str, o.Symptom] = tables(o.Symptom, "symptoms", keyed_by="number", keys=NUMBERED)
    notes: Mapping[str, o.SessionNote] = tables(o.SessionNote, "notes", keyed_by="number", keys=NUMBERED)
    look: Mapping[str, o.TyreLook] = tables(o.TyreLook, "tyre look", keyed_by="end", keys=ENDS)
    sag: Mapping[str, Mapping[str, o.SagReading]] = nested(
        o.SagReading, "sag", keyed_by="end and load", keys=(ENDS, "alone|rider")
    )
    incidents: Mapping[str, o.Incident] = tables(o.Incident, "incidents", keyed_by="number", keys=NUMBERED)
    work: Mapping[str, o.Work] = tables(o.Work, "work done", keyed_by="number", keys=NUMBERED)
    checks: Mapping[str, c.Check] = tables(c.Check, "checks of the session", keyed_by="checklist item")
    accepted: Mapping[str, Mapping[str, o.Acceptance]] = nested(
        o.Acceptance, "accepted", keyed_by="rule and subject", keys=("[a-z0-9-]+", "[a-z0-9_.-]+")
    )

    @property
    def lap_count(self) -> int:
        """The laps ridden: as counted, else those that were timed."""
        return laps_ridden(self.ridden_laps, len(self.laps))

    @functools.cached_property
    def is_ridden(self) -> bool:
        """Whether it was ridden: parked, a lap, or a hot pressure after it went out."""
        hot = self.pressures.get("hot")
        return was_ridden(
            parked=self.parked is not None,
            laps=bool(self.laps) or bool(self.ridden_laps),
            went_out=self.went_out is not None,
            hot=hot is not None and (hot.front is not None or hot.rear is not None),
        )


def is_ridden(session: Session) -> bool:
    """Return whether a session was ridden: asked of all earlier ones at each key, so told once of each."""
    return session.is_ridden


def was_done_back_in(session: Session, work: o.Work) -> bool:
    """Return whether work was done after a session came back, so that it was not ridden with yet."""
    return session.parked is not None and work.at is not None and work.at >= session.parked
