"""All rules, registered and joined with their facts: once this is loaded a review is made, never by some."""

from paddock_tui.facts import registered  # noqa: F401 - registers all facts
from paddock_tui.facts.joining import check_needs
from paddock_tui.rules import (  # noqa: F401 - registers their rules
    aids,
    aids_together,
    air,
    antilock,
    brakes,
    cautions,
    checklists,
    copied,
    damping,
    dash,
    disputes,
    engine_braking,
    event,
    falls,
    fuel,
    gearbox,
    heights,
    impossible,
    launch,
    method,
    modes,
    open_matters,
    organiser,
    presets,
    pressures,
    race,
    readiness,
    road,
    sag,
    service,
    starting_pressures,
    throttle_maps,
    traction,
    tyre_state,
    tyres,
    wet_package,
    wheel_speeds,
    wheelie,
)
from paddock_tui.rules.core import COMPLETE, RULES
from paddock_tui.rules.engine import review

__all__ = ["RULES", "review"]

for _id, _rule in RULES.items():
    check_needs("rule", _id, (*_rule.needs, *_rule.when), _rule.gathers)
    for _absorbed in _rule.absorbs:
        if _absorbed not in RULES:
            raise NameError(f"the rule {_id} absorbs {_absorbed}: no rule has this id")
COMPLETE.set()
