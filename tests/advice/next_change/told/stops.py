"""Situations in which nobody goes out."""

from tests.advice.next_change.cases import felt, hot
from tests.advice.next_change.told.given import FELL, adjuster, incident, situation_of
from tests.rules.situations import put

STOPS = [
    situation_of("lever to the bar", "stop", "MEND", put("session", "lever", "to the bar"), felt("dives")),
    situation_of("lever spongy hot", "stop", "MEND", put("session", "lever", "spongy hot")),
    situation_of("brakes fade", "stop", "MEND", felt("brakes fade")),
    situation_of("throttle sticks", "stop", "MEND", felt("throttle sticks"), hot("2.70 bar", "2.20 bar")),
    situation_of("engine cuts out", "stop", "MEND", felt("engine cuts out")),
    situation_of("clutch slips", "stop", "MEND", felt("clutch slips")),
    situation_of("jumps out of gear", "stop", "MEND", felt("jumps out of gear")),
    situation_of("a leak", "stop", "MEND", incident(what="leak")),
    situation_of("oil lamp", "stop", "MEND", incident(what="warning lamp", lamp="oil")),
    situation_of(
        "fall not inspected", "stop", "MEND", incident(what="fall", moving=True, head_contact=False)
    ),
    situation_of("head contact", "stop", "REST", incident(**{**FELL, "head_contact": True})),
    situation_of("fainted", "stop", "REST", incident(what="unwell", signs=["fainted"])),
    situation_of("spent", "stop", "REST", put("session", "fatigue", 5), felt("dives")),
    situation_of("two falls", "stop", "REST", put("session", "incidents", {"1": FELL, "2": FELL})),
    situation_of("one fall, inspected", "none", "SAME", put("session", "incidents", {"1": FELL})),
    situation_of(
        "fatigue of three",
        "table",
        "CHANGE",
        put("session", "fatigue", 3),
        felt("dives"),
        puts=adjuster("front-compression", 10),
    ),
]
