"""`new`: an empty garage whose templates are right once their marks are taken away."""

import json
import os
import re
import tomllib
from pathlib import Path

from paddock_tui.commands.templates import checklists, template
from paddock_tui.desk import Desk
from paddock_tui.desk.files.records import creating
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import Create, Step
from paddock_tui.records.fields import ANY, declared
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.records.reading import read_record
from tests.commands.running import Runner
from tests.every import every
from tests.small import snapshot

KINDS = [kind for kind in CLASSES if kind != "garage"]


def uncommented(kind: str) -> str:
    """Take away the marks before the lines that are values and headings; prose keeps its own."""
    return "".join(re.sub(r"^#(?! )", "", line) for line in template(kind).splitlines(keepends=True))


def test_a_new_garage_holds_templates_and_the_sample_s_checklists(run: Runner, tmp_path: Path) -> None:
    ran = run("new", tmp_path / "deep" / "garage")

    assert (ran.status, ran.err) == (0, "")
    assert sorted(snapshot(tmp_path / "deep" / "garage")) == sorted(
        [
            "garage.toml",
            *(f"{folder}/{kind}.toml.example" for kind, folder in FOLDERS.items()),
            *(f"schemas/{kind}.json" for kind in CLASSES),
            *(f"checklists/{name}" for name, _ in checklists()),
        ]
    )
    sample = Path(__file__).parents[2] / "sample_garage" / "checklists"
    for name, text in checklists():
        assert (sample / name).read_text(encoding="utf-8") == text
        written = (tmp_path / "deep/garage/checklists" / name).read_text(encoding="utf-8")
        assert written == f"#:schema ../schemas/checklist.json\n{text}"
    assert all(len(line) <= 80 or str(tmp_path) in line for line in ran.out.splitlines())


def test_a_new_garage_reads_without_a_problem_and_has_no_session(run: Runner, tmp_path: Path) -> None:
    root = tmp_path / "garage"
    run("new", root)

    everything = run("check", root, "--all")
    assert (everything.status, everything.out.splitlines()[-1]) == (0, "13 records read, 0 problems")
    ran = run("check", root)
    assert (ran.status, ran.out) == (3, "")
    assert "there is no session to check" in ran.err
    shown = run("show", root)
    assert shown.status == 0
    assert shown.out.count("none yet") == 7
    assert run("set", root, "garage", "units.pressure=psi").status == 0


@every("kind", KINDS)
def test_a_template_as_it_is_is_an_empty_record(kind: str) -> None:
    assert tomllib.loads(template(kind)) == {}


@every("kind", KINDS)
def test_a_template_without_its_marks_reads_without_a_trouble_or_an_unknown_key(kind: str) -> None:
    data = tomllib.loads(uncommented(kind))
    bike = read_record("bike", tomllib.loads(uncommented("bike"))).record
    assert isinstance(bike, Bike)

    for read in (read_record(kind, data), read_record(kind, data, bike)):
        assert read.troubles == ()
        assert read.unknown == ()


@every("kind", KINDS)
def test_every_declared_field_stands_in_its_template(kind: str) -> None:
    def leaves(data: object, at: tuple[str, ...] = ()) -> list[tuple[str, ...]]:
        if not isinstance(data, dict):
            return [at]
        return [path for key, value in data.items() for path in leaves(value, (*at, key))]

    held = leaves(tomllib.loads(uncommented(kind)))

    for one in declared(CLASSES[kind]):
        assert any(
            len(path) == len(one.path)
            and all(wanted in (ANY, key) for key, wanted in zip(path, one.path, strict=True))
            for path in held
        ), one.path


@every("kind", KINDS)
def test_every_value_of_a_template_says_what_it_is(kind: str) -> None:
    values = [line for line in template(kind).splitlines() if re.match(r"#[^ \[]", line)]
    heads = [line for line in template(kind).splitlines() if line.startswith("#[")]

    bare = [line for line in values if "  # " not in line]
    # A value under a key of the owner's is told of beside its heading.
    assert len(bare) == sum("  # " in line for line in heads)


def test_one_line_of_a_template_can_be_used_by_itself(run: Runner, tmp_path: Path) -> None:
    root = tmp_path / "garage"
    run("new", root)
    text = (root / "bikes" / "bike.toml.example").read_text()
    (root / "bikes" / "mine.toml").write_text(text.replace("#wet_mass", "wet_mass"))

    ran = run("show", root, "mine")

    assert ran.status == 0
    assert "wet mass" in ran.out


@every("kind", ["folder with a file", "file", "below a file"])
def test_what_is_there_already_is_left_alone(run: Runner, tmp_path: Path, kind: str) -> None:
    target = tmp_path / "place"
    if kind == "folder with a file":
        target.mkdir()
        (target / "mine.txt").write_text("mine")
    else:
        target.write_text("mine")
    before = snapshot(tmp_path)

    ran = run("new", target / "deeper" if kind == "below a file" else target)

    assert (ran.status, ran.out) == (3, "")
    assert str(target) in ran.err
    assert snapshot(tmp_path) == before


def test_an_empty_folder_will_do(run: Runner, tmp_path: Path) -> None:
    assert run("new", tmp_path).status == 0
    assert run("new", tmp_path).status == 3


def test_a_folder_is_needed(run: Runner) -> None:
    assert run("new").status == 64


def test_the_first_line_of_each_file_names_the_schema_of_its_kind(run: Runner, tmp_path: Path) -> None:
    root = tmp_path / "garage"
    run("new", root)

    for kind, folder in FOLDERS.items():
        first = (root / folder / f"{kind}.toml.example").read_text(encoding="utf-8").splitlines()[0]
        there = root / folder / ("2026" if kind == "session" else "") / first.removeprefix("#:schema ")
        assert Path(os.path.normpath(there)) == root / "schemas" / f"{kind}.json"
        assert json.loads((root / "schemas" / f"{kind}.json").read_text(encoding="utf-8"))["title"] == kind


def test_a_record_that_is_made_later_names_its_schema_where_the_garage_has_one(
    run: Runner, garage: Path, tmp_path: Path
) -> None:
    run("new", tmp_path / "mine")
    made = creating(Desk(tmp_path / "mine").files, Ref("session", "2026-05-16-1-finch"), {"number": 1})
    plain = creating(Desk(garage).files, Ref("bike", "finch"), {"name": "Finch"})
    assert isinstance(made, Step)
    assert isinstance(plain, Step)
    (session,), (bike,) = made.changes, plain.changes
    assert isinstance(session, Create)
    assert isinstance(bike, Create)
    assert session.text == "#:schema ../../schemas/session.json\nnumber = 1\n"
    assert bike.text == 'name = "Finch"\n'
