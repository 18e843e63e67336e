"""What readings teach: the air is followed from one setting to the next, odd readings stand apart."""

import pytest

from paddock_tui.advice import tyre_air_learnt
from paddock_tui.advice.about import History
from paddock_tui.advice.tyre_air_learnt import (
    elsewhere,
    gas_learnt,
    observations,
)
from paddock_tui.calc.outside_pressure import AirMoves
from paddock_tui.calc.standard_air import SEA_LEVEL_KPA
from paddock_tui.limits import Limits
from tests.advice.given import past, sample, tyres

K = 273.15
AIR = SEA_LEVEL_KPA
MOVES = AirMoves.of(Limits())
COLD = '[pressures.cold]\nfront = "2.00 bar"\nrear = "1.80 bar"\ntemperature = "10 C"\n'
HEAD = 'parked = 10:00:00\nsurface = "dry"\nair = "12 C"\n'


def hot(front: str, at: str = "10:02:00", set_to: str = "") -> str:
    line = f'set_to_front = "{set_to}"\n' if set_to else ""
    return f'[pressures.hot]\nat = {at}\nfront = "{front}"\n{line}'


def gas(cold_bar: float, cold_c: float, hot_bar: float) -> float:
    return (hot_bar * 100 + AIR) / (cold_bar * 100 + AIR) * (cold_c + K) - K


def test_the_gas_temperature_follows_from_the_cold_setting_and_the_hot_reading() -> None:
    history = History((past(1, HEAD + COLD + hot("2.35 bar")),))

    found = gas_learnt(history, "set", "front", "here", "dry", MOVES)

    assert found is not None
    assert found.learnt.median_c == pytest.approx(gas(2.0, 10, 2.35))
    assert found.words() == "learnt from 1 hot reading of this tyre here, dry"


def test_after_set_to_the_air_is_the_one_that_was_left_at_that_gas_temperature() -> None:
    first = past(1, HEAD + COLD + hot("2.40 bar", set_to="2.30 bar"))
    second = past(2, HEAD + hot("2.33 bar"))

    seen = observations(History((first, second)), "front", MOVES)

    after_first = gas(2.0, 10, 2.40)
    assert [one.session for one in seen] == ["2026-05-16-1", "2026-05-16-2"]
    assert seen[1].observation.cold_c == pytest.approx(after_first)
    assert seen[1].observation.gas_c() == pytest.approx(gas(2.30, after_first, 2.33))


def test_without_a_set_to_the_air_of_the_morning_goes_on() -> None:
    history = History((past(1, HEAD + COLD + hot("2.35 bar")), past(2, HEAD + hot("2.38 bar"))))

    assert observations(history, "front", MOVES)[1].observation.cold_kpa_gauge == pytest.approx(200.0)


def test_nothing_is_carried_over_night() -> None:
    later = past(1, HEAD + hot("2.38 bar"), day="2026-05-17")

    assert len(observations(History((past(1, HEAD + COLD + hot("2.35 bar")), later)), "front", MOVES)) == 1


def test_late_and_never_warm_readings_are_counted_apart() -> None:
    history = History(
        (
            past(1, HEAD + COLD + hot("2.35 bar")),
            past(2, HEAD + hot("2.25 bar", at="10:09:00")),
            past(3, HEAD + hot("2.05 bar")),
        )
    )

    found = gas_learnt(history, "set", "front", "here", "dry", MOVES)

    assert found is not None
    assert (found.learnt.count, found.learnt.late, found.learnt.not_warm) == (1, 1, 1)
    assert found.words().endswith("kept apart: 1 read too late, 1 never warm")


def test_a_reading_without_its_time_is_left_out() -> None:
    text = HEAD + COLD + '[pressures.hot]\nfront = "2.35 bar"\n'

    assert observations(History((past(1, text),)), "front", MOVES) == ()


def test_a_cold_reading_without_any_temperature_teaches_nothing() -> None:
    text = HEAD.replace('air = "12 C"', 'air = "mild"') + COLD.replace('temperature = "10 C"\n', "")

    assert observations(History((past(1, text + hot("2.35 bar")),)), "front", MOVES) == ()


def test_three_readings_have_a_spread() -> None:
    outings = tuple(
        past(number, HEAD + COLD + hot(f"{bar} bar")) for number, bar in ((1, 2.32), (2, 2.35), (3, 2.38))
    )

    found = gas_learnt(History(outings), "set", "front", "here", "dry", MOVES)

    assert found is not None
    low, middle = gas(2.0, 10, 2.32), gas(2.0, 10, 2.35)
    assert found.learnt.median_c == pytest.approx(middle)
    assert found.learnt.spread_k == pytest.approx(1.4826 * (middle - low), rel=1e-3)


def test_a_wet_track_teaches_nothing_about_a_dry_one_but_is_told() -> None:
    history = History((past(1, HEAD.replace("dry", "wet") + COLD + hot("2.25 bar")),))

    assert gas_learnt(history, "set", "front", "here", "dry", MOVES) is None
    assert gas_learnt(history, "set", "front", "here", None, MOVES) is None
    assert elsewhere(history, "set", "front", MOVES) == (
        f"on a wet track the air in this tyre reached {gas(2.0, 10, 2.25):.0f} C (1 reading)",
    )


def test_other_venues_and_other_sets_of_the_kind_serve_where_this_tyre_was_not_read_here() -> None:
    kind = '[front]\nkind = "slick"\n'
    sets = {"set": tyres(kind), "new": tyres(kind)}
    history = History((past(1, HEAD + COLD + hot("2.35 bar")),), sets)

    away = gas_learnt(history, "set", "front", "there", "dry", MOVES)
    other = gas_learnt(history, "new", "front", "here", "dry", MOVES)

    assert away is not None
    assert away.where == "of this tyre at other venues, dry"
    assert other is not None
    assert other.where == "of other slick tyres here, dry"
    assert gas_learnt(history, "new", "front", "there", "dry", MOVES) is None


def of_days(*bars: float, late: tuple[int, ...] = (), kind: str = "slick") -> History:
    """Make days, each with one reading of a tyre of a kind, late on some; new slicks are known too."""
    days = (
        past(
            1,
            HEAD + COLD + hot(f"{bar} bar", "10:20:00" if at in late else "10:02:00"),
            day=f"2026-05-{at + 1:02}",
        )
        for at, bar in enumerate(bars)
    )
    sets = {"set": tyres(f'[front]\nkind = "{kind}"\n'), "new": tyres('[front]\nkind = "slick"\n')}
    return History(tuple(days), sets)


def test_of_other_tyres_the_last_days_that_tell_enough_serve(monkeypatch: pytest.MonkeyPatch) -> None:
    bars = (2.05, 2.38, 2.36, 2.25, 2.34)
    every = gas_learnt(of_days(*bars, late=(3,)), "new", "front", "here", "dry", MOVES)
    monkeypatch.setattr(tyre_air_learnt, "ENOUGH", 2)
    last = gas_learnt(of_days(*bars, late=(3,)), "new", "front", "here", "dry", MOVES)

    assert every is not None
    assert every.learnt.count == 3
    assert every.learnt.median_c == pytest.approx(gas(2.0, 10, 2.36))
    assert last is not None
    assert last.learnt.count == 2
    assert last.learnt.median_c == pytest.approx(gas(2.0, 10, 2.35))


def test_tyres_of_another_kind_teach_nothing_however_many_days_there_are() -> None:
    assert gas_learnt(of_days(2.35, 2.36, kind="rain"), "new", "front", "here", "dry", MOVES) is None


def test_a_tyre_that_goes_on_in_another_set_keeps_what_it_taught() -> None:
    sets = {"set": tyres(""), "next": tyres('[front]\ncontinues = "set"\n')}
    history = History((past(1, HEAD + COLD + hot("2.35 bar")),), sets)

    found = gas_learnt(history, "next", "front", "here", "dry", MOVES)

    assert found is not None
    assert found.where == "of this tyre here, dry"


def test_sets_that_name_each_other_do_not_hang() -> None:
    sets = {"set": tyres('[front]\ncontinues = "next"\n'), "next": tyres('[front]\ncontinues = "set"\n')}

    history = History((past(1, HEAD + COLD + hot("2.35 bar")),), sets)

    assert gas_learnt(history, "next", "front", "here", "dry", MOVES) is not None


def test_warmers_set_to_a_figure_start_the_air_again_at_their_own_temperature() -> None:
    warmers = '[pressures.warmers]\nfront = "2.45 bar"\nset_to_front = "2.40 bar"\ntemperature = "80 C"\n'
    history = History((past(1, HEAD + COLD + warmers + hot("2.42 bar")),))

    (seen,) = observations(history, "front", MOVES)

    assert seen.observation.cold_kpa_gauge == pytest.approx(240.0)
    assert seen.observation.cold_c == pytest.approx(gas(2.0, 10, 2.45))


def test_the_sample_front_reached_45_and_47_degrees_and_one_reading_was_late() -> None:
    history = sample("session", "2026-05-16-5-magpie").history

    found = gas_learnt(history, "magpie-trackday-1", "front", "anvilfen", "dry", MOVES)

    assert found is not None
    # (2.58 + 1.012) / (2.20 + 1.012) x 284.15 K, then from 2.50 bar at that temperature to 2.53 bar.
    first = 3.592 / 3.212 * 284.15
    second = 3.542 / 3.512 * first
    assert found.learnt.median_c == pytest.approx((first + second) / 2 - K, abs=0.01)
    assert (found.learnt.count, found.learnt.late) == (2, 1)
