"""`check`: exit statuses, the text, the documented JSON, and bad input that loses nothing."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.text import width
from tests.commands.running import EARLY, FILE, NEXT, Runner, spoil
from tests.every import every
from tests.pages.opened import SAMPLE
from tests.small import session, snapshot, write

BEFORE = "2026-06-20-2-magpie"


def reviewed(run: Runner, garage: Path, *more: str) -> dict[str, Any]:
    found = json.loads(run("check", garage, "--at", EARLY, "--format", "json", *more).out)
    assert isinstance(found, dict)
    return found


def quiet(root: Path) -> Path:
    """Write a garage whose one session has nothing against it."""
    text = session(surface='"dry"', tyres='"set"', day='"d"', parked="10:20:00")
    full = text.replace("traction = 5    # as before", "traction = 5\nwheelie = 2") + (
        "\n[pressures.cold]\nfront = '2.1 bar'\nrear = '1.9 bar'\n[dash]\nread = 09:55:00\n"
    )
    entry = "[entries.ann.plain]\nsigned_on = true\nbriefing = true\ninspected = true\n"
    tyres = "[front]\nkind = 'track-day'\n[rear]\nkind = 'track-day'\n"
    return write(
        root,
        sessions__a=full,
        tyres__set=tyres,
        days__d=f"date = 2026-05-16\nvenue = 'v'\n\n{entry}",
        venues__v="",
    )


# ---- exit statuses ---------------------------------------------------------------------------------------


def test_no_findings_care_and_hold_are_zero_one_and_two(run: Runner, garage: Path, tmp_path: Path) -> None:
    clear = run("check", quiet(tmp_path / "quiet"))
    assert (clear.status, clear.out.splitlines()[1]) == (0, "NO FINDINGS")
    care = run("check", garage, "--at", EARLY)
    assert care.status == 1
    assert re.match(r"CARE \d+ \(1 to answer\) · \d+ missing · \d+ not assessed · ", care.out.splitlines()[1])
    assert run("set", garage, NEXT, "setup.controls.traction=99").status == 0
    hold = run("check", garage, "--at", EARLY)
    assert (hold.status, hold.out.splitlines()[1].split(" · ")[0]) == (2, "HOLD 1")


def test_a_garage_without_a_session_is_three(run: Runner, tmp_path: Path) -> None:
    ran = run("check", write(tmp_path))

    assert (ran.status, ran.out) == (3, "")
    assert ran.err.startswith("there is no session to check\n")


@every("place", ["absent", "empty"])
@every("command", ["check", "show", "set", "accept"])
def test_an_absent_or_empty_folder_is_three_with_the_way_to_make_a_garage(
    run: Runner, tmp_path: Path, command: str, place: str
) -> None:
    folder = tmp_path / "folder"
    if place == "empty":
        folder.mkdir()
    more = {"set": ["x", "a=1"], "accept": ["r", "s", "--withdraw"]}.get(command, [])

    ran = run(command, folder, *more)

    assert (ran.status, ran.out) == (3, "")
    assert str(folder) in ran.err
    assert "make" in ran.err
    assert "paddock-tui new FOLDER" in ran.err
    assert folder.exists() is (place == "empty")


@every("words", [["--at", "noon"], ["--at", "2026-13-01"], ["--format", "xml"], ["--nonsense"], ["a", "b"]])
def test_wrong_usage_is_sixty_four(run: Runner, words: list[str]) -> None:
    ran = run("check", SAMPLE, *words)

    assert (ran.status, ran.out) == (64, "")
    assert "usage: paddock-tui" in ran.err


def test_a_session_is_named_by_its_id_or_the_start_of_it(run: Runner) -> None:
    for name in ("session/2026-05-16-3-magpie", "2026-05-16-3-magpie", "2026-05-16-3"):
        ran = run("check", SAMPLE, "--session", name)
        assert ran.out.startswith("session 3 · Sat 16 May 11:20 · magpie · ines · anvilfen\n")
        assert ran.status in (0, 1)


@every("name", ["nothing", "magpie", "bike/magpie", "2026"])
def test_a_name_that_is_no_session_is_three(run: Runner, name: str) -> None:
    ran = run("check", SAMPLE, "--session", name)

    assert (ran.status, ran.out) == (3, "")
    assert "session" in ran.err


def test_a_profile_is_looked_at_and_is_no_verdict(run: Runner, garage: Path) -> None:
    spoil(garage, "traction = 8", "traction = 99", "profiles/magpie-ines-wet.toml")

    ran = run("check", garage, "--session", "profile/magpie-ines-wet")

    assert ran.status == 3
    assert "not assessed: no session" in ran.out
    assert "  hold " in ran.out
    assert "is not a session" in ran.err


# ---- the clock -------------------------------------------------------------------------------------------


def test_a_to_do_becomes_a_finding_once_it_is_due_on_the_day(run: Runner, garage: Path) -> None:
    early = reviewed(run, garage)
    late = reviewed(run, garage, "--at", "2026-06-20T13:11")
    other_day = reviewed(run, garage, "--at", "2026-06-21T13:11", "--session", NEXT)

    cold = {"what": "read the cold pressures", "due": "2026-06-20T13:10:00"}
    dash = {"what": "read the dash after the last ignition-on", "due": "2026-06-20T13:17:00"}
    assert cold in early["to_do"]
    assert cold not in late["to_do"]
    assert cold in other_day["to_do"]
    assert all(dash in found["to_do"] for found in (early, late, other_day))
    rules = [{finding["rule"] for finding in found["findings"]} for found in (early, late, other_day)]
    assert "cold-pressures-not-read" in rules[1]
    assert rules[0] == rules[2]
    assert "cold-pressures-not-read" not in rules[0]


def test_the_clock_chooses_the_session_in_hand(run: Runner, tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(1), sessions__b=session(2, date="2026-05-17"))

    assert run("check", root, "--at", "2026-05-16T09:00").out.startswith("session 1")
    assert run("check", root, "--at", "2026-05-17").out.startswith("session 2")


# ---- the text --------------------------------------------------------------------------------------------


@every("columns", ["38", "40", "80"])
def test_the_text_fits_the_terminal_and_ends_with_the_caution(
    run: Runner, monkeypatch: pytest.MonkeyPatch, columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    ran = run("check", SAMPLE, "--at", EARLY)

    assert all(width(line) <= int(columns) for line in ran.out.splitlines())
    words = " ".join(ran.out.split())
    assert words.endswith("turn the aids up, slow down, come in.")
    assert "does not mean safe" in words


def test_the_names_that_accept_takes_are_said_where_there_is_something_to_answer(run: Runner) -> None:
    words = " ".join(run("check", SAMPLE, "--at", EARLY).out.split())

    assert "To accept it: little-traction-help-in-the-wet traction" in words
    assert words.count("To accept it") == 1


def test_the_samples_next_session_has_everything_but_a_hold(run: Runner, garage: Path) -> None:
    found = reviewed(run, garage)

    counts = found["counts"]
    assert counts["hold"] == 0
    assert all(counts[worst] >= 1 for worst in ("serious", "caution", "note", "to_answer"))
    assert len(found["not_judged"]) >= 1
    assert len(found["to_do"]) >= 1


def test_one_value_makes_the_sample_hold_and_others_find_nothing(run: Runner, garage: Path) -> None:
    assert run("set", garage, NEXT, "setup.mode=wading").status == 0
    assert run("check", garage, "--at", EARLY).status == 2
    assert run("set", garage, NEXT, "setup.mode=wild").status == 0

    assert (
        run(
            "set",
            garage,
            NEXT,
            "setup.controls.traction=7",
            "setup.controls.slide=5",
            "setup.controls.wheelie=4",
            "tyres=magpie-wet",
            "dash.read=13:16",
            "pressures.cold.front=2.15",
            "pressures.cold.rear=1.95",
        ).status
        == 0
    )

    ran = run("check", garage, "--at", EARLY)
    assert (ran.status, ran.out.splitlines()[1].partition(":")[0]) == (1, "NOT YET 4 missing")
    answers = (
        "checks.walked-round.status=ok",
        "work.1.what=wheel out",
        "work.1.torqued=yes",
        "work.1.pumped=yes",
    )
    assert run("set", garage, NEXT, *answers).status == 0
    assert run("set", garage, BEFORE, "happened=nothing").status == 0
    ran = run("check", garage, "--at", EARLY)
    assert (ran.status, ran.out.splitlines()[1].partition(" · ")[0]) == (0, "NO FINDINGS")


# ---- JSON ------------------------------------------------------------------------------------------------


def test_the_json_form_has_the_documented_keys_in_their_order(run: Runner, garage: Path) -> None:
    spoil(garage, 'air = "17 C"', 'air = "17,5 C"\nshoes = 41')
    reason = "slow – très lent"
    assert (
        run(
            "accept", garage, "little-traction-help-in-the-wet", "traction", "--reason", reason, "--at", EARLY
        ).status
        == 0
    )

    out = run("check", garage, "--at", EARLY, "--format", "json").out
    found = json.loads(out)

    assert out.isascii()
    assert list(found) == [
        "verdict", "missing", "session", "counts", "findings", "not_judged", "to_do", "problems",
    ]  # fmt: skip
    assert (found["verdict"], found["session"]) == ("CARE", NEXT)
    assert list(found["counts"]) == ["hold", "serious", "caution", "note", "to_answer"]
    assert all(type(count) is int for count in found["counts"].values())
    for finding in found["findings"]:
        assert list(finding) == [
            "rule", "subject", "severity", "about", "where", "message", "why", "facts", "remedy", "source",
            "accepted",
        ]  # fmt: skip
        assert finding["severity"] in ("hold", "serious", "caution", "note")
        assert finding["about"] in ("danger", "method")
        assert all(isinstance(finding[key], str) for key in list(finding)[:-1])
    assert found["findings"][0]["where"] == f"session/{NEXT}:setup.controls.traction"
    assert found["findings"][0]["accepted"] == {"reason": reason, "by": "IS", "at": "08:00:00"}
    assert found["findings"][1]["accepted"] is None
    assert found["counts"]["to_answer"] == 0
    assert found["missing"][0] == {
        "what": f"what happened in {BEFORE}", "where": f"session/{BEFORE}:happened",
    }  # fmt: skip
    assert {"what": f"shoes in {NEXT}", "where": f"session/{NEXT}:shoes"} in found["missing"]
    for entry in found["not_judged"]:
        assert list(entry) == ["rule", "missing"]
        assert entry["missing"] == ["what wheelie control is set to"]
    assert all(list(item) == ["what", "due"] for item in found["to_do"])
    bad, unknown = found["problems"]
    assert bad == {
        "file": FILE,
        "line": 15,
        "path": "air",
        "found": '"17,5 C" (a comma in the number)',
        "expected": "a temperature with its unit, e.g. -2.5 C, or one of cold, mild, hot",
        "mend": 'write "17.5 C"',
    }
    assert (unknown["line"], unknown["path"]) == (16, "shoes")


def test_without_a_session_the_json_form_is_whole_too(run: Runner, tmp_path: Path) -> None:
    ran = run("check", write(tmp_path), "--format", "json")

    assert ran.status == 3
    assert json.loads(ran.out) == {
        "verdict": "not assessed",
        "missing": [],
        "session": None,
        "counts": {"hold": 0, "serious": 0, "caution": 0, "note": 0, "to_answer": 0},
        "findings": [],
        "not_judged": [],
        "to_do": [],
        "problems": [],
    }


def test_control_characters_come_out_escaped(run: Runner, tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a=session(air='"\\u001B[2J"', bike='"\\u202Eghost"'))

    out = run("check", root, "--format", "json").out

    assert out.isascii()
    assert "\x1b" not in out
    assert json.loads(out)["problems"]


# ---- bad input ---------------------------------------------------------------------------------------------


def test_a_bad_value_loses_only_itself_and_is_listed_with_file_line_and_mend(
    run: Runner, garage: Path
) -> None:
    spoil(garage, 'front_start = "2.15 bar"', 'front_start = "2,3 bar"')
    spoil(garage, "traction = 3  ", 'traction = "three"  ')
    before = snapshot(garage)

    ran = run("check", garage, "--at", EARLY)

    assert ran.status == 1
    words = " ".join(ran.out.split())
    assert f'{FILE}:36 "2,3 bar" (a comma in the number): expected a pressure with its unit' in words
    assert 'write "2.3 bar"' in words
    assert f'{FILE}:40 "three": expected a level from 0 to 10, or off' in words
    assert "what traction control is set to" in words
    assert snapshot(garage) == before


@every(
    ("file", "ref"),
    [
        ("bikes/magpie.toml", "bike/magpie"),
        ("riders/ines.toml", "rider/ines"),
        ("days/2026-06-20-anvilfen.toml", "day/2026-06-20-anvilfen"),
        ("venues/anvilfen.toml", "venue/anvilfen"),
        ("tyres/magpie-trackday-2.toml", "tyres/magpie-trackday-2"),
        ("sessions/2026/2026-06-20-2-magpie.toml", "session/2026-06-20-2-magpie"),
        ("garage.toml", "garage"),
    ],
)
@every("content", [b"name = = 1\n", b"\xff\xfe"], ids=["not TOML", "not UTF-8"])
def test_a_record_that_the_session_refers_to_and_that_is_lost_is_three(
    run: Runner, garage: Path, file: str, ref: str, content: bytes
) -> None:
    (garage / file).write_bytes(content)
    before = snapshot(garage)

    ran = run("check", garage, "--at", EARLY, "--session", NEXT)

    assert ran.status == 3
    assert f"{ref} cannot be read, so the verdict does not stand" in ran.err
    assert f"{file}:1" in ran.out
    assert snapshot(garage) == before


def test_a_reference_that_finds_nothing_is_a_hold_with_the_name(run: Runner, garage: Path) -> None:
    spoil(garage, 'tyres = "magpie-trackday-2"', 'tyres = "none-such"')

    ran = run("check", garage, "--at", EARLY)

    assert ran.status == 2
    assert "There is no tyre set none-such in this garage." in ran.out


def test_the_session_itself_that_is_lost_is_three(run: Runner, garage: Path) -> None:
    (garage / FILE).write_text("date == 2026-06-20\n")

    ran = run("check", garage, "--session", NEXT)

    assert ran.status == 3
    assert "not assessed: no session" in ran.out
    assert f"{FILE}:1" in ran.out


def test_a_lost_session_that_may_be_the_one_in_hand_is_never_passed_over(run: Runner, garage: Path) -> None:
    (garage / FILE).write_text("date == 2026-06-20\n")

    ran = run("check", garage, "--at", EARLY)

    assert ran.status == 3
    assert f"session/{NEXT} cannot be read, and may be the current session" in ran.err
    assert f"{FILE}:1" in ran.out
    assert run("check", garage, "--at", EARLY, "--session", "2026-06-20-1").status in (0, 1)


def test_when_no_session_can_be_read_each_is_said(run: Runner, tmp_path: Path) -> None:
    root = write(tmp_path, sessions__a="x = = 1\n", sessions__b=session(date='"16 May"'))

    ran = run("check", root)

    assert ran.status == 3
    assert "sessions/a.toml:1: " in ran.err
    assert "sessions/b.toml:" in ran.err
    assert "there is no session to check" in ran.err
