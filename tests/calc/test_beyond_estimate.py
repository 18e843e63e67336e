"""What lies beyond an estimate is told, not raised."""

from paddock_tui.calc.beyond_estimate import Beyond


def test_it_says_what_is_asked_and_what_was_assumed() -> None:
    beyond = Beyond("it asks a friction of", 1.234, 0.8)

    assert beyond.sentence() == "beyond this estimate: it asks a friction of 1.23, assumed 0.80"
    assert not isinstance(beyond, Exception)
