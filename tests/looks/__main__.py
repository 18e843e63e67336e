"""Write every look anew: `python -m tests.looks`; then read what changed in the texts."""

import shutil
import sys
import tempfile
from pathlib import Path

from tests.looks import FOLDER, renewed, sample_desk
from tests.looks.pictures import renewed_pictures

SAMPLE = Path(__file__).parent.parent.parent / "sample_garage"

with tempfile.TemporaryDirectory() as folder:
    root = shutil.copytree(SAMPLE, Path(folder) / "garage", ignore=shutil.ignore_patterns(".paddock"))
    desk = sample_desk(root)
    looks, pictures = dict(renewed(desk)), dict(renewed_pictures(desk))
    desk.close()
for old in set(FOLDER.glob("*.txt")) - set(looks):
    old.unlink()


def written(file: Path, text: str) -> bool:
    """Write what is not there already, and say whether that was needed."""
    if file.exists() and file.read_text(encoding="utf-8") == text:
        return False
    file.write_text(text, encoding="utf-8")
    return True


changed = sum(written(file, text) for file, text in looks.items())
changed += sum(written(file, text) for file, text in pictures.items())
sys.stdout.write(f"{len(looks)} looks, {changed} changed\n")
