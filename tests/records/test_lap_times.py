"""Lap times as a shape: read in every writing, shown as finely as they were typed."""

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes import LapTime
from tests.every import every
from tests.examples import examples

SETTINGS = examples(25)

LAPS = [
    ("1:44.310", "1:44.310"),
    ("104.310", "1:44.310"),
    ("1:04.310", "1:04.310"),
    ("1:4.3", "1:04.3"),
    ("1:44", "1:44"),
    ("44.31", "44.31"),
    ("60", "1:00"),
    ("1:00.0005", "1:00.0005"),
    ("1:58.900   out", "1:58.900 out"),
    ("10:00.5 traffic", "10:00.5 traffic"),
]


@every(("text", "shown"), LAPS)
def test_a_lap_is_shown_in_minutes_and_seconds_as_finely_as_it_was_typed(text: str, shown: str) -> None:
    assert str(LapTime().load(text)) == shown


@SETTINGS
@given(st.integers(1, 99 * 60_000), st.sampled_from(["", "out", "in", "traffic"]))
def test_every_lap_comes_back_the_same(milliseconds: int, mark: str) -> None:
    minutes, rest = divmod(milliseconds, 60_000)
    text = f"{minutes}:{rest // 1000:02}.{rest % 1000:03} {mark}".strip()
    lap = LapTime().load(text)
    assert not isinstance(lap, InputError)
    assert lap.seconds * 1000 == milliseconds
    assert LapTime().load(str(lap)) == lap
