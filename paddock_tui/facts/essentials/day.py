"""Essentials of the day: paper, what the organiser posted, and a road ride's own."""

from paddock_tui.facts.core import ABSENT
from paddock_tui.facts.essentials.core import (
    KNOWN,
    TRACK,
    Around,
    EssentialAnswer,
    Open,
    essential,
    to_tick,
)
from paddock_tui.records.day import measured_elsewhere
from paddock_tui.records.electronics import function_of
from paddock_tui.records.shapes_of_bike import is_off


def _paper(around: Around, key: str, item: str, label: str) -> EssentialAnswer:
    if getattr(around.entry, key) is not None or around.ticked_today(item):
        return KNOWN
    if around.keeps_in_day:
        path = ("entries", around.session.rider or "", around.session.bike or "", key)
        return Open(label, "day", path, says="yes")
    return to_tick(around, item, label)


@essential("signed-on", TRACK, rules=("not-signed-on",))
def signed_on(around: Around) -> EssentialAnswer:
    """Licence or waiver shown and signed."""
    return _paper(around, "signed_on", "signed-on", "signed on")


@essential("briefing", TRACK, rules=("briefing-not-attended",))
def briefing(around: Around) -> EssentialAnswer:
    """The riders' briefing."""
    return _paper(around, "briefing", "briefing", "the riders' briefing")


@essential("inspection", TRACK, rules=("inspection-not-passed",))
def inspection(around: Around) -> EssentialAnswer:
    """Technical inspection of bike and kit."""
    return _paper(around, "inspected", "inspection", "technical inspection")


@essential("passing-rule", ("novice",))
def passing_rule(around: Around) -> EssentialAnswer:
    """Where the group may pass, and whether an instructor leads."""
    if (around.day is not None and around.day.passing is not None) or around.ticked_today("passing-rule"):
        return KNOWN
    if around.day is not None:
        return Open("the group's passing rule; instructor or free", "day", ("passing",))
    return to_tick(around, "passing-rule", "the group's passing rule; instructor or free")


@essential("pit-limit", TRACK)
def pit_limit(around: Around) -> EssentialAnswer:
    """The pit-lane limit, where one is posted: the limiter's figure, or by speedometer without one."""
    bike, controls = around.bike, around.session.setup.controls
    if around.day is None or bike is None or bike.electronics is None:
        return ABSENT
    names = [name for name, one in bike.controls.items() if function_of(name, one) == "pit-limiter"]
    if around.day.limits.pit_lane is None:
        used = any(name in controls and not is_off(bike.controls[name], controls[name]) for name in names)
        if not used or around.ticked_today("pit-limit"):
            return ABSENT
        # What the limiter holds is right or wrong by the figure on the board alone.
        return Open("the pit-lane limit posted here", "day", ("limits", "pit_lane"))
    if not names or any(name in controls for name in names):
        return KNOWN
    if around.ticked_today("pit-limit"):
        return KNOWN
    return Open("what the pit limiter is set to", "session", ("setup", "controls", names[0]))


@essential("noise", TRACK)
def noise(around: Around) -> EssentialAnswer:
    """Sound level under the limit, where one is posted: the reading, or the sticker."""
    if around.day is None:
        return ABSENT
    if around.day.limits.noise is None:
        # A reading says nothing without the limit that it was measured for.
        read = around.entry.noise.reading is not None and not around.ticked_today("noise", "noise-ticket")
        return Open("the noise limit posted here", "day", ("limits", "noise")) if read else ABSENT
    read_here = around.entry.noise.reading is not None and not measured_elsewhere(around.entry, around.day)
    if read_here or around.ticked_today("noise", "noise-ticket"):
        return KNOWN
    return to_tick(around, "noise", "sound level measured under the limit, or not measured here", in_day=True)


@essential("road-ready", ("road",))
def road_ready(around: Around) -> EssentialAnswer:
    """Lights, plate, mirrors, road tyres, pressures up."""
    if around.ticked("road-ready"):
        return KNOWN
    together = around.ticked("road-mirrors-plate")
    apart = around.ticked("road-plate") and around.ticked("road-mirrors")
    if (together or apart) and around.ticked("road-lamps") and around.ticked("road-tyres"):
        return KNOWN
    return to_tick(around, "road-ready", "lights, plate, mirrors, road tyres, pressures up")
