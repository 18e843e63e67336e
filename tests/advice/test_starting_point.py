"""Starting points: every aid at once, and another rider's weight made up by preload."""

import attrs

from paddock_tui.advice.about import About, History
from paddock_tui.advice.starting_point import for_another_rider, preload_for, starting_point
from paddock_tui.records.people import Rider
from tests.advice.given import about, bike, rider, sample, session, tyres
from tests.every import every

BIKE = """
[controls.traction]
kind = "level"
levels = [0, 10]
most_help = 10
off = true
[controls.wheelie]
kind = "level"
levels = [1, 6]
most_help = 1
[controls.engine-braking]
kind = "level"
levels = [1, 5]
[front]
motion_ratio = 1
preload_per_turn = "{thread} mm"
[adjusters.front-preload]
end = "front"
what = "preload"
unit = "turn"
range = [0, 15]
step = 0.5
counted_from = "{counted}"
"""
SAG = """
surface = "dry"
[setup.adjusters]
front-preload = {now}
[sag.front.alone]
extended = "700 mm"
pushed = "678 mm"
lifted = "682 mm"
[sag.front.rider]
extended = "700 mm"
pushed = "666 mm"
lifted = "670 mm"
"""
NOVICE = 'group = "novice"\nweight = "{kg} kg"\n'


def given(kg: int = 64, counted: str = "open", now: float = 6, thread: float = 1.0) -> About:
    """A session of a rider of 64 kg, 20 mm of free and 32 mm of rider sag at the front."""
    made = bike(BIKE.format(counted=counted, thread=thread))
    ann = rider(f'group = "intermediate"\nweight = "{kg} kg"\n')
    return about(
        History(riders={"ann": ann}),
        session=session('rider = "ann"\n' + SAG.format(now=now), made),
        bike=made,
        rider=ann,
        tyres=tyres('[rear]\nkind = "track-day"\n'),
    )


def other(kg: int, group: str = "novice") -> Rider:
    return rider(f'group = "{group}"\nweight = "{kg} kg"\n')


def test_every_aid_has_its_start_and_what_cannot_be_told_says_why() -> None:
    found = starting_point(given())
    # A first session on the bike: one step more than 5 of 0-10 and than 3 or 4 of 6-1.
    assert [(one.path[-1], one.value) for one in found.puts] == [("traction", 6), ("wheelie", 2)]
    assert [text.split(":")[0] for text in found.left] == ["engine braking"]
    assert "which end brakes least is not known" in found.left[0]


def test_without_surface_or_tyre_nothing_is_set() -> None:
    bare = attrs.evolve(given().situation, tyres=None)
    found = starting_point(attrs.evolve(given(), situation=bare))
    assert found.puts == ()
    assert all("needs the kind of the rear tyre" in text for text in found.left)


@every(
    ("kg", "counted", "expected"),
    [
        # 12 mm of sag under 64 kg are 18 mm under 96 kg: 6 mm, six turns of 1 mm, to be made up.
        (96, "open", 12),
        (96, "closed", 0),
        (64, "open", 6),
        (48, "open", 3),
    ],
)
def test_preload_makes_up_the_other_weight_whichever_way_it_counts(
    kg: int, counted: str, expected: float
) -> None:
    found = preload_for(given(counted=counted), other(kg))
    assert [(one.path, one.value) for one in found.puts] == [
        (("setup", "adjusters", "front-preload"), expected)
    ]
    assert [text.split(":")[0] for text in found.left] == ["rear preload"]


def test_preload_that_does_not_reach_is_said_and_left() -> None:
    found = preload_for(given(now=12), other(130))
    assert found.puts == ()
    assert "not enough range for this weight: another spring" in found.left[0]


def test_a_rider_whose_weight_is_not_known_gets_no_preload() -> None:
    found = preload_for(given(), rider('group = "novice"\n'))
    assert found.puts == ()
    assert "sag and both weights are needed" in found.left[0]


def test_another_rider_starts_with_the_help_of_the_own_group() -> None:
    mine = {one.path[-1]: one.value for one in starting_point(given()).puts}
    theirs = {one.path[-1]: one.value for one in for_another_rider(given(), other(64)).puts}
    assert theirs["traction"] > mine["traction"]  # type: ignore[operator]
    assert theirs["front-preload"] == 6


def test_the_sample_session_starts_in_the_bikes_own_numbers() -> None:
    found = starting_point(sample("session", "2026-06-20-4-magpie"))
    values = {one.path[-1]: one.value for one in found.puts}
    assert values["traction"] == 8
    assert values["throttle"] == "gentle"
