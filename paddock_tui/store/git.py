"""Git started so that nothing in a repository runs: no hooks, helpers or pager, whatever its config says."""

import os
import subprocess
from pathlib import Path

_OFF = (
    "core.fsmonitor=false",
    "core.hooksPath=/dev/null",
    "core.pager=cat",
    "core.attributesFile=/dev/null",
    "core.sshCommand=false",
    "credential.helper=",
    "diff.external=",
    "gpg.program=false",
    "protocol.allow=never",
)
"""What a repository's own configuration could otherwise make git run."""

_UNSET = ("GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_EXTERNAL_DIFF", "GIT_PAGER", "GIT_SSH_COMMAND")
_SECONDS = 20


class GitFailed(Exception):
    """Git is not there, took too long, or said no."""


def git(root: Path, *arguments: str, data: bytes | None = None) -> bytes:
    """Run one git command on the repository around a folder and return its output. Raises GitFailed."""
    settings = [part for one in _OFF for part in ("-c", one)]
    environment = {key: value for key, value in os.environ.items() if key not in _UNSET}
    environment |= {"GIT_TERMINAL_PROMPT": "0", "GIT_OPTIONAL_LOCKS": "0", "LC_ALL": "C", "PAGER": "cat"}
    try:
        done = subprocess.run(
            ("git", *settings, "-C", str(root), *arguments),
            input=data,
            stdin=subprocess.DEVNULL if data is None else None,
            capture_output=True,
            timeout=_SECONDS,
            check=False,
            env=environment,
        )
    except FileNotFoundError:
        raise GitFailed("git is not installed") from None
    except (OSError, subprocess.TimeoutExpired) as error:
        raise GitFailed(str(error)) from None
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise GitFailed(said[-1] if said else f"git ended with {done.returncode}")
    return done.stdout


def top_of(root: Path) -> Path:
    """Return the top folder of the repository that a garage lies in. Raises GitFailed where there is none."""
    return Path(os.fsdecode(git(root, "rev-parse", "--show-toplevel").rstrip(b"\n")))
