"""Gearing, chain and starting pressures."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import ARITHMETIC, CHAIN, GAS, PRACTICE


def _sprocket(title: str, first: str, more: str, less: str) -> Explanation:
    return Explanation(
        title=title,
        does=(first, "Speed in each gear and pull in each gear are traded for each other."),
        more=Direction(
            more,
            gives=Weighed("", "more pull in every gear"),
            costs=Weighed(
                "the front lifts sooner and the engine brakes harder", "top speed; more gear changes"
            ),
        ),
        less=Direction(
            less,
            gives=Weighed(
                "calmer on the throttle, and the engine brakes less", "top speed, fewer gear changes"
            ),
            costs=Weighed("", "less pull out of corners"),
        ),
        too_much="the limiter comes before the brake point, and the front comes up",
        too_little="it never reaches its top, and bogs in the corners that matter",
        cannot=("add power, or change how traction control judges slip: it compares wheel speeds",),
        works_with="wheelie control, engine braking, launch, a limiter by engine speed, wheelbase and "
        "rear ride height",
        watch="chain slack at its tightest point, axle torque and the links after it; between sessions only",
        source=(ARITHMETIC, PRACTICE),
    )


FRONT_SPROCKET = _sprocket(
    "front sprocket",
    "The teeth on the gearbox: fewer make the gearing shorter.",
    "fewer teeth: shorter",
    "more teeth: taller",
)
REAR_SPROCKET = _sprocket(
    "rear sprocket",
    "The teeth on the wheel: more make the gearing shorter.",
    "more teeth: shorter",
    "fewer teeth: taller",
)

LINKS = Explanation(
    title="chain links",
    does=(
        "The length of the chain, which with the sprockets sets where the rear axle stands.",
        "It comes in steps of a whole pair of links; slack is set by the axle in between.",
    ),
    more=Direction(
        "longer",
        gives=Weighed("", "room for larger sprockets; a longer wheelbase is calmer"),
        costs=Weighed("too long for its adjuster it cannot be tightened", "slower to turn"),
    ),
    less=Direction(
        "shorter",
        gives=Weighed("", "a shorter wheelbase turns sooner"),
        costs=Weighed("too short it is too tight at full squat", "the front lifts sooner"),
    ),
    too_much="the axle stands at the end of its adjuster and the chain still hangs",
    too_little="the axle stands at the front and the chain is tight",
    cannot=("be made right by stretching the slack beyond what the manual gives",),
    works_with="both sprockets, rear ride height, wheelbase",
    watch="a riveted or clipped link is looked at again after the first ride",
    source=(CHAIN, PRACTICE),
)

CHAIN_SLACK = Explanation(
    title="chain slack",
    does=(
        "How far the chain moves up and down at its tightest point.",
        "The rear wheel needs it: the chain is at its tightest when gearbox, pivot and axle are in line.",
    ),
    more=Direction(
        "more slack",
        gives=Weighed("bearings and shock stay free", ""),
        costs=Weighed("it slaps and can jump a tooth", "a snatch between drive and coasting"),
    ),
    less=Direction(
        "less slack",
        gives=Weighed("", "less snatch on and off the throttle"),
        costs=Weighed("too tight it binds the shock, wears bearings and can break", "a stiff rear on power"),
    ),
    too_much="a snatch at every touch of throttle",
    too_little="a rear that is stiff under power though its clicks are not",
    cannot=("be right at one place only: turn the wheel and measure at the tightest",),
    works_with="rear damping (a tight chain is a stiff shock) and throttle response (both snatch)",
    watch="after wheel, sprocket, chain or rear ride height work; the manual's figure, on the stand it names",
    source=(CHAIN, PRACTICE),
)


def _start(end: str) -> Explanation:
    return Explanation(
        title=f"{end} start pressure",
        does=(
            "The cold pressure from which the tyre warms up to the pressure that it is ridden at.",
            "The hot pressure is what counts; this one is chosen so that it is met.",
        ),
        more=Direction(
            "more pressure",
            gives=Weighed("", "the tyre moves less and stays cooler inside"),
            costs=Weighed(
                "a smaller contact patch: it skitters and slides early", "the tread tears as if cold"
            ),
        ),
        less=Direction(
            "less pressure",
            gives=Weighed("a larger contact patch, where it is not too low", "the tyre warms up sooner"),
            costs=Weighed(
                "it overheats, moves about, and an edge can reach the rim", "it goes off after a few laps"
            ),
        ),
        too_much="hard and greasy, it slides early",
        too_little="vague, it moves, and it goes off after a few laps",
        cannot=(
            "make up for the wrong kind of tyre or a cold track",
            "be compared when read after warmers, riding or sun",
        ),
        works_with="everything: a tyre is a spring without a damper; traction control, rebound, warmers",
        watch="one gauge, shade, a tyre not ridden for hours; hot within three minutes; the vendor's figure",
        source=(GAS, f"amounts: the tyre's vendor; {PRACTICE}"),
    )


FRONT_START = _start("front")
REAR_START = _start("rear")
