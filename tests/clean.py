"""What a clean interpreter has loaded and made after some code: each code is run once for all who ask."""

import functools
import subprocess
import sys

from tests.sample import SAMPLE

COMMAND = """
from paddock_tui.__main__ import main
assert main({words}) in (0, 1)
"""

CHECK = COMMAND.format(words=["check", str(SAMPLE)])

_TOLD = """
import sys
mine = [one for one in object.__subclasses__() if one.__module__.startswith("paddock_tui")]
made = [one for one in mine if "__attrs_attrs__" in vars(one)]
print("loaded:", *sys.modules)
print("classes:", *{one.__qualname__ for one in made})
print("by attrs:", *{one.__qualname__ for one in made if isinstance(vars(one)["__attrs_attrs__"], tuple)})
"""


@functools.cache
def after(code: str) -> dict[str, frozenset[str]]:
    """Return the modules loaded, the classes made of ours, and those of them that attrs made by itself."""
    done = subprocess.run([sys.executable, "-c", code + _TOLD], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    lines = [line.partition(":") for line in done.stdout.splitlines()[-3:]]
    return {what: frozenset(names.split()) for what, _, names in lines}
