"""JSON out and in: records and pages stable, a set-up that goes out comes back the same."""

import json
from pathlib import Path

import pytest

from paddock_tui.commands.show import AS_ON_SCREEN, OWN
from paddock_tui.desk import Desk
from tests.commands.running import FILE, NEXT, Runner
from tests.every import every
from tests.small import snapshot

OTHER = "2026-06-20-2-magpie"


def test_every_record_prints_as_it_stands_in_its_file(run: Runner, garage: Path) -> None:
    one_of_each = {ref.kind: ref for ref in Desk(garage).files.all()}
    for ref in one_of_each.values():
        ran = run("show", garage, str(ref), "--format", "json")
        found = json.loads(ran.out)
        assert (ran.status, found["kind"], found["id"], found["problems"]) == (0, ref.kind, ref.id, [])
    assert json.loads(run("show", garage, NEXT, "--format", "json").out)["data"]["date"] == "2026-06-20"


def test_what_cannot_be_read_is_said_and_kept(run: Runner, garage: Path) -> None:
    file = garage / FILE
    file.write_text(
        file.read_text(encoding="utf-8").replace('surface = "', 'surface = "moist '), encoding="utf-8"
    )
    found = json.loads(run("show", garage, NEXT, "--format", "json").out)
    assert [one["path"] for one in found["problems"]] == ["surface"]
    assert found["data"]["surface"].startswith("moist ")


KEYS = {
    "card": ["heading", "as_of", "verdict", "findings", "base", "blocks", "laps", "caution"],
    "board": ["date", "at", "entries"],
    "emergency": ["ines", "tobin", "wim"],
}
"""The pages whose JSON has other keys than a page of rows."""


@every("name", ["", *OWN, *AS_ON_SCREEN])
def test_every_page_prints_its_rows(run: Runner, garage: Path, name: str) -> None:
    other = ("--from", "magpie-ines-dry") if name == "compare" else ()
    ran = run("show", garage, *filter(None, (name,)), *other, "--format", "json")
    found = json.loads(ran.out)
    assert ran.status == 0
    assert list(found) == KEYS.get(name, ["heading", "verdict", "sections", "findings", "caution"])
    if name not in (*KEYS, "today"):
        assert sum(len(one["rows"]) for one in found["sections"]) > 0


def test_what_the_keys_of_json_are_is_written_down(run: Runner) -> None:
    text = run("help", "export").out
    for keys in KEYS["card"], KEYS["board"], ["kind", "id", "data", "problems", "sections", "findings"]:
        assert [one for one in keys if one not in text] == []


def test_a_comparison_names_what_it_can_be_with(run: Runner, garage: Path) -> None:
    assert run("show", garage, "compare").status == 64
    assert "magpie-ines-dry" in run("show", garage, "compare", "--from", "no-such").out


def test_a_set_up_that_goes_out_and_comes_back_changes_nothing(
    run: Runner, garage: Path, tmp_path: Path
) -> None:
    before = snapshot(garage)
    out = tmp_path / "out.json"
    for ref in (NEXT, OTHER):
        out.write_text(run("show", garage, ref, "--format", "json").out, encoding="utf-8")
        ran = run("set", garage, ref, "--from", out)
        assert (ran.status, ran.out) == (0, "nothing differs\n")
    assert {name: text for name, text in snapshot(garage).items() if ".paddock" not in name} == before


def test_another_set_up_is_previewed_taken_and_undone(run: Runner, garage: Path, tmp_path: Path) -> None:
    before = (garage / FILE).read_bytes()
    out = tmp_path / "out.json"
    out.write_text(run("show", garage, OTHER, "--format", "json").out, encoding="utf-8")

    seen = run("set", garage, NEXT, "--from", out, "--preview")
    assert (garage / FILE).read_bytes() == before
    taken = run("set", garage, NEXT, "--from", out)
    assert (taken.status, taken.out) == (0, seen.out)
    sent, held = (
        json.loads(run("show", garage, ref, "--format", "json").out)["data"] for ref in (OTHER, NEXT)
    )
    assert held["setup"] == sent["setup"]
    assert run("undo", garage).status == 0
    assert (garage / FILE).read_bytes() == before


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[1, 2", "no JSON"),
        ("[1, 2]", "no set-up in it"),
        ('{"setup": {"mode": NaN}}', "NaN, which is no number"),
        ('{"setup": {"adjusters": {"front-rebound": "soft"}}}', "setup.adjusters.front-rebound: "),
        ('{"setup": {"wings": 3}}', '"setup.wings": expected a value of a set-up'),
        ("[" * 100_000, "nested too deeply"),
    ],
)
def test_what_is_no_set_up_changes_nothing(
    run: Runner, garage: Path, tmp_path: Path, text: str, said: str
) -> None:
    before = snapshot(garage)
    (tmp_path / "in.json").write_text(text, encoding="utf-8")
    ran = run("set", garage, NEXT, "--from", tmp_path / "in.json")
    assert (ran.status, ran.out) == (3, "")
    assert said in ran.err
    assert ran.err.splitlines()[-1] == "nothing was changed"
    assert snapshot(garage) == before
