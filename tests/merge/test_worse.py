"""Answered otherwise on two laptops: the worse stands, whatever the times say, and the review asks."""

import datetime as dt
from pathlib import Path

import pytest

from paddock_tui.desk import Desk
from paddock_tui.merge import merged
from paddock_tui.records.edits import MISSING, Edit, Value
from paddock_tui.records.paths import Path as Place
from paddock_tui.records.paths import Ref, spell
from paddock_tui.rules import Finding
from paddock_tui.store.data import lookup
from paddock_tui.store.patch import Patched, patch
from tests.commands.running import EARLY, FILE, NEXT, Runner
from tests.every import every
from tests.merge.triples import data

HERE = Ref("session", NEXT)
CHECK = ("checks", "brake-lever")
OK = '{ status = "ok", at = 13:10:00 }'
TO_FIX = '{ status = "to fix", at = 09:00:00 }'
FALL = 'what = "fall", at = 11:00:00'


def record(*tables: str) -> str:
    """Return a session with these tables, in each of which one line holds one value."""
    return 'date = 2026-06-20\nnumber = 4\nbike = "magpie"\n' + "".join(tables)


def table(name: str, values: str) -> str:
    lines = values.strip("{} ").split(", ")
    return f"\n[{name}]\n" + "".join(f"{line}\n" for line in lines)


@every(
    ("base", "ours", "theirs", "path", "stands"),
    [
        (
            "",
            table("checks.lever", OK),
            table("checks.lever", TO_FIX),
            ("checks", "lever", "status"),
            "to fix",
        ),
        (
            table("checks.lever", OK),
            "",
            table("checks.lever", OK.replace("13:10", "13:15")),
            ("checks", "lever"),
            MISSING,
        ),
        (
            table("checks.lever", TO_FIX),
            "",
            table("checks.lever", OK),
            ("checks", "lever"),
            MISSING,
        ),
        (
            table("incidents.1", FALL),
            table("incidents.1", f"{FALL}, head_contact = true"),
            table("incidents.1", f"{FALL}, head_contact = false"),
            ("incidents", "1", "head_contact"),
            True,
        ),
        (
            table("incidents.1", FALL),
            table("incidents.1", f'{FALL}, found = "nothing", cleared_by = "Dr A"'),
            table("incidents.1", f'{FALL}, cleared_by = "Dr B"'),
            ("incidents", "1", "cleared_by"),
            MISSING,
        ),
        (
            table("answers.leak.1", 'found = "weep"'),
            table("answers.leak.1", 'found = "weep", done = "seal"'),
            table("answers.leak.1", 'found = "weep", done = "nothing yet"'),
            ("answers", "leak", "1", "done"),
            MISSING,
        ),
        ("went_out = 13:00:00\n", "went_out = 13:21:00\n", "went_out = 13:24:00\n", ("went_out",), MISSING),
        ("", "went_out = 13:21:00\n", "went_out = 13:24:00\n", ("went_out",), MISSING),
        ("", "parked = 13:41:00\n", "parked = 13:44:00\n", ("parked",), MISSING),
        ("aim = 'a'\n", "", "aim = 'b'\n", ("aim",), MISSING),
        (
            table("laps", '1 = "1:44.1"'),
            table("laps", '1 = "1:44.1", 2 = "1:43.9"'),
            table("laps", '1 = "1:44.1", 2 = "1:45.0"'),
            ("laps", "2"),
            MISSING,
        ),
    ],
)
def test_the_worse_of_two_answers_stands_whichever_side_is_ours(
    base: str, ours: str, theirs: str, path: Place, stands: Value
) -> None:
    for mine, other in ((ours, theirs), (theirs, ours)):
        found = merged(*map(record, (base, mine, other)))
        after = data(found.text)

        assert found.open >= 1
        assert any(path[: len(one.path)] == one.path for one in found.conflicts)
        assert spell(found.conflicts[0].path) in after["conflict"]
        value = lookup(after, path)
        assert value is stands or value == stands


def edited(text: str, path: Place, new: Value) -> str:
    made = patch(text, [Edit(path, lookup(data(text), path), new)])
    assert isinstance(made, Patched)
    return made.text


def at_desk(garage: Path) -> Desk:
    return Desk(garage, lambda: dt.datetime.fromisoformat(EARLY))


def finding(garage: Path, rule: str) -> Finding:
    return next(one for one in at_desk(garage).review(HERE).findings if one.rule == rule)


def test_what_two_laptops_answered_otherwise_is_asked_by_the_review(garage: Path) -> None:
    file = garage / FILE
    base = file.read_text(encoding="utf-8")
    ours = edited(base, CHECK, {"status": "ok"})
    theirs = edited(base, CHECK, {"status": "to fix"})
    file.write_text(merged(base, ours, theirs).text, encoding="utf-8")

    review = at_desk(garage).review(HERE)
    said = [(one.subject, one.message) for one in review.findings if one.rule == "two-laptops-disagree"]
    assert said == [(spell(CHECK), "Two laptops disagree on brake lever: ok or to fix.")]
    assert any(one.message.startswith("To fix: front lever") for one in review.findings)
    assert review.verdict == "HOLD"


def test_an_acceptance_counts_only_for_the_facts_of_the_merged_record(
    garage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run = Runner(capsys)
    file, rule = garage / FILE, "little-traction-help-in-the-wet"
    base = file.read_text(encoding="utf-8")
    assert finding(garage, rule).accepted is None
    sides = {}
    for level in (3, 2):
        file.write_text(edited(base, ("setup", "controls", "traction"), level), encoding="utf-8")
        assert run("accept", garage, rule, "traction", "--reason", "I know it", "--at", EARLY).status == 0
        assert finding(garage, rule).accepted is not None
        sides[level] = file.read_text(encoding="utf-8")

    # Ours accepted it at 3, theirs turned it to 2: what was accepted is not what stands.
    lower = edited(base, ("setup", "controls", "traction"), 2)
    found = merged(base, sides[3], lower)
    assert not found.conflicts
    file.write_text(found.text, encoding="utf-8")
    assert finding(garage, rule).accepted is None

    # Both accepted it, each its own: neither counts, and the review asks.
    found = merged(base, sides[3], sides[2])
    assert ("accepted", rule) == found.conflicts[0].path[:2]
    file.write_text(found.text, encoding="utf-8")
    assert finding(garage, rule).accepted is None
    assert finding(garage, "two-laptops-disagree") is not None
