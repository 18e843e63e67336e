"""What earlier days taught of what is packed: how often a thing was missing, borrowed or not used."""

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from paddock_tui.records.day import RidingDay
from paddock_tui.records.packing import HOW_IT_SERVED


class Served(NamedTuple):
    """How one thing served on earlier days: each way with its dates, oldest first."""

    days: tuple[tuple[str, dt.date], ...]

    @property
    def last(self) -> str:
        """How it served the last time that anybody noted it."""
        return self.days[-1][0]

    def words(self) -> str:
        """Say how often it served how, such as `missing twice, last 2026-05-16`; what was not there first."""
        said = []
        for how in HOW_IT_SERVED:
            dates = [date for was, date in self.days if was == how]
            if dates:
                said.append(f"{how} {_times(len(dates))}, last {dates[-1]}")
        return "; ".join(said)


def served_before(days: Iterable[RidingDay], date: dt.date | None) -> Mapping[str, Served]:
    """Return how each thing served on the days before a date (None: on all of them), by its item."""
    found: dict[str, list[tuple[str, dt.date]]] = {}
    dated = [(day.date, day) for day in days if day.date is not None]
    for on, day in sorted(dated, key=lambda one: one[0]):
        if date is not None and on >= date:
            continue
        for item, packed in day.packing.items():
            if packed.was is not None:
                found.setdefault(item, []).append((packed.was, on))
    return {item: Served(tuple(held)) for item, held in found.items()}


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")
