"""How many small faults of the rules, the store, the desk and the statistics of changes the tests notice.

`python -m tests.bench mutants [N] [--seed S] [--jobs J] [--most-s SECONDS] [--of MODULE ...]
[--tests FOLDER ...] [--log FILE] [--again FILE]`: draws N mutants (300) of the modules in `TARGETS`, runs
against each the tests that cover its statement, up to SECONDS of them (20), half of that time for those
that run most of the changed file, on a copy of the tree in a temporary folder, and counts. The tests of
`TESTS` are asked, in one process; those that live through them are then asked of `SLOWER`, the flows on
the screen, in three times the seconds. What only an interpreter of its own would show is not found.
`--log` keeps a row of JSON for each mutant; `--again` takes, instead of drawing, those that such a file
says survived and for which no reason stands. `mutants_without_a_test.txt` lists survivors that need no
test, each with why.

The statuses: killed (a test fails), timed out (a test goes on and on: killed too), survived, not covered.
"""

import argparse
import collections
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import attrs

from tests.bench._mutators import Mutant, mutants_of

TOP = Path(__file__).parent.parent.parent
JUDGING = ("change_effect", "feel_effect", "session_luck", "permutation", "laps_needed", "outings_to_tell")
TARGETS = ("rules", "limits", "store", "desk", *(f"calc/{one}.py" for one in JUDGING))
TESTS = (
    "rules",
    "store",
    "desk",
    "advice",
    "facts",
    "explanations",
    "pages",
    "commands",
    "looks",
    "attacks",
    "merge",
    "matters",
    "test_crash.py",
    "calc/test_change_effect.py",
    "calc/test_change_effect_properties.py",
    "calc/test_feel_effect.py",
    "calc/test_outings_to_tell.py",
    "calc/test_session_comparison.py",
    "outside/test_statistics.py",
)
SLOWER = (
    "screens",
    "entry",
    "widgets",
    "test_registries.py",
    "test_sample_story.py",
    "test_sample_garage.py",
)
_WITHOUT = Path(__file__).parent / "mutants_without_a_test.txt"
DEAD = ("killed", "timed out")


def all_mutants(targets: Sequence[str] = TARGETS) -> list[Mutant]:
    """List every mutant of the modules that are asked about."""
    found = []
    for target in targets:
        at = TOP / "paddock_tui" / target
        for file in sorted(at.rglob("*.py")) if at.is_dir() else [at]:
            found += mutants_of(str(file.relative_to(TOP)), file.read_text(encoding="utf-8"))
    return found


def without_a_test() -> dict[str, str]:
    """Read the mutants that need no test, each with why: a line of each, parted by ` # `."""
    rows = _WITHOUT.read_text(encoding="utf-8").splitlines() if _WITHOUT.exists() else []
    parted = (row.rpartition("  # ") for row in rows if row and not row.startswith("#"))
    return {key.strip(): why.strip() for key, _, why in parted}


def main(arguments: list[str]) -> int:
    """Draw mutants, run the tests against them and print the count; 1 where a test failed without any."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench mutants")
    parser.add_argument("number", nargs="?", type=int, default=300)
    parser.add_argument("--seed", type=int, default=random.SystemRandom().randrange(1_000_000))
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--most-s", type=float, default=20.0)
    parser.add_argument("--of", nargs="+", default=TARGETS)
    parser.add_argument("--tests", nargs="+", help="these alone, instead of TESTS and then SLOWER")
    parser.add_argument("--log", type=Path)
    parser.add_argument("--again", type=Path)
    options = parser.parse_args(arguments)
    whole = all_mutants(options.of)
    if options.of == TARGETS:
        for gone in sorted(without_a_test().keys() - {one.key for one in whole}):
            _say(f"a reason for what is no mutant any more: {gone}")
    drawn = _again(whole, options.again) if options.again else []
    if not options.again:
        drawn = random.Random(options.seed).sample(whole, min(options.number, len(whole)))
        _say(f"seed {options.seed}: {len(drawn)} drawn of {len(whole)} mutants")
    rows = _asked(drawn, options.tests or TESTS, options.most_s, options)
    if not options.tests:
        became = _became(rows)
        lived = [one for one in drawn if one in became and became[one] not in DEAD]
        rows += _asked(lived, SLOWER, 3 * options.most_s, options) if lived else []
    return _report(drawn, rows)


def _again(whole: list[Mutant], log: Path) -> list[Mutant]:
    """Find those that lived, and need a test, as they are now: of several that read alike the nearest."""
    rows = [json.loads(row) for row in log.read_text(encoding="utf-8").splitlines()]
    alike: dict[str, list[Mutant]] = collections.defaultdict(list)
    for one in whole:
        alike[one.key].append(one)
    excused = without_a_test()
    lived = [
        mutant
        for mutant, outcome in _became(rows).items()
        if outcome not in DEAD and mutant.key not in excused
    ]
    found = [_nearest(alike[one.key], one.line) for one in lived if one.key in alike]
    for gone in (one for one in lived if one.key not in alike):
        _say(f"no longer there: {gone.key}")
    return found


def _nearest(alike: list[Mutant], line: int) -> Mutant:
    return min(alike, key=lambda one: abs(one.line - line))


def _asked(
    drawn: list[Mutant], tests: Sequence[str], most_s: float, options: argparse.Namespace
) -> list[dict[str, Any]]:
    with tempfile.TemporaryDirectory(prefix="mutants-") as temp:
        return _run(drawn, Path(temp), tests, most_s, options)


def _became(rows: list[dict[str, Any]]) -> dict[Mutant, str]:
    """Say of each mutant the worst that befell it, whichever tests were asked."""
    found: dict[Mutant, str] = {}
    for row in rows:
        if "outcome" in row:
            mutant = Mutant(**row["mutant"])
            before = found.get(mutant, "not covered")
            found[mutant] = before if row["outcome"] == "not covered" else row["outcome"]
    return found


def _run(
    drawn: list[Mutant], temp: Path, tests: Sequence[str], most_s: float, options: argparse.Namespace
) -> list[dict[str, Any]]:
    """Run the tests in a copy of the tree, passing on what becomes of each mutant as it is known."""
    copy, results, told = temp / "tree", temp / "results", temp / "told.json"
    for name in ("paddock_tui", "tests", "sample_garage"):
        shutil.copytree(TOP / name, copy / name, ignore=shutil.ignore_patterns("__pycache__", ".paddock"))
    for file in TOP.glob("*.*"):
        if file.is_file() and not file.name.startswith("."):
            shutil.copy(file, copy / file.name)
    results.touch()
    told.write_text(
        json.dumps(
            {
                "mutants": [attrs.asdict(one) for one in drawn],
                "at_once": options.jobs,
                "results": str(results),
                "most_s": most_s,
            }
        )
    )
    environment = {**os.environ, "PYTHONPATH": str(copy), "CI": "1", "PADDOCK_MUTANTS": str(told)}
    command = [sys.executable, "-m", "pytest", "-q", "-s", "--numprocesses=0", "-p", "no:cacheprovider"]
    command += [
        "-p",
        "tests.bench._mutation_loop",
        *(f"tests/{one}" for one in tests if (copy / "tests" / one).exists()),
    ]
    with subprocess.Popen(command, cwd=copy, env=environment, stdout=subprocess.DEVNULL) as process:
        return _follow(process, results, options.log)


def _follow(process: "subprocess.Popen[bytes]", results: Path, log: Path | None) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = []
    with results.open(encoding="utf-8") as file:
        while True:
            ended = process.poll() is not None
            for row in file:
                rows.append(json.loads(row))
                if "outcome" in rows[-1]:
                    _say(f"{rows[-1]['outcome']:12} {Mutant(**rows[-1]['mutant']).key}")
                if log:
                    with log.open("a", encoding="utf-8") as kept:
                        kept.write(row)
            if ended:
                return rows
            time.sleep(0.5)


def _report(drawn: list[Mutant], rows: list[dict[str, Any]]) -> int:
    outcomes = _became(rows)
    excused = without_a_test()
    lived = [one for one in drawn if outcomes.get(one) in ("survived", "not covered")]
    needless = [one for one in lived if one.key in excused]
    dead = sum(one in DEAD for one in outcomes.values())
    _say("")
    for one in lived:
        why = f"  # {excused[one.key]}" if one.key in excused else ""
        _say(f"{outcomes[one]:12} {one.key} (line {one.line}){why}")
    counts = collections.Counter(outcomes.values())
    counts["not run"] = len(drawn) - len(outcomes)
    _say("\n" + ", ".join(f"{count} {outcome}" for outcome, count in sorted(counts.items()) if count))
    left = len(lived) - len(needless)
    _say(f"{dead} of {len(outcomes)} found, {dead / max(len(outcomes), 1):.1%}; of the others")
    _say(f"{len(needless)} need no test, with a reason, and {left} are left")
    failed = [test for one in rows for test in one.get("failed", ())]
    if not any("failed" in one for one in rows):
        failed = ["no test was run"]
    if failed:
        _say(f"tests that fail without any mutant, left out: {failed}")
    return 1 if failed else 0


def _say(text: str) -> None:
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
