"""What carries the bike: preload, springs, and the heights of both ends."""

from paddock_tui.explanations.entry import Direction, Explanation, Weighed
from paddock_tui.explanations.sources import ARITHMETIC, PRACTICE, SAG, SQUAT

FRONT_PRELOAD = Explanation(
    title="front preload",
    does=(
        "Squeezes the fork spring before any load is on it, and so sets the height the front rides at.",
        "The spring is no stiffer for it: preload is measured as sag.",
    ),
    more=Direction(
        "more preload",
        gives=Weighed(
            "more travel left for braking, and less bottoming at the first squeeze", "a calmer front"
        ),
        costs=Weighed(
            "the wheel follows hollows less and knocks at its end of travel on the way out",
            "slower turn-in",
        ),
    ),
    less=Direction(
        "less preload",
        gives=Weighed("the wheel follows hollows better", "the front turns in sooner"),
        costs=Weighed(
            "less travel left: it bottoms on the brakes, and the front can tuck", "it dives deeper"
        ),
    ),
    too_much="a light, vague front that knocks on the way out and goes wide on the way in",
    too_little="it dives deep and is harsh at the end of its travel",
    cannot=("stiffen the spring: sag that is right only at an end of the adjuster wants another spring",),
    works_with="front spring, oil level, rebound (more preload asks for more of it), fork protrusion, which "
    "undoes it",
    watch="both legs the same unless the manual says otherwise; measure sag again, never ride at its end",
    source=(SAG, PRACTICE),
)

REAR_PRELOAD = Explanation(
    title="rear preload",
    does=(
        "Squeezes the shock spring before any load is on it, and so sets the height the rear rides at.",
        "Through the linkage a little at the spring is more at the wheel; the spring is no stiffer for it.",
    ),
    more=Direction(
        "more preload",
        gives=Weighed(
            "more ground clearance", "less squat; the bike turns sooner and holds its line on power"
        ),
        costs=Weighed("a rear that skips and lifts on the brakes", "less grip over hollows on the way out"),
    ),
    less=Direction(
        "less preload",
        gives=Weighed("the rear stays on the ground on the brakes", "grip on a soft exit"),
        costs=Weighed("parts touch down sooner", "it squats, runs wide on power and lifts the front"),
    ),
    too_much="it kicks, and chirps on the brakes",
    too_little="the bike sits at the back, pushes the front and drags parts",
    cannot=("stiffen the spring: sag that is right only at an end of the adjuster wants another spring",),
    works_with="rear spring, rear ride height (that keeps the share of travel, preload does not), chain "
    "slack, rebound",
    watch="measure sag again after it, free and with the rider on",
    source=(SAG, PRACTICE),
)

_SPRING_CANNOT = ("be made right by preload, or be right for two riders twenty kilograms apart",)

FRONT_SPRING = Explanation(
    title="front springs",
    does=(
        "The springs of the fork carry the front: their rate says how far it sinks for each load.",
        "They decide where the front stands under a long brake; damping only decides how soon.",
    ),
    more=Direction(
        "stiffer",
        gives=Weighed("the fork stays off its stop under the hardest braking", "less pitching"),
        costs=Weighed("less grip over bumps and in the wet", "less feel, harsher on ripples"),
    ),
    less=Direction(
        "softer",
        gives=Weighed("grip over bumps and in the wet", "feel"),
        costs=Weighed("it bottoms on the brakes, and then the tyre does the springing", "it pitches more"),
    ),
    too_much="it never uses its travel; free sag is large though rider sag is right",
    too_little="it bottoms, the adjuster is at its end, free sag is almost none",
    cannot=_SPRING_CANNOT,
    works_with="preload, oil level and compression, which hide a soft spring or a stiff one for a while",
    watch="work for a workshop between days; both sags first",
    source=(SAG, ARITHMETIC),
)

REAR_SPRING = Explanation(
    title="rear spring",
    does=(
        "The spring of the shock carries the rear: its rate says how far it sinks for each load.",
        "It decides where the rear stands on a long drive; damping only decides how soon.",
    ),
    more=Direction(
        "stiffer",
        gives=Weighed("the shock stays off its stop", "less squat on a long drive"),
        costs=Weighed("less grip over bumps and in the wet", "a harsh rear with little feel"),
    ),
    less=Direction(
        "softer",
        gives=Weighed("grip over bumps and in the wet", "feel"),
        costs=Weighed("it bottoms over a crest or a kerb", "it squats and runs wide on power"),
    ),
    too_much="it never uses its travel; free sag is large though rider sag is right",
    too_little="it bottoms, preload is at its end, free sag is almost none",
    cannot=_SPRING_CANNOT,
    works_with="preload and compression, which hide a wrong spring for a while; the linkage's ratio",
    watch="work for a workshop between days; both sags first",
    source=(SAG, ARITHMETIC),
)

FORK_HEIGHT = Explanation(
    title="fork protrusion",
    does=(
        "How far the fork tubes stand out above the top yoke: the more they do, the lower the front.",
        "A lower front steepens the steering and takes trail away.",
    ),
    more=Direction(
        "front lower",
        gives=Weighed("", "lighter, sooner turn-in"),
        costs=Weighed(
            "less stable; wheel or guard can meet radiator or yoke at full travel", "ground clearance"
        ),
    ),
    less=Direction(
        "front higher",
        gives=Weighed("calmer, most on the straight and on the brakes", ""),
        costs=Weighed("", "heavier steering; it pushes on at turn-in"),
    ),
    too_much="twitchy, and something touches at full travel",
    too_little="heavy to turn, and it runs wide on the way in",
    cannot=("raise clearance, or change the spring",),
    works_with="rear ride height and front preload, which give or take the same angle: one end at a time, "
    "note both",
    watch="both tubes the same, yoke bolts to torque, full travel and lock to lock looked at before riding",
    source=(SAG, PRACTICE),
)

REAR_HEIGHT = Explanation(
    title="rear ride height",
    does=(
        "Spacer or adjuster at the shock that lifts the rear without touching the spring.",
        "A higher rear steepens the steering and makes the chain hold the rear up more on power.",
    ),
    more=Direction(
        "rear higher",
        gives=Weighed("more ground clearance", "the bike turns sooner and holds its line on power"),
        costs=Weighed(
            "nervous at speed; the rear is light and lifts on the brakes", "rear grip at first touch"
        ),
    ),
    less=Direction(
        "rear lower",
        gives=Weighed("calmer at speed and on the brakes", "rear grip at the first touch of throttle"),
        costs=Weighed("", "it runs wide on power and lifts the front"),
    ),
    too_much="flighty at speed, and the rear comes round on the brakes",
    too_little="heavy, pushes the front, runs wide",
    cannot=("be judged before sag is right",),
    works_with="fork protrusion, rear preload, tyre size, sprockets",
    watch="chain slack and clearance again after it; two millimetres at a time",
    source=(SQUAT, SAG, PRACTICE),
)
