"""What fillings teach: litres between brims over the kilometres ridden, by ground and riding mode."""

import pytest

from paddock_tui.facts.fuel import in_tank
from paddock_tui.facts.fuel_consumption import TRACK, fuel_learnt, tank_left
from paddock_tui.facts.past import History
from tests.advice.given import bike, past, session

TANK = '[tank]\ncapacity = "16 l"\n'


def fill(litres: float | None, laps: int, mode: str = "open", brim: bool = True) -> str:
    lines = [f"ridden_laps = {laps}"]
    if litres is not None:
        lines += [f'fuel_added = "{litres} l"', f"filled_to_brim = {str(brim).lower()}"]
    return "\n".join(lines) + f'\n[setup]\nmode = "{mode}"\n'


def outings(*fills: tuple[float | None, int, str, bool]) -> History:
    return History(
        tuple(
            past(number, fill(litres, laps, mode, brim))
            for number, (litres, laps, mode, brim) in enumerate(fills, start=1)
        )
    )


def test_consumption_is_litres_between_brims_over_the_laps_between_them() -> None:
    history = outings((9.0, 10, "open", True), (5.0, 10, "open", True), (6.0, 10, "open", True))

    found = fuel_learnt(history, TRACK, "open")

    assert found is not None
    assert found.learnt.rate_l_per_100km == pytest.approx(100 * 11.0 / 80.0)
    assert found.where == "learnt from 2 stretches from brim to brim, 80 km, on the track in open"


def test_each_riding_mode_has_its_own_and_another_one_falls_back_to_all() -> None:
    history = outings((9.0, 10, "open", True), (6.0, 10, "rain", True), (4.0, 10, "open", True))

    rates = {mode: fuel_learnt(history, TRACK, mode) for mode in ("open", "rain", "new")}

    assert [round(one.learnt.rate_l_per_100km, 1) for one in rates.values() if one] == [15.0, 10.0, 12.5]
    assert rates["new"] is not None
    assert rates["new"].where.endswith("on the track")


def test_a_filling_that_was_not_written_down_breaks_the_count() -> None:
    history = outings((9.0, 10, "open", True), (None, 10, "open", True), (5.0, 10, "open", True))

    assert fuel_learnt(history, TRACK, "open") is None


def test_the_filling_of_this_session_closes_the_last_stretch() -> None:
    history = outings((9.0, 10, "open", True))

    found = fuel_learnt(history, TRACK, "open", (5.2, True))

    assert fuel_learnt(history, TRACK, "open") is None
    assert found is not None
    assert found.learnt.rate_l_per_100km == pytest.approx(13.0)


def test_the_tank_is_counted_from_the_last_brim_and_unknown_before_one() -> None:
    found = tank_left(outings((9.0, 10, "open", True), (2.0, 10, "open", False)), 16.0, 10.0)
    assert found is not None
    assert found.litres == pytest.approx(10)
    assert str(found) == "estimated from the brim of 2026-05-16-1 on"
    assert tank_left(outings((9.0, 10, "open", False)), 16.0, 10.0) is None
    assert tank_left(outings((9.0, 10, "open", True), (None, 10, "open", True)), 16.0, 10.0) is None


def test_litres_entered_for_the_tank_are_counted_from_and_a_session_of_its_own_reads_them() -> None:
    history = History((past(1, 'ridden_laps = 10\nfuel_in_tank = "9 l"\n[setup]\nmode = "open"\n'),))

    left = tank_left(history, 16.0, 10.0)

    assert left is not None
    assert left.litres == pytest.approx(5)
    assert str(left) == "estimated from the litres entered of 2026-05-16-1 on"
    own = in_tank(session('fuel_in_tank = "6 l"\nfuel_added = "2 l"\n'), bike(TANK), history, 10.0)
    assert own is not None
    assert (own.litres, own.where) == (6.0, "litres entered")
    full = in_tank(session('fuel_in_tank = "40 l"\n'), bike(TANK), history, 10.0)
    assert full is not None
    assert full.litres == 16.0
