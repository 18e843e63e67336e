"""One thing to ride for, where a riding aim is worth more than a click. Common practice, no source."""

from typing import Final

AIMS: Final = {
    "dives": "brake earlier, and build the pressure up over a bike's length",
    "harsh on single bumps": "note the bump, and try a line beside it",
    "harsh on a series": "the same line over the bumps each lap, and loose arms",
    "vague": "the same brake marker three laps running",
    "chatters": "the same speed and line through that corner three laps running",
    "tucks": "slower in: brake done before the bike is leaned",
    "will not turn": "look to the exit earlier, and press the inside bar once",
    "twitchy": "loose hands, knees on the tank",
    "runs wide off the brake": "let the brake go slowly, into the corner",
    "runs wide on power": "pick the throttle up one moment later, with the bike turned",
    "wallows": "one smooth opening of the throttle, no second one",
    "kicks": "weight off the seat over that bump",
    "hops": "the same line over the bumps each lap",
    "skips on the brakes": "shift down later, one gear at a time",
    "loose on entry": "shift down later, and let the clutch out slowly",
    "slides on drive": "pick the bike up before the throttle",
    "traction cuts without slip": "pick the bike up before the throttle, open it smoothly",
    "wheelie cut kills drive": "body forward, a gear higher",
    "lever pulses": "squeeze earlier, and build the brake up",
    "bars wobble": "loose hands, weight forward",
    "weaves": "slow down until it is found",
    "tyre goes off": "even laps, no more than that",
    "loose in the heat": "even laps, no more than that",
    "parts ground": "hang off more, for the same speed less lean",
    "stands up on the brakes": "brake upright, then turn",
    "between gears": "try the corner in both gears, three laps each",
    "on the limiter": "note the revs at the brake marker",
    "missed shifts": "let the lever go fully, keep the throttle steady",
    "arms sore": "grip the tank, loosen the hands",
    "front locks": "brake earlier and softer",
    "rear locks": "softer downshifts",
    "": "the same markers every lap, and say which corner felt worst",
}
"""By symptom; the last one where nothing was felt."""
