"""What the facts mean: the rules, their limits, and the engine that gives the review."""

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
from paddock_tui.rules.core import CAUTION, HOLD, NOTE, RULES, SERIOUS, Remedy, Rule, SetValue, Severity
from paddock_tui.rules.engine import Finding, NotJudged, Pending, Review, Where, review

__all__ = [
    "CAUTION",
    "HOLD",
    "NOTE",
    "RULES",
    "SERIOUS",
    "Finding",
    "NotJudged",
    "Pending",
    "Remedy",
    "Review",
    "Rule",
    "SetValue",
    "Severity",
    "Where",
    "review",
]

for _id, _rule in RULES.items():
    check_needs("rule", _id, (*_rule.needs, *_rule.when), _rule.gathers)
    for _absorbed in _rule.absorbs:
        if _absorbed not in RULES:
            raise NameError(f"the rule {_id} absorbs {_absorbed}: no rule has this id")
