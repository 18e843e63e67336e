"""Try the costly properties with many times the examples that the suite draws: `longer [TIMES]` (20).

Each time with other examples; what fails is shown as the suite shows it.
"""

import os
import subprocess
import sys
from pathlib import Path

from tests.examples import TIMES

TOP = Path(__file__).parent.parent


def main(arguments: list[str]) -> int:
    """Run every test of the modules that use `examples`; its status is pytest's."""
    times = arguments[0] if arguments else "20"
    drawing = "from tests.examples import"
    files = [str(file) for file in TOP.rglob("test_*.py") if drawing in file.read_text(encoding="utf-8")]
    environment = {key: value for key, value in os.environ.items() if key != "CI"}
    command = [sys.executable, "-m", "pytest", *sorted(files)]
    return subprocess.run(command, env={**environment, TIMES: times}, check=False).returncode
