"""Whether the dash was read since it may have changed, and what it showed beside the plan."""

import datetime as dt
from typing import Any

from paddock_tui.facts.core import ABSENT, NotKnown
from paddock_tui.facts.dash import undone_by
from tests.every import every
from tests.rules.situations import BIKE_UP, Change, files, put, situation, without

READ, LATER = dt.time(10, 36), dt.time(10, 37)
KEEPS = tuple(put("bike", f"controls.{name}.key_off", "keeps") for name in BIKE_UP["controls"])


def get(name: str, *changes: Change) -> Any:
    """Give the value of a fact."""
    return situation(files(*changes)).facts().get(name)


def event(what: str | None, at: dt.time | None) -> Change:
    """Note one event."""
    return put("session", "events.1", {**({"what": what} if what else {}), **({"at": at} if at else {})})


DASH: list[tuple[str, tuple[Change, ...], Any]] = [
    ("read, nothing since", (), False),
    ("not read", (without("session", "dash"),), True),
    ("key-on before the reading", (event("key-on", dt.time(10, 35)),), False),
    ("key-on as it was read", (event("key-on", READ),), False),
    ("stall after the reading", (event("stall", LATER),), True),
    ("something with the key, nobody says what", (event(None, LATER),), True),
    ("a fuse, nobody knows when", (event("fuse", None),), True),
    ("key-off on a bike that keeps everything", (*KEEPS, event("key-off", LATER)), False),
    ("a battery on a bike that keeps everything", (*KEEPS, event("battery", LATER)), True),
    ("one control that may not keep", (*KEEPS[1:], event("key-off", LATER)), True),
    ("a fall after the reading", (put("session", "incidents.1", {"what": "fall", "at": LATER}),), True),
    ("a fall before it", (put("session", "incidents.1", {"what": "fall", "at": dt.time(9, 0)}),), False),
    ("another mode planned since", (put("session", "dash.planned_mode", "showers"),), True),
    ("the same mode planned", (put("session", "dash.planned_mode", "open"),), False),
    ("a bike without controls", (put("bike", "controls", {}),), ABSENT),
    ("a bike without electronics", (put("bike", "electronics", "none"),), ABSENT),
]


@every(("changes", "to_read"), [row[1:] for row in DASH], ids=[row[0] for row in DASH])
def test_the_dash_has_to_be_read_after_what_may_have_changed_it(
    changes: tuple[Change, ...], to_read: object
) -> None:
    assert get("dash_to_read", *changes) is to_read


def test_a_mode_that_nobody_plans_any_more_leaves_it_open() -> None:
    found = get("dash_to_read", put("session", "dash.planned_mode", "open"), without("session", "setup.mode"))
    assert isinstance(found, NotKnown)


def test_what_undid_the_reading_is_said() -> None:
    looked = situation(files(put("session", "dash.planned_mode", "showers")))
    assert looked.session is not None
    assert looked.bike is not None
    assert undone_by(looked.session, looked.bike) == "riding mode showers -> open"
