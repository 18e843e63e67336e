"""Tables that grow: an entry comes in under its key and goes out whole, and one undo takes it back."""
# size: one garage and one set of tests for every table that grows

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import attrs
import pytest

from paddock_tui.desk import Desk
from paddock_tui.desk.edits.tables import WantedKeys, adding, dropping, wanted
from paddock_tui.records.common import Units
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields import NUMBERED, Spec, specs
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import GARAGE, Ref
from paddock_tui.records.paths import Path as Keys
from paddock_tui.store.data import lookup
from paddock_tui.store.saving import Saved
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import BIKE, session, snapshot, write

WORDS = {
    "control": "traction",
    "adjuster": "front-rebound",
    "rider": "ann",
    "bike": "plain",
    "end": "front",
    "load": "alone",
    "revs": "8000",
    "what": "controls",
    "level": "up only",
}
"""A word for each kind of key that not every name will do for."""

NEW = {"controls": "slide", "adjusters": "rear-rebound"}
"""What a bike does not have yet, and no set-up."""

REFS = {
    "garage": GARAGE,
    "bike": Ref("bike", "plain"),
    "rider": Ref("rider", "ann"),
    "venue": Ref("venue", "fen"),
    "tyres": Ref("tyres", "set"),
    "profile": Ref("profile", "p"),
    "checklist": Ref("checklist", "list"),
    "day": Ref("day", "d"),
    "session": Ref("session", "a"),
}


A_LIMIT = ("little-traction-help-in-the-damp", "caution_below")
"""Rule and name of a limit that there is."""


@attrs.frozen
class Table:
    """One table that grows: where it stands, what is declared of it, and words that add to it."""

    ref: Ref
    path: Keys
    spec: Spec

    def keys(self) -> list[str]:
        names = self.spec.keyed_by.split(" and ")
        if self.path[-1] in NEW:
            return [NEW[self.path[-1]]]
        if (self.ref, self.path) == (GARAGE, ("limits",)):
            return list(A_LIMIT)
        return [
            "1" if rule == NUMBERED else WORDS.get(name, "some-name")
            for name, rule in zip(names, self.spec.keys, strict=True)
        ]

    def typed(self) -> str:
        asked = [key for key, rule in zip(self.keys(), self.spec.keys, strict=True) if rule != NUMBERED]
        shape = self.spec.shape
        return " ".join(asked + ([shape.show(shape.example())] if shape is not None else []))


def tables(ref: Ref, cls: type, at: Keys = ()) -> Iterator[Table]:
    for key, (_, spec) in specs(cls).items():
        here = Table(ref, (*at, key), spec)
        if spec.keys:
            yield here
        if spec.record is not None:
            yield from tables(ref, spec.record, (*here.path, *(here.keys() if spec.keys else ())))


TABLES = [one for kind, ref in REFS.items() for one in tables(ref, CLASSES[kind])]
EVERY = [pytest.param(one, id=f"{one.ref.kind}.{'.'.join(one.path)}") for one in TABLES]


ADJUSTER = '\n[adjusters.front-rebound]\nunit = "click"\nrange = [0, 20]\n'


def small(root: Path, **files: str) -> Path:
    """Write a garage with one record of every kind."""
    texts = {
        "bikes__plain": BIKE + ADJUSTER,
        "venues__fen": 'name = "Fen"\n',
        "tyres__set": 'name = "Set"   # round\n',
        "profiles__p": 'name = "P"\nbike = "plain"\n',
        "checklists__list": 'name = "List"\nstage = "rider"\n',
        "days__d": 'date = 2026-05-16\nvenue = "fen"\n\n# posted at the gate\n[limits]\npads = "2 mm"\n',
        "sessions__a": session(day='"d"') + "# the end\n",
    }
    return write(root, **(texts | files))


def garage_of(root: Path, one: Table) -> Path:
    """Write the small garage; where presets get values, with the list that has to name them first."""
    if "preset_values" not in one.path:
        return small(root)
    named = '[adjusters.rear-rebound]\nunit = "click"\nrange = [0, 20]\n'
    mode = '[damping.some-name]\npresets = ["some-name"]\n'
    offset = "[damping.some-name.offsets.some-name]\nrange = [-3, 3]\n"
    return small(root, bikes__plain="\n".join((f"{BIKE}{ADJUSTER}", named, mode, offset)))


def added(desk: Desk, ref: Ref, table: Keys, text: str, units: Units | None = None) -> Step:
    step = adding(desk.files, ref, table, text, units)
    assert isinstance(step, Step), step
    return step


def refused(desk: Desk, ref: Ref, table: Keys, text: str) -> InputError:
    found = adding(desk.files, ref, table, text)
    assert isinstance(found, InputError), found
    return found


def kept(desk: Desk) -> None:
    outcomes = desk.settled()
    assert [type(outcome) for outcome in outcomes] == [Saved], outcomes


def pruned(data: Mapping[str, Any]) -> dict[str, Any]:
    """Give data without empty tables: a heading may stay when the last value below it goes."""
    found = {key: pruned(value) if isinstance(value, Mapping) else value for key, value in data.items()}
    return {key: value for key, value in found.items() if value != {}}


def test_there_are_tables_that_grow_in_most_kinds() -> None:
    assert {one.ref.kind for one in TABLES} == set(REFS)


@every("one", EVERY)
def test_every_table_takes_an_entry_and_loses_it_and_one_undo_gives_the_same_bytes(
    tmp_path: Path, one: Table
) -> None:
    root = garage_of(tmp_path, one)
    bytes_before = snapshot(root)
    desk = at_desk(root)
    data_before = dict(desk.files.data(one.ref))
    path = (*one.path, *one.keys())

    desk.do(added(desk, one.ref, one.path, one.typed()))
    kept(desk)

    loaded = desk.files.read(one.ref)
    assert loaded is not None
    assert (loaded.troubles, loaded.unknown) == ((), ())
    assert lookup(loaded.data, path) != {} or one.spec.record is not None
    with_entry = snapshot(root)
    assert len(with_entry) == len(bytes_before)
    assert sum(with_entry[name] != bytes_before[name] for name in with_entry) == 1

    step = dropping(desk.files, one.ref, path)
    assert isinstance(step, Step), step
    desk.do(step)
    kept(desk)
    assert lookup(desk.files.data(one.ref), path) != lookup(loaded.data, path)
    assert pruned(desk.files.data(one.ref)) == data_before
    assert desk.undo() == step.label
    kept(desk)
    assert snapshot(root) == with_entry
    desk.undo()
    desk.close()
    assert snapshot(root) == bytes_before


@every("one", EVERY)
def test_every_table_says_what_it_asks_for_and_refuses_nothing_typed(tmp_path: Path, one: Table) -> None:
    root = small(tmp_path)
    before = snapshot(root)
    desk = at_desk(root)
    asks = wanted(one.ref, one.path)
    assert asks is not None
    only_numbers = all(rule == NUMBERED for rule in one.spec.keys)
    assert bool(asks.words) == (not only_numbers or asks.value)

    if only_numbers and not asks.value:
        assert isinstance(adding(desk.files, one.ref, one.path, "  "), Step)
    else:
        for text in ("", "   "):
            found = refused(desk, one.ref, one.path, text)
            assert found.expected
            assert found.mend
    assert snapshot(root) == before


@every("one", EVERY)
def test_an_entry_that_is_there_is_refused_and_a_numbered_one_gets_the_next_number(
    tmp_path: Path, one: Table
) -> None:
    root = garage_of(tmp_path, one)
    desk = at_desk(root)
    desk.do(added(desk, one.ref, one.path, one.typed()))

    again = adding(desk.files, one.ref, one.path, one.typed())

    if NUMBERED in one.spec.keys:
        assert isinstance(again, Step)
        (change,) = again.changes
        assert isinstance(change, Change)
        assert change.edits[0].path[-1] == "2"
    else:
        assert isinstance(again, InputError)
        assert again.mend == "choose another name"
    desk.close()


BAD_KEYS = {
    "frein-arrière": "write frein-arriere",
    "a/b": "write a-b",
    "../x": "write x",
    "..": "type it another way",
    ".": "type it another way",
    "-": "type it another way",
    "é": "write e",
    "日本": "type it another way",
}


@every(("key", "mend"), BAD_KEYS.items())
def test_a_name_that_can_be_no_key_is_refused_with_one_that_can(tmp_path: Path, key: str, mend: str) -> None:
    desk = at_desk(small(tmp_path))

    found = refused(desk, REFS["bike"], ("controls",), key)

    assert found.found == f'"{key}"'
    assert found.expected.startswith("a control: lower-case letters")
    assert found.mend == mend


def test_two_words_for_one_name_are_refused_with_the_hyphen(tmp_path: Path) -> None:
    found = refused(at_desk(small(tmp_path)), REFS["bike"], ("controls",), "front abs")

    assert found.sentence() == '"front abs": expected name of the control; names have no spaces: use hyphens'


@every(
    ("ref", "table", "text", "said"),
    [
        ("session", ("sag",), "middle alone", "an end: front or rear"),
        ("session", ("sag",), "front", "name of the end and load"),
        ("session", ("look",), "left", "an end: front or rear"),
        ("bike", ("torque_curve",), "80 90 N m", "a revs: a whole number, 100 or more"),
        ("bike", ("torque_curve",), "8000", "a torque"),
        ("bike", ("torque_curve",), "8000 90 kg", "a torque"),
        ("bike", ("modes", "wet", "limits"), "traction", "two levels"),
        ("bike", ("modes", "wet", "limits"), "traction 3", "two levels"),
        ("bike", ("damping", "live", "closes"), "front-rebound perhaps", "yes or no"),
        ("session", ("laps",), "1:77", "a lap time"),
        ("session", ("because",), "Con-trols traction", "a what: lower-case letters, underscores"),
        ("bike", ("controls", "traction", "effects"), "5%", "a level: letters, digits, spaces"),
        ("day", ("flags",), "red", "a text"),
        ("garage", ("limits",), "fuel reserve much", "a number, or an amount with its unit"),
    ],
)
def test_a_missing_or_wrong_key_or_value_is_refused_with_what_was_expected(
    tmp_path: Path, ref: str, table: Keys, text: str, said: str
) -> None:
    root = small(tmp_path)
    before = snapshot(root)
    desk = at_desk(root)

    found = refused(desk, REFS[ref], table, text)

    assert said in found.expected
    assert found.mend
    assert snapshot(root) == before


def test_a_missing_value_is_mended_by_an_example(tmp_path: Path) -> None:
    found = refused(at_desk(small(tmp_path)), REFS["bike"], ("torque_curve",), "8000")

    assert found.path == ("torque_curve", "8000")
    assert "e.g." in found.sentence()


def test_a_word_that_the_bike_offers_with_a_space_is_one_key(garage: Path) -> None:
    desk = at_desk(garage)
    step = added(desk, Ref("bike", "otter"), ("controls", "shifter", "effects"), "  both   ways ")

    desk.do(step)
    desk.close()

    assert '\n[controls.shifter.effects."both ways"]\n' in (garage / "bikes" / "otter.toml").read_text()
    assert step.label == "added effects: both ways"


def test_a_value_on_a_set_up_is_read_as_the_bikes_own_control(garage: Path) -> None:
    desk = at_desk(garage)

    found = refused(desk, NEXT, ("setup", "controls"), "wheelie most")

    assert found.expected == "a level from 0 to 5, or off"
    added(desk, NEXT, ("setup", "controls"), "wheelie 3")
    added(desk, NEXT, ("setup", "controls"), "wheelie off")


def test_a_bare_number_is_in_the_unit_that_is_preferred(tmp_path: Path) -> None:
    desk = at_desk(small(tmp_path))
    table = ("limits",)

    (change,) = added(desk, GARAGE, table, f"{' '.join(A_LIMIT)} 0.3").changes
    assert isinstance(change, Change)
    assert change.edits[0].new == 0.3


def test_a_riding_mode_cannot_fix_what_the_bike_has_not(tmp_path: Path) -> None:
    found = refused(at_desk(small(tmp_path)), REFS["bike"], ("modes", "wet", "fixes"), "launch 3")

    assert found.found == "riding mode wet fixes launch, which the bike does not have"
    assert found.expected == "one of traction, wheelie"


@pytest.mark.parametrize(
    ("text", "said"),
    [("bob plain", 'there is no rider "bob"'), ("ann badger", 'there is no bike "badger"')],
)
def test_an_entry_of_a_day_is_of_a_rider_and_a_bike_that_are_there(
    tmp_path: Path, text: str, said: str
) -> None:
    assert refused(at_desk(small(tmp_path)), REFS["day"], ("entries",), text).found == said


def test_a_value_where_the_table_would_be_is_said(tmp_path: Path) -> None:
    root = small(tmp_path, bikes__plain='name = "x"\ncontrols = 3\n')

    found = refused(at_desk(root), REFS["bike"], ("controls",), "traction")

    assert found.sentence() == "3 stands where a table would have to be: expected a table; edit the file"


@every(
    ("table", "number"), [("7 = {}\n3 = {}", "8"), ('"07" = {}\n"²" = {}\nx = {}', "1"), ("9999 = {}", "")]
)
def test_the_next_number_follows_the_highest(tmp_path: Path, table: str, number: str) -> None:
    desk = at_desk(small(tmp_path, sessions__a=session() + f"\n[notes]\n{table}\n"))

    found = adding(desk.files, REFS["session"], ("notes",), "")

    if number:
        assert isinstance(found, Step)
        assert isinstance(found.changes[0], Change)
        assert found.changes[0].edits[0].path == ("notes", number)
    else:
        assert isinstance(found, InputError)
        assert found.sentence() == (
            "9999 is taken: expected a number that is free; delete what is not needed"
        )


@every("table", [("name",), ("front",), ("nothing",), (), ("controls", "traction")])
def test_what_is_no_table_that_grows_takes_nothing(tmp_path: Path, table: Keys) -> None:
    desk = at_desk(small(tmp_path))

    assert wanted(REFS["bike"], table) is None
    assert refused(desk, REFS["bike"], table, "x").expected == "a table that grows"


def test_what_is_asked_for() -> None:
    assert wanted(REFS["bike"], ("controls",)) == WantedKeys("name of the control", 1, False)
    assert wanted(REFS["session"], ("notes",)) == WantedKeys("", 0, False)
    assert wanted(REFS["day"], ("timetable",)) == WantedKeys("name of the group", 1, False)
    assert wanted(REFS["day"], ("flags",)) == WantedKeys("flag and flags as briefed: a text", 1, True)


def test_dropping_takes_all_that_stands_in_an_entry_and_says_what(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    ref = Ref("bike", "otter")
    step = dropping(desk.files, ref, ("controls", "abs"))
    assert isinstance(step, Step)
    assert step.label == "deleted controls ABS"

    desk.do(step)
    kept(desk)

    text = (garage / "bikes" / "otter.toml").read_text()
    assert "[controls.abs" not in text
    assert "# Tobin's twin." in text
    desk.undo()
    desk.close()
    assert snapshot(garage) == before


def test_dropping_what_is_not_there_says_so(garage: Path) -> None:
    desk = at_desk(garage)

    assert (
        dropping(desk.files, NEXT, ("notes", "7"))
        == "there is nothing to delete: x is for an entry or a record"
    )
    assert (
        dropping(desk.files, NEXT, ("date", "x"))
        == "there is nothing to delete: x is for an entry or a record"
    )
