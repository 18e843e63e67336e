"""What is on, off or armed: launch, quickshifter, pit limiter; and controls of which nothing is known."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import PRACTICE, WORLD_RULES

LAUNCH = Explanation(
    title="launch control",
    does=(
        "With the clutch in it holds the engine at a set speed, and takes torque away while the bike leaves.",
        "It ends by itself at a speed, a gear or a lean that the maker chose.",
    ),
    more=Direction(
        "armed",
        gives=Weighed("looping at the one moment when everybody is near is unlikelier", "similar starts"),
        costs=Weighed(
            "held engine speed is a surprise wherever it is armed by mistake",
            "heat in the clutch; too strong a level bogs",
        ),
    ),
    less=Direction(
        "off",
        gives=Weighed("nothing is held where you do not expect it", ""),
        costs=Weighed("", "clutch, spin and front wheel are yours alone at a start"),
    ),
    too_much="it bogs and the row behind comes past",
    too_little="the front comes up, the rear spins, the bike swerves",
    cannot=(
        "work the clutch, or spare it",
        "see a rider who stalls in front of you, or do anything beyond its end speed",
    ),
    works_with="wheelie and traction control (their levels still count on most bikes), gearing, a warm "
    "rear tyre",
    watch="arm it only for a race start or a declared practice, and look that it is off after the first lap",
    source=(PRACTICE,),
)

SHIFTER = Explanation(
    title="quickshifter",
    does=(
        "Feels the load on the lever and cuts torque for a moment, so that you change up without the clutch.",
        "For a change down it raises the revs instead, and refuses where that would over-rev the engine.",
    ),
    more=Direction(
        "on, both ways",
        gives=Weighed(
            "both hands stay on the bars and the bike stays settled, leaned over too",
            "changes without closing the throttle",
        ),
        costs=Weighed(
            "a refused change down is a missing gear; a false neutral can follow half a kick", "wear"
        ),
    ),
    less=Direction(
        "up only, or off",
        gives=Weighed("the clutch is in your hand where grip is poor", "you keep the habit of the clutch"),
        costs=Weighed("a change down that is badly matched drags the rear", "each change takes longer"),
    ),
    too_much="it changes at a touch, over a kerb too",
    too_little="it needs a kick, crunches, or lurches through a long cut",
    cannot=(
        "change well at very low revs, with a foot left on the lever, or against the throttle's direction",
        "stop a change down that comes too early for the grip, nor heal a worn gearbox",
    ),
    works_with="lever height and linkage first; engine braking and slipper clutch on the way down",
    watch="leaned over in the wet; after two false neutrals use the clutch and have it looked at",
    source=(PRACTICE,),
)

PIT_LIMITER = Explanation(
    title="pit limiter",
    does=(
        "While it is on it holds the bike at a set speed, or at a set engine speed in one gear.",
        "The figure that counts is the organiser's, on the day.",
    ),
    more=Direction(
        "on",
        gives=Weighed("people in the lane meet the speed that they expect", "no penalty"),
        costs=Weighed("left on at the exit it is a slow bike on a live track", ""),
    ),
    less=Direction(
        "off",
        gives=Weighed("nothing holds the bike back by surprise", ""),
        costs=Weighed(
            "in the lane your eye and the speedometer do the work", "a penalty for a moment too much"
        ),
    ),
    too_much="held back after the exit line",
    too_little="over the limit although it is on",
    cannot=(
        "brake, or hold the bike downhill with the clutch in",
        "know the day's limit, or do anything at a line where it was not armed",
    ),
    works_with="tyre size and gearing, where it goes by engine speed: it drifts with both",
    watch="press it before the line, let it go past the exit line, and try it on a quiet lap",
    source=(WORLD_RULES, PRACTICE),
)

OTHER = Explanation(
    title="a control of another kind",
    does=(
        "What this control does is not written in the bike's file, so nothing is said of it here.",
        "The bike's manual says it; give it a function in the bike's file where one fits.",
    ),
    more=Direction("toward its last value", Weighed(), Weighed()),
    less=Direction("toward its first value", Weighed(), Weighed()),
    too_much="not known",
    too_little="not known",
    cannot=("be judged by this tool while it has no function",),
    works_with="not known",
    watch="what it does to the other aids",
    source=("the bike's manual",),
)
