"""What `v` writes on the rows of starting pressures: made for the hot target of the review, or nothing."""

from pathlib import Path

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.beside_setup import beside_setup
from paddock_tui.advice.pressures import pressures
from paddock_tui.calc.outside_pressure import AirObserved, outside_pressure
from paddock_tui.desk import Desk
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.facts.past import End
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.edits import Step
from paddock_tui.records.hot_target import HotTarget
from tests.desk.opened import NEXT, at_desk, typed
from tests.every import every

SETS = ("magpie-trackday-1", "magpie-trackday-2", "magpie-wet")


def on(desk: Desk, tyres: str, surface: str | None) -> About:
    """Return the next session, its tyres and surface entered."""
    step = typed(desk, NEXT, ("tyres", tyres), ("surface", surface or ""))
    if step.changes:
        desk.do(step)
    return desk.about(NEXT)


def written(desk: Desk, about: About, end: End) -> Quantity | None:
    """Return what `v` puts into the record on the row of an end; None where it offers nothing."""
    row = beside_setup(about).get(("setup", f"{end}_start"))
    if row is None or not row.puts:
        return None
    step = offering(desk.files, NEXT, row.puts)
    assert isinstance(step, Step)
    desk.do(step)
    found = parse(str(desk.files.data(NEXT)["setup"][f"{end}_start"]))
    desk.undo()
    assert isinstance(found, Quantity)
    return found


def by_the_gas_law_kpa(about: About, end: End, target: Quantity) -> float:
    """Return the cold pressure on the gauge for a hot one, from what the bench is filled with."""
    filled, seen = pressures(about).filled, about.situation.facts().get("air_observed")
    assert isinstance(seen, AirObserved)
    gas, cold = filled[f"{end}_gas"].value, filled["cold_at"].value
    assert isinstance(gas, Quantity)
    assert isinstance(cold, Quantity)
    outside = outside_pressure(seen).kpa
    kelvin = (cold.to("C") + 273.15) / (gas.to("C") + 273.15)
    return (target.to("kPa") + outside) * kelvin - outside


def _aim(about: About, end: End, target: HotTarget) -> Quantity:
    """Return what a hot reading of the session would be set to; without one the lower end."""
    hot = about.session.pressures.get("hot")
    read = getattr(hot, end) if hot is not None else None
    return target.pressure if read is None else target.nearest(read)


@every("surface", ["dry", "damp", "drying", "wet", None])
def test_v_writes_the_start_for_the_hot_target_that_the_review_goes_by(
    garage: Path, surface: str | None
) -> None:
    desk, count = at_desk(garage), 0
    for tyres in SETS:
        about = on(desk, tyres, surface)
        for end in ENDS:
            target = about.situation.facts().get("hot_target", end)
            found = written(desk, about, end)
            if not isinstance(target, HotTarget):
                assert found is None, (tyres, end)
            elif found is not None:
                wanted = by_the_gas_law_kpa(about, end, _aim(about, end, target))
                rounded = {
                    figures.pressure(wanted, about.units),
                    figures.pressure_coarse(wanted, about.units),
                }
                assert str(found) in rounded, (tyres, end)
                count += 1
    desk.close()
    assert count == 0 if surface is None else count >= 1
