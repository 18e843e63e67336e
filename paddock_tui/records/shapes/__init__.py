"""Shapes: how one kind of value is read from a file, read from the keyboard, written and shown."""

from paddock_tui.records.ids import is_id
from paddock_tui.records.shapes.amounts import Amount, AmountOrWord
from paddock_tui.records.shapes.base import Shape
from paddock_tui.records.shapes.laps import Lap, LapTime
from paddock_tui.records.shapes.markings import TyreSizeMarking
from paddock_tui.records.shapes.money import Currency, Money, MoneyAmount, TwoCurrencies, total
from paddock_tui.records.shapes.numbers import Number, Series, Signed, Whole, WordList
from paddock_tui.records.shapes.references import Named, Reference
from paddock_tui.records.shapes.settings import (
    AnySetting,
    LevelSetting,
    Setting,
    SpeedSetting,
    WordSetting,
)
from paddock_tui.records.shapes.texts import Flag, Text, Word
from paddock_tui.records.shapes.times import DateCode, Day, TimeOfDay
from paddock_tui.records.shapes.zones import TimeZoneName

__all__ = [
    "Amount",
    "AmountOrWord",
    "AnySetting",
    "Currency",
    "DateCode",
    "Day",
    "Flag",
    "Lap",
    "LapTime",
    "LevelSetting",
    "Money",
    "MoneyAmount",
    "Named",
    "Number",
    "Reference",
    "Series",
    "Setting",
    "Shape",
    "Signed",
    "SpeedSetting",
    "Text",
    "TimeOfDay",
    "TimeZoneName",
    "TwoCurrencies",
    "TyreSizeMarking",
    "Whole",
    "Word",
    "WordList",
    "WordSetting",
    "is_id",
    "total",
]
