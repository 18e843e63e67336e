"""Write every look anew: `python -m tests.looks`; then read what changed in the texts."""

import shutil
import sys
import tempfile
from pathlib import Path

from tests.looks import FOLDER, renewed

SAMPLE = Path(__file__).parent.parent.parent / "sample_garage"

with tempfile.TemporaryDirectory() as folder:
    root = shutil.copytree(SAMPLE, Path(folder) / "garage", ignore=shutil.ignore_patterns(".paddock"))
    looks = dict(renewed(root))
for old in set(FOLDER.glob("*.txt")) - set(looks):
    old.unlink()
changed = 0
for file, text in looks.items():
    if not file.exists() or file.read_text(encoding="utf-8") != text:
        file.write_text(text, encoding="utf-8")
        changed += 1
sys.stdout.write(f"{len(looks)} looks, {changed} changed\n")
