"""Of any situation: the order of files never counts, what is not known never passes, nothing fails."""

import random
from collections.abc import Iterator
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.paths import Path
from paddock_tui.rules import SERIOUS, Review, review
from tests.every import every
from tests.examples import examples, one_in
from tests.rules.cases import CASES
from tests.rules.situations import (
    BIKE_DOWN,
    BIKE_UP,
    WHOLE,
    Change,
    Data,
    asked,
    changed,
    files,
    put,
    situation,
)

SETTINGS = examples(20)

VALUES: dict[str, tuple[Any, ...]] = {
    "session:surface": ("dry", "damp", "drying", "wet", "standing water", None),
    "session:kind": ("road", "track day", "race", None),
    "session:setup.mode": ("open", "showers", "snow", None),
    "session:setup.damping": ("by-hand", "automatic", None),
    "session:setup.controls.traction": ("off", 0, 1, 3, 5, 6, 10, 11, 99, None),
    "session:setup.controls.wheelie": ("off", 1, 3, 6, None),
    "session:setup.controls.abs": ("off", 0, 1, 2, 4, None),
    "session:setup.controls.throttle": ("sharp", "soft", "wild", None),
    "session:setup.controls.pit-limiter": ("off", "40 km/h", "60 km/h", "37 mph", None),
    "session:setup.adjusters.front-rebound": (0, 12, 24, 99, None),
    "session:pressures": (None, {"cold": {"front": "9 bar"}}, {"cold": {"front": "2 bar", "rear": "2 bar"}}),
    "session:dash": (None, {}),
    "session:events": ({"1": {"what": "stall"}}, None),
    "session:lever": ("firm", "to the bar", "spongy hot", None),
    "session:work": ({"1": {"what": "wheel out"}, "2": {"what": "oil", "rechecked_hot": True}}, None),
    "session:incidents": (
        {"1": {"what": "fall", "moving": True, "head_contact": True}, "2": {"what": "leak"}},
        {"1": {"what": "fall", "moving": False}},
        None,
    ),
    "session:planned_laps": (1, 90, None),
    "bike:tank.capacity": ("5 l", "17 l", "25 l", None),
    "venue:length": ("4 km", "0.4 km", None),
    "rider:group": ("novice", "intermediate", "advanced", "race", None),
    "bike:controls.traction.most_help": (10, 1, 5, None),
    "bike:controls.traction.off": (True, False, 0, None),
    "bike:controls.traction.levels": ([0, 10], [1, 3], [5, 5], [10, 0], [0, 10**9], None),
    "bike:controls.abs.most_help": (4, 1, None),
    "bike:controls.engine-braking.frees_most": (5, None),
    "bike:modes": (
        {},
        BIKE_UP["modes"],
        {"open": {"fixes": {"traction": 1, "pit-limiter": "60 km/h"}}},
        None,
    ),
    "bike:electronics": ("listed", "none", None),
    "bike:suspension": ("listed", None),
    "day:limits.pit_lane": ("60 km/h", "30 km/h", "20 mph", None),
    "day:entries": (None, {"ines": {"kestrel": {"signed_on": True}}}),
    "tyres:rear.kind": ("slick", "wet", None),
    "garage:limits": (
        {"all-aids-near-least": {"near_least": 0.5}},
        {"all-aids-near-least": {"near_least": 9}},
    ),
}


@st.composite
def changes(draw: st.DrawFn) -> tuple[Change, ...]:
    """Any changes of the whole situation, on either bike."""
    places = draw(st.lists(st.sampled_from(sorted(VALUES)), unique=True, max_size=12))
    made = []
    for place in places:
        role, _, dotted = place.partition(":")
        made.append(put(role, dotted, draw(st.sampled_from(VALUES[place]))))
    bike = draw(st.sampled_from([BIKE_UP, BIKE_DOWN]))
    return (("bike", (), bike), *made)


def shuffled(data: Any, dice: random.Random) -> Any:
    """Give the same tables with their entries in another order."""
    if not isinstance(data, dict):
        return data
    items = list(data.items())
    dice.shuffle(items)
    return {key: shuffled(value, dice) for key, value in items}


@SETTINGS
@given(changes(), st.randoms(use_true_random=False), st.booleans())
def test_the_order_of_entries_never_changes_the_review(
    chosen: tuple[Change, ...], dice: random.Random, going_out: bool
) -> None:
    made = files(*chosen)
    other = {role: shuffled(data, dice) for role, data in made.items()}
    assert review(situation(other, going_out=going_out)) == review(situation(made, going_out=going_out))


def leaves(data: Any, at: Path = ()) -> Iterator[Path]:
    """List the paths of all values and tables of a record."""
    for key, value in data.items() if isinstance(data, dict) else ():
        yield (*at, key)
        yield from leaves(value, (*at, key))


def blanked(made: dict[str, Data]) -> Iterator[dict[str, Data]]:
    """Give the situation once without each of its values, tables and records."""
    everything: list[Change] = [(role, (), None) for role in made if role != "session"]
    everything += [(role, path, None) for role in made for path in leaves(made[role])]
    for change in everything:
        yield changed(made, change)


RECORDS = ("session", "bike", "rider", "day", "tyres", "venue")

NEEDED = (
    "surface",
    "kind",
    "mode",
    "group",
    "most_help",
    "levels",
    "electronics",
    "suspension",
    "range",
    "pit_lane",
    "signed_on",
    "briefing",
    "inspected",
    "read",
    "at",
)
"""The facts that rules need: taking one away is forgetting it, not taking something off the bike."""


def held(found: Review) -> set[tuple[str, str]]:
    """List what is raised and is serious or worse."""
    return {(one.rule, one.subject) for one in found.findings if one.severity >= SERIOUS}


@examples(6)
@given(changes())
def test_forgetting_a_fact_never_turns_a_serious_finding_into_a_pass(chosen: tuple[Change, ...]) -> None:
    _forget_each(files(*chosen))


@every("rule", CASES)
def test_forgetting_a_fact_of_a_case_never_makes_its_rule_pass(rule: str) -> None:
    # Only this rule and the stacks that may absorb it are asked: the others have cases of their own.
    first, *others = CASES[rule].raising
    with asked(rule, essentials=False):
        start = list(CASES).index(rule) % SHARE_OF_FIRST
        _forget_each(files(*first.changes), part=slice(start, None, SHARE_OF_FIRST), **first.more)
        for at, case in enumerate(others):
            _forget_each(files(*case.changes), part=slice(at % SHARE, None, SHARE), **case.more)


SHARE, SHARE_OF_FIRST = one_in(8), one_in(4)
"""Of how many facts a further case of a rule, and the first, forgets one: `python -m tests.bench longer`
forgets each.
"""


def _forget_each(made: dict[str, Data], part: slice = slice(None), **more: Any) -> None:
    more = {**more, "going_out": True}
    before = held(review(situation(made, **more)))
    if not before:
        return
    facts = [
        (role, path)
        for role, data in made.items()
        for path in leaves(data)
        if path[-1] in NEEDED or path[:2] == ("setup", "controls")
    ]
    for role, path in (*facts[part], ("rider", ()), ("bike", ())):
        _forgotten(made, before, role, path, more)


def _forgotten(
    made: dict[str, Data], before: set[tuple[str, str]], role: str, path: Path, more: dict[str, Any]
) -> None:
    after = review(situation(changed(made, (role, path, None)), **more))
    for rule, subject in before - {(one.rule, one.subject) for one in after.findings}:
        # The value that cannot be is itself what was forgotten.
        if rule in ABOUT_THE_VALUE and (
            ".".join(path) == subject or path[:1] in (("setup",), ("pressures",))
        ):
            continue
        # Without one of two values that contradict each other there is no contradiction left.
        if rule == "record-at-odds-with-itself":
            continue
        stacked = [one for one in after.findings if subject in one.parts]
        assert rule not in after.passed or stacked, (rule, subject, role, path)


ABOUT_THE_VALUE = frozenset(
    {
        "impossible-figure",
        "not-on-this-bike",
        "level-not-on-the-bike",
        "speed-not-on-the-bike",
        "adjuster-outside-its-range",
        "outside-the-riding-mode",
    }
)


@examples(3)
@given(changes())
def test_no_gap_in_the_records_makes_a_review_fail(chosen: tuple[Change, ...]) -> None:
    for made in blanked(files(*chosen)):
        review(situation(made))


@SETTINGS
@given(st.data())
def test_any_part_of_the_records_can_be_reviewed(data: st.DataObject) -> None:
    made = files(*data.draw(changes()))
    places = [(role, path) for role in made for path in leaves(made[role])]
    gone = data.draw(st.lists(st.sampled_from(places), max_size=20, unique=True))
    roles = data.draw(st.sets(st.sampled_from(sorted(WHOLE))))
    kept = {role: table for role, table in made.items() if role in roles}
    lost: list[Change] = [(role, path, None) for role, path in gone if role in kept]
    without: list[Change] = [(role, (), None) for role in WHOLE if role not in kept]
    partial = files(*((role, (), table) for role, table in kept.items()), *without, *lost)
    found = review(situation(partial, going_out=data.draw(st.booleans())))
    assert not set(found.passed) & {one.rule for one in found.findings}
    assert not set(found.passed) & set(found.missing_rules())
    assert all(entry.missing for entry in found.not_judged)


def test_what_is_missing_is_named_where_it_can_be_entered() -> None:
    """Every missing fact of every case has words; its path, where it has one, is of a record."""
    for cases in CASES.values():
        for case in cases.missing:
            for entry in review(situation(files(*case.changes))).not_judged:
                for missing in entry.missing:
                    assert missing.label
                    assert not missing.path or missing.role in RECORDS
