"""What fillings teach: litres between brims over the kilometres ridden, by ground and riding mode."""

import pytest

from paddock_tui.facts.fuel_consumption import TRACK, fuel_learnt, tank_l
from paddock_tui.facts.past import History
from tests.advice.given import past


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
    assert tank_l(outings((9.0, 10, "open", True), (2.0, 10, "open", False)), 16.0, 10.0) == pytest.approx(10)
    assert tank_l(outings((9.0, 10, "open", False)), 16.0, 10.0) is None
    assert tank_l(outings((9.0, 10, "open", True), (None, 10, "open", True)), 16.0, 10.0) is None
