"""A process is killed at random moments while it edits: what it said was kept is there, all files whole.

`python -m tests.bench kills [N]` kills N times (300). The process edits a garage through the desk, as the
screens do: values, lines, tables, new records, renames over several files, undo. It says each step when it
begins, and again when the desk says that it is kept. No kill may leave a lock in the way of the next process.
"""

import functools
import os
import pickle
import random
import signal
import sys
import tempfile
import time
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import attrs

from paddock_tui.desk import Desk, setting_value
from paddock_tui.desk.files.records import creating, renaming
from paddock_tui.records.edits import Step, Value
from paddock_tui.records.paths import Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.saving import Saved
from tests.bench._forking import forked
from tests.small import session, write

ONE, BIKE = Ref("session", "one"), Ref("bike", "plain")
LONGEST = 0.06
"""Seconds after its first kept step at which a process is killed at the latest."""


@attrs.frozen
class Claim:
    """What a step that is kept makes true: a value at a path of a record."""

    ref: Ref
    path: tuple[str, ...]
    value: Value

    def holds(self, root: Path) -> bool:
        """Look on the disk."""
        folder = {"session": "sessions", "bike": "bikes", "rider": "riders"}[self.ref.kind]
        file = root / folder / f"{self.ref.id}.toml"
        if self.ref.kind == "session" and not file.exists():
            file = root / folder / "2027" / f"{self.ref.id}.toml"
        return file.exists() and lookup(parsed(file), self.path) == self.value


def parsed(file: Path) -> dict[str, Any]:
    """Read a file as TOML."""
    return tomllib.loads(file.read_text(encoding="utf-8"))


@attrs.define
class Tally:
    """What was counted."""

    kills: int = 0
    begun: int = 0
    kept: int = 0
    lost: int = 0
    broken: int = 0
    leftovers: int = 0
    most_leftovers: int = 0
    cut_short: int = 0


def garage(root: Path) -> Path:
    """Make the garage that is edited."""
    return write(root, sessions__one=session(), sessions__two=session(2))


def steps(desk: Desk, chance: random.Random) -> Iterator[tuple[Step, Claim]]:
    """Make steps without end; each with what it claims once it is kept."""
    while True:
        kind, number = chance.randrange(6), chance.randrange(1000)
        if kind == 0:
            path: tuple[str, ...] = ("setup", "controls", "traction")
            yield _set(desk, ONE, path, number)
        elif kind == 1:
            yield _set(desk, ONE, ("aim",), f"aim {number}")
        elif kind == 2:
            yield _set(desk, ONE, ("notes", str(number % 7), "text"), f"note {number}")
        elif kind == 3:
            yield _set(desk, BIKE, ("name",), f"bike {number}")
        elif kind == 4:
            ref = Ref("session", f"2027-01-01-{desk.now():%H%M%S%f}-plain")
            step = creating(desk.files, ref, {"number": number})
            if isinstance(step, Step):
                yield step, Claim(ref, ("number",), number)
        else:
            (rider,) = desk.files.listing("rider")
            step = renaming(desk.files, rider, f"rider-{desk.now():%H%M%S%f}")
            if isinstance(step, Step):
                yield step, Claim(ONE, ("rider",), step.label.rpartition(" ")[2])


def _set(desk: Desk, ref: Ref, path: tuple[str, ...], value: Value) -> tuple[Step, Claim]:
    return setting_value(desk.files, ref, path, value), Claim(ref, path, value)


def child(root: Path, seed: int, said: int) -> None:
    """Edit until killed; `said` is where each step is told of, at its beginning and when it is kept."""
    desk, chance = Desk(root), random.Random(seed)

    def say(word: str, claim: Claim) -> None:
        os.write(said, f"{word} {pickle.dumps(claim).hex()}\n".encode())

    for step, claim in steps(desk, chance):
        if not step.changes:
            continue
        say("begun", claim)
        desk.do(step)
        kept = all(isinstance(one, Saved) for one in desk.settled())
        say("kept" if kept else "refused", claim)
        if claim.path == ("aim",) and chance.randrange(4) == 0:
            say("undone", claim)
            desk.undo()
            desk.settled()


def killed_once(root: Path, seed: int, tally: Tally) -> list[str]:
    """Start a process, kill it at a random moment, and look at what it left; gives what is wrong."""
    near, far = os.pipe()
    pid = forked(functools.partial(child, root, seed, far))
    os.close(far)
    said = b""
    while b"kept" not in said:
        piece = os.read(near, 65536)
        if not piece:
            break
        said += piece
    time.sleep(random.Random(seed).random() * LONGEST)
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    while piece := os.read(near, 65536):
        said += piece
    os.close(near)
    tally.kills += 1
    return look(root, said.decode().splitlines(), tally)


def look(root: Path, said: list[str], tally: Tally) -> list[str]:
    """Compare the disk with what the process said."""
    heard = [(word, pickle.loads(bytes.fromhex(words))) for word, words in (line.split() for line in said)]
    may: dict[tuple[Ref, tuple[str, ...]], list[Claim]] = {}
    must: set[tuple[Ref, tuple[str, ...]]] = set()
    wrong = [f"refused: {claim}" for word, claim in heard if word == "refused"]
    for word, claim in heard:
        at = (claim.ref, claim.path)
        if word == "begun":
            tally.begun += 1
            may.setdefault(at, []).append(claim)
        elif word == "kept":
            tally.kept += 1
            may[at] = [claim]
            must.add(at)
        else:  # what an undo that was cut short leaves may be either
            must.discard(at)
    wrong += broken_files(root, tally)
    tally.cut_short += (root / ".paddock" / "intent").exists()
    mended = Desk(root)
    mended.mend()
    mended.close()
    # A step that had only begun may stand or not; of one that was kept, it or the one begun after it must.
    lost = [may[at] for at in must if not any(claim.holds(root) for claim in may[at])]
    tally.lost += len(lost)
    riders = [path.stem for path in (root / "riders").glob("*.toml")]
    named = [parsed(root / "sessions" / f"{name}.toml")["rider"] for name in ("one", "two")]
    if len(riders) != 1 or named != riders * 2:
        wrong.append(f"half a rename: {riders}, {named}")
    return wrong + [f"lost: {claims}" for claims in lost]


def broken_files(root: Path, tally: Tally) -> list[str]:
    """List files that do not parse; count temporary files left behind, of which there may be one."""
    wrong: list[str] = []
    left = 0
    for path in (one for one in root.rglob("*") if one.is_file()):
        if path.name.endswith(".paddock-new"):
            left += 1
        elif path.suffix == ".toml":
            try:
                tomllib.loads(path.read_text(encoding="utf-8"))
            except ValueError as error:
                tally.broken += 1
                wrong.append(f"{path}: {error}")
    tally.leftovers += left
    tally.most_leftovers = max(tally.most_leftovers, left)
    if left > 1:
        wrong.append(f"{left} temporary files")
    return wrong


def run(times: int, root: Path, seed: int = 0) -> tuple[Tally, list[str]]:
    """Kill so many times; gives what was counted and what is wrong."""
    tally, wrong = Tally(), []
    garage(root)
    for number in range(times):
        wrong += killed_once(root, seed + number, tally)
        if (number + 1) % 50 == 0:  # a garage of some days, not of years
            for path in (root / "sessions" / "2027").glob("*.toml"):
                path.unlink()
    return tally, wrong


def main(arguments: list[str]) -> int:
    """Kill N times (300), and print what was counted; status 1 where anything is wrong."""
    times = int(arguments[0]) if arguments else 300
    begin = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        tally, wrong = run(times, Path(folder))
    sys.stdout.write(
        f"{tally.kills} kills in {time.monotonic() - begin:.0f} s: {tally.begun} steps begun, {tally.kept}"
        f" kept, {tally.lost} of those lost; {tally.broken} broken files; at most {tally.most_leftovers}"
        f" temporary file left ({tally.leftovers} in all); {tally.cut_short} renames cut short and brought"
        " to an end\n"
    )
    sys.stdout.writelines(f"{line}\n" for line in wrong[:20])
    return 1 if wrong else 0
