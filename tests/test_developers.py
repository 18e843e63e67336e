"""What DEVELOPERS.md names is there."""

import re
from pathlib import Path

ROOT = Path(__file__).parent.parent
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_each_place_to_go_for_something_is_there() -> None:
    table = TEXT.partition("## Where to go for")[2].partition("\n## ")[0]
    rows = [line for line in table.splitlines() if line.startswith("| ")][2:]
    named = [re.findall("`([^`]+)`", row) for row in rows]

    assert len(rows) == 33
    assert all(named)
    assert [path for paths in named for path in paths if not (ROOT / path).exists()] == []


def test_every_module_named_elsewhere_is_there() -> None:
    named = set(re.findall(r"`((?:[a-z_]+/)+[a-z_]+\.(?:py|csv|toml))`", TEXT))

    assert len(named) > 20
    gone = {one for one in named if not (ROOT / one).exists() and not (ROOT / "paddock_tui" / one).exists()}
    assert gone == set()
