"""Run a block of commands from README.md, word for word, in a fresh copy of the checkout.

A block is a fence ```sh under a marker that names it and says what is expected of it:

    <!-- ci: main job, status 0-2 -->
    <!-- ci: main job, status 0-2, keys: down down q -->     runs in a terminal; keys are typed
    <!-- ci: tests -->                                       status 0, and pytest's count of passed tests
"""

import os
import re
import subprocess
import sys
import threading
from pathlib import Path

import attrs
import terminal

_MARKER = re.compile(r"^<!-- ci: (?P<name>[^,>]+?)(?P<options>,[^>]*?)? -->$", re.MULTILINE)
_FENCE = re.compile(r"\A\s*```sh\n(?P<commands>.*?)^```$", re.MULTILINE | re.DOTALL)
_STATUS = re.compile(r"\bstatus (\d+)(?:-(\d+))?")
_KEYS = re.compile(r"\bkeys: (.+)$")
_PASSED = re.compile(r"\b\d+ passed\b.* in [\d.]+s")
_TRACEBACK = "Traceback (most recent call last)"
_SECONDS = 1800


class NotAsPromised(Exception):
    """README.md or its commands are not as they should be."""


@attrs.frozen
class Block:
    """Commands of one fence, the exit statuses accepted, the keys to type; no keys: no terminal is needed."""

    commands: str
    statuses: range
    keys: tuple[str, ...]


def find_block(readme: str, name: str) -> Block:
    """The block under the one marker with this name; NotAsPromised when there is none, or more than one."""
    markers = [marker for marker in _MARKER.finditer(readme) if marker["name"] == name]
    if len(markers) != 1:
        raise NotAsPromised(f"README.md needs one marker <!-- ci: {name} -->, found {len(markers)}")
    fence = _FENCE.match(readme[markers[0].end() :])
    if fence is None or not fence["commands"].strip():
        raise NotAsPromised(f"README.md: no ```sh block with commands under <!-- ci: {name} -->")
    options = markers[0]["options"] or ""
    status = _STATUS.search(options)
    keys = _KEYS.search(options)
    first, last = (int(status[1]), int(status[2] or status[1])) if status else (0, 0)
    return Block(fence["commands"], range(first, last + 1), tuple(keys[1].split()) if keys else ())


def _run_plainly(script: str, folder: Path, environment: dict[str, str]) -> tuple[int, str]:
    """Exit status and output; the output is printed as it comes."""
    process = subprocess.Popen(
        ["bash", "-c", script],
        cwd=folder,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        errors="replace",
        start_new_session=True,
    )
    assert process.stdout is not None
    watch = threading.Timer(_SECONDS, os.killpg, (process.pid, 9))
    watch.start()
    lines = []
    for line in process.stdout:
        print(line, end="", flush=True)
        lines.append(line)
    status = process.wait()
    watch.cancel()
    return status, "".join(lines)


def run_block(block: Block, folder: Path, failures: Path) -> str:
    """Run a block in a folder and return its output; NotAsPromised unless all of it went as its marker says.

    Only the last command may end with a status other than 0: a trap notes each failure in `failures`.
    """
    environment = os.environ | {"README_FAILURES": str(failures)}
    failures.write_text("")
    script = 'trap \'echo "$?" >>"$README_FAILURES"\' ERR\n' + block.commands
    if block.keys:
        status, output = terminal.run(script, folder, environment, block.keys)
    else:
        status, output = _run_plainly(script, folder, environment)
    failed = [int(line) for line in failures.read_text().split()]
    if status not in block.statuses:
        raise NotAsPromised(f"exit status {status}, expected {block.statuses[0]} to {block.statuses[-1]}")
    if failed != ([status] if status else []):
        raise NotAsPromised(f"a command before the last one failed: statuses {failed}")
    if _TRACEBACK in output:
        raise NotAsPromised("a command ended in a traceback")
    print(f"exit status {status}, as README.md says")
    return output


def main(name: str, folder: Path) -> int:
    try:
        block = find_block((folder / "README.md").read_text(encoding="utf-8"), name)
        print(block.commands, flush=True)
        output = run_block(block, folder, folder.parent / "failures")
        if name == "tests" and not _PASSED.search(output):
            raise NotAsPromised("pytest did not say how many tests passed")
    except (NotAsPromised, terminal.Stuck) as trouble:
        print(f"README.md, {name}: {trouble}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], Path(sys.argv[2])))
