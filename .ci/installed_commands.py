"""Run the installed command outside the checkout: its version, and a check of a garage."""

import subprocess
import sys
from pathlib import Path

_TRACEBACK = "Traceback (most recent call last)"


def _run(*command: str | Path) -> subprocess.CompletedProcess[str]:
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=False)
    print("$", *command)
    print(f"{done.stdout}{done.stderr}exit status {done.returncode}")
    return done


def main(programs: Path, garage: Path) -> int:
    asked = "from importlib.metadata import version; print(version('paddock-tui'))"
    version = _run(programs / "python", "-c", asked).stdout.strip()
    told = _run(programs / "paddock-tui", "--version")
    checked = _run(programs / "paddock-tui", "check", garage)
    complaints = []
    if told.returncode != 0 or not version or version not in told.stdout:
        complaints.append(f"--version does not tell the version installed, {version!r}")
    # An unknown command and an unhandled error also end with 2 and 1, but with nothing on standard output.
    if checked.returncode not in range(3) or not checked.stdout.strip() or _TRACEBACK in checked.stderr:
        complaints.append("check did not judge the garage")
    for complaint in complaints:
        print(complaint, file=sys.stderr)
    return 1 if complaints else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2])))
