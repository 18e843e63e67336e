"""Values that a keyboard can give, and edits made of them."""

import datetime as dt
from decimal import Decimal
from typing import Any

from hypothesis import strategies as st

from paddock_tui.entry import LineContext
from paddock_tui.records.edits import MISSING, Missing, Value
from paddock_tui.records.fields_of_record import Field
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes import (
    Amount,
    AmountOrWord,
    DateCode,
    Day,
    Flag,
    LapTime,
    LevelSetting,
    Named,
    Number,
    Reference,
    SpeedSetting,
    Text,
    TimeOfDay,
    Whole,
    Word,
    WordSetting,
)
from tests.sample import FILES

_NOT_ALONE = {("bike",), ("setup", "mode"), ("setup", "damping"), ("setup", "preset")}
"""What changes how the rest of a line is read; examples stand in for them."""

texts = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=40).filter(str.strip)
clocks = st.times().map(lambda time: time.replace(microsecond=0))
laps = st.builds(
    lambda minutes, thousandths, mark: f"{minutes}:{thousandths / 1000:06.3f} {mark}".strip(),
    st.integers(1, 9),
    st.integers(0, 59_999),
    st.sampled_from(["", "out", "in", "traffic"]),
)


def _amounts(amount: Amount) -> st.SearchStrategy[Any]:
    hundredths = st.integers(int(amount.low * 100), int(amount.high * 100))
    return hundredths.map(lambda number: f"{Decimal(number) / 100} {amount.unit}")


def values_of(field: Field) -> st.SearchStrategy[Any]:
    """Give plain values of a field as its file would hold them."""
    shape: Any = field.shape
    simple: dict[type, st.SearchStrategy[Any]] = {
        Text: texts,
        Flag: st.booleans(),
        TimeOfDay: clocks,
        Day: st.dates(),
        DateCode: st.sampled_from(["2623", "0124"]),
        LapTime: laps,
    }
    if type(shape) in simple:
        return simple[type(shape)]
    if isinstance(shape, Amount):
        return _amounts(shape)
    if isinstance(shape, AmountOrWord):
        return st.one_of(_amounts(shape.amount), st.sampled_from(shape.choices))
    if isinstance(shape, LevelSetting):
        return st.one_of(st.integers(-20, 200), st.just("off"))
    if isinstance(shape, Number):
        return st.one_of(st.integers(-99, 99), st.integers(-9900, 9900).map(lambda number: number / 100))
    if isinstance(shape, Whole):
        return st.integers(shape.low, shape.high)
    if isinstance(shape, SpeedSetting):
        return st.sampled_from([*shape.words(), "37 km/h", "22.5 mph"])
    if isinstance(shape, Reference):
        return st.sampled_from([ref.id for ref in FILES if ref.kind == shape.kind])
    assert isinstance(shape, Word | WordSetting | Named), shape
    return st.sampled_from(shape.words()) if shape.words() else st.nothing()


@st.composite
def edits(draw: st.DrawFn, context: LineContext) -> dict[Path, Value | Missing]:
    """Draw edits of a record: values with words, and notes and laps behind those that are there."""
    singles = {path: one for path, one in context.words.singles.items() if path not in _NOT_ALONE}
    found: dict[Path, Value | Missing] = {}
    for path in draw(st.lists(st.sampled_from(sorted(singles)), unique=True, max_size=8)):
        field = singles[path].fields[0]
        found[path] = draw(st.one_of(values_of(field), st.just(MISSING)))
    for lap in range(1, draw(st.integers(1, 4))):
        found["laps", str(lap)] = draw(laps)
    if draw(st.booleans()):
        number = str(draw(st.integers(1, 3)))
        found["notes", number, "text"] = draw(texts)
        now = context.now.time().replace(microsecond=0)
        found["notes", number, "at"] = draw(st.sampled_from([now, dt.time(9, 30)]))
    return found
