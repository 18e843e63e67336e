"""One answer for whoever asks: values in force, the usual lap and what is needed at the flag."""

import itertools

import attrs
import pytest

from paddock_tui.advice.about import About
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.levels import levels, starting_levels
from paddock_tui.desk.day.dash import planned
from paddock_tui.desk.edits.values import setting_value
from paddock_tui.facts import NotKnown
from paddock_tui.facts.controls import ShownControl
from paddock_tui.facts.fuel import FuelAhead
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.pace import usual_lap
from paddock_tui.pages.compare import Side, compare_page
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.differences import differences
from paddock_tui.records.electronics import HELP_FUNCTIONS, function_of
from paddock_tui.records.in_force import value_in_force
from paddock_tui.records.paths import Ref
from paddock_tui.records.tyres import TYRE_KINDS
from paddock_tui.store.data import lookup
from paddock_tui.store.garage import GarageFiles
from tests.advice.given import answers, sample
from tests.every import every
from tests.sample import SAMPLE

SESSIONS = sorted(path.stem for path in SAMPLE.glob("sessions/*/*.toml"))


def with_mode(about: About, mode: str | None) -> About:
    """Return the session as if another riding mode were chosen; None: nobody wrote down which."""
    session = about.situation.session
    assert session is not None
    other = attrs.evolve(session, setup=attrs.evolve(session.setup, mode=mode))
    return attrs.evolve(about, situation=attrs.evolve(about.situation, session=other))


@every("mode", ["as it is", None, "wading"])
def test_a_control_is_at_the_same_value_for_review_dash_and_bench(mode: str | None) -> None:
    told = 0
    for name in SESSIONS:
        about = sample("session", name)
        about = about if mode == "as it is" else with_mode(about, mode)
        bike, session = about.situation.bike, about.situation.session
        assert bike is not None
        assert session is not None
        facts, filled = about.situation.facts(), levels(about).filled
        for control in bike.controls:
            wanted = value_in_force(control, session.setup, bike)
            by_rules = facts.get("in_force", control)
            row = filled.get(f"now {control}")

            assert (by_rules.value if isinstance(by_rules, ShownControl) else None) == wanted, (name, control)
            assert planned(session, bike, ("setup", "controls", control)) == wanted, (name, control)
            assert row is None or row.value == wanted, (name, control)
            told += wanted is not None
    assert told > 30


def test_compare_puts_the_value_in_force_on_each_side() -> None:
    about = sample("session", "2026-06-20-4-magpie")
    bike = about.situation.bike
    assert bike is not None
    other = attrs.evolve(about.setup, mode="wading")

    page = compare_page(Side("this", about.setup), Side("that", other), bike)

    values = {row.key: row.value for row in page.rows()}
    for name in bike.controls:
        sides = [value_in_force(name, one, bike) for one in (about.setup, other)]
        if sides[0] != sides[1]:
            assert values[f"compare controls {name}"] == f"{sides[0]} | {sides[1]}"


def test_bench_and_review_ask_for_the_same_fuel_over_the_whole_sample() -> None:
    compared = 0
    for name in SESSIONS:
        about = sample("session", name)
        ahead = about.situation.facts().get("fuel_ahead")
        found = answers(fuel(about))
        if not isinstance(ahead, FuelAhead):
            assert isinstance(ahead, NotKnown) or about.session.kind == "road" or not found["flag"].known
            continue
        said = found["add"]
        litres = parse(str(said.puts[0].value)) if said.puts else None
        assert (litres.to("l") if isinstance(litres, Quantity) else 0.0) == pytest.approx(ahead.to_add_l), (
            name
        )
        compared += 1
    assert compared > 3


def test_the_usual_lap_is_the_one_of_the_bench_and_counts_clean_laps_as_a_session_does() -> None:
    seen = 0
    for name in SESSIONS:
        about = sample("session", name)
        found = usual_lap(about.history, about.session.rider, about.id_of("venue"))
        row = fuel(about).filled.get("usual")
        assert (row and (row.value, row.origin)) == (found and (found.seconds, found.where)), name
        seen += found is not None
    assert seen > 2


def test_undo_and_differences_write_old_and_new_alike_over_the_whole_sample() -> None:
    files, written = GarageFiles(SAMPLE), 0
    for old_name, new_name in itertools.pairwise(SESSIONS):
        ref = Ref("session", old_name)
        old, new = sample("session", old_name), sample("session", new_name)
        bike = old.situation.bike
        if bike is None or old.session.bike != new.session.bike:
            continue
        for one in differences(old.setup, new.setup, bike):
            value = lookup(files.data(Ref("session", new_name)), one.path)
            if one.known:
                label = setting_value(files, ref, one.path, value).label
                assert label == f"{one.label} {one.words}", (old_name, one.path)
                written += 1
    assert written > 10


def test_the_row_and_the_remedy_start_an_aid_at_one_level() -> None:
    """What the set-up row suggests is what rules propose: surfaces, groups, tyres, modes, track and road."""
    made = sample("session", "2026-06-20-4-magpie").situation
    assert made.session is not None
    assert made.rider is not None
    assert made.tyres is not None
    assert made.bike is not None
    aids = [name for name, one in made.bike.controls.items() if function_of(name, one) in HELP_FUNCTIONS]
    compared = 0
    for surface, group, kind, mode, outing in itertools.product(
        COLUMN, ("novice", "intermediate", "advanced"), TYRE_KINDS, ("wild", "wading"), ("track day", "road")
    ):
        setup = attrs.evolve(made.session.setup, mode=mode)
        situation = attrs.evolve(
            made,
            session=attrs.evolve(made.session, surface=surface, setup=setup, kind=outing),
            rider=attrs.evolve(made.rider, group=group),
            tyres=attrs.evolve(made.tyres, rear=attrs.evolve(made.tyres.rear, kind=kind)),
        )
        rows = starting_levels(About(situation, situation.history))
        facts = situation.facts()
        for name in aids:
            suggested, expected = facts.get("suggested_level", name), rows.get(("setup", "controls", name))
            assert (suggested if isinstance(suggested, int | str) else None) == expected, (
                surface,
                group,
                kind,
                mode,
                name,
            )
            compared += expected is not None
    assert compared > 100
