"""A folder that is laid out again is the folder that was read."""

import os
import shutil
from pathlib import Path

import pytest

from tests.copied import held, laid_out
from tests.sample import SAMPLE


def told(folder: Path) -> dict[str, tuple[int, int, bytes]]:
    """Tell the mode, the time of change and the bytes of each thing in a folder, and of itself."""
    found = {}
    for one in (folder, *folder.rglob("*")):
        facts = one.stat()
        content = b"" if one.is_dir() else one.read_bytes()
        found[one.relative_to(folder).as_posix()] = facts.st_mode, facts.st_mtime_ns, content
    return found


def test_it_is_as_a_copy_of_the_folder_without_what_is_left_out(tmp_path: Path) -> None:
    source = shutil.copytree(SAMPLE, tmp_path / "source", ignore=shutil.ignore_patterns(".paddock"))
    (source / "riders" / "ines.toml").chmod(0o600)
    (source / "empty").mkdir(mode=0o500)
    os.utime(source / "bikes", ns=(1, 2))
    right = told(shutil.copytree(source, tmp_path / "right"))
    (source / ".paddock").mkdir()
    (source / ".paddock" / "lock").write_text("held")
    os.utime(source, ns=(0, right["."][1]))

    assert told(laid_out(held(source, without=".paddock"), tmp_path / "made")) == right
    assert len(right) > 60


def test_a_folder_that_is_there_is_not_written_over(tmp_path: Path) -> None:
    with pytest.raises(FileExistsError):
        laid_out(held(SAMPLE), tmp_path)
