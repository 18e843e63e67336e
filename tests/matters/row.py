"""What a row about a kind of matter holds, and short ways to write sessions for it."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.matters import Outing
from tests.matters.walk import FIRST, outing

Table = dict[str, Any]

RIDDEN: Table = {"parked": dt.time(17, 0), "ridden_laps": 6}
QUIET: Table = {**RIDDEN, "did": "nothing", "happened": "nothing"}
ANSWER: Table = {"found": "worn part", "done": "replaced", "by": "TM", "test": "tried at walking pace"}


@attrs.frozen
class Row:
    """`opens` is written into a session. `beside` are values that close it where it stands, each whole.

    `later` are sessions after it that together close it, in their order. `answer` is an answer in the file of
    `record`. `silent` is what opens it not at all. `days` is whether it outlives its day. `before` are ridden
    sessions of the day before, `then` ridden ones right after it, `extra` and `now` what else the outing and
    the look at it hold. `here` is whether its own session says it, `at_once` whether its own day does,
    `keeps` what every later session has to have, `until_ridden` whether the next ride closes it.
    """

    kind: str
    opens: Table
    beside: Table = attrs.field(factory=dict)
    later: tuple[Table, ...] = ()
    record: str = ""
    silent: tuple[Table, ...] = ()
    days: bool = True
    before: tuple[Table, ...] = ()
    before_extra: Table = attrs.field(factory=dict)
    before_date: dt.date = FIRST - dt.timedelta(days=1)
    then: tuple[Table, ...] = ()
    extra: Table = attrs.field(factory=dict)
    now: Table = attrs.field(factory=dict)
    here: bool = True
    at_once: bool = True
    until_ridden: bool = False
    keeps: Table = attrs.field(factory=dict)

    def started(self, extra: Table | None = None, opens: Table | None = None) -> list[Outing]:
        """Make the outings up to the one that opens it, and those right after."""
        values = {**(self.opens if opens is None else opens), **RIDDEN, **(extra or {})}
        found = [
            outing(number, {**RIDDEN, **one}, self.before_date, **self.before_extra)
            for number, one in enumerate(self.before, 1)
        ]
        found.append(outing(1, values, **self.extra))
        for place, one in enumerate(self.then, 1):
            found.append(outing(1, {**RIDDEN, **one, "start": dt.time(9, place)}))
        return found

    def after(self, number: int, values: Table) -> Outing:
        """Make an outing after it, on the same day or, where its own day is silent, on the next."""
        values = {**self.keeps, **values}
        return outing(number, values, FIRST if self.at_once else FIRST + dt.timedelta(days=1))


def incident(what: str, **values: Any) -> Table:
    return {"incidents.1.what": what, "incidents.1.at": dt.time(16, 40)} | {
        f"incidents.1.{key}": value for key, value in values.items()
    }


def felt(what: str, **values: Any) -> Table:
    return {"symptoms.1.what": what} | {f"symptoms.1.{key}": value for key, value in values.items()}


def at(table: str, values: Table) -> Table:
    return {f"{table}.{key}": value for key, value in values.items()}
