"""The cures of what is not the suspension: aids, tyres, gears, and what is no matter of the bike."""

from typing import Final

from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.cures import (
    BRAKING,
    DRIVING,
    ELSEWHERE,
    MIDDLE,
    STRAIGHT,
    Cure,
    Option,
    cannot,
    damping,
    off_target,
    preload,
    pressure,
)
from paddock_tui.advice.next_change.levels import less_help, rear_sprocket
from paddock_tui.advice.next_change.words import CauseQuestion

QUICK: Final = ("advanced", "race")


def _experienced(case: Case) -> bool:
    return case.group != "novice"


def _same_tyres(case: Case) -> bool:
    before = next(case.ridden_before(), None)
    return before is not None and before.session.tyres == case.session.tyres


def _again_in_the_dry(case: Case) -> bool:
    """Return whether a quick rider felt it in the session before too, on a dry track both times."""
    before = next(case.ridden_before(), None)
    if before is None or case.group not in QUICK or case.column != "dry":
        return False
    felt = {one.what for one in before.session.symptoms.values()}
    return before.session.surface == "dry" and case.symptom.what in felt


def _is_end_named(case: Case) -> bool:
    return case.symptom.end is not None


def _over_thirty_percent(case: Case) -> bool:
    cold, hot, end = case.session.pressures.get("cold"), case.hot(case.end), case.end
    start = (getattr(cold, f"set_to_{end}") or getattr(cold, end)) if cold is not None else None
    return hot is not None and start is not None and hot.to("kPa") > 1.3 * start.to("kPa")


REST: dict[str, Cure] = {
    "traction cuts without slip": Cure(
        DRIVING,
        "traction control steps in although the tyre holds",
        (
            Option(
                lambda case: less_help(case, "traction"),
                "drives out without the stutter",
                "the first slide: keep the step, or go back at once",
                ("no",),
                if_=lambda case: _experienced(case) and case.column == "dry" and _same_tyres(case),
            ),
        ),
        CauseQuestion(
            "Is another tyre size, profile or sprocket on than when it worked well?",
            (("yes", "something was changed"), ("no", "all as it was")),
        ),
        "do not turn traction control down for this: only on a dry track, with a warm tyre of a size the "
        "system has learnt, by an experienced rider",
    ),
    "wheelie cut kills drive": Cure(
        DRIVING,
        "wheelie control holds the front down by taking drive away",
        (
            Option(
                lambda case: less_help(case, "wheelie"),
                "drives on with the front light",
                "the front coming up over crests",
                ("yes",),
                if_=_experienced,
            ),
        ),
        CauseQuestion(
            "Did you try it with the body forward and a gear higher?",
            (("yes", "tried, it still cuts"), ("no", "not tried yet")),
        ),
        "body forward and a gear higher first",
    ),
    "lever pulses": Cure(
        BRAKING,
        "ABS works at the front: braking too abruptly, or over bumps",
        (
            Option(
                lambda case: less_help(case, "front-abs", "abs"),
                "the lever stays put",
                "the front locking: go back at once",
                ("smooth",),
                if_=_again_in_the_dry,
                concerns="safety",
            ),
        ),
        CauseQuestion(
            "Where does it pulse?",
            (("bumps", "over bumps, or with the fork at its end"), ("smooth", "on smooth track")),
        ),
        "squeeze earlier and build up the brake; over bumps it is the fork, not ABS",
        first=4,
    ),
    "stands up on the brakes": Cure(
        BRAKING,
        "a soft front tyre stands the bike up when it is braked leaned over",
        (
            Option(
                pressure(1, "front"),
                "stays leaned on the brakes",
                "front hot pressure",
                concerns="safety pressure",
            ),
        ),
        otherwise="the front is not under its hot target: brake upright, then turn",
        first=5,
    ),
    "tyre goes off": Cure(
        MIDDLE,
        "a tyre loses grip after a few laps",
        (
            Option(
                pressure(1),
                "the tyre keeps its grip longer",
                "hot pressure at that end",
                if_=lambda case: (
                    _is_end_named(case) and (_over_thirty_percent(case) or off_target(case.end)(case))
                ),
                concerns="pressure",
            ),
            Option(
                damping("compression", -1),
                "works the tyre less",
                "sits down more, or dives more at the front",
                if_=_is_end_named,
            ),
        ),
        otherwise="write down which end goes off, front or rear, and ask again; fading brakes are a symptom "
        "of their own",
        asks_end=True,
    ),
    "loose in the heat": Cure(
        MIDDLE,
        "hot oil thins and rebound quickens; pressures come first",
        (
            Option(
                lambda case: pressure()(case),
                "on its target again",
                "the other end",
                if_=lambda case: off_target(case.end)(case),
                concerns="pressure",
            ),
            Option(
                damping("rebound", 1), "as it was in the cool of the morning", "take it back next morning"
            ),
        ),
        asks_end=True,
    ),
    "parts ground": Cure(
        MIDDLE,
        "the bike sits too low for the lean",
        (Option(preload(1, "rear"), "sits higher", "sag; hang off more as well"),),
    ),
    "between gears": Cure(
        ELSEWHERE,
        "the key corner falls between two gears",
        (
            Option(
                lambda case: rear_sprocket(case, 1),
                "more revs through the corner",
                "revs on the straight",
                ("more",),
            ),
            Option(
                lambda case: rear_sprocket(case, -1),
                "fewer revs through the corner",
                "drive out of slow corners",
                ("fewer",),
            ),
        ),
        CauseQuestion(
            "Do you want more revs there, or fewer?", (("more", "more revs"), ("fewer", "fewer revs"))
        ),
    ),
    "on the limiter": Cure(
        STRAIGHT,
        "the top gear runs out before the brake point",
        (
            Option(
                lambda case: rear_sprocket(case, -1),
                "revs left at the end of the straight",
                "drive out of slow corners",
            ),
        ),
    ),
    "missed shifts": Cure(
        ELSEWHERE,
        "a shift needs the lever let go fully and a steady throttle",
        (
            Option(
                cannot("set the lever's height for your boot; if it stays, switch the quickshifter off"),
                "",
                "",
                ("yes",),
            ),
        ),
        CauseQuestion(
            "Do you let the lever go fully each time, with a steady throttle?",
            (("yes", "each time"), ("no", "not each time")),
        ),
        "let the lever go fully, keep the throttle steady; after a false neutral go up a gear",
    ),
    "no feel in the wet": Cure(
        ELSEWHERE,
        "a dry set-up is too firm for the wet",
        otherwise="take the wet package (m, wet package): damping opened, less preload, more help",
    ),
    "arms sore": Cure(
        ELSEWHERE,
        "arms carry what the knees should",
        otherwise="nothing on the bike: grip the tank, loosen the hands, set the levers; drink and rest",
    ),
    "front locks": Cure(
        BRAKING,
        "a front wheel that stops turning comes before any damping",
        otherwise="no setting against it: front ABS back up, earlier and softer on the brake; look at tyre, "
        "pressure, pads and fork",
        first=2,
    ),
    "rear locks": Cure(
        BRAKING,
        "a rear wheel that stops turning has too little load or too much braking on it",
        otherwise="no setting against it: rear ABS, less engine braking, softer downshifts; look at tyre and "
        "pressure",
        first=2,
    ),
    "pulls to one side": Cure(
        ELSEWHERE,
        "a pull is something crooked or dragging, not a setting",
        otherwise="look: wheel in line, a brake that drags, a tyre worn to one side, fork, head bearings",
    ),
    "vibrates": Cure(
        ELSEWHERE,
        "a vibration is something loose, worn or out of balance, not a setting",
        otherwise="look: wheel balance and tyre, axle and pinch bolts, chain and sprockets, head bearings",
    ),
    "traction lamp with slip": Cure(
        DRIVING,
        "the aid is at work: the rear slides before the light comes",
        otherwise="nothing less: keep the level or more of it, pick the bike up before the throttle; look at "
        "tyre and pressure",
    ),
    "no change felt": Cure(
        ELSEWHERE,
        "once tells little: the step may be small, or on the wrong thing",
        otherwise="leave it as it is; felt nothing at the second step of one adjuster, it goes back to base",
    ),
}

LOOKS: dict[str, Cure] = {
    "cold tear": Cure(
        ELSEWHERE,
        "the rubber tears because it never gets warm: too much pressure, or too hard a tyre",
        (Option(pressure(-1), "the tearing stops", "hot pressure", concerns="pressure"),),
        otherwise="warm it for longer; the pressure is not over its hot target",
    ),
    "hot tear": Cure(
        ELSEWHERE,
        "the rubber overheats: too little pressure, sag or spring",
        (Option(pressure(1), "the tearing stops", "hot pressure", concerns="pressure"),),
        otherwise="sag and spring first; the pressure is not under its hot target",
    ),
}
"""Cures of what a tyre looks like, at the end where it was seen."""
