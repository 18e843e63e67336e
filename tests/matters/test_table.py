"""Each line of the table of what stays open is as bad as it says, and silent or a note by its guard.

Opened, kept, closed as it says and by nothing else is asked of each of its kinds in `test_rows.py`.
"""

import datetime as dt

from paddock_tui.matters import KINDS
from tests.every import every
from tests.matters.row import QUIET, RIDDEN
from tests.matters.rows import ROWS
from tests.matters.table import CHAIN, HEIGHT, HELP, HOT_OFF, REPAIRED, SILENT, TABLE, Seen
from tests.matters.walk import FIRST, found_after, outing

CASES = [(line, one) for line, several in TABLE.items() for one in several]

NO_GUARD = {"lamp oil, temperature"}
"""Lines without a guard."""


def test_every_kind_stands_in_a_line_of_the_table_and_has_its_row() -> None:
    assert {one.kind for _, one in CASES} == set(KINDS) == {row.kind for row in ROWS}


def test_every_line_says_how_bad_it_is_and_has_its_guard_at_work() -> None:
    for line, several in TABLE.items():
        severities = {one.severity for one in several}
        assert severities - {SILENT}, line
        assert severities & {SILENT, "note"} or line in NO_GUARD, line


@every("one", [one for _, one in CASES], ids=[line for line, _ in CASES])
def test_a_line_of_the_table_is_as_bad_as_it_says(one: Seen) -> None:
    more = dict(one.more)
    long_ago = FIRST - dt.timedelta(days=more.get("days", 1))
    before = [
        outing(number, {**RIDDEN, **values}, long_ago, **more.get("before_extra", {}))
        for number, values in enumerate(more.get("before", ()), 1)
    ]
    opens = outing(1, {**RIDDEN, **one.opens}, **more.get("extra", {}))
    rides = [outing(number + 2, QUIET) for number in range(more.get("rides", 0))]
    then = {**{key: value for key, value in one.opens.items() if key == "kind"}, **more.get("then", {})}
    date = then.pop("date", FIRST)
    last = outing(9, {**({"setup.front_start": "2.10 bar"} if one.kind == HOT_OFF else {}), **then}, date)
    looked = [opens] if one.kind in HERE else [opens, *rides, last]

    found = found_after(*before, *looked, **more.get("now", {}))
    assert [str(each.severity) for each in found if each.kind == one.kind] == (
        [one.severity] if one.severity else []
    )


HERE = {REPAIRED, HEIGHT, HELP, "bike-stood-or-workshop", CHAIN}
"""Kinds that the outing itself shows."""
