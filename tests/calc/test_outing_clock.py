"""The clock between two sessions."""

from paddock_tui.calc.outing_clock import SOAK_MIN, between


def test_the_order_is_hot_pressures_feel_look_change_fuel_dress_dash() -> None:
    assert [(one.what, one.minute) for one in between(100, 60)] == [
        ("hot pressures", 63),
        ("feel", 65),
        ("look", 70),
        ("change", 80),
        ("fuel", 90),
        ("dress", 90),
        ("dash", 97),
    ]


def test_in_a_short_pause_everything_is_due_by_the_time_to_dress() -> None:
    due = {one.what: one.minute for one in between(75, 60)}

    assert due["fuel"] == due["change"] == due["look"] == due["dress"] == 65
    assert due["hot pressures"] == 63


def test_warmers_soak_from_cold_and_go_straight_back_on_hot_tyres() -> None:
    cold = {one.what: one.minute for one in between(600, warmers=True)}
    hot = {one.what: one.minute for one in between(600, 560, warmers=True)}

    assert cold["warmers"] == 600 - SOAK_MIN
    assert hot["warmers"] == 562
    assert cold["warmers off"] == 599
    assert "warmers" not in {one.what for one in between(600)}
