"""Load index and speed symbol."""

import pytest

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.tyre_ratings import SpeedRating, load_kg, speed_rating
from tests.every import every


def test_a_higher_index_bears_more() -> None:
    loads = [load_kg(index) for index in range(20, 91)]

    assert loads == sorted(set(loads))


@pytest.mark.parametrize("index", [19, 91])
def test_outside_the_table_is_refused(index: int) -> None:
    with pytest.raises(OutOfRange, match="load index"):
        load_kg(index)


@every(
    ("symbol", "rating"),
    [
        ("H", SpeedRating(210)),
        ("v", SpeedRating(240)),
        ("(V)", SpeedRating(240, True)),
        ("Z", SpeedRating(240, True)),
    ],
)
def test_symbols(symbol: str, rating: SpeedRating) -> None:
    assert speed_rating(symbol) == rating


@every("symbol", ["", "I", "O", "(H)", "WW", "()"])
def test_what_is_no_symbol_is_refused(symbol: str) -> None:
    with pytest.raises(Inconsistent, match="speed symbol"):
        speed_rating(symbol)
