"""What slows the suspension and the bars: compression, rebound, steering damper."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import ARITHMETIC, PRACTICE, SAG, SHAKES

FIRMER, SOFTER = "firmer", "softer"

FRONT_COMPRESSION = Explanation(
    title="front compression",
    does=(
        "Slows the fork as it closes: on the brakes and rolling into a bend.",
        "It answers how quickly the fork moves, so it delays a dive and holds nothing up.",
    ),
    more=Direction(
        FIRMER,
        gives=Weighed("", "a slower dive, and support while the bike changes direction"),
        costs=Weighed(
            "less grip over small bumps and in the wet; ABS acts sooner on ripples", "a harsh front"
        ),
    ),
    less=Direction(
        SOFTER,
        gives=Weighed("grip over small bumps and in the wet", "feel"),
        costs=Weighed("it uses its travel sooner on a hard brake", "it dives and pitches quickly"),
    ),
    too_much="rigid, skating on ripples; the lever pulses where the road is rough",
    too_little="it dives at once and pitches",
    cannot=("hold the fork up on a long brake: only spring, preload and oil level do",),
    works_with="front spring, oil level and preload, which it can hide; front ABS",
    watch="after sag and rebound; one or two clicks, off the last two of its range; softer in the wet",
    source=(SAG, ARITHMETIC, PRACTICE),
)

REAR_COMPRESSION = Explanation(
    title="rear compression",
    does=(
        "Slows the shock as it closes: on power and over bumps.",
        "It answers how quickly the shock moves, so it delays a squat and holds nothing up.",
    ),
    more=Direction(
        FIRMER,
        gives=Weighed("", "a slower squat, so that the front stays down as the throttle opens"),
        costs=Weighed("less grip over small bumps and in the wet", "tyre heat; traction control is busy"),
    ),
    less=Direction(
        SOFTER,
        gives=Weighed("grip over small bumps and in the wet", "feel for the rear tyre"),
        costs=Weighed("it bottoms sooner over a crest", "it squats quickly and runs wide at first"),
    ),
    too_much="the rear slides flat on ripples and hurts in the seat",
    too_little="it squats at once and wallows",
    cannot=("hold the rear up on a long drive: only spring, preload and rear ride height do",),
    works_with="rear spring and preload, which it can hide; chain slack, where a tight chain stiffens the "
    "rear",
    watch="after sag and rebound; one or two clicks, off the last two of its range; softer in the wet",
    source=(SAG, ARITHMETIC, PRACTICE),
)


def _fast(end: str, what: str, through: str) -> Explanation:
    return Explanation(
        title=f"{end} compression, fast",
        does=(
            f"Slows the {what} when it is hit hard and closes quickly: a kerb, a sharp edge.",
            "Fast is how quickly it moves, not how quickly the bike goes.",
        ),
        more=Direction(
            FIRMER,
            gives=Weighed("it does not blow through its travel on a big hit", ""),
            costs=Weighed(
                "the wheel leaves the ground after an edge", f"the edge comes through the {through}"
            ),
        ),
        less=Direction(
            SOFTER,
            gives=Weighed("the wheel follows edges and kerbs", "comfort over them"),
            costs=Weighed("it bottoms on a big hit", ""),
        ),
        too_much="one bump, one kick",
        too_little="a clonk at the bottom of its travel",
        cannot=("cure harshness that comes from rebound so slow that it packs down",),
        works_with="slow compression and rebound, which feel the same on a row of bumps",
        watch="after slow compression; a quarter turn at a time from the middle",
        source=(SAG, PRACTICE),
    )


FRONT_FAST = _fast("front", "fork", "bars")
REAR_FAST = _fast("rear", "shock", "seat")

FRONT_REBOUND = Explanation(
    title="front rebound",
    does=(
        "Slows the fork as it extends again after a bump or when the brake is let go.",
        "It answers how quickly the fork moves; at a standstill it holds nothing.",
    ),
    more=Direction(
        FIRMER,
        gives=Weighed("no bounce, and a front that does not jump up as the brake is let go", "a calm front"),
        costs=Weighed(
            "over a row of bumps it sinks lower and harder each time, and the front can tuck",
            "heavy steering",
        ),
    ),
    less=Direction(
        SOFTER,
        gives=Weighed("the wheel follows hollows, also in the wet", "feel"),
        costs=Weighed("it bounces and floats", "the front pops up at brake release and the bike goes wide"),
    ),
    too_much="it comes up slowly after a push, and rides low and harsh",
    too_little="it swings more than once after a push",
    cannot=("change the height at rest, or cure a dead spring",),
    works_with="front preload (more of it asks for more rebound), hot oil (thinner), tyre pressure",
    watch="after preload, before compression; one or two clicks, judged hot; softer in the wet",
    source=(SAG, PRACTICE),
)

REAR_REBOUND = Explanation(
    title="rear rebound",
    does=(
        "Slows the shock as it extends again after a bump or when the throttle closes.",
        "It answers how quickly the shock moves; at a standstill it holds nothing.",
    ),
    more=Direction(
        FIRMER,
        gives=Weighed("the rear does not kick up after a bump or on the brakes", "a calm rear"),
        costs=Weighed(
            "over a row of bumps it sinks lower and harder each time, and the rear hops",
            "it runs wide on power",
        ),
    ),
    less=Direction(
        SOFTER,
        gives=Weighed("the wheel follows hollows, also in the wet", "rear grip over ripples"),
        costs=Weighed("the rear kicks up after a bump and lifts on the brakes", "it wallows"),
    ),
    too_much="it comes up slowly after a push; it hops over a row of bumps",
    too_little="it swings more than once after a push, and kicks",
    cannot=("change the height at rest, or cure a dead spring",),
    works_with="rear preload, engine braking (a hopping rear has both causes), hot oil (thinner), chain "
    "slack",
    watch="after preload, before compression; one or two clicks, judged hot; softer in the wet",
    source=(SAG, PRACTICE),
)


def _fast_rebound(end: str, what: str, kick: str) -> Explanation:
    return Explanation(
        title=f"{end} rebound, fast",
        does=(
            f"Slows the {what} as it comes back from a big hit: a kerb, a crest, a hole.",
            "Fast is how quickly it moves, not how quickly the bike goes; few dampers have it.",
        ),
        more=Direction(
            FIRMER,
            gives=Weighed(f"{kick} after a big hit", ""),
            costs=Weighed("after a row of hits the wheel is not back down in time: it rides low", ""),
        ),
        less=Direction(
            SOFTER,
            gives=Weighed("the wheel is back on the ground soon after a big hit", ""),
            costs=Weighed("it kicks up after a kerb or a crest", ""),
        ),
        too_much="low and harsh after a row of big bumps",
        too_little="one kick after a kerb or a crest, and then nothing",
        cannot=("be judged by pushing on the bike: no hand is that quick",),
        works_with="slow rebound, which does the most of it; preload and spring, which drive it back",
        watch="last of all adjusters, one step, from the middle; leave it where the technician put it",
        source=(PRACTICE,),
    )


FRONT_FAST_REBOUND = _fast_rebound("front", "fork", "the bars do not kick")
REAR_FAST_REBOUND = _fast_rebound("rear", "shock", "the rear does not throw the rider up")

STEERING_DAMPER = Explanation(
    title="steering damper",
    does=(
        "Resists how quickly the bars turn.",
        "Neither end is better: light lets the bars shake, firm makes the whole bike weave.",
    ),
    more=Direction(
        FIRMER,
        gives=Weighed(
            "it calms a shake of the bars and a landing with crossed bars", "calmer bars over ripples"
        ),
        costs=Weighed(
            "a slow snake at speed loses its damping", "heavy bars, slow counter-steering, tired arms"
        ),
    ),
    less=Direction(
        "lighter",
        gives=Weighed("a snake at speed dies out sooner", "light bars that tell what the front does"),
        costs=Weighed("the bars shake over ripples and out of corners", ""),
    ),
    too_much="a slow snake at speed; it will not hold a line",
    too_little="the bars flick on every exit",
    cannot=(
        "cure head bearings, tyre, wheel or frame out of line, or a rider who hangs on the bars",
        "stop a weave; a firmer damper can make it worse",
    ),
    works_with="head bearings, front tyre and geometry, which it hides; fork rebound",
    watch="lock to lock must stay free; away from its firmest two clicks; braking and downhill feed a shake",
    source=(SHAKES, f"amounts: {PRACTICE}"),
)
