"""What went before a session, for rules that compare: the one copied from, and a history of ridden ones."""

import datetime as dt
from collections.abc import Mapping
from typing import Any

from paddock_tui.records.bike import Bike
from paddock_tui.records.session import Session
from tests.rules.situations import SESSION, Change, Data, files, put, read, went_before

LONG_AGO = dt.date(2026, 4, 18)
RIDDEN = put("session", "parked", dt.time(10, 59))
HOT = {"at": dt.time(9, 42), "front": "2.5 bar", "rear": "2.3 bar"}


def copied(
    *changes: Change,
    first_day: bool = False,
    tyres: Mapping[str, Data] | None = None,
    bike: tuple[Change, ...] = (),
    **ridden: Any,
) -> dict[str, Any]:
    """Give a session that this one was copied from, and a history in which the bike was ridden before.

    The session before is the usual one with these changes; `bike` are changes of the bike that it is
    read with, `ridden` what differs in the ridden one.
    """
    made = files(*bike, *changes)
    source = read("session", made["session"], Session, read("bike", made["bike"], Bike))
    day = SESSION["date"] if first_day else LONG_AGO
    held = {"date": day, "parked": dt.time(10, 0), "pressures.hot": HOT, **ridden}
    return {"source": source, "history": went_before(held, tyres=tyres, hot_read=False)}


def ridden(*sessions: Data, tyres: Mapping[str, Data] | None = None, **more: Any) -> dict[str, Any]:
    """Give a history of sessions that were ridden on another day."""
    return {
        "history": went_before(
            *({"date": LONG_AGO, "parked": dt.time(10, 0), "pressures.hot": HOT, **one} for one in sessions),
            tyres=tyres,
            **more,
        )
    }
