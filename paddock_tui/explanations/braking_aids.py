"""What acts on the brakes and on a closed throttle: ABS, what a level of it may do, engine braking."""

from paddock_tui.explanations.drive_aids import LESS, MORE
from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import (
    ABS_LAMP,
    ARITHMETIC,
    LOCKED_WHEEL,
    PRACTICE,
    REAR_LIFT,
    STABILITY,
    STOPPING,
    TURN_BRAKING,
)

_PADS = "help with boiled fluid, thin pads or the wrong disc; nor shorten a stop in gravel or on wet leaves"

FRONT_ABS = Explanation(
    title="ABS at the front",
    does=(
        "Lets pressure out of the front brake and gives it back when the wheel slows too quickly.",
        "The wheel keeps turning, and a wheel that turns can still be steered.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "a panic grab in a straight line is less likely to lock the front: locked, it falls "
            "within half a second",
            "the confidence to use the front brake, above all in the wet; stops that differ less",
        ),
        costs=Weighed(
            "a stop in which it works all the way can be longer",
            "a pulsing lever and pressure let out over bumps in the braking zone",
        ),
    ),
    less=Direction(
        LESS,
        gives=Weighed(
            "", "a lever that tells more and does not pulse on bumps; deeper braking into the turn"
        ),
        costs=Weighed("it acts later, and a front that locks is down before you can let go", ""),
    ),
    too_much="the lever pulses at every marker and the brake is let out over ripples",
    too_little="the tyre chirps, and the front folds in the last of the braking",
    cannot=(
        "keep you up leaned over: plain ABS may not act before a leaned front goes",
        "keep the rear wheel down; that is another function, often on the same levels",
        _PADS,
    ),
    works_with="fork compression and oil level (a fork that bottoms sets it off), pressure, engine "
    "braking; it hides a first squeeze that is too abrupt",
    watch="a lit warning light means take it as off; bumps where you brake; after ignition off, after "
    "wheel work",
    source=(TURN_BRAKING, LOCKED_WHEEL, STOPPING, ABS_LAMP, f"amounts: {PRACTICE}"),
)

REAR_ABS = Explanation(
    title="ABS at the rear",
    does=(
        "Lets pressure out of the rear brake when the rear wheel slows too quickly.",
        "It counts most in the wet, where the rear carries more of the braking.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "the pedal is less likely to lock the rear, above all in the wet and while turning in", ""
        ),
        costs=Weighed("", "a pulsing pedal, and little rear brake over bumps or while the rear is light"),
    ),
    less=Direction(
        LESS,
        gives=Weighed("", "a steady pedal, and a rear that can be slid into a turn"),
        costs=Weighed("a rear that locks comes round, and throws you when it grips again sideways", ""),
    ),
    too_much="the pedal kicks whenever the rear is light",
    too_little="the rear steps out or chatters at the same marker each lap",
    cannot=(
        "free a wheel that the engine drags: only the clutch or less engine braking does that",
        "act while the wheel is in the air",
    ),
    works_with="engine braking (judge that first), the slipper clutch; it hides a hard right foot",
    watch="wet, strong engine braking and rear ABS off, all three: the classic way to lock the rear",
    source=(ARITHMETIC, f"amounts: {PRACTICE}"),
)

ABS = Explanation(
    title="ABS, front and rear in one",
    does=(
        "Lets pressure out of either brake and gives it back when its wheel slows too quickly.",
        "One control sets both ends; a level may also leave the rear, lean or the rear wheel's lift alone.",
    ),
    more=Direction(
        MORE,
        gives=Weighed(
            "a panic grab in a straight line is less likely to lock a wheel: a locked front falls "
            "within half a second",
            "the confidence to use the brakes, above all in the wet; stops that differ less",
        ),
        costs=Weighed(
            "a stop in which it works all the way can be longer",
            "pulsing lever and pedal, and pressure let out over bumps in the braking zone",
        ),
    ),
    less=Direction(
        LESS,
        gives=Weighed("", "a lever that tells more; braking deeper into the turn; a rear that can be slid"),
        costs=Weighed(
            "it acts later or not at all, and a front that locks is down before you can let go", ""
        ),
    ),
    too_much="the lever pulses at every marker and the brake is let out over ripples",
    too_little="the front chirps and folds, or the rear comes round, in the last of the braking",
    cannot=(
        "keep you up leaned over: plain ABS may not act before a leaned front goes",
        "free a rear wheel that the engine drags",
        _PADS,
    ),
    works_with="fork compression and oil level, pressure, engine braking; read in the manual what each "
    "level leaves out",
    watch="a lit warning light means take it as off; bumps where you brake; after ignition off, after "
    "wheel work",
    source=(TURN_BRAKING, LOCKED_WHEEL, STOPPING, ABS_LAMP, f"amounts: {PRACTICE}"),
)

LEAN = Explanation(
    title="a level that takes lean into account",
    does=(
        "Lowers how much brake pressure it allows, and how quickly, the further the bike leans.",
        "So braking in a bend stands the bike up less and asks less of a tyre that is already turning.",
    ),
    more=Direction(
        "takes lean into account",
        gives=Weighed(
            "a panic squeeze in a bend no longer ends at once; the bike keeps nearer to its line",
            "braking into the turn without a cliff at its end",
        ),
        costs=Weighed("", "a long or numb lever when braking hard into the turn"),
    ),
    less=Direction(
        "leaves lean out",
        gives=Weighed("", "later and deeper braking into the turn, for a practised rider"),
        costs=Weighed("the front can go in a bend before ABS acts at all", ""),
    ),
    too_much="pressure is let out as you tip in, and the bike runs on",
    too_little="the bars turn into the bend, the bike stands up and goes wide",
    cannot=(
        "change grip: near the last of the lean almost nothing is left for braking",
        "correct a speed that is wrong, or steer",
    ),
    works_with="front pressure and steering damper, which change how far the bike stands up",
    watch="levels for the track can leave it out without a word; a bent sensor bracket after a fall",
    source=(TURN_BRAKING, STABILITY, PRACTICE),
)

REAR_DOWN = Explanation(
    title="a level that holds the rear wheel down",
    does=(
        "Lets out front brake pressure when the rear wheel is about to leave the ground.",
        "It judges that from wheel speeds, pressures or the pitch of the bike.",
    ),
    more=Direction(
        "holds the rear down",
        gives=Weighed("going over the front is unlikelier, and the rear stays in line on the way in", ""),
        costs=Weighed("", "braking is held to what the rear allows, though the tyre could do more"),
    ),
    less=Direction(
        "leaves the rear alone",
        gives=Weighed("", "all the front brake, with a rear that dances"),
        costs=Weighed("the rear lifts, comes down out of line, or the bike goes over the front", ""),
    ),
    too_much="the brake seems to go away in the first hard metre, and the bike runs on",
    too_little="the rear lifts and comes down crossed",
    cannot=(
        "lower the centre of mass, or help a fork that bottoms",
        "allow as much downhill, where the rear lifts sooner",
    ),
    works_with="fork preload, spring and oil level, rear ride height and rebound, fuel, front ABS",
    watch="braking downhill; many levels give it up before they give up ABS",
    source=(REAR_LIFT, PRACTICE),
)

ENGINE_BRAKING = Explanation(
    title="engine braking",
    does=(
        "With the throttle closed it sets how hard the engine drags the rear wheel.",
        "Neither end is better: one drags the rear, the other lets the bike run on.",
    ),
    more=Direction(
        "less engine braking",
        gives=Weighed(
            "the rear is dragged less, so it hops and locks less in the wet, the cold and downhill",
            "corner speed, and a steadier rear while turning in",
        ),
        costs=Weighed("the bike runs on, and the front brake gets hotter", "less help to turn in"),
    ),
    less=Direction(
        "more engine braking",
        gives=Weighed("", "it helps to slow, settle and turn the bike"),
        costs=Weighed(
            "the rear hops or steps out on the way in, most on a wet or cold tyre",
            "less feel for the rear brake",
        ),
    ),
    too_much="it coasts past the apex and the brakes get hot",
    too_little="the rear skips and chirps at each change down, or comes round unasked",
    cannot=(
        "act on the front wheel, or with the clutch in or in neutral",
        "stand in for a slipper clutch, or fix a change down at too much speed",
    ),
    works_with="slipper clutch, quickshifter, rear rebound (a hopping rear has both causes), rear ABS, "
    "chain slack, the gear you choose",
    watch="wet, downhill, first gear, a cold rear tyre; bikes disagree on which number brakes more",
    source=(PRACTICE,),
)
