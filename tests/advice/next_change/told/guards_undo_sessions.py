"""Guards of taking back a step: what has to be known of the two sessions."""

from tests.advice.next_change.told.given import (
    AUTOMATIC,
    FROM,
    Guard,
    last,
    setup,
    situation_of,
    turned,
)
from tests.advice.next_change.told.steps import FIRMER, HARSH, SOFTER, STEP, TWO_LAPS, UNDONE, taken_back
from tests.rules.situations import put

SESSIONS = [
    Guard(
        "a step is known by the session before it",
        "no ridden session is on record that this one was copied from",
        situation_of(
            "copied from nothing", "table", "CHANGE", turned(front_compression=8), HARSH, puts=SOFTER
        ),
        taken_back,
    ),
    Guard(
        "a step that changed nothing that acts",
        "nothing that acts was changed for this session",
        situation_of("the same again, harsh", "table", "CHANGE", FROM, HARSH, puts=FIRMER),
        taken_back,
    ),
    Guard(
        "a step of adjusters that the damping mode closes",
        "nothing that acts was changed for this session",
        situation_of(
            "a step of a closed adjuster",
            "table",
            "CHANGE",
            *AUTOMATIC,
            *STEP,
            puts={"offsets.front": -1},
            history=last(setup=setup(damping="automatic", offsets={"front": 0, "drive": 0})),
        ),
        taken_back,
    ),
    Guard(
        "the same surface",
        "the surface was another one",
        situation_of(
            "a step out of the wet", "table", "CHANGE", *STEP, puts=SOFTER, history=last(surface="wet")
        ),
        taken_back,
    ),
    Guard(
        "a track as warm",
        "the track was more than 8 C warmer or colder",
        situation_of("a step, 9 C warmer", "table", "CHANGE", *STEP, puts=SOFTER, history=last(track="15 C")),
        situation_of("a step, 8 C warmer", "undo", "CHANGE", *STEP, puts=UNDONE, history=last(track="16 C")),
    ),
    Guard(
        "never back into a danger",
        "the set-up before had a danger of its own (weaves)",
        situation_of(
            "before the step it weaved",
            "table",
            "CHANGE",
            *STEP,
            puts=SOFTER,
            history=last(did="noted", symptoms__1={"what": "weaves"}),
        ),
        situation_of(
            "before the step it was vague",
            "undo",
            "CHANGE",
            *STEP,
            puts=UNDONE,
            history=last(did="noted", symptoms__1={"what": "vague", "end": "front"}),
        ),
    ),
    Guard(
        "enough laps after the step",
        "2 clean laps: too few to tell what the step did",
        situation_of("two laps after a step", "none", "SAME", *STEP, put("session", "laps", TWO_LAPS)),
        situation_of(
            "three laps after a step",
            "undo",
            "CHANGE",
            *STEP,
            put("session", "laps", {**TWO_LAPS, "3": "1:45.300"}),
            puts=UNDONE,
        ),
    ),
    Guard(
        "enough laps before the step",
        "the session before was too short to tell",
        situation_of(
            "two laps before a step",
            "table",
            "CHANGE",
            *STEP,
            puts=SOFTER,
            history=last(laps=TWO_LAPS),
        ),
        situation_of(
            "three laps before a step",
            "undo",
            "CHANGE",
            *STEP,
            puts=UNDONE,
            history=last(laps={**TWO_LAPS, "3": "1:45.300"}),
        ),
    ),
    Guard(
        "the session before was debriefed in words that are known",
        "something was noted in the session before, and is not written down as a symptom",
        situation_of(
            "before the step something was noted",
            "table",
            "CHANGE",
            *STEP,
            puts=SOFTER,
            history=last(did="noted"),
        ),
        taken_back,
    ),
    Guard(
        "new since the step",
        "harsh on single bumps was there before the step too",
        situation_of(
            "harsh before the step too",
            "table",
            "CHANGE",
            *STEP,
            puts=SOFTER,
            history=last(did="noted", symptoms__1={"what": "harsh on single bumps", "end": "front"}),
        ),
        taken_back,
    ),
]
