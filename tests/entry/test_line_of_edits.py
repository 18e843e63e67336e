"""Edits written as a line, as a person would type them."""

import datetime as dt
from typing import Any

from paddock_tui.entry import printed, read_line
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Ref
from tests.entry.contexts import BADGER, MAGPIE, OTTER, RIDDEN, by_path, context
from tests.every import every

C, A = "setup.controls.", "setup.adjusters."

PRINTED: list[tuple[Ref, dict[str, Any], str]] = [
    (MAGPIE, {C + "traction": 4}, "t 4"),
    (MAGPIE, {C + "traction": -1}, "t=-1"),
    (MAGPIE, {C + "traction": MISSING}, "t clear"),
    (MAGPIE, {C + "shifter": "both ways", C + "launch": "armed"}, "sh both ways la armed"),
    (MAGPIE, {A + "front-preload": 6.5}, "fp 6.5"),
    (MAGPIE, {A + "front-preload": 6.5, A + "rear-preload": 4}, "preload 6.5 4"),
    (MAGPIE, {"pressures.hot.front": "2.38 bar"}, "hot 2.38 bar -"),
    (MAGPIE, {"pressures.hot.front": MISSING}, "pressures.hot.front clear"),
    (MAGPIE, {"parked": dt.time(11, 2), "surface": "standing water"}, "parked 11:02 surface standing water"),
    (MAGPIE, {"laps.1": "1:44.310 out", "laps.2": "1:43"}, "laps 1:44.310 out 1:43"),
    (MAGPIE, {"laps.3": "1:44"}, "laps.3 1:44"),
    (MAGPIE, {"aim": "brake later", C + "traction": 4}, "t 4 aim brake later"),
    (MAGPIE, {"aim": "brake later", "said": "good"}, 'said "good" aim brake later'),
    (MAGPIE, {"aim": MISSING, C + "traction": 4}, "aim=clear t 4"),
    (MAGPIE, {"aim": "clear"}, 'aim "clear"'),
    (MAGPIE, {"notes.1.text": "slid", "notes.1.at": dt.time(13, 45, 12)}, "note slid"),
    (MAGPIE, {"notes.1.text": "slid", "notes.1.at": dt.time(9, 0)}, 'notes.1.text "slid" notes.1.at 09:00'),
    (MAGPIE, {"setup": {"controls": {"traction": 4, "slide": 2}}}, "t 4 sl 2"),
    (
        MAGPIE,
        {"setup.preset": "bumpy track", "setup.damping": "motor-set"},
        "damping motor-set preset bumpy track",
    ),
    (
        RIDDEN,
        {"laps.1": "1:44", "notes.2.text": "slid", "notes.2.at": dt.time(13, 45, 12)},
        "laps 1:44 note slid",
    ),
    (OTTER, {C + "rear-grip": 4, A + "rear-compression-slow": 8}, "grip 4 slow 8"),
    (BADGER, {A + "front-rebound-left": 1.5}, "front-rebound-left 1.5"),
    (MAGPIE, {}, ""),
]


@every(("ref", "edits", "line"), PRINTED, ids=[line for *_, line in PRINTED])
def test_edits_are_printed_the_way_they_are_typed(ref: Ref, edits: dict[str, Any], line: str) -> None:
    assert printed(by_path(edits), context(ref)) == line


def test_a_whole_set_up_is_one_line() -> None:
    record = context(RIDDEN).data["setup"]
    edits: Any = {("setup",): record}

    line = read_line(printed(edits, context(MAGPIE)), context(MAGPIE))

    assert line.clear
    assert len(line.edits) == sum(len(one) if isinstance(one, dict) else 1 for one in record.values())


def test_a_value_that_would_read_as_something_else_is_written_so_that_it_does_not() -> None:
    edits = by_path({C + "throttle": "no word of this bike"})

    line = printed(edits, context(MAGPIE))

    assert line == 'th "no word of this bike"'
    assert read_line(line, context(MAGPIE)).edits == edits
