"""Starting levels: every row of the table in paddock practice, unpublished."""

from itertools import product

import pytest

from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.levels import Levels
from paddock_tui.calc.starting_levels import (
    Aid,
    RiderGroup,
    Surface,
    TyreKind,
    TyreState,
    launch_to_start_with,
    starting_help,
    street_help,
    surface_by_track,
)
from tests.every import every

TABLE = """
novice dry road .80 trackday .70 slick .70 | .70 .85 .85 .50 .60
novice cold-dry road .90 trackday .80 slick .90 | .75 .90 .90 .55 .70
novice damp road 1.00 trackday .90 wet .90 | .85 1.00 1.00 .70 .85
novice wet road 1.00 trackday 1.00 wet 1.00 | .95 1.00 1.00 .80 1.00
intermediate dry road .60 trackday .50 slick .50 | .50 .65 .55 .50 .35
intermediate cold-dry road .70 trackday .60 slick .70 | .55 .70 .60 .55 .45
intermediate damp road .80 trackday .70 wet .70 | .65 .80 .80 .70 .60
intermediate wet road .90 trackday .80 wet .80 | .75 .90 .95 .80 .75
advanced dry road .45 trackday .35 slick .30 | .35 .40 .25 .40 .15
advanced cold-dry road .55 trackday .45 slick .55 | .40 .45 .30 .45 .25
advanced damp road .65 trackday .55 wet .55 | .50 .55 .50 .60 .40
advanced wet road .75 trackday .65 wet .65 | .60 .65 .65 .70 .55
race dry road .40 trackday .30 slick .25 | .30 .30 .10 .35 .10
race cold-dry road .50 trackday .40 slick .50 | .35 .35 .15 .40 .20
race damp road .60 trackday .50 wet .50 | .45 .50 .35 .55 .35
race wet road .70 trackday .60 wet .60 | .55 .60 .50 .65 .50
"""
REST = (Aid.WHEELIE, Aid.FRONT_ABS, Aid.REAR_ABS, Aid.ENGINE_BRAKING, Aid.POWER)
Cell = tuple[RiderGroup, Surface, TyreKind, Aid, float]


def _cells() -> list[Cell]:
    cells: list[Cell] = []
    for line in TABLE.strip().splitlines():
        left, right = line.split("|")
        group_word, surface_word, *tyres = left.split()
        group, surface = RiderGroup(group_word), Surface(surface_word)
        for kind, figure in zip(tyres[::2], tyres[1::2], strict=True):
            cells.append((group, surface, TyreKind(kind), Aid.TRACTION, float(figure)))
        for aid, figure in zip(REST, right.split(), strict=True):
            cells.append((group, surface, TyreKind.TRACKDAY, aid, float(figure)))
    return cells


@every(
    ("group", "surface", "tyre", "aid", "help_"),
    [pytest.param(*cell, id="-".join(str(part.value) for part in cell[:4])) for cell in _cells()],
)
def test_every_cell_of_the_table(
    group: RiderGroup, surface: Surface, tyre: TyreKind, aid: Aid, help_: float
) -> None:
    assert starting_help(group, surface, tyre, aid) == pytest.approx(help_)


@every(
    ("surface", "tyre"),
    [
        *product((Surface.DAMP, Surface.DRYING, Surface.WET, Surface.STANDING), (TyreKind.SLICK,)),
        *product((Surface.DRY, Surface.COLD_DRY), (TyreKind.WET, TyreKind.INTERMEDIATE)),
    ],
)
def test_a_tyre_that_does_not_suit_has_no_starting_level(surface: Surface, tyre: TyreKind) -> None:
    assert all(starting_help(group, surface, tyre, aid) is None for group in RiderGroup for aid in Aid)


@every("aid", [Aid.TRACTION, Aid.WHEELIE, Aid.FRONT_ABS, Aid.REAR_ABS, Aid.POWER])
@every("surface", list(Surface))
def test_experts_low_beginners_high(aid: Aid, surface: Surface) -> None:
    """Common practice, no source: the less experience, the more help, on every surface."""
    helps = [starting_help(group, surface, TyreKind.TRACKDAY, aid) for group in RiderGroup]
    known = [help_ for help_ in helps if help_ is not None]

    assert len(known) == 4
    assert known == sorted(known, reverse=True)


@every("aid", [Aid.TRACTION, Aid.WHEELIE, Aid.FRONT_ABS, Aid.REAR_ABS, Aid.POWER])
@every("group", list(RiderGroup))
def test_a_poorer_surface_asks_for_more_help(aid: Aid, group: RiderGroup) -> None:
    """Common practice, no source: dry, cold, damp, wet in this order."""
    order = (Surface.DRY, Surface.COLD_DRY, Surface.DAMP, Surface.WET)
    helps = [starting_help(group, surface, TyreKind.TRACKDAY, aid) for surface in order]
    known = [help_ for help_ in helps if help_ is not None]

    assert len(known) == 4
    assert known == sorted(known)


@every(
    ("levels", "expert", "beginner"),
    [(Levels.span(0, 10, 10), 3, 7), (Levels.span(1, 6, 1), 4, 2), (Levels.span(1, 8, 8), 4, 6)],
)
def test_on_a_bike_whichever_way_it_counts(levels: Levels, expert: int, beginner: int) -> None:
    """The bike's own number rounds toward more help; the beginner's stands nearer the end that helps most."""
    scale = levels.help_if_known()
    assert scale is not None
    race = starting_help(RiderGroup.RACE, Surface.DRY, TyreKind.TRACKDAY, Aid.TRACTION)
    novice = starting_help(RiderGroup.NOVICE, Surface.DRY, TyreKind.TRACKDAY, Aid.TRACTION)

    assert race is not None
    assert novice is not None
    assert scale.level_at_least(race) == expert
    assert scale.level_at_least(novice) == beginner


def test_drying_counts_as_damp() -> None:
    for group, aid in product(RiderGroup, Aid):
        drying = starting_help(group, Surface.DRYING, TyreKind.WET, aid)
        assert drying == starting_help(group, Surface.DAMP, TyreKind.WET, aid)


def test_standing_water_asks_for_more_traction_help_than_wet() -> None:
    wet = starting_help(RiderGroup.RACE, Surface.WET, TyreKind.WET, Aid.TRACTION)

    assert wet == pytest.approx(0.60)
    assert starting_help(RiderGroup.RACE, Surface.STANDING, TyreKind.WET, Aid.TRACTION) == pytest.approx(0.70)


@every(
    ("rear", "traction", "wheelie"),
    [
        (TyreState(worn=True), 0.45, 0.40),
        (TyreState(unscrubbed=True), 0.50, 0.35),
        (TyreState(True, True), 0.60, 0.40),
    ],
)
def test_a_rear_that_grips_less_asks_for_more(rear: TyreState, traction: float, wheelie: float) -> None:
    given = (RiderGroup.ADVANCED, Surface.DRY, TyreKind.TRACKDAY)

    assert starting_help(*given, Aid.TRACTION, rear) == pytest.approx(traction)
    assert starting_help(*given, Aid.WHEELIE, rear) == pytest.approx(wheelie)


def test_one_abs_control_takes_the_higher_of_its_wheels() -> None:
    assert starting_help(RiderGroup.ADVANCED, Surface.DRY, TyreKind.TRACKDAY, Aid.ABS) == pytest.approx(0.40)
    assert starting_help(RiderGroup.INTERMEDIATE, Surface.WET, TyreKind.WET, Aid.ABS) == pytest.approx(0.95)


@every(("track_c", "surface"), [(14.9, Surface.COLD_DRY), (15.0, Surface.DRY), (None, Surface.DRY)])
def test_a_dry_track_under_the_figure_is_cold(track_c: float | None, surface: Surface) -> None:
    assert surface_by_track(Surface.DRY, track_c, 15.0) is surface
    assert surface_by_track(Surface.DAMP, track_c, 15.0) is Surface.DAMP


def test_on_the_street() -> None:
    street = [street_help(aid) for aid in (Aid.TRACTION, Aid.WHEELIE, Aid.ABS, Aid.ENGINE_BRAKING, Aid.POWER)]

    assert street == [0.70, 0.70, 1.0, 0.50, 0.40]


@pytest.mark.parametrize("gentlest", [1, 3])
def test_the_first_launch_is_the_gentlest(gentlest: int) -> None:
    """Common practice, no source: who never used launch control starts at its gentle end, then chooses."""
    levels = Levels.span(1, 3, gentlest, off=True)

    assert launch_to_start_with(levels, 0) == gentlest
    assert launch_to_start_with(levels, 1) is None


def test_launch_with_an_unknown_gentle_end_is_not_guessed() -> None:
    with pytest.raises(Inconsistent, match="gentlest"):
        launch_to_start_with(Levels.span(1, 3), 0)
