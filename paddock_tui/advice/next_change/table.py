"""The cures of all symptoms: what is felt, what to ask, what to change."""

from paddock_tui.advice.next_change.adjusters import damper_firmness, fast_compression, steering_damper
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import (
    BRAKING,
    DRIVING,
    MIDDLE,
    PRESSED,
    STRAIGHT,
    TURNING,
    Cure,
    Option,
    damping,
    preload,
)
from paddock_tui.advice.next_change.evidence import all_travel_used
from paddock_tui.advice.next_change.levels import freer_rear, height
from paddock_tui.advice.next_change.table_rest import REST
from paddock_tui.advice.next_change.words import CauseQuestion, Move, Refusal

_SLOWER = "comes back slower and settles"
_QUICKER = "follows the ground again between bumps"
_NOT_PACKING = "the push test shows no packing: leave rebound alone, have a technician look"


def _moved_back(key: str) -> Option:
    def make(case: Case) -> Move | Refusal:
        moved = case.moved_before(key)
        return height(case, key, -2.0 if moved is not None and moved > 0 else 2.0)

    return Option(
        make,
        "calmer, as it was before the height was moved",
        "turns in more slowly",
        if_=lambda case: bool(case.moved_before(key)),
    )


def _worn_flat(case: Case) -> bool:
    looks = (case.session.look.get(end) for end in ("front", "rear"))
    return any(look is not None and "flat centre" in (look.seen or ()) for look in looks)


SUSPENSION: dict[str, Cure] = {
    "dives": Cure(
        BRAKING,
        "the fork goes down faster or further than the brakes need",
        (
            Option(
                damping("compression", 2, "front"),
                "goes down slower on the brakes",
                "harsh over single bumps",
            ),
        ),
        otherwise="more compression is not to be had: the spring comes next, see sag in the calculators",
        first=6,
    ),
    "harsh on single bumps": Cure(
        BRAKING,
        "damping is too firm for one sharp bump",
        (
            Option(
                lambda case: fast_compression(case, case.end, -2),
                "takes the bump softer",
                "dives more",
                if_=lambda case: not all_travel_used(case, case.end),
            ),
        ),
        otherwise="that end uses all its travel, and is hard where it ends: nothing softer; sag and spring "
        "first, then a technician",
        asks_end=True,
    ),
    "harsh on a series": Cure(
        MIDDLE,
        "slow rebound keeps the end down from bump to bump",
        (Option(damping("rebound", -2), _QUICKER, "bounces once more after a crest", ("creeps",)),),
        PRESSED,
        _NOT_PACKING,
        asks_end=True,
    ),
    "vague": Cure(
        MIDDLE,
        "quick rebound lets the end bounce after each bump",
        (Option(damping("rebound", 1), _SLOWER, "harsh over a series of bumps", ("overshoots",)),),
        PRESSED,
        "the push test shows no bounce: tyre pressure and tyre first, then a technician",
        asks_end=True,
    ),
    "chatters": Cure(
        MIDDLE,
        "the tyre hops in the middle of the corner; both too quick and too slow rebound do it",
        (
            Option(damping("rebound", 1, "front"), _SLOWER, "harsh over a series", ("overshoots",)),
            Option(damping("rebound", -2, "front"), _QUICKER, "bounces once more", ("creeps",)),
        ),
        PRESSED,
        "rebound is right: have wheel balance, tyre and pressure looked at",
        end="front",
    ),
    "tucks": Cure(
        TURNING,
        "the front rides low or is held down by slow rebound",
        (
            Option(
                damping("rebound", -2, "front"),
                "the front comes back up",
                "bounces",
                ("creeps",),
                concerns="safety",
            ),
            Option(
                preload(1, "front"),
                "the front rides higher",
                "turns in more slowly",
                ("overshoots", "settles"),
                concerns="safety",
            ),
        ),
        PRESSED,
        "ride slower in: a front that tucks needs a technician before more pace",
        first=1,
        end="front",
    ),
    "will not turn": Cure(
        TURNING,
        "it takes force to turn in; geometry comes last",
        (
            Option(
                lambda _: Refusal("the tyre is worn flat in the middle: no setting cures that"),
                "",
                "",
                if_=_worn_flat,
            ),
            Option(
                lambda case: steering_damper(case, -2),
                "lighter bars",
                "wobble on the straight",
                if_=lambda case: (damper_firmness(case) or 0.0) > 0.5,
            ),
            Option(
                lambda case: height(case, "rear_height", 2.0), "turns in quicker", "less calm on the straight"
            ),
            Option(
                lambda case: height(case, "fork_height", 2.0), "turns in quicker", "less calm on the straight"
            ),
        ),
    ),
    "twitchy": Cure(
        TURNING,
        "steep geometry or a light front makes it nervous",
        (
            _moved_back("fork_height"),
            _moved_back("rear_height"),
            Option(lambda case: height(case, "fork_height", -2.0), "calmer", "turns in more slowly"),
        ),
    ),
    "runs wide off the brake": Cure(
        TURNING,
        "the fork springs up as the brake is let go",
        (Option(damping("rebound", 1, "front"), "the front stays down", "harsh over a series", ("yes",)),),
        CauseQuestion(
            "Does the front pop up as you let the brake go?",
            (("yes", "it pops up"), ("no", "it stays where it is")),
        ),
        "the fork stays down: brake earlier and turn in slower before anything is changed",
    ),
    "runs wide on power": Cure(
        DRIVING,
        "the rear sits down under power and the front goes light",
        (Option(damping("compression", 2, "rear"), "sits down slower", "less grip over bumps", ("yes",)),),
        CauseQuestion(
            "Does the rear sit down as you open the throttle?",
            (("yes", "it sits down"), ("no", "it does not")),
        ),
        "the rear holds up: pick the throttle up later before anything is changed",
    ),
    "wallows": Cure(
        DRIVING,
        "quick rebound lets the rear pump on the way out",
        (Option(damping("rebound", 1, "rear"), _SLOWER, "harsh over a series", ("overshoots",)),),
        PRESSED,
        "the push test shows no pumping: sag and tyre pressure first",
        end="rear",
    ),
    "kicks": Cure(
        DRIVING,
        "one bump throws the rear up; both too quick and too slow rebound do it",
        (
            Option(damping("rebound", 1, "rear"), _SLOWER, "harsh over a series", ("overshoots", "settles")),
            Option(damping("rebound", -2, "rear"), _QUICKER, "pumps on the way out", ("creeps",)),
        ),
        PRESSED,
        end="rear",
    ),
    "hops": Cure(
        BRAKING,
        "slow rebound keeps the rear down over a series of bumps",
        (Option(damping("rebound", -2, "rear"), _QUICKER, "pumps on the way out", ("creeps",)),),
        PRESSED,
        _NOT_PACKING,
        end="rear",
    ),
    "skips on the brakes": Cure(
        BRAKING,
        "engine braking drags an almost unloaded rear wheel",
        (
            Option(
                freer_rear,
                "the rear drags less into the corner",
                "runs on a little",
                ("closed throttle",),
            ),
            Option(
                damping("rebound", -1, "rear"), "the wheel follows the ground", "pumps", ("closed throttle",)
            ),
        ),
        CauseQuestion(
            "Does it skip on a closed throttle, or at an early downshift?",
            (("closed throttle", "on a closed throttle"), ("early downshift", "at an early downshift")),
        ),
        "shift down later, one gear at a time: no setting replaces that",
    ),
    "loose on entry": Cure(
        TURNING,
        "engine braking drags the rear wheel on the way in",
        (
            Option(freer_rear, "the rear drags less into the corner", "runs on a little"),
            Option(damping("rebound", -1, "rear"), "the wheel follows the ground", "pumps on the way out"),
        ),
    ),
    "slides on drive": Cure(
        DRIVING,
        "a firm rear does not press the tyre down; traction control is not turned down for it",
        (Option(damping("compression", -2, "rear"), "more grip on the way out", "sits down more"),),
    ),
    "weaves": Cure(
        STRAIGHT,
        "a slow weave of the whole bike: rear tyre, swingarm and load come before settings",
        (
            Option(
                damping("rebound", 1, "rear"), "steadier", "harsh over a series", ("yes",), concerns="safety"
            ),
        ),
        CauseQuestion(
            "Were rear tyre, swingarm, wheel bearings and luggage looked at, and are they right?",
            (("yes", "looked at and right"), ("no", "not looked at, or not right")),
        ),
        "look at rear tyre, swingarm and bearings before riding on; slow down until it is found",
        first=3,
    ),
    "bars wobble": Cure(
        STRAIGHT,
        "bearings, front tyre, alignment and a loose body come before the damper",
        (
            Option(
                lambda case: steering_damper(case, 1),
                "the bars calm down",
                "slow weave, heavy bars",
                ("yes",),
                if_=lambda case: (damper_firmness(case) or 0.0) <= 0.6,
                concerns="safety",
            ),
        ),
        CauseQuestion(
            "Head bearings, front tyre, axle and pinch bolts, damper mount: looked at, and right?",
            (("yes", "looked at and right"), ("no", "not looked at, or not right")),
        ),
        "look at head bearings, front tyre, axle, pinch bolts and damper mount before riding on",
        first=2,
    ),
    **REST,
}
