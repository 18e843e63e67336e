"""A digit that comes faster than a hand presses it is a key held down."""

from paddock_tui.entry.key_repeat import Held


def test_a_digit_repeated_as_fast_as_keys_repeat_is_held_down() -> None:
    held = Held()

    assert not held.again("2", 10.0)
    assert not held.again("2", 10.5)  # the pause before a key repeats
    assert held.again("2", 10.53)
    assert held.again("2", 10.56)


def test_another_digit_or_a_hands_pause_is_not() -> None:
    held = Held()

    assert not held.again("3", 1.0)
    assert not held.again("4", 1.03)
    assert not held.again("4", 1.15)


def test_five_moments_may_be_alike_in_one_piece_over_a_slow_link_but_no_more() -> None:
    held = Held()

    assert [held.again("3", 1.0 + 0.0001 * count) for count in range(6)] == [False] * 5 + [True]
