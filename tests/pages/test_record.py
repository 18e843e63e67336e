"""The page of any record: nothing that a file holds is missing from it, and nothing on it is dangerous."""

import itertools
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.record import record_page, title_of
from paddock_tui.records.common import Units
from paddock_tui.records.fields import ANY, declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import GARAGE, Ref, spell
from paddock_tui.records.paths import Path as Keys
from paddock_tui.store.garage import GarageFiles
from paddock_tui.text import printable, width
from tests.every import every
from tests.examples import examples
from tests.pages.opened import FILES, SAMPLE, page_of, rows_of, sample_page
from tests.small import session, write

PER_RECORD = [pytest.param(ref, id=str(ref)) for ref in FILES.all()]


def leaves(data: object, at: Keys = ()) -> list[Keys]:
    if not isinstance(data, dict):
        return [at]
    return [path for key, value in data.items() for path in leaves(value, (*at, key))]


@every("ref", PER_RECORD)
def test_every_value_of_a_sample_file_is_a_known_row_of_its_page(ref: Ref) -> None:
    path = FILES.path_of(ref)
    assert path is not None
    rows = rows_of(sample_page(ref))

    for keys in leaves(tomllib.loads(path.read_text())):
        row = rows[spell(keys)]
        assert row.known, keys
        assert row.label, keys
        assert row.value, keys
        assert (row.ref, row.trouble) == (ref, ""), keys


@every("kind", CLASSES)
def test_every_declared_field_of_a_kind_is_known_on_some_page_of_the_sample(kind: str) -> None:
    shown = {
        row.path
        for ref in FILES.all()
        if ref.kind == kind
        for row in rows_of(sample_page(ref)).values()
        if row.known
    }

    missing = [
        one.path
        for one in declared(CLASSES[kind])
        if not any(
            len(path) == len(one.path)
            and all(wanted in (ANY, key) for key, wanted in zip(path, one.path, strict=True))
            for path in shown
        )
    ]
    assert missing == []


@every("ref", PER_RECORD)
def test_no_row_stands_twice(ref: Ref) -> None:
    page = sample_page(ref)
    identities = [row.identity for row in page.rows()]

    assert len(set(identities)) == len(identities)


@every("ref", PER_RECORD)
def test_a_page_as_text_fits_the_width_and_is_printable(ref: Ref) -> None:
    page = sample_page(ref)
    for columns, paths in itertools.product((38, 40, 80, 100), (False, True)):
        lines = list(plain_page(page, columns, paths=paths))

        assert [line for line in lines if width(line) > columns] == []
        assert [line for line in lines if line != printable(line) or line != line.rstrip()] == []
        assert not any("None" in line or "Quantity(" in line for line in lines)


def test_the_title_is_kind_and_name_else_the_id(garage: Path) -> None:
    files = GarageFiles(garage)

    def title(ref: Ref) -> str:
        loaded = files.read(ref)
        assert loaded is not None
        return title_of(loaded)

    assert title(Ref("bike", "otter")) == "bike · Otter"
    assert title(Ref("session", "2026-06-20-4-magpie")) == "session · 2026-06-20-4-magpie"
    assert title(GARAGE) == "garage · The shed by the allotments"


def test_a_lost_file_shows_its_problem_and_its_line(tmp_path: Path) -> None:
    files = GarageFiles(write(tmp_path, riders__ann="a = 1\nname = = 2\n"))

    page = page_of(files, Ref("rider", "ann"))

    (section,) = page.sections
    assert section.title == "cannot be read"
    assert section.rows[0].label == "riders/ann.toml:2"
    assert "expected TOML" in section.rows[0].value


def test_a_value_that_cannot_be_read_stands_in_its_row_as_it_is_with_the_mend(tmp_path: Path) -> None:
    text = session().replace("traction = 5", 'traction = "five"') + '\n[pressures.hot]\nfront = "2,3 bar"\n'
    rows = rows_of(page_of(GarageFiles(write(tmp_path, sessions__a=text)), Ref("session", "a")))

    front, traction = rows["pressures.hot.front"], rows["setup.controls.traction"]
    assert (front.value, front.known, front.edit) == ("2,3 bar", False, "2,3 bar")
    assert front.trouble.startswith("cannot be read: expected a pressure")
    assert front.trouble.endswith('write "2.3 bar"')
    assert (traction.value, traction.bar) == ("five", None)
    assert "a level from 0 to 10" in traction.trouble


def test_a_value_that_the_declarations_have_no_row_for_is_said_at_the_end(tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session() + "\n[pressures]\nhot = 3\n")

    page = page_of(GarageFiles(root), Ref("session", "a"))

    said = [
        row.value for section in page.sections if section.title == "cannot be read" for row in section.rows
    ]
    assert said == ["3: expected a table; write it under a heading of its own"]


def test_keys_that_are_not_known_are_listed_with_their_lines(tmp_path: Path) -> None:
    root = write(tmp_path, riders__ann='name = "Ann"\nshoes = 41\n')

    page = page_of(GarageFiles(root), Ref("rider", "ann"))

    section = page.sections[-1]
    assert section.title == "names that are not known"
    assert section.rows[0].label == "riders/ann.toml:2"
    assert section.rows[0].value.startswith("shoes, a key that this program does not know")


def test_what_is_set_but_not_on_the_bike_is_still_shown(tmp_path: Path) -> None:
    text = session() + "launch = 3\n\n[setup.adjusters]\nghost = 4\n\n[setup.offsets]\nbraking = 1\n"
    page = page_of(GarageFiles(write(tmp_path, sessions__a=text)), Ref("session", "a"))

    (unused,) = [section for section in page.sections if section.title.startswith("written down")]
    assert {spell(row.path): row.value for row in unused.rows} == {
        "setup.controls.launch": "3",
        "setup.adjusters.ghost": "4",
        "setup.offsets.braking": "+1",
    }


def test_an_amount_typed_in_another_unit_has_the_preferred_one_beside_it(garage: Path) -> None:
    files = GarageFiles(garage)
    bar = rows_of(page_of(files, Ref("bike", "otter"), Units(pressure="bar")))
    psi = rows_of(page_of(files, Ref("bike", "otter"), Units(pressure="psi")))

    assert (bar["front.road_pressure"].value, bar["front.road_pressure"].aside) == ("36 psi", "2.48 bar")
    assert psi["front.road_pressure"].aside == ""


def test_the_pressure_of_the_air_is_not_turned_into_that_of_a_tyre(garage: Path) -> None:
    rows = rows_of(page_of(GarageFiles(garage), Ref("session", "2026-06-20-4-magpie"), Units(pressure="bar")))

    assert (rows["air_pressure"].value, rows["air_pressure"].aside) == ("1007 hPa", "")


def test_a_control_shows_what_one_of_its_kind_has(garage: Path) -> None:
    rows = rows_of(page_of(GarageFiles(garage), Ref("bike", "otter")))

    assert "controls.wheelie.speeds" not in rows
    assert "controls.wheelie.frees_most" not in rows
    assert rows["controls.wheelie.levels"].value == "1 to 4"
    assert not rows["controls.engine-braking.frees_most"].known
    assert "controls.engine-braking.most_help" not in rows


NASTY = "\x1b[2J\u202e\u200b[bold red]\x07\x9b31m\u2028end"


def test_what_a_file_carries_to_trick_a_terminal_comes_out_harmless(tmp_path: Path) -> None:
    nasty = "".join(f"\\u{ord(char):04X}" if not char.isascii() or char < " " else char for char in NASTY)
    root = write(
        tmp_path,
        garage=f'name = "{nasty}"\nschema = 1\n"{nasty}" = 1\n',
        riders__ann=f'name = "{nasty}"\nnote = "{nasty}"\nweight = "{nasty}"\n"{nasty}" = 1\n',
        sessions__a=session(aim=f'"{nasty}"', air=f'"{nasty}"') + f'"{nasty}" = 3\nwheelie = "{nasty}"\n',
    )
    files = GarageFiles(root)

    for ref in files.all():
        lines = list(plain_page(page_of(files, ref), 80, paths=True))
        assert [line for line in lines if line != printable(line)] == []
    text = "\n".join(plain_page(page_of(files, Ref("rider", "ann"))))
    assert "[bold red]" in text
    assert "\x1b" not in text


@examples(25)
@given(st.text(max_size=60), st.sampled_from([38, 40, 80]))
def test_any_text_in_a_file_is_shown_within_the_width(text: str, columns: int) -> None:
    quoted = "".join(f"\\U{ord(char):08X}" for char in text if not 0xD800 <= ord(char) < 0xE000)
    with pytest.MonkeyPatch.context() as patched:
        files = GarageFiles(SAMPLE)
        data = tomllib.loads(f'name = "{quoted}"\nnote = "{quoted}"\nweight = "{quoted}"\n')
        patched.setattr(files, "path_of", lambda _: SAMPLE / "riders" / "ines.toml")
        files.stage(Ref("rider", "ines"), data)
        loaded = files.read(Ref("rider", "ines"))
        assert loaded is not None
        lines = list(plain_page(record_page(loaded), columns))

    assert all(width(line) <= columns and line == printable(line) for line in lines)
