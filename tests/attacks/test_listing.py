"""The listing survives loops of links, folders without end, names that are no text, and odd links."""

import os
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.store.files import sweep
from paddock_tui.store.garage import GarageFiles
from tests.commands.running import Runner
from tests.small import session, write


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write(tmp_path / "garage", sessions__one=session())


@pytest.mark.parametrize("target", [".", "..", "../sessions", "loop"])
def test_folders_that_lead_back_are_entered_once(root: Path, target: str) -> None:
    (root / "sessions" / "loop").symlink_to(target)
    files = GarageFiles(root)

    assert files.listing("session") == (Ref("session", "one"),)
    assert list(sweep(files.tree)) == []


def test_a_folder_of_1200_levels_is_said_and_ends(root: Path) -> None:
    here = os.open(root / "sessions", os.O_RDONLY)
    for _ in range(1200):
        os.mkdir("d", dir_fd=here)
        below = os.open("d", os.O_RDONLY, dir_fd=here)
        os.close(here)
        here = below
    file = os.open("deep.toml", os.O_CREAT | os.O_WRONLY, dir_fd=here)
    os.close(file)
    os.close(here)
    files = GarageFiles(root)

    assert files.listing("session") == (Ref("session", "one"),)
    assert [one.found for one in files.strays()] == ["a folder that is more than 8 folders deep"]
    assert list(sweep(files.tree)) == []
    remove(root / "sessions")


def remove(folder: Path) -> None:
    """Remove the folders again: the standard library's way runs out of stack or path."""
    here = os.open(folder, os.O_RDONLY)
    handles = [here]
    for _ in range(1200):
        handles.append(os.open("d", os.O_RDONLY, dir_fd=handles[-1]))
        if len(handles) > 2:
            os.rename("d", "e", src_dir_fd=handles[-2], dst_dir_fd=handles[0])
            os.close(handles.pop(1))
            os.rmdir("d", dir_fd=handles[0])
            os.rename("e", "d", src_dir_fd=handles[0], dst_dir_fd=handles[0])
    os.close(handles.pop())
    os.close(handles.pop())


def test_names_that_are_no_text_are_said_and_print(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for name in (b"\xff\xfe.toml", b"\x1b[2J.toml", "\u202ex.toml".encode(), b"a\nb.toml"):
        (root / "riders" / os.fsdecode(name)).write_text('name = "x"\n')
    run = Runner(capsys)

    for words in (("show",), ("check", "--all"), ("check", "--all", "--format", "json")):
        ran = run(words[0], root, *words[1:])
        assert ran.status in (0, 3)
        assert "\x1b" not in ran.out
        assert "\u202e" not in ran.out

    assert len(GarageFiles(root).strays()) == 4
    assert GarageFiles(root).listing("rider") == (Ref("rider", "ann"),)


def test_a_folder_of_records_that_is_a_file_or_a_loop_is_no_crash(root: Path) -> None:
    (root / "venues").symlink_to("venues")
    (root / "days").write_text("a file")

    files = GarageFiles(root)

    assert files.listing("venue") == files.listing("day") == ()
    assert files.changed() == ()
