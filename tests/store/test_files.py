"""A file is replaced whole or not at all, and nothing about it but the text changes."""

import errno
import os
import stat
import subprocess
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import NoReturn

import pytest

from paddock_tui.store import system_calls
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import remove_durably, rename_durably, replace_durably, sweep
from paddock_tui.store.tree import Tree


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "x.toml"
    path.write_text("old\n")
    return path


def failing(code: int) -> Callable[..., NoReturn]:
    def fail(*_: object, **__: object) -> NoReturn:
        raise OSError(code, os.strerror(code))

    return fail


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_the_text_is_replaced_byte_for_byte(file: Path) -> None:
    replace_durably(Tree(file.parent), file, "\ufeffné\r\nw")

    assert file.read_bytes() == b"\xef\xbb\xbfn\xc3\xa9\r\nw"
    assert names(file.parent) == ["x.toml"]


def test_file_and_folder_are_synced(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    synced: list[bool] = []
    sync = os.fsync

    def watch(number: int) -> None:
        synced.append(stat.S_ISDIR(os.fstat(number).st_mode))
        sync(number)

    monkeypatch.setattr(os, "fsync", watch)

    replace_durably(Tree(file.parent), file, "new\n")

    assert synced == [False, True]


def test_a_symbolic_link_stays_and_its_file_changes(file: Path, tmp_path: Path) -> None:
    (tmp_path / "links").mkdir()
    link = tmp_path / "links" / "y.toml"
    link.symlink_to("../x.toml")

    replace_durably(Tree(file.parent), link, "new\n")

    assert link.readlink() == Path("../x.toml")
    assert file.read_text() == "new\n"
    assert names(link.parent) == ["y.toml"]


@pytest.mark.parametrize("mode", [0o640, 0o600, 0o664, 0o755])
def test_the_mode_stays(file: Path, mode: int) -> None:
    file.chmod(mode)

    replace_durably(Tree(file.parent), file, "new\n")

    assert stat.S_IMODE(file.stat().st_mode) == mode


@pytest.mark.skipif(os.geteuid() != 0, reason="only root can give files away")
def test_the_owner_stays(file: Path) -> None:
    os.chown(file, 12345, 23456)

    replace_durably(Tree(file.parent), file, "new\n")

    assert (file.stat().st_uid, file.stat().st_gid) == (12345, 23456)


@pytest.mark.parametrize("mode", [0o440, 0o400, 0o466])
def test_a_file_without_its_owners_write_bit_is_left_alone_whoever_runs_this(file: Path, mode: int) -> None:
    file.chmod(mode)
    link = file.with_name("link.toml")
    link.symlink_to(file)

    refused = [
        partial(replace_durably, Tree(file.parent), file, "new\n"),
        partial(replace_durably, Tree(file.parent), link, "new\n"),
        partial(remove_durably, Tree(file.parent), file),
        partial(rename_durably, Tree(file.parent), file, file.with_name("z.toml")),
    ]
    for act in refused:
        with pytest.raises(NotWritten, match="read-only"):
            act()

    assert file.read_text() == "old\n"
    assert names(file.parent) == ["link.toml", "x.toml"]


def test_a_new_file_is_made_with_its_folders(tmp_path: Path) -> None:
    path = tmp_path / "sessions" / "2026" / "x.toml"

    replace_durably(Tree(tmp_path), path, "new\n", create=True)

    assert path.read_text() == "new\n"
    assert names(path.parent) == ["x.toml"]
    assert path.stat().st_nlink == 1


def test_a_new_file_never_replaces_one(file: Path) -> None:
    (file.parent / "dangling.toml").symlink_to("nowhere")

    for path in (file, file.parent / "dangling.toml"):
        with pytest.raises(NotWritten, match="already"):
            replace_durably(Tree(file.parent), path, "new\n", create=True)

    assert file.read_text() == "old\n"
    assert names(file.parent) == ["dangling.toml", "x.toml"]


@pytest.mark.parametrize("links", [True, False], ids=["hard links", "no hard links"])
def test_of_two_that_create_a_file_at_once_only_one_wins(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    """The other one comes in after the first look, just before the file gets its name."""
    path = tmp_path / "x.toml"
    link = system_calls.link

    def late(folder: int, source: str, to_folder: int, target: str) -> None:
        path.write_text("theirs\n")
        if not links:
            raise OSError(errno.EPERM, "no links")
        link(folder, source, to_folder, target)

    monkeypatch.setattr(system_calls, "link", late)

    with pytest.raises(NotWritten, match="already"):
        replace_durably(Tree(tmp_path), path, "ours\n", create=True)
    assert path.read_text() == "theirs\n"
    assert names(tmp_path) == ["x.toml"]


def test_a_disk_without_hard_links_still_takes_new_files(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "link", failing(errno.EOPNOTSUPP))

    replace_durably(Tree(tmp_path), tmp_path / "x.toml", "new\n", create=True)
    rename_durably(Tree(tmp_path), tmp_path / "x.toml", tmp_path / "y.toml")

    assert (tmp_path / "y.toml").read_text() == "new\n"
    assert names(tmp_path) == ["y.toml"]


@pytest.mark.parametrize("call", ["fsync", "replace"])
@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.ENOSPC, "no space"),
        (errno.EROFS, "read-only"),
        (errno.EACCES, "permission"),
        (errno.EIO, "error"),
    ],
)
def test_a_write_that_fails_leaves_the_old_file_and_says_why(
    file: Path, monkeypatch: pytest.MonkeyPatch, call: str, code: int, words: str
) -> None:
    monkeypatch.setattr(os, call, failing(code))

    with pytest.raises(NotWritten, match=words) as caught:
        replace_durably(Tree(file.parent), file, "new\n")

    assert not caught.value.replaced
    assert file.read_text() == "old\n"
    assert names(file.parent) == ["x.toml"]


def test_a_folder_that_does_not_confirm_is_said(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    sync = os.fsync

    def folders_fail(number: int) -> None:
        if stat.S_ISDIR(os.fstat(number).st_mode):
            raise OSError(errno.EIO, "input/output error")
        sync(number)

    monkeypatch.setattr(os, "fsync", folders_fail)

    with pytest.raises(NotWritten, match="not confirm") as caught:
        replace_durably(Tree(file.parent), file, "new\n")

    assert caught.value.replaced
    assert file.read_text() == "new\n"


def test_what_cannot_be_written_is_said(tmp_path: Path, file: Path) -> None:
    (tmp_path / "folder").mkdir()
    with pytest.raises(NotWritten, match="not there"):
        replace_durably(Tree(file.parent), tmp_path / "nothing.toml", "new\n")
    with pytest.raises(NotWritten, match="plain file"):
        replace_durably(Tree(tmp_path), tmp_path / "folder", "new\n")
    with pytest.raises(NotWritten, match="surrogate"):
        replace_durably(Tree(file.parent), file, "\ud800")
    assert file.read_text() == "old\n"


def test_a_file_is_removed_and_of_a_link_only_the_link(file: Path) -> None:
    link = file.with_name("link.toml")
    link.symlink_to(file)

    remove_durably(Tree(file.parent), link)
    assert names(file.parent) == ["x.toml"]

    remove_durably(Tree(file.parent), file)
    assert names(file.parent) == []


def test_a_file_gets_another_name_but_never_a_taken_one(file: Path) -> None:
    other = file.with_name("y.toml")

    rename_durably(Tree(file.parent), file, other)
    file.write_text("again\n")
    with pytest.raises(NotWritten, match="already"):
        rename_durably(Tree(file.parent), file, other)

    assert other.read_text() == "old\n"
    assert file.read_text() == "again\n"
    assert other.stat().st_nlink == 1


def test_a_file_can_move_to_a_new_folder(file: Path) -> None:
    to = file.parent / "2026" / "x.toml"

    rename_durably(Tree(file.parent), file, to)

    assert to.read_text() == "old\n"
    assert names(file.parent) == ["2026"]


def test_two_names_of_one_file_are_two_names(file: Path) -> None:
    upper = file.with_name("X.toml")
    os.link(file, upper)

    with pytest.raises(NotWritten, match="already"):
        rename_durably(Tree(file.parent), file, upper)


def test_only_the_case_of_a_name_can_change_where_the_disk_does_not_tell_it_apart(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Such a disk shows the file under both spellings but lists one."""
    upper = file.with_name("X.toml")
    real = system_calls.status
    monkeypatch.setattr(system_calls, "status", lambda folder, name: real(folder, name.lower()))

    rename_durably(Tree(file.parent), file, upper)

    assert names(file.parent) == ["X.toml"]


def test_links_that_lead_in_a_circle_are_said(tmp_path: Path) -> None:
    loop = tmp_path / "loop.toml"
    loop.symlink_to(loop)

    with pytest.raises(NotWritten, match="circle"):
        replace_durably(Tree(tmp_path), loop, "new\n")


def test_a_running_process_of_somebody_else_keeps_its_file(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    theirs = file.with_name(".x.toml.4321-0.paddock-new")
    theirs.touch()
    monkeypatch.setattr(os, "kill", failing(errno.EPERM))

    assert sweep(Tree(file.parent)) == []
    assert theirs.exists()


def test_a_disk_that_cannot_sync_folders_is_no_failure(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    sync = os.fsync

    def only_files(number: int) -> None:
        if stat.S_ISDIR(os.fstat(number).st_mode):
            raise OSError(errno.EINVAL, "invalid argument")
        sync(number)

    monkeypatch.setattr(os, "fsync", only_files)

    replace_durably(Tree(file.parent), file, "new\n")

    assert file.read_text() == "new\n"


def test_a_folder_that_cannot_be_opened_is_no_failure(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder may allow writing and forbid reading."""
    monkeypatch.setattr(system_calls, "open_here", failing(errno.EACCES))

    replace_durably(Tree(file.parent), file, "new\n")

    assert file.read_text() == "new\n"


def test_a_file_of_somebody_else_is_left_alone(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(system_calls, "allowed", lambda _, name: name != file.name)

    with pytest.raises(NotWritten, match="no permission"):
        replace_durably(Tree(file.parent), file, "new\n")


def test_what_dead_processes_left_is_swept_and_nothing_else(file: Path) -> None:
    """A process that has ended and been waited for has a number that nobody else bears yet."""
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    deep = file.parent / "sessions"
    deep.mkdir()
    dead = [file.parent / f".x.toml.{ended.pid}-0.paddock-new", deep / f".y.toml.{ended.pid}-12.paddock-new"]
    others = [
        file.parent / f".x.toml.{os.getpid()}-0.paddock-new",
        file.parent / ".x.toml.swp",
        file.parent / f"x.toml.{ended.pid}-0.paddock-new",
    ]
    for path in (*dead, *others):
        path.touch()

    removed = sweep(Tree(file.parent))

    assert sorted(removed) == sorted(dead)
    assert all(path.exists() for path in (file, *others))
    assert not any(path.exists() for path in dead)


def test_a_leftover_with_our_own_number_is_no_obstacle(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paddock_tui.store.files._serial", iter(range(2)))
    leftover = file.with_name(f".x.toml.{os.getpid()}-0.paddock-new")
    leftover.touch()

    replace_durably(Tree(file.parent), file, "new\n")

    assert file.read_text() == "new\n"
    assert leftover.exists()
