"""Refuse strangers at the top level, and text that speaks of one machine or of how the work was shared out.

The folder given is a clean copy: every file in it is looked at.
"""

import re
import sys
from collections.abc import Iterator
from pathlib import Path

TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "paddock_tui", "tests", "sample_garage"}

# Written so that no pattern matches its own text.
_UNWANTED = {
    "a path of one machine": re.compile(r"(?<![\w.~*-])/(?:work|root|home|Users|tmp/pt)/"),
    "the host name of a package registry": re.compile(
        r"\b(?:py)pi\.(?:org|python)|\bpython(?:hosted)\.org|\bnpm(?:js)\.|\bcrates\.(?:io)\b"
    ),
    "how the work is organised": re.compile(
        r"(?<![\w/-])(?:shared)/|\bhelper-\w|\b(?:issue|ticket|task) #\d|\bsub-?(?:agent)"
        r"|\bworking (?:session)|\bin (?:this|my|the) (?:brief)\b|\bpull (?:request)|\blanguage (?:model)",
        re.IGNORECASE,
    ),
}


def strangers(names: set[str]) -> list[str]:
    """Names at the top level that have no business there; dotfiles are let be."""
    return sorted(name for name in names - TOP_LEVEL if not name.startswith("."))


def unwanted(text: str) -> Iterator[tuple[int, str]]:
    """Line number, and what was found there with its words."""
    for number, line in enumerate(text.splitlines(), start=1):
        for what, pattern in _UNWANTED.items():
            if found := pattern.search(line):
                yield number, f"{what}: {found.group()!r}"


def _complaints(root: Path) -> Iterator[str]:
    for stranger in strangers({path.name for path in root.iterdir()}):
        yield f"{stranger}: does not belong at the top level"
    for file in sorted(path for path in root.rglob("*") if path.is_file()):
        name = file.relative_to(root).as_posix()
        for _, complaint in unwanted(name):
            yield f"{name}: its name holds {complaint}"
        try:
            text = file.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue
        for line, complaint in unwanted(text):
            yield f"{name}:{line}: {complaint}"


def main(root: str) -> int:
    complaints = list(_complaints(Path(root)))
    print("\n".join(complaints) or "nothing out of place")
    return 1 if complaints else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
