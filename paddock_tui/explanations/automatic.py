"""What sets several things at once: riding mode, damping mode, preset; and trims on automatic damping."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import PRACTICE, SEMI_ACTIVE

RIDING_MODE = Explanation(
    title="riding mode",
    does=(
        "A bundle: it fixes some controls, holds others between limits and leaves the rest to you.",
        "Its name is no measure: what it does stands in the bike's file, and differs from bike to bike.",
    ),
    more=Direction(
        "a mode that fixes more",
        gives=Weighed("one act for wet or dry, and nothing forgotten among what it fixes", "less to set"),
        costs=Weighed(
            "some bundles leave out lean or the rear wheel's lift without a word", "less is yours to set"
        ),
    ),
    less=Direction(
        "a mode that fixes less",
        gives=Weighed("", "every control is yours"),
        costs=Weighed("every control is yours to forget", "more to set and to read on the dash"),
    ),
    too_much="the bike is dull, or cuts, and the level you turn does nothing",
    too_little="the bike is not as you left it after a press with a glove",
    cannot=("be judged as one number, or be carried over to another bike",),
    works_with="every aid: choose the mode first, then trim inside it",
    watch="read the dash again after every change of mode; most switch only with the throttle closed",
    source=(PRACTICE,),
)

DAMPING_MODE = Explanation(
    title="damping mode",
    does=(
        "By hand the clicks count; an automatic mode sets its valves by motor, some many times a second.",
        "What an automatic mode closes does nothing while it is in use.",
    ),
    more=Direction(
        "automatic",
        gives=Weighed(
            "less bottoming, and damping that follows what the bike does", "support where it is needed"
        ),
        costs=Weighed(
            "it can fall back to one fixed setting, and hides a wrong spring or sag", "you cannot count it"
        ),
    ),
    less=Direction(
        "by hand",
        gives=Weighed("it stays as it was set", "what you count is what you have"),
        costs=Weighed("one setting for everything", "more to set by hand between surfaces"),
    ),
    too_much="skips over ripples, numb hands",
    too_little="pitches, wallows, hits the stop",
    cannot=(
        "change springs, sag, heights, bad oil or worn bushes",
        "be counted in clicks while it is automatic",
    ),
    works_with="riding mode, which may change it; sag and springs, which it hides for a while",
    watch="after the ignition was off, after a change of mode, with a weak battery or a lit warning light",
    source=(SEMI_ACTIVE, PRACTICE),
)

PRESET = Explanation(
    title="preset",
    does=(
        "A named starting point of the damping: it brings values for what that damping mode sets.",
        "What those are stands in the bike's file, where somebody wrote them down.",
    ),
    more=Direction(
        "a firmer preset",
        gives=Weighed("less bottoming", "support on the brakes and on power"),
        costs=Weighed("less grip on ripples, in the wet and in the cold", "harsh; the tyre gets hotter"),
    ),
    less=Direction(
        "a softer preset",
        gives=Weighed("grip and feel over bumps and in the wet", ""),
        costs=Weighed("it can hit its stop", "it dives, squats and wallows"),
    ),
    too_much="skips over ripples; the tyre looks torn as if cold",
    too_little="pitches, wallows, is slow to change direction",
    cannot=("make up for a wrong spring or wrong sag",),
    works_with="pressure and sag first, then the preset, then its offsets one at a time",
    watch="a preset made for the dry in the wet",
    source=(SEMI_ACTIVE, PRACTICE),
)


def _offset(
    title: str,
    does: tuple[str, str],
    gains: tuple[str, str],
    losses: tuple[str, str],
    feels: tuple[str, str],
    cannot: str,
) -> Explanation:
    """Explain a trim: `gains` and `losses` are those of firmer, and of softer."""
    return Explanation(
        title=title,
        does=does,
        more=Direction("firmer (+)", Weighed("", gains[0]), Weighed(losses[0])),
        less=Direction("softer (-)", Weighed(gains[1]), Weighed("", losses[1])),
        too_much=feels[0],
        too_little=feels[1],
        cannot=(cannot,),
        works_with="the preset that it trims; sag and springs first",
        watch="one offset, one step; in the wet a step toward softer; most bikes count firmer as +, look "
        "at yours",
        source=(PRACTICE,),
    )


OFFSETS = {
    "braking": _offset(
        "offset on the brakes",
        (
            "Trims how firm the automatic damping holds the fork while you brake.",
            "Zero is the preset as built.",
        ),
        ("less dive, steadier on the brakes", "grip over bumps where you brake"),
        ("less grip over bumps in the braking zone; ABS acts sooner on ripples", "it dives"),
        ("the front skates or hops on the brakes", "it dives and can lift the rear"),
        "hold a long brake up: only the spring does",
    ),
    "drive": _offset(
        "offset on power",
        (
            "Trims how firm the automatic damping holds the rear while you drive.",
            "Zero is the preset as built.",
        ),
        ("a slower squat, the front stays down", "rear grip over bumps on the way out"),
        ("less rear grip over bumps; traction control is busy", "it squats, runs wide, lifts the front"),
        ("the rear slides flat and traction control cuts", "the rear digs in, then the bike runs wide"),
        "replace rear preload or the linkage",
    ),
    "mid-corner": _offset(
        "offset mid-corner",
        (
            "Trims how firm the automatic damping is while the bike leans without brake or throttle.",
            "Zero is the preset as built.",
        ),
        ("the bike keeps its height and line", "grip and feel leaned over"),
        ("ripples kick where you lean: the worst place to be harsh", "it wallows and finds its line late"),
        ("ripples kick while leaned", "it wallows through the corner"),
        "add grip to the tyre",
    ),
    "bumps": _offset(
        "offset over bumps",
        ("Trims how firm the automatic damping answers sharp hits.", "Zero is the preset as built."),
        ("settled on a smooth track", "kerbs and bumps are swallowed"),
        ("the wheel leaves the ground after a kerb", "the second bump meets a bike that still moves"),
        ("one bump, one kick", "the bike still moves when the next bump comes"),
        "replace travel that sag has used up",
    ),
    "front": _offset(
        "offset of the front",
        ("Trims how firm the automatic damping is at the front.", "Zero is the preset as built."),
        ("less dive and pitch", "front grip over bumps and in the wet"),
        ("less front grip over bumps and in the wet", "it dives and pitches"),
        ("the front skates over ripples", "the front dives and floats"),
        "change springs, preload or height",
    ),
    "rear": _offset(
        "offset of the rear",
        ("Trims how firm the automatic damping is at the rear.", "Zero is the preset as built."),
        ("less squat", "rear grip over bumps and in the wet"),
        ("less rear grip over bumps and in the wet", "it squats and wallows"),
        ("the rear slides flat over ripples", "the rear squats and wallows"),
        "change the spring, preload or height",
    ),
    "": _offset(
        "offset of automatic damping",
        (
            "Trims the automatic damping up or down from its preset.",
            "When it acts is not written in the bike's file.",
        ),
        ("support where it acts", "grip over bumps where it acts"),
        ("less grip over bumps where it acts", "more movement where it acts"),
        ("harsh where it acts", "loose where it acts"),
        "change springs, preload or height",
    ),
}
"""Explanations of the trims, by what the bike's file says they act on; without a name: not said."""
