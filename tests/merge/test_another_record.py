"""What git takes for a state of a record although it is another one, and what it is none of."""

from paddock_tui.merge import are_different
from tests.every import every

OUTING = """date = 2026-06-20
day = "2026-06-20-night"
number = 3
start = 23:40:00
bike = "magpie"
rider = "ines"
"""


@every(
    ("changes", "another"),
    [
        ({}, False),
        ({"start = 23:40:00": "start = 23:50:00"}, False),
        # Shifted over midnight on the night itself: the day is the same.
        ({"start = 23:40:00": "start = 00:05:00", "date = 2026-06-20": "date = 2026-06-21"}, False),
        (
            {
                "start = 23:40:00": "start = 00:05:00",
                "date = 2026-06-20": "date = 2026-06-21",
                'day = "2026-06-20-night"': 'day = "2026-06-21-night"',
            },
            True,
        ),
        ({"start = 23:40:00": "start = 10:20:00", "number = 3": "number = 1"}, True),
        ({"number = 3": "number = 1", 'bike = "magpie"': 'bike = "otter"'}, True),
    ],
)
def test_another_outing_is_told_by_two_of_what_tells_outings_apart(
    changes: dict[str, str], another: bool
) -> None:
    other = OUTING
    for old, new in changes.items():
        assert old in other
        other = other.replace(old, new)

    assert are_different(OUTING, other) is another


def test_another_record_has_nothing_of_the_first() -> None:
    assert are_different('name = "fen"\nlap = 2\nwet = true\n', 'name = "moor"\nlap = 3\nwet = false\n')
    assert not are_different('name = "fen"\n', 'name = "moor"\n')
