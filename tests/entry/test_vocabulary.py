"""No two words of a record clash, and every value has a word of its own."""

import functools
from itertools import pairwise
from typing import Any

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.entry import LineContext, calls_of, read_line
from paddock_tui.entry.builtin import LONE, READINGS, ROWS, SPECIAL, VALUE_WORDS, fixed_calls
from paddock_tui.entry.field_names import typed_at_once
from paddock_tui.entry.lookup import look_up
from paddock_tui.entry.own_calls import UNIT_WORDS
from paddock_tui.entry.vocabulary import LoneWord, Vocabulary
from paddock_tui.quantities.table import ALIASES, AMBIGUOUS, TABLE
from paddock_tui.records.bike import Bike
from paddock_tui.records.calls import ADJUSTER_CALLS, CONTROL_CALLS
from paddock_tui.records.electronics import Control
from paddock_tui.records.fields import declared
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.records.suspension import Adjuster
from tests.entry.contexts import MAGPIE, NOW, context
from tests.every import every
from tests.examples import examples
from tests.sample import FILES, bike, data_of, read

OF_BIKES = [ref for ref in FILES if ref.kind in ("session", "profile")]
BIKES = [ref.id for ref in FILES if ref.kind == "bike"]


@functools.cache
def vocabularies() -> list[Any]:
    """Give the words of every record of the sample, and of an empty session and profile on every bike."""
    found = []
    for ref in FILES:
        data = data_of(ref)
        on = bike(data["bike"]) if ref in OF_BIKES else None
        found.append(pytest.param(calls_of(ref.kind, read(ref).record, on), id=str(ref)))
    for name in BIKES:
        found.append(pytest.param(calls_of("session", Session(), bike(name)), id=f"empty session, {name}"))
        found.append(pytest.param(calls_of("profile", Profile(), bike(name)), id=f"empty profile, {name}"))
    return found


@every("words", vocabularies)
def test_every_value_is_found_under_its_own_word_and_no_other_is(words: Vocabulary) -> None:
    calls = [words.call_of(path) for path in words.singles]

    assert len(set(calls)) == len(calls)
    for path, single in words.singles.items():
        call = words.call_of(path)
        assert "." in call or look_up(words, call).one is single


@every("words", vocabularies)
def test_no_call_is_a_word_that_stands_alone_or_part_of_a_value(words: Vocabulary) -> None:
    called = {word for word, target in words.calls.items() if not isinstance(target, LoneWord)}

    assert not called & set(LONE)
    assert not called & set(VALUE_WORDS)
    assert all(typed_at_once(word) for word in words.calls)


@every("words", vocabularies)
def test_no_call_is_a_unit(words: Vocabulary) -> None:
    """Small letters are a unit too where a value of the record has such a unit: `w` is no watt here.

    Teeth are both, a unit behind a number and a pair before two; the table of lines has them.
    """
    fields = [single.fields[0].shape for single in words.singles.values()]
    amounts = [getattr(shape, "amount", shape) for shape in fields]
    measured = {getattr(amount, "dimension", None) for amount in amounts}

    assert not (set(words.calls) - {"teeth"}) & {*TABLE, *ALIASES, *AMBIGUOUS}
    small = {unit.casefold() for unit, held in TABLE.items() if held.dimension in measured}
    small |= {alias.casefold() for alias, unit in ALIASES.items() if TABLE[unit].dimension in measured}
    assert not (set(words.calls) - {"teeth"}) & small


@every("words", vocabularies)
def test_the_bikes_of_the_sample_have_no_call_that_cannot_be_used(words: Vocabulary) -> None:
    assert words.problems == []


@every("kind", CLASSES)
def test_no_field_of_any_kind_declares_the_call_of_another_or_a_built_in_one(kind: str) -> None:
    calls = sorted(one.call for one in declared(CLASSES[kind]) if one.call)

    assert all(one != other for one, other in pairwise(calls))
    assert not set(calls) & {*fixed_calls(), *LONE, *VALUE_WORDS}


def test_no_two_built_in_calls_are_the_same() -> None:
    rows = [word for row in ROWS for word in (row.call, *row.also)]
    calls = [*CONTROL_CALLS.values(), *ADJUSTER_CALLS.values(), *rows, *SPECIAL, *READINGS, *LONE]
    own = [one.call for one in declared(Session) if one.call]

    # `abs` is the call and the name of one and the same control.
    assert len(calls) == len(set(calls))
    assert not set(calls) & set(own)


def test_every_row_stands_for_declared_values() -> None:
    for row in ROWS:
        for _, path in row.slots if not row.adjusters else ():
            assert field_at("session", path) is not None, path
    assert all(field_at("session", path) is not None for path in READINGS.values())


CLASHING = Bike(
    name="Clash",
    electronics="listed",
    suspension="listed",
    controls={
        "traction": Control(kind="level", levels=(0, 9), call="wet"),
        "slide": Control(kind="level", levels=(0, 9), call="t"),
        "wheelie": Control(kind="level", levels=(0, 9), call="hot"),
        "power": Control(kind="level", levels=(0, 9), call="bar"),
        "throttle": Control(kind="level", levels=(0, 9), call="po2"),
        "launch": Control(kind="level", levels=(0, 9), call="up"),
        "shifter": Control(kind="level", levels=(0, 9), call="Quick"),
        "engine-braking": Control(kind="level", levels=(0, 9), call="humidity"),
        "grip-a": Control(kind="level", levels=(0, 9), call="mine"),
        "grip-b": Control(kind="level", levels=(0, 9), call="mine"),
        "grip-c": Control(kind="level", levels=(0, 9), call="rr"),
        "grip-d": Control(kind="level", levels=(0, 9), call="grip-a"),
    },
    adjusters={
        "front-rebound": Adjuster(end="front", what="rebound", range=(0, 20), call="note"),
        "rear-rebound": Adjuster(end="rear", what="rebound", range=(0, 20), call="rr"),
    },
)


def test_calls_of_a_bike_that_clash_are_problems_and_the_built_in_ones_stay() -> None:
    words = calls_of("session", Session(), CLASHING)

    assert {trouble.path[1]: trouble.found for trouble in words.problems} == {
        "traction": 'the call "wet"',
        "slide": 'the call "t"',
        "wheelie": 'the call "hot"',
        "power": 'the call "bar"',
        "throttle": 'the call "po2"',
        "launch": 'the call "up"',
        "shifter": 'the call "Quick"',
        "engine-braking": 'the call "humidity"',
        "grip-b": 'the call "mine"',
        "grip-c": 'the call "rr"',
        "grip-d": 'the call "grip-a"',
        "front-rebound": 'the call "note"',
    }
    on = context(MAGPIE, record=Session(), data={}, bike=CLASHING)
    line = read_line("t1 sl2 w3 po4 th5 la6 sh7 eb8 mine9 grip-b 1 grip-c 2 grip-d 3 fr11 rr12 wet", on)
    assert {path[-1]: value for path, value in line.edits.items()} == {
        "traction": 1,
        "slide": 2,
        "wheelie": 3,
        "power": 4,
        "throttle": 5,
        "launch": 6,
        "shifter": 7,
        "engine-braking": 8,
        "grip-a": 9,
        "grip-b": 1,
        "grip-c": 2,
        "grip-d": 3,
        "front-rebound": 11,
        "rear-rebound": 12,
        "surface": "wet",
    }


def test_a_problem_says_where_it_stands_and_what_is_typed_meanwhile() -> None:
    problems = {trouble.path: trouble for trouble in calls_of("session", Session(), CLASHING).problems}

    slide = problems["controls", "slide", "call"]
    assert slide.sentence() == (
        'the call "t": expected a word that nothing else has; '
        'choose another word; "sl" is typed for it meanwhile'
    )


def test_a_call_of_the_bikes_own_stands_beside_the_built_in_one_and_is_the_one_printed() -> None:
    words = calls_of("session", Session(), bike("otter"))
    path = ("setup", "controls", "rear-grip")

    assert words.call_of(path) == "grip"
    assert look_up(words, "grip").one is look_up(words, "t").one is words.singles[path]


def test_two_controls_of_one_function_are_asked_about_under_its_call() -> None:
    twins = attrs.evolve(
        CLASHING,
        controls={
            "left": Control(function="traction", kind="level", levels=(0, 9)),
            "right": Control(function="traction", kind="level", levels=(0, 9)),
        },
    )
    line = read_line("t4", context(MAGPIE, record=Session(), data={}, bike=twins))

    (question,) = line.questions
    assert [choice.label for choice in question.choices] == ["left", "right"]


WORDS = st.sampled_from(
    [
        "t",
        "w",
        "hot",
        "note",
        "wet",
        "up",
        "map-2",
        "fr",
        "bar",
        "grip",
        "slide",
        "mode",
        "laps",
        "clear",
        "ago",
    ]
)
CONTROLS = st.dictionaries(
    WORDS,
    st.builds(
        Control,
        function=st.sampled_from([None, "traction", "slide", "other"]),
        kind=st.just("level"),
        levels=st.just((0, 9)),
        call=st.one_of(st.none(), WORDS, st.text(max_size=8)),
    ),
    max_size=6,
)
ADJUSTERS = st.dictionaries(
    WORDS,
    st.builds(
        Adjuster,
        end=st.sampled_from([None, "front", "rear"]),
        what=st.sampled_from([None, "rebound", "preload"]),
        leg=st.sampled_from([None, "left", "right"]),
        range=st.just((0, 20)),
        call=st.one_of(st.none(), WORDS),
    ),
    max_size=6,
)


@examples(50)
@given(controls=CONTROLS, adjusters=ADJUSTERS)
def test_on_any_bike_every_value_is_set_by_its_word_and_built_in_words_keep_their_meaning(
    controls: dict[str, Control], adjusters: dict[str, Adjuster]
) -> None:
    on = LineContext(
        kind="session",
        record=Session(),
        data={},
        now=NOW,
        bike=Bike(electronics="listed", suspension="listed", controls=controls, adjusters=adjusters),
    )
    parts: list[Path] = [("setup", "controls", name) for name in controls]
    parts += [("setup", "adjusters", name) for name in adjusters]

    for path in parts:
        assert read_line(f"{on.words.call_of(path)} 3", on).edits == {path: 3}
    assert read_line("hot 2.3 2.1 wet ago 5", on).edits.keys() == {
        ("pressures", "hot", "front"),
        ("pressures", "hot", "rear"),
        ("surface",),
        ("parked",),
    }


def test_units_are_known_in_small_letters() -> None:
    assert {"bar", "psi", "mm", "n/mm", "°c"} <= UNIT_WORDS


def test_a_profile_has_the_same_words_for_the_set_up_as_a_session() -> None:
    session = calls_of("session", Session(), bike("magpie"))
    profile = calls_of("profile", Profile(), bike("magpie"))
    of_set_up = [path for path in session.singles if path[0] == "setup"]

    assert of_set_up == [path for path in profile.singles if path[0] == "setup"]
    assert [session.call_of(path) for path in of_set_up] == [profile.call_of(path) for path in of_set_up]


def test_the_listing_names_every_call_once() -> None:
    listed = list(context(MAGPIE).words.listing())

    assert len({call for call, _ in listed}) == len(listed)
    assert ("t", "traction control") in listed
    assert ("hot", "hot pressures") in listed
    assert ("wet", "surface wet") in listed


def test_what_grows_has_no_word_but_its_path() -> None:
    ref = Ref("session", "2026-06-20-2-magpie")
    words = context(ref).words

    assert ("notes", "1", "text") not in words.singles
    line = read_line('notes.1.text "sat out"', context(ref))
    assert line.edits == {("notes", "1", "text"): "sat out"}
