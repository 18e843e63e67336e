"""Deep nesting, endless keys and huge numbers cost no more than their length: problems of one file."""

import json
from pathlib import Path

import pytest

from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.outcomes import NotSaved
from paddock_tui.store.reading import LARGEST, loads
from paddock_tui.store.saving import save
from tests.commands.running import Runner
from tests.every import every
from tests.small import write

TEXTS = {
    "300 arrays": "x = " + "[" * 300 + "1" + "]" * 300,
    "40 arrays": "x = " + "[" * 40 + "1" + "]" * 40,
    "100,000 brackets": "x = " + "[" * 100_000,
    "100,000 braces": "x = " + "{a = " * 20_000,
    "100,000 closed brackets": "x = " + "[" * 50_000 + "]" * 50_000,
    "5,000 digits": "x = " + "9" * 5000,
    "100 runs of 3,999 digits and one of 5,000": "x = [" + f"{'9' * 3999}, " * 100 + "9" * 5000 + "]",
    "5,000 hexadecimal digits": "x = 0x" + "f" * 5000,
    "a hundred digits": "x = " + "9" * 100,
    "a key of 100,000 parts": "a" + ".a" * 100_000 + " = 1",
    "a table of 100,000 parts": "[a" + ".a" * 100_000 + "]",
    "many values in a deep table": "[a" + ".a" * 900 + "]\n" + "".join(f"k{n} = 1\n" for n in range(50_000)),
    "a quoted key of many parts": '"a"' + '."a"' * 50_000 + " = 1",
    "a deep inline table": "x = {a" + ".a" * 900 + " = 1}",
    "equals signs without end": "=" * 200_000,
    "spaces without end": "x =" + " " * 300_000 + "y",
    "quotes without end": '"' * 200_000,
}


@every("name", TEXTS)
def test_it_is_a_problem_of_that_file_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    assert len(TEXTS[name]) <= LARGEST
    root = write(tmp_path, riders__odd=TEXTS[name])
    files = GarageFiles(root)

    loaded = files.read(Ref("rider", "odd"))
    assert loaded is not None
    assert loaded.record is None
    assert isinstance(loads(TEXTS[name]), InputError)
    step = Step("", (Change(Ref("rider", "odd"), (Edit(("name",), "x", "y"),)),))
    assert isinstance(save(files, step), NotSaved)
    ran = Runner(capsys)("check", root, "--all", "--format", "json")
    assert ran.status == 3
    (problem,) = json.loads(ran.out)["problems"]
    assert problem["file"] == "riders/odd.toml"


def test_what_records_hold_is_far_from_these_bounds() -> None:
    deep = "x = [[[[1]]]]\n[a.b.c.d.e]\nf.g = 9_223_372_036_854_775_807\nt = '" + "." * 500 + "'\n"

    assert isinstance(loads(deep), dict)
