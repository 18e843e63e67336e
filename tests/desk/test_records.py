"""Whole records: made, copied, renamed with every reference following, retired and brought back."""

import datetime as dt
import functools
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from paddock_tui.desk import Desk
from paddock_tui.desk.files.records import (
    bringing_back,
    creating,
    duplicating,
    record_text,
    renaming,
    retiring,
)
from paddock_tui.desk.lookup import glances
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.store.saving import Saved
from tests.desk.opened import NEXT, at_desk
from tests.every import every
from tests.small import session, snapshot, write

BAD_NAMES = [
    "",
    "../x",
    "a/b",
    "a\\b",
    ".",
    "..",
    ".hidden",
    "two words",
    "Capital",
    "é",
    "a" * 81,
    "x\n",
    "-a",
]


def done(desk: Desk, step: Step | InputError) -> None:
    assert isinstance(step, Step), step
    desk.do(step)
    outcomes = desk.settled()
    assert [type(outcome) for outcome in outcomes] == [Saved], outcomes


def strings(data: Mapping[str, Any]) -> Iterator[str]:
    """List every key and every text of a file."""
    for key, value in data.items():
        yield key
        if isinstance(value, Mapping):
            yield from strings(value)
        elif isinstance(value, str):
            yield value


def naming(root: Path, name: str) -> set[str]:
    """List the files in which a name stands as a whole key or value."""
    return {str(path.relative_to(root)) for path in root.rglob("*.toml") if name in said_in(path.read_text())}


@functools.cache
def said_in(text: str) -> frozenset[str]:
    return frozenset(strings(tomllib.loads(text)))


# ---- create and duplicate ------------------------------------------------------------------------------


def test_a_record_is_created_with_root_values_before_tables(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)
    desk = at_desk(root)
    values: dict[str, Value] = {
        "limits": {"heat_cycles": 9},
        "name": "Bo",
        "units": {"pressure": "psi"},
        "weight": "70 kg",
    }

    done(desk, creating(desk.files, Ref("rider", "bo"), values))

    assert (root / "riders" / "bo.toml").read_text() == (
        'name = "Bo"\nweight = "70 kg"\n\n[limits]\nheat_cycles = 9\n\n[units]\npressure = "psi"\n'
    )
    loaded = desk.files.read(Ref("rider", "bo"))
    assert loaded is not None
    assert (loaded.troubles, loaded.unknown) == ((), ())
    desk.undo()
    desk.close()
    assert snapshot(root) == before


def test_a_record_of_tables_only_begins_with_its_first_table() -> None:
    assert record_text({"units": {"mass": "lb"}, "limits": {}}) == '[units]\nmass = "lb"\n'


def test_a_copy_keeps_comments_and_spacing(garage: Path) -> None:
    desk = at_desk(garage)
    source = garage / "profiles" / "magpie-ines-wet.toml"

    done(desk, duplicating(desk.files, Ref("profile", "magpie-ines-wet"), "magpie-ines-storm"))
    desk.close()

    assert (garage / "profiles" / "magpie-ines-storm.toml").read_bytes() == source.read_bytes()


def test_a_record_that_cannot_be_read_is_not_copied(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, riders__ann="name = = 1\n"))

    for name in ("ann", "nobody"):
        assert duplicating(desk.files, Ref("rider", name), "bo") == InputError(
            f"rider/{name} cannot be read", "a record that can be read", "correct its file first"
        )


@every("name", BAD_NAMES)
def test_a_name_that_can_be_no_id_is_refused(tmp_path: Path, name: str) -> None:
    root = write(tmp_path)
    desk = at_desk(root)
    ann = Ref("rider", "ann")

    for step in (
        creating(desk.files, Ref("rider", name), {}),
        duplicating(desk.files, ann, name),
        renaming(desk.files, ann, name),
    ):
        assert isinstance(step, InputError)
        assert "lower-case" in step.expected


def test_a_name_that_is_taken_is_refused(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path, riders__bob=""))
    ann = Ref("rider", "ann")

    for step in (
        creating(desk.files, Ref("rider", "bob"), {}),
        duplicating(desk.files, ann, "bob"),
        renaming(desk.files, ann, "bob"),
        renaming(desk.files, ann, "ann"),
    ):
        assert isinstance(step, InputError)
        assert step.mend == "choose another name"


# ---- rename ----------------------------------------------------------------------------------------------


@every(
    "ref",
    [
        Ref("bike", "magpie"),
        Ref("rider", "ines"),
        Ref("venue", "anvilfen"),
        Ref("tyres", "magpie-trackday-1"),
        Ref("profile", "otter-tobin-cold"),
        Ref("day", "2026-06-20-anvilfen"),
        Ref("session", "2026-06-20-2-magpie"),
        Ref("checklist", "bike-morning"),
    ],
    ids=str,
)
def test_every_reference_follows_a_rename_and_one_undo_gives_all_files_back(garage: Path, ref: Ref) -> None:
    before = snapshot(garage)
    named = naming(garage, ref.id)
    folder = next(path for path in garage.rglob(f"{ref.id}.toml") if FOLDERS[ref.kind] in path.parts).parent
    desk = at_desk(garage)
    told = [desk.assembled(one).situation.dangling for one in desk.files.listing("session")]

    done(desk, renaming(desk.files, ref, "quite-another"))

    assert naming(garage, ref.id) == set()
    assert len(naming(garage, "quite-another")) == len(named)
    assert (folder / "quite-another.toml").exists()
    assert not (folder / f"{ref.id}.toml").exists()
    assert [desk.assembled(one).situation.dangling for one in desk.files.listing("session")] == told
    for one in desk.files.all():
        loaded = desk.files.read(one)
        assert loaded is not None
        assert (loaded.troubles, loaded.unknown) == ((), ()), one
    renamed = snapshot(garage)
    assert desk.undo() == f"{ref.kind} {ref.id} -> quite-another"
    desk.settled()
    assert snapshot(garage) == before
    desk.redo()
    desk.close()
    assert snapshot(garage) == renamed


def test_a_rename_reaches_what_goes_on_from_a_tyre_set_and_what_was_copied_from_a_session(
    garage: Path,
) -> None:
    desk = at_desk(garage)

    done(desk, renaming(desk.files, Ref("tyres", "magpie-trackday-1"), "first-set"))
    done(desk, renaming(desk.files, Ref("session", "2026-06-20-2-magpie"), "before-the-shower"))
    desk.close()

    tyres = tomllib.loads((garage / "tyres" / "magpie-trackday-2.toml").read_text())
    after = tomllib.loads((garage / "sessions" / "2026" / "2026-06-20-4-magpie.toml").read_text())
    assert tyres["front"]["continues"] == "first-set"
    assert after["copied_from"] == "before-the-shower"


def test_a_rename_moves_the_entries_of_a_day_by_rider_and_by_bike(garage: Path) -> None:
    desk = at_desk(garage)
    day = garage / "days" / "2026-06-20-anvilfen.toml"
    old = tomllib.loads(day.read_text())["entries"]

    done(desk, renaming(desk.files, Ref("rider", "ines"), "ina"))
    done(desk, renaming(desk.files, Ref("bike", "magpie"), "jay"))
    desk.close()

    new = tomllib.loads(day.read_text())["entries"]
    assert new == {"tobin": old["tobin"], "ina": {"jay": old["ines"]["magpie"]}}


def test_a_name_that_only_looks_alike_is_left_alone(tmp_path: Path) -> None:
    root = write(
        tmp_path,
        sessions__a=session(aim='"follow ann"', rider='"anna"', tyres='"ann"'),
        riders__anna='name = "ann"\nnote = "ann"\n',
        tyres__ann="",
    )
    before = snapshot(root)
    desk = at_desk(root)

    done(desk, renaming(desk.files, Ref("rider", "ann"), "zoe"))
    desk.close()

    after = snapshot(root)
    assert after.pop("riders/zoe.toml") == before.pop("riders/ann.toml") + b'was = ["ann"]\n'
    assert after == before


def test_a_record_that_names_the_old_one_and_cannot_be_read_stops_a_rename(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a="rider = = 'ann'\n")
    desk = at_desk(root)

    step = renaming(desk.files, Ref("rider", "ann"), "zoe")

    assert isinstance(step, InputError)
    assert "sessions/a.toml" in step.found
    assert step.mend == "correct it first"


def test_a_record_that_is_lost_itself_can_be_renamed(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann="ann = = 1\n")
    desk = at_desk(root)

    done(desk, renaming(desk.files, Ref("rider", "ann"), "zoe"))
    desk.close()

    assert (root / "riders" / "zoe.toml").read_text() == "ann = = 1\n"


def test_a_record_that_is_not_there_cannot_be_renamed(tmp_path: Path) -> None:
    desk = at_desk(write(tmp_path))

    assert isinstance(renaming(desk.files, Ref("rider", "nobody"), "zoe"), InputError)


# ---- retire ------------------------------------------------------------------------------------------------


def test_a_retired_record_is_hidden_still_resolves_and_comes_back_as_it_was(garage: Path) -> None:
    before = snapshot(garage)
    desk = at_desk(garage)
    bike = Ref("bike", "magpie")

    done(desk, retiring(desk.files, bike, dt.date(2026, 12, 1)))
    done(desk, retiring(desk.files, NEXT, dt.date(2026, 12, 1)))

    assert b"retired = 2026-12-01\n" in snapshot(garage)["bikes/magpie.toml"]
    assert desk.assembled(NEXT).situation.dangling == ()
    assert NEXT not in [one.ref for one in glances(desk.files)]
    done(desk, bringing_back(desk.files, NEXT))
    done(desk, bringing_back(desk.files, bike))
    assert NEXT in [one.ref for one in glances(desk.files)]
    desk.close()
    assert snapshot(garage) == before
