"""All facts, registered and joined: facts are worked out once this is loaded, never by some of them."""

from paddock_tui.facts import (  # noqa: F401 - registers their facts
    aids,
    brakes,
    changes,
    checklists,
    controls,
    copied,
    damping_adjusters,
    dash,
    day,
    essentials,
    event,
    fuel,
    hard_starts,
    heights,
    incidents,
    launch_starts,
    open_matters,
    outing,
    outside_pressure,
    physics,
    presets,
    quoted,
    race,
    rear_tyre,
    record_checks,
    road,
    sag,
    service,
    suggested_levels,
    suspension,
    tyre_air,
    tyre_pressures,
    tyre_targets,
    tyres,
    weather,
    wet_package,
    wheel_speeds,
)
from paddock_tui.facts.core import COMPLETE, FACTS, Facts
from paddock_tui.facts.joining import check_needs

__all__ = ["FACTS", "Facts"]

for _name, _fact in FACTS.items():
    check_needs("fact", _name, _fact.needs, _fact.gathers)
COMPLETE.set()
