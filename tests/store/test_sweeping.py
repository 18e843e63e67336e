"""What dead processes left half-written is swept with the first step that is kept."""

import subprocess
import sys
from pathlib import Path

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import save


def test_what_a_dead_process_left_half_written_goes_with_the_first_step(garage: Path) -> None:
    gone = subprocess.run(
        [sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, check=True
    )
    left = garage / "bikes" / f".magpie.toml.{int(gone.stdout)}-0.paddock-new"
    left.write_text("half")
    files = GarageFiles(garage)

    save(files, Step("", (Change(Ref("rider", "ines"), (Edit(("note",), MISSING, "x"),)),)))

    assert not left.exists()
