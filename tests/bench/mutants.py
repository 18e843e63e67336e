"""How many small faults of the rules, the store, the desk and the statistics of changes the tests notice.

`python -m tests.bench mutants [N] [--seed S] [--jobs J] [--most-s SECONDS] [--of MODULE ...]
[--tests FOLDER ...] [--log FILE] [--again FILE]`: draws N mutants (300) of the modules in `TARGETS`, runs
against each the tests that cover its statement, up to SECONDS of them (20), half of that time for those
that run most of the changed file, on a copy of the tree in a temporary folder, and counts. The tests of
`TESTS` are asked, in one process: what only a screen or an interpreter of its own would show is not found.
`--log` keeps a row of JSON for each mutant; `--again` takes, instead of drawing, those that such a file
says survived. `mutants_without_a_test.txt` lists survivors that need no test, each with why.

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
TARGETS = ("rules", "limits", "store", "desk", *(f"trade/{one}.py" for one in JUDGING))
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
    "trade/test_change_effect.py",
    "trade/test_change_effect_properties.py",
    "trade/test_feel_effect.py",
    "trade/test_outings_to_tell.py",
    "trade/test_session_comparison.py",
    "outside/test_statistics.py",
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
    parser.add_argument("--tests", nargs="+", default=TESTS)
    parser.add_argument("--log", type=Path)
    parser.add_argument("--again", type=Path)
    options = parser.parse_args(arguments)
    whole = all_mutants(options.of)
    drawn = _again(whole, options.again) if options.again else []
    if not options.again:
        drawn = random.Random(options.seed).sample(whole, min(options.number, len(whole)))
        _say(f"seed {options.seed}: {len(drawn)} drawn of {len(whole)} mutants")
    with tempfile.TemporaryDirectory(prefix="mutants-") as temp:
        rows = _run(drawn, Path(temp), options)
    return _report(drawn, rows)


def _again(whole: list[Mutant], log: Path) -> list[Mutant]:
    rows = [json.loads(row) for row in log.read_text(encoding="utf-8").splitlines()]
    keys = {Mutant(**one["mutant"]).key for one in rows if one.get("outcome") not in (None, *DEAD)}
    return [one for one in whole if one.key in keys]


def _run(drawn: list[Mutant], temp: Path, options: argparse.Namespace) -> list[dict[str, Any]]:
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
                "most_s": options.most_s,
            }
        )
    )
    environment = {**os.environ, "PYTHONPATH": str(copy), "CI": "1", "PADDOCK_MUTANTS": str(told)}
    command = [sys.executable, "-m", "pytest", "-q", "-s", "--numprocesses=0", "-p", "no:cacheprovider"]
    command += [
        "-p",
        "tests.bench._mutation_loop",
        *(f"tests/{one}" for one in options.tests if (copy / "tests" / one).exists()),
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
    outcomes = {Mutant(**one["mutant"]): one["outcome"] for one in rows if "outcome" in one}
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
    asked = len(outcomes) - len(needless)
    _say("\n" + ", ".join(f"{count} {outcome}" for outcome, count in sorted(counts.items()) if count))
    _say(f"{dead} of {asked} found, {dead / max(asked, 1):.1%}; {len(needless)} need no test, with a reason")
    failed = next((one["failed"] for one in rows if "failed" in one), ["no test was run"])
    if failed:
        _say(f"tests that fail without any mutant, left out: {failed}")
    return 1 if failed else 0


def _say(text: str) -> None:
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
