"""Guards about what was tried, what helped, and what is worth settling."""

import attrs

from paddock_tui.facts.past import History
from tests.advice.next_change.cases import BEFORE, felt, sag
from tests.advice.next_change.told.given import (
    AUTOMATIC,
    FROM,
    PARKED,
    Guard,
    adjuster,
    last,
    setup,
    several,
    situation_of,
    there_and_back,
    timetable,
    turned,
)
from tests.advice.next_change.told.steps import FIRMER, HARSH, SOFTER, STEP, UNDONE
from tests.rules.situations import Change, put, went_before

CALLED = {"because": {"adjusters": {"front-compression": {"verdict": "worse"}}}}
BETTER = {"because": {"adjusters": {"front-compression": {"verdict": "better"}}}}

TRIED = [
    Guard(
        "what made it worse here is not done again",
        "tried that way here before and called worse",
        situation_of(
            "softer was worse here",
            "none",
            "SAME",
            HARSH,
            history=last(setup=setup(front_compression=14), copied_from="before-2", **CALLED),
        ),
        situation_of(
            "softer was worse to another rider",
            "table",
            "CHANGE",
            HARSH,
            puts=FIRMER,
            history=last(setup=setup(front_compression=14), copied_from="before-2", rider="bo", **CALLED),
        ),
    ),
    Guard(
        "what helped here is not taken back",
        "it would take back what helped here",
        situation_of(
            "firmer helped here",
            "none",
            "SAME",
            HARSH,
            history=last(setup=setup(front_compression=8), copied_from="before-2", **BETTER),
        ),
        situation_of(
            "softer helped here",
            "table",
            "CHANGE",
            HARSH,
            puts=FIRMER,
            history=last(setup=setup(front_compression=14), copied_from="before-2", **BETTER),
        ),
    ),
]

BOTH = {
    "setup": setup(front_compression=14, front_rebound=10),
    "copied_from": "before-2",
}
EASY = put("session", "laps", {str(number): f"1:43.{number}00" for number in range(1, 7)})
REBOUND: tuple[Change, ...] = (FROM, turned(front_rebound=10), EASY)
HELPED = there_and_back(2.2)
HELP = attrs.evolve(HELPED, past=HELPED.past[:3])
FROM_THIRD = put("session", "copied_from", HELPED.past[2].id)
KNOWN_HELP: tuple[Change, ...] = (FROM_THIRD, turned(front_compression=8))

UNFELT: tuple[Change, ...] = (FROM, turned(front_compression=14), felt("no change felt"))


def unfelt(**more: object) -> History:
    """Give the session before, whose step on the same adjuster was not felt either."""
    before = setup(front_compression=13, **more)
    return last(copied_from="before-2", did="noted", symptoms__1={"what": "no change felt"}, setup=before)


BASE = [
    Guard(
        "a closed adjuster is not turned back to base",
        "front compression does nothing in damping mode automatic",
        situation_of(
            "a closed adjuster turned twice",
            "none",
            "SAME",
            *AUTOMATIC,
            *UNFELT,
            history=unfelt(),
        ),
        situation_of("an adjuster turned twice", "base", "CHANGE", *UNFELT, puts=UNDONE, history=unfelt()),
    ),
    Guard(
        "what helped is not turned back to base",
        "it helped here (called better, this session)",
        situation_of(
            "not felt, and yet called better",
            "none",
            "SAME",
            *UNFELT,
            put("session", "because", BETTER["because"]),
            history=unfelt(),
        ),
        situation_of(
            "not felt, and called nothing", "base", "CHANGE", *UNFELT, puts=UNDONE, history=unfelt()
        ),
    ),
    Guard(
        "preload that helped is not turned back for a sag",
        "it helped here (called better, before-3)",
        situation_of(
            "less preload was better, too much sag",
            "table",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            puts=SOFTER,
            history=went_before(
                BEFORE,
                {**BEFORE, "setup": setup(front_preload=8)},
                {
                    **BEFORE,
                    "copied_from": "before-2",
                    "because": {"adjusters": {"front-preload": {"verdict": "better"}}},
                },
            ),
        ),
        situation_of(
            "more preload was better, too much sag",
            "sag",
            "CHANGE",
            felt("dives"),
            sag("front", 43.0),
            puts=adjuster("front-preload", 14),
            history=went_before(
                BEFORE,
                {**BEFORE, "setup": setup(front_preload=4)},
                {
                    **BEFORE,
                    "copied_from": "before-2",
                    "because": {"adjusters": {"front-preload": {"verdict": "better"}}},
                },
            ),
        ),
    ),
]

SETTLED = [
    Guard(
        "only the last step goes back",
        "",
        situation_of(
            "two steps, one after the other",
            "undo",
            "CHANGE",
            FROM,
            turned(front_compression=8, front_rebound=10),
            HARSH,
            puts=adjuster("front-compression", 14),
            history=last(**BOTH),
        ),
        situation_of(
            "two things in one step",
            "undo",
            "CHANGE",
            FROM,
            turned(front_compression=8, front_rebound=10),
            HARSH,
            puts={**UNDONE, "adjusters.front-rebound": 12},
        ),
    ),
    Guard(
        "one end at a time",
        "",
        situation_of(
            "too much sag at both ends",
            "sag",
            "CHANGE",
            several({"what": "dives"}, {"what": "runs wide on power"}),
            put("session", "sag", {end: {"rider": sag(end, 42.0)[2]} for end in ("front", "rear")}),
            puts=adjuster("front-preload", 14),
        ),
        situation_of(
            "too much sag at the rear alone",
            "sag",
            "CHANGE",
            several({"what": "dives"}, {"what": "runs wide on power"}),
            sag("rear", 42.0),
            puts=adjuster("rear-preload", 8),
        ),
    ),
    Guard(
        "what going there and back called a help is asked about first",
        "it helped in session before-3",
        situation_of(
            "harsh since a help", "undo", "ASK", *KNOWN_HELP, HARSH, asks="symptoms.1.answer", history=HELP
        ),
        situation_of("harsh since a step not yet known", "undo", "CHANGE", *STEP, puts=UNDONE),
    ),
    Guard(
        "a help that the rider keeps",
        "harsh on single bumps: the step helped here, and you keep it",
        situation_of(
            "harsh, and the help kept",
            "none",
            "SAME",
            *KNOWN_HELP,
            felt("harsh on single bumps", "no"),
            history=HELP,
        ),
        situation_of(
            "harsh, and the help taken back",
            "undo",
            "CHANGE",
            *KNOWN_HELP,
            felt("harsh on single bumps", "yes"),
            puts=UNDONE,
            history=HELP,
        ),
    ),
    Guard(
        "a danger goes before a help, and that is said",
        "it helped in session before-3, but a danger came with it",
        situation_of(
            "a shake since a help",
            "danger",
            "CHANGE",
            *KNOWN_HELP,
            felt("bars wobble"),
            puts=UNDONE,
            history=HELP,
        ),
        situation_of(
            "a shake since a step not yet known",
            "danger",
            "CHANGE",
            *STEP[:2],
            felt("bars wobble"),
            puts=UNDONE,
        ),
    ),
    Guard(
        "nothing is settled in the last two outings",
        "",
        situation_of("two outings left", "none", "SAME", *REBOUND, *timetable(10, 12, 13), now=PARKED),
        situation_of("three outings left", "none", "SAME", *REBOUND, *timetable(12, 13, 14), now=PARKED),
        "to settle front rebound 12 -> 10 clicks (firmer): 1 of the 3 outings left, without it",
    ),
    Guard(
        "nothing is settled that brought a danger",
        "",
        situation_of(
            "three outings left, and a weave",
            "danger",
            "CHANGE",
            *REBOUND,
            felt("weaves"),
            *timetable(12, 13, 14),
            puts=adjuster("front-rebound", 12),
            now=PARKED,
        ),
        situation_of(
            "three outings left, and arms",
            "none",
            "SAME",
            *REBOUND,
            felt("arms sore"),
            *timetable(12, 13, 14),
            now=PARKED,
        ),
        "to settle front rebound 12 -> 10 clicks (firmer): 1 of the 3 outings left, without it",
    ),
]
