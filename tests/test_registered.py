"""Whatever declares a fact, a rule or a kind of matter is loaded with all others of them."""

import subprocess
import sys
from pathlib import Path

import pytest

import paddock_tui

ROOT = Path(paddock_tui.__file__).parent
DECLARES = {"facts": "@fact(", "rules": "@rule(", "matters": "declare("}


@pytest.mark.parametrize("package", DECLARES)
def test_every_module_that_declares_is_registered(package: str) -> None:
    program = f"import sys, paddock_tui.{package}.registered; print(*sys.modules)"
    loaded = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    declaring = {
        ".".join(path.relative_to(ROOT.parent).with_suffix("").parts).removesuffix(".__init__")
        for path in (ROOT / package).rglob("*.py")
        if any(line.startswith(DECLARES[package]) for line in path.read_text(encoding="utf-8").splitlines())
    }

    assert len(declaring) > 5
    assert declaring - set(loaded.stdout.split()) == set()
