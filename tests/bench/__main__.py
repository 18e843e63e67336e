"""Measurements that take longer than a test may: `python -m tests.bench NAME [ARGUMENTS]`.

Each is a module of this folder with `main(arguments) -> int`; its name is what it is asked for by.
"""

import importlib
import pkgutil
import sys
from pathlib import Path


def names() -> list[str]:
    """List the measurements there are."""
    here = [str(Path(__file__).parent)]
    return sorted(one.name for one in pkgutil.iter_modules(here) if not one.name.startswith("_"))


def main(arguments: list[str]) -> int:
    """Run the measurement named first; 64 where there is none of that name."""
    if not arguments or arguments[0] not in names():
        sys.stderr.write(f"usage: python -m tests.bench {{{','.join(names())}}}\n")
        return 64
    module = importlib.import_module(f"tests.bench.{arguments[0]}")
    status: int = module.main(arguments[1:])
    return status


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
