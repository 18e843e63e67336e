"""`schema`: one kind, or all of them."""

import json

from paddock_tui.records.kinds import CLASSES
from tests.commands.running import Runner


def test_one_kind_or_all_are_printed(run: Runner) -> None:
    tyres = json.loads(run("schema", "tyres").out)
    assert tyres["properties"]["front"]["properties"]["hot_dry"]["title"] == "hot target, dry"

    every = json.loads(run("schema").out)
    assert list(every["$defs"]) == list(CLASSES)
    assert every["$defs"]["tyres"]["properties"] == tyres["properties"]


def test_an_unknown_kind_names_those_there_are(run: Runner) -> None:
    ran = run("schema", "wheel")
    assert (ran.status, ran.out) == (64, "")
    assert ran.err.splitlines() == [
        'there is no kind of record called "wheel"',
        f"  one of {', '.join(CLASSES)}",
    ]


def test_the_schema_knows_no_emergency_page(run: Runner) -> None:
    """It is no record: none of its rows is declared for an editor, and no kind is called so."""
    printed = run("schema").out
    assert run("schema", "emergency").status != 0
    assert "emergency" not in json.loads(printed)["$defs"]
    for key in ("allergies", "blood_group", "medicines"):
        assert f'"{key}"' not in printed
