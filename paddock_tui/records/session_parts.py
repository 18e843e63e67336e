"""What is noted around one outing: readings, feel, symptoms, incidents, work, reasons."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.quantities import Quantity
from paddock_tui.records import answers as a
from paddock_tui.records import common as c
from paddock_tui.records.fields import one, values
from paddock_tui.records.shapes import Named, Setting, Whole, Word, WordList

SYMPTOMS = (
    "dives",
    "harsh on single bumps",
    "harsh on a series",
    "vague",
    "chatters",
    "tucks",
    "will not turn",
    "twitchy",
    "runs wide off the brake",
    "runs wide on power",
    "wallows",
    "kicks",
    "hops",
    "skips on the brakes",
    "loose on entry",
    "slides on drive",
    "traction cuts without slip",
    "wheelie cut kills drive",
    "lever pulses",
    "bars wobble",
    "weaves",
    "tyre goes off",
    "loose in the heat",
    "parts ground",
    "stands up on the brakes",
    "between gears",
    "on the limiter",
    "missed shifts",
    "no feel in the wet",
    "arms sore",
    "no change felt",
    "clutch slips",
    "engine cuts out",
    "front locks",
    "rear locks",
    "throttle sticks",
    "jumps out of gear",
    "pulls to one side",
    "vibrates",
    "traction lamp with slip",
    "brakes fade",
)
"""What a rider may feel, in fixed words so that it can be found again."""

DANGERS = ("front locks", "rear locks", "bars wobble", "weaves", "tucks")
"""What has a rider down: taken back at once where a step brought it."""

SYMPTOMS_ONCE = {"fades": "tyre goes off"}
"""Symptoms by the words that files held for them once: riders say of brakes that they fade."""

ANSWERS = (
    "overshoots",
    "settles",
    "creeps",
    "yes",
    "no",
    "closed throttle",
    "early downshift",
    "bumps",
    "smooth",
    "more",
    "fewer",
)
"""Answers to the questions that tell the causes of a symptom apart."""

LOOKS = (
    "fine balls",
    "cold tear",
    "hot tear",
    "step at the grooves",
    "patches at the grooves",
    "blueing",
    "flat centre",
    "cracks",
    "cord",
    "split",
    "below the marks",
    "new skin",
    "at the marks",
    "wear hole gone",
    "half-moons",
    "cut",
    "bubble",
    "nail",
)

INCIDENTS = (
    "fall",
    "unwell",
    "false neutral",
    "warning lamp",
    "leak",
    "practice starts",
    "off the track",
    "contact",
    "black flag",
    "refused by inspection",
    "mend by",
    "airbag fired",
    "helmet dropped",
    "missed markers",
)

CAUSES = (
    "first laps",
    "cold tyre",
    "landing a wheelie",
    "crest",
    "kerb",
    "gust",
    "limiter",
    "kill switch",
    "empty tank",
)
"""What a rider may name as the reason of what the bike did, so that it is no matter of the bike."""

LAMPS = ("ABS", "traction", "engine", "oil", "temperature", "other")

OFFS = ("kerb", "tarmac", "gravel", "grass", "barrier")
"""Where a bike left the track for."""

FLUIDS = (
    "oil",
    "coolant",
    "fuel",
    "brake fluid",
    "fork or shock weep",
    "overflow",
    "lube",
    "dew",
)
"""What may have come out, or stood there: the last three are no leak."""

WORK_DONE = (
    "wheel out",
    "caliper",
    "brake",
    "axle",
    "chain",
    "suspension",
    "oil",
    "filter",
    "plug",
    "sprocket",
    "pads",
    "yokes",
    "shift pattern",
    "workshop",
)
"""What was undone on the bike; workshop: it came back from one."""

SIGNS = ("heat", "thirst", "sleep", "headache", "fainted", "confused", "vomiting", "chest", "sight")
"""What somebody who is unwell may notice."""


@attrs.frozen
class Because:
    """Why something was changed, what was expected, and the rider's verdict afterwards."""

    why: str | None = one(c.TEXT, "why", "the reason for the change")
    expect: str | None = one(c.TEXT, "expect", "what it should do")
    verdict: str | None = one(
        Word("better", "same", "worse", "cannot tell"), "verdict", "the rider's own verdict"
    )


@attrs.frozen
class Dash:
    """The dash as read after the last ignition-on."""

    read: dt.time | None = one(c.CLOCK, "dash read at", "when the dash was read after the last ignition-on")
    by: str | None = one(c.TEXT, "dash read by", "initials of who read it")
    values: Mapping[str, Setting] = values(
        c.SETTING,
        "on the dash",
        "what the dash showed where it differs from the plan",
        keyed_by="control",
    )
    planned_mode: str | None = one(
        Named("one of the bike's riding modes"),
        "planned mode then",
        "the planned riding mode at the reading; another plan since undoes it",
    )
    shown_mode: str | None = one(
        Named("one of the bike's riding modes"),
        "riding mode, dash",
        "what the dash showed where it is not the planned one",
    )


@attrs.frozen
class PressureReading:
    """One reading of both tyre pressures, gauge, and what they were then set to."""

    at: dt.time | None = one(c.CLOCK, "at", "when it was read")
    front: Quantity | None = one(c.TYRE_PRESSURE, "front", "front tyre, gauge pressure")
    rear: Quantity | None = one(c.TYRE_PRESSURE, "rear", "rear tyre, gauge pressure")
    temperature: Quantity | None = one(
        c.TYRE_TEMPERATURE,
        "temperature",
        "of the air in the shade for a cold reading, of the tyre for a hot one",
    )
    gauge: str | None = one(c.TEXT, "gauge", "which gauge")
    set_to_front: Quantity | None = one(
        c.TYRE_PRESSURE,
        "front set to",
        "what the front was then set to; the cold setting of the set-up stays as it is",
    )
    set_to_rear: Quantity | None = one(c.TYRE_PRESSURE, "rear set to", "what the rear was then set to")


@attrs.frozen
class Feel:
    """Feel at five phases: 1 = holds me back, 3 = fine, 5 = could push more."""

    braking: int | None = one(c.SCORE, "braking", "1 = holds me back, 3 = fine, 5 = could push more")
    turning_in: int | None = one(c.SCORE, "turn-in", "1 = holds me back, 3 = fine, 5 = could push more")
    mid_corner: int | None = one(c.SCORE, "mid-corner", "1 = holds me back, 3 = fine, 5 = could push more")
    driving_out: int | None = one(c.SCORE, "exit, drive", "1 = holds me back, 3 = fine, 5 = could push more")
    straight: int | None = one(c.SCORE, "straight", "1 = holds me back, 3 = fine, 5 = could push more")


@attrs.frozen
class Symptom:
    """One thing the bike does, where and at which end."""

    what: str | None = one(
        Word(*SYMPTOMS, formerly=SYMPTOMS_ONCE), "what", "what it does, in one of the fixed phrases"
    )
    corner: str | None = one(c.TEXT, "corner", "the corner's number or name")
    end: str | None = one(Word("front", "rear"), "end", "which end")
    each_lap: str | None = one(Word("same", "differs"), "every lap", "the same every lap, or it differs")
    answer: str | None = one(
        Word(*ANSWERS), "answer", "what was found on the question that the next change asks about it"
    )
    grade: int | None = one(
        Whole(1, 3), "grade", "of shake, weave, tuck, lock: 1 noticed, 2 shut off for it, 3 nearly down"
    )
    cause: str | None = one(Word(*CAUSES), "named cause", "a reason that is no matter of the bike")
    found: str | None = a.found()
    done: str | None = a.done()
    test: str | None = a.test()
    by: str | None = a.by()
    on: dt.date | None = a.on()
    at: dt.time | None = one(c.CLOCK, "done at", "when it was done")


@attrs.frozen
class SessionNote:
    """A note with its time."""

    text: str | None = one(c.TEXT, "note", "anything worth keeping")
    at: dt.time | None = one(c.CLOCK, "at", "when it was written")


@attrs.frozen
class TyreLook:
    """What a tyre looked like."""

    seen: tuple[str, ...] | None = one(
        WordList("what was seen, in fixed phrases", LOOKS),
        "tyre look",
        "what was seen, in one or more of the fixed phrases",
    )
    at: dt.time | None = one(c.CLOCK, "at", "when it was looked at")
    answer: str | None = one(
        Word(*ANSWERS), "answer", "what was found on the question that the next change asks about it"
    )
    found: str | None = a.found()
    done: str | None = a.done()
    test: str | None = a.test()
    by: str | None = a.by()
    on: dt.date | None = a.on()
    done_at: dt.time | None = a.done_at()


@attrs.frozen
class SagReading:
    """Three lengths at one end: sag = extended - (pushed + lifted) / 2."""

    extended: Quantity | None = one(c.LENGTH, "extended", "fully extended: wheel off the ground")
    pushed: Quantity | None = one(c.LENGTH, "pushed", "pushed about 25 mm, let rise slowly")
    lifted: Quantity | None = one(c.LENGTH, "lifted", "lifted, let drop slowly")
    preload: float | None = one(c.ADJUSTER, "preload", "the preload adjuster at the time, in its own unit")
    fuel: Quantity | None = one(c.VOLUME, "fuel then", "litres in the tank")
    by: str | None = one(c.TEXT, "by whom", "initials of who measured")


@attrs.frozen
class Incident:
    """Something that happened, and what was done about it."""

    what: str | None = one(Word(*INCIDENTS), "what", "what happened")
    at: dt.time | None = one(c.CLOCK, "at", "when it happened")
    moving: bool | None = one(c.FLAG, "moving", "whether the bike was moving; a tip-over at standstill is no")
    count: int | None = one(
        Whole(1, 99), "how many", "how many times, for false neutrals and practice starts"
    )
    head_contact: bool | None = one(c.FLAG, "head contact", "whether the helmet touched anything")
    concussion: bool | None = one(
        c.FLAG, "concussion suspected", "headache, confusion, sickness, memory: blank counts as suspected"
    )
    lamp: str | None = one(Word(*LAMPS), "warning light", "which warning light was lit")
    note: str | None = one(c.TEXT, "note", "what happened, in your words")
    cleared_by: str | None = one(c.TEXT, "cleared by", "the doctor or medical post that cleared the rider")
    cleared_at: dt.time | None = one(c.CLOCK, "cleared at", "when the rider was cleared")
    helmet_replaced: bool | None = one(c.FLAG, "helmet replaced", "whether another helmet is worn now")
    at_fault: bool | None = one(c.FLAG, "own fault", "whether it was the rider's own; blank counts as own")
    inspected_again: dt.time | None = one(
        c.CLOCK, "inspected again", "when the bike passed inspection after this fall"
    )
    mended: str | None = one(
        c.TEXT, "repaired", "what was found and done, in one line; or both apart, beside it"
    )
    where: str | None = one(Word(*OFFS), "off into", "what the bike ran into or over, off the track")
    signs: tuple[str, ...] | None = one(
        WordList("what was noticed, in fixed words", SIGNS), "signs", "what somebody unwell noticed"
    )
    fluid: str | None = one(Word(*FLUIDS), "what leaked", "what came out; overflow, lube and dew are no leak")
    on_tyre: bool | None = one(
        c.FLAG, "on disc or tyre", "whether it reached a brake disc or a tyre; blank counts as yes"
    )
    lit: str | None = one(
        Word("before rolling", "wheel spun on the stand", "riding"), "lit when", "when the light was on"
    )
    off_after_key: bool | None = one(
        c.FLAG, "off after ignition", "whether the light stayed off after ignition off and on"
    )
    rearmed: bool | None = one(
        c.FLAG, "airbag re-armed", "new cartridge and self-test by its manual; the note says what was done"
    )
    due: dt.date | None = one(c.DAY, "due on", "the day by which inspection wants it fixed")
    shown_to: str | None = one(c.TEXT, "shown to", "who looked at it again: inspection, marshal")
    cleared_on: dt.date | None = one(
        c.DAY, "cleared on", "the date of that; left out: the date of the session"
    )
    found: str | None = a.found()
    done: str | None = a.done()
    test: str | None = a.test()
    by: str | None = a.by()
    on: dt.date | None = a.on()
    done_at: dt.time | None = a.done_at()


@attrs.frozen
class Work:
    """Work done on the bike that has to be checked afterwards."""

    what: str | None = one(Word(*WORK_DONE), "what", "what was undone; workshop: the bike came back from one")
    at: dt.time | None = one(c.CLOCK, "at", "when the work was done")
    end: str | None = one(Word("front", "rear"), "end", "which end, of a wheel, an axle or a caliper")
    torqued: bool | None = one(
        c.FLAG, "torqued", "tightened to the manual's figure, checked by a second person, marked"
    )
    pumped: bool | None = one(
        c.FLAG, "brakes pumped", "wheel spun, both brakes pumped until hard, tried at walking pace"
    )
    steering_free: bool | None = one(
        c.FLAG, "steering free", "turns freely lock to lock, nothing catches; after work on the yokes"
    )
    rechecked_hot: bool | None = one(
        c.FLAG, "checked again hot", "looked at again after running: no oil, paint marks where they were"
    )
    by: str | None = one(c.TEXT, "done by", "initials of who did it")
    checked_by: str | None = one(c.TEXT, "checked by", "initials of the second person who looked")
    second_look: dt.time | None = one(
        c.CLOCK, "second look", "alone: looked at a second time, ten minutes on or later"
    )
    found: str | None = a.found()
    done: str | None = a.done()
    test: str | None = a.test()
    on: dt.date | None = a.on()
    done_at: dt.time | None = a.done_at()


@attrs.frozen
class Acceptance:
    """A serious finding that the rider rides with, and why."""

    reason: str | None = one(c.TEXT, "reason", "why it is ridden with")
    by: str | None = one(c.TEXT, "accepted by", "the rider's initials, else the login")
    at: dt.time | None = one(c.CLOCK, "accepted at", "when it was accepted")
    facts: str | None = one(c.TEXT, "facts", "the facts at the time; it holds while they are the same")
