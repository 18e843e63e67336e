"""Aids that act while the engine drives: traction, slide and wheelie control, throttle and power."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import ARITHMETIC, PRACTICE, REAR_SLIP, SIDE_SLIP, STABILITY

MORE, LESS = "more help", "less help"

TRACTION = Explanation(
    title="traction control",
    does=(
        "Compares the speed of the rear wheel with that of the front and watches how it grows.",
        "Where the rear runs ahead too far under power it takes engine torque away.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "a clumsy hand, paint or a cold rear tyre under power is caught earlier and more gently",
            "you can open the throttle a little earlier; the rear tyre lasts longer",
        ),
        costs=Weighed(
            "trust in it grows quicker than what it can do; a hard cut leaned over sits the bike up",
            "drive out of corners; the engine stutters where nothing was about to slide",
        ),
    ),
    less=Direction(
        LESS,
        gives=Weighed("", "drive, a rear that tells you where the limit is, steering with the throttle"),
        costs=Weighed(
            "less is caught and later: the rear steps out and grips again with a snap, which throws riders",
            "the rear tyre gets hotter and wears sooner",
        ),
    ),
    too_much="it cuts on every exit, flat or stuttering; the bike runs wide for want of drive",
    too_little="the rear steps out and snaps back, spins up over crests and paint, leaves black lines",
    cannot=(
        "add grip, or know that the tyre is cold or the track oily before the wheel slips",
        "save a front that is lost, nor a rear that is lost with the throttle closed",
        "work right with a tyre of a size or wear that it has not learnt",
    ),
    works_with="throttle and power (a soft map leaves it less to do), wheelie and slide control (the "
    "stronger hides the weaker), rear pressure; it hides a worn rear tyre",
    watch="first laps, after a break, new or worn tyre, wet or drying, crests, kerbs and tar seams",
    source=(REAR_SLIP, STABILITY, f"amounts: {PRACTICE}"),
)

SLIDE = Explanation(
    title="slide control",
    does=(
        "Judges from lean and turning how far the rear steps out sideways under power.",
        "Beyond what it allows it takes drive away; it estimates the slide, it does not measure it.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "slides under power are fewer and smaller, and so are high-sides out of them",
            "more throttle while leaned",
        ),
        costs=Weighed("", "drive in long corners; the bike will not be turned with the rear"),
    ),
    less=Direction(
        LESS,
        gives=Weighed("", "the rear helps to turn the bike, with drive in long corners"),
        costs=Weighed(
            "a wider angle before help comes, and a harder snap when the tyre grips again", "tyre wear"
        ),
    ),
    too_much="leaned over the engine feels weak, and mid-exit the front pushes on",
    too_little="the rear hangs out longer than you steer for",
    cannot=(
        "act on a slide with the throttle closed or on the brakes",
        "save the front; a big slide that is cut short can be what makes the tyre snap back",
        "judge right after a fall or with its lean sensor moved",
    ),
    works_with="traction control, which cuts the same torque: where that is high this one never speaks, "
    "so judge traction first",
    watch="wet, a cold shoulder of the tyre, and after any fall",
    source=(SIDE_SLIP, f"amounts: {PRACTICE}"),
)

WHEELIE = Explanation(
    title="wheelie control",
    does=(
        "Sees the front wheel leave the ground from its speed, the pitch of the bike or the fork.",
        "It then cuts or limits engine torque until the front is down again.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "the front stays down or lands early, so that it can be steered; going over backwards "
            "is unlikelier",
            "even drive for a rider who would otherwise shut the throttle",
        ),
        costs=Weighed(
            "an abrupt cut drops the front hard",
            "drive on every hard exit and over every crest; the bike pitches",
        ),
    ),
    less=Direction(
        LESS,
        gives=Weighed("", "the hardest drive there is: a front just off the ground"),
        costs=Weighed(
            "the front climbs before help comes; landing with the bars turned shakes them, and it can loop",
            "a rider who shuts off loses more than the cut would cost",
        ),
    ),
    too_much="it bogs or hops along in second and third gear",
    too_little="the front climbs, you roll off, and the bars wag as it lands",
    cannot=(
        "keep the front down over a crest, or when the clutch lifts it",
        "keep the bars straight, or stand in for weight moved forward",
    ),
    works_with="gearing (shorter lifts more), rear preload and height, launch, traction control (the "
    "stronger hides the weaker); it hides a rear that sits down",
    watch="crests, uphill exits, after a change of sprockets, and when launch is armed",
    source=(ARITHMETIC, f"amounts: {PRACTICE}"),
)

THROTTLE = Explanation(
    title="throttle response",
    does=(
        "Sets how turning the grip becomes engine torque.",
        "It changes how the bike answers; with the grip fully open there is seldom less power.",
    ),
    more=Direction(
        "softer",
        gives=Weighed(
            "small errors of the hand stay small, and bumps do not jerk the bike",
            "an even throttle is easier to hold leaned over, in the wet and with tired wrists",
        ),
        costs=Weighed(
            "an answer that comes late can come all at once", "later pick-up and more turning of the wrist"
        ),
    ),
    less=Direction(
        "sharper",
        gives=Weighed("", "pick-up at once; the line can be held with the throttle"),
        costs=Weighed("a snatch at the first touch while leaned, and every bump becomes throttle", ""),
    ),
    too_much="nothing, nothing, then a rush; you are late on the throttle",
    too_little="on and off like a switch mid-corner, and traction control cuts at the first touch",
    cannot=(
        "limit power once the grip is open, or stop wheelspin",
        "cure a slack chain, a slack cable or poor fuelling, which feel the same",
    ),
    works_with="chain slack (both snatch: slack first), traction control, power, engine braking",
    watch="the first touch of throttle on a wet track; change it standing or with the throttle closed",
    source=(PRACTICE,),
)

POWER = Explanation(
    title="power",
    does=(
        "Limits or shapes engine torque, often gear by gear.",
        "A softer map has less to give, so that every other aid has less to catch.",
    ),
    more=Direction(
        "softer",
        gives=Weighed("less wheelspin, fewer wheelies, a calmer bike", "tyre, fuel and forearms last longer"),
        costs=Weighed("", "speed on the straights; the gearing feels long"),
    ),
    less=Direction(
        "fuller",
        gives=Weighed("", "all the engine has"),
        costs=Weighed(
            "everything arrives sooner and harder, and the brakes get more to do", "tyre and fuel go sooner"
        ),
    ),
    too_much="the gearing feels long and the bike is passed on every straight",
    too_little="you change up early, roll off on the straight, and the aids are busy",
    cannot=(
        "stop a slide at small throttle, or make a cold tyre grip",
        "change engine braking, unless the bike couples the two",
    ),
    works_with="traction and wheelie control, gearing, launch; the fuel plan changes with it; it hides "
    "gearing that does not fit",
    watch="a map for the dry left on in the wet",
    source=(PRACTICE,),
)
