"""Lap times out of a file of columns."""

from paddock_tui.entry.laps import Run
from paddock_tui.entry.tables import ReadTable, laps_of, read_table
from paddock_tui.records.errors import InputError
from tests.every import every

HEADED = "Lap,Time,Mark\n1,1:58.9,out\n2,1:44.3,\n3,1:59.0,in\n"


def table_of(text: str) -> ReadTable:
    found = read_table(text)
    assert isinstance(found, ReadTable), found
    return found


def laps(text: str, place: int, usual_s: float | None = None) -> list[str]:
    run = laps_of(table_of(text), place, usual_s)
    assert isinstance(run, Run), run
    return [str(one.lap) for one in run.laps]


@every(
    ("text", "place", "expected"),
    [
        (HEADED, 2, ["1:58.9 out", "1:44.3", "1:59.0 in"]),
        ("1:58.9\n1:44.3\n", 1, ["1:58.9", "1:44.3"]),
        ("Nr;Time;Speed\n1;1:44,3;201\n2;1:43,9;203\n", 2, ["1:44.3", "1:43.9"]),
        ("lap\ttime\n2\t1:44.3\n1\t1:58.9\n", 2, ["1:58.9", "1:44.3"]),  # newest first is turned round
        ("time\n1:44.3\n\n1:44.0 traffic\n", 1, ["1:44.3", "1:44.0 traffic"]),
        ("\ufefftime,x\n1:44.3,a\n", 1, ["1:44.3"]),
    ],
)
def test_the_column_chosen_is_read_with_or_without_headings(
    text: str, place: int, expected: list[str]
) -> None:
    assert table_of(text).likely(None) == place
    assert laps(text, place) == expected


@every(
    ("text", "found"),
    [
        ("", "empty"),
        ("\0\1\2", "no text"),
        ("dear diary\nit rained\n", "no column of it holds lap times"),
        ('time\n"1:44.3\n', "cannot be read as columns"),
        ("1:44.3\n" * 2000, "2000 rows"),
    ],
)
def test_a_file_that_is_no_table_of_laps_is_refused(text: str, found: str) -> None:
    trouble = read_table(text)

    assert isinstance(trouble, InputError)
    assert found in trouble.found


@every(
    ("text", "place", "found"),
    [
        ("time\n1:44.3\nred flag\n1:43.1\n", 1, 'row 3: "red flag"'),
        ("time\n1:44.3\n1:61.0\n", 1, "row 3: 1:61.0 is no lap time"),
        ("lap,time\n1,1:44.3\n5,1:43.0\n", 2, "row 3: lap number 5 behind 1"),
        ("time\n1:44.3\n3:28.4\n5:12.0\n", 1, "row 3: each time is a lap later"),
    ],
)
def test_one_bad_cell_is_pointed_at_by_its_row_and_nothing_is_taken(
    text: str, place: int, found: str
) -> None:
    trouble = laps_of(table_of(text), place, None)

    assert isinstance(trouble, InputError)
    assert trouble.found.startswith(found)
