"""One odd file hangs nothing and hides nothing else: it is a problem with its reason, in bounded time."""

import os
import socket
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.store import system_calls
from paddock_tui.store.errors import NotWritten
from paddock_tui.store.files import replace_durably
from paddock_tui.store.foreign import foreign_text
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.mentions import mentioning
from tests.commands.running import Runner
from tests.every import every
from tests.small import session, write

ODD, PLAIN = Ref("rider", "odd"), Ref("bike", "plain")


def sparse(path: Path) -> None:
    with path.open("wb") as stream:
        stream.truncate(100_000_000_000)


def a_socket(path: Path) -> None:
    one = socket.socket(socket.AF_UNIX)
    one.bind(os.path.relpath(path))
    one.close()


FILES: dict[str, tuple[Callable[[Path], object], str]] = {
    "a pipe": (os.mkfifo, "not a plain file"),
    "a socket": (a_socket, "No such device"),
    "a sparse hundred gigabytes": (sparse, "more than 1000000 bytes"),
    "a megabyte and more": (lambda path: path.write_bytes(b"#" * 1_000_001), "more than 1000000 bytes"),
    "a folder": (Path.mkdir, "a folder that is named like a record"),
    "a link to itself": (lambda path: path.symlink_to(path.name), "a link that leads in a circle"),
    "a link to nothing": (lambda path: path.symlink_to("none"), "a link that leads nowhere"),
    "a device": (lambda path: path.symlink_to("/dev/zero"), "leads out of the garage"),
    "no text": (lambda path: path.write_bytes(b"\xff\xfe\x00"), "byte 1 of the line is 0xFF"),
}


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return write(tmp_path, sessions__one=session())


def said_of(files: GarageFiles) -> str:
    loaded = files.read(ODD)
    return " ".join(one.found for one in ((*loaded.troubles,) if loaded is not None else files.strays()))


@pytest.mark.parametrize("name", FILES)
def test_it_is_a_problem_with_its_reason_and_everything_else_opens(root: Path, name: str) -> None:
    make, reason = FILES[name]
    make(root / "riders" / "odd.toml")
    files = GarageFiles(root)

    assert reason in said_of(files) or (name == "a socket" and said_of(files))
    assert list(mentioning(files, "plain"))
    assert files.data(PLAIN)["name"] == "Plain"
    assert files.changed() == ()
    with pytest.raises(NotWritten):
        replace_durably(files.tree, root / "riders" / "odd.toml", "x", before="y")


@every("make", [os.mkfifo, Path.mkdir, lambda path: path.symlink_to("/dev/zero")])
def test_a_garage_whose_own_file_is_odd_is_said(tmp_path: Path, make: Callable[[Path], object]) -> None:
    make(tmp_path / "garage.toml")

    problem = GarageFiles(tmp_path).problem()

    assert problem is not None
    assert "garage.toml" in problem.found


def test_a_pipe_in_every_place_hangs_no_command(garage: Path) -> None:
    """Each command runs in a process of its own, since nothing else could end it."""
    for folder in ("bikes", "days", "sessions/2026", "checklists"):
        os.mkfifo(garage / folder / "odd.toml")
    (garage / ".paddock").mkdir()
    for name in ("intent", "half-typed", "lock", "id"):
        os.mkfifo(garage / ".paddock" / name)
    code = (
        "import sys; from paddock_tui.__main__ import main\n"
        "for words in (['show'], ['check'], ['check', '--all'], ['slip'], ['show', 'ledger'], ['undo']):\n"
        "    main([words[0], sys.argv[1], *words[1:]])\n"
    )

    done = subprocess.run(
        [sys.executable, "-c", code, str(garage)], capture_output=True, timeout=60, check=True
    )

    assert b"Traceback" not in done.stderr
    assert done.stdout.count(b"bikes/odd.toml") >= 1


def test_laps_are_not_read_from_a_pipe(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "laps")

    assert "not a plain file" in str(foreign_text("laps", tmp_path))


def test_a_file_that_changes_while_it_is_read_is_said(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    odd = root / "riders" / "odd.toml"
    odd.write_text('name = "x"\n')
    real, count = system_calls.read, [0]

    def growing(file: int, most: int) -> bytes:
        count[0] += 1
        data = real(file, most)
        with odd.open("a") as stream:
            stream.write(f"# {count[0]}\n")
        return data if count[0] % 2 else b""

    monkeypatch.setattr(system_calls, "read", growing)

    assert said_of(GarageFiles(root)) == "the file changes while it is read"


def test_a_disk_that_takes_too_long_is_said(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (root / "riders" / "odd.toml").write_text('name = "x"\n')
    moments, real = iter(range(0, 1000, 5)), system_calls.read
    monkeypatch.setattr("paddock_tui.store.guarded.time.monotonic", lambda: next(moments))
    # A machine that stands still a while has read the record all the same.
    assert said_of(GarageFiles(root)) == ""

    monkeypatch.setattr(system_calls, "read", lambda file, _: real(file, 5))
    assert "the disk needs more than 2 seconds" in said_of(GarageFiles(root))


@pytest.mark.parametrize("code", [5, 13, 116, 110])
@pytest.mark.parametrize("call", ["open_root", "open_folder", "status", "open_file", "facts", "read"])
def test_a_call_that_fails_while_reading_costs_one_record(
    root: Path, monkeypatch: pytest.MonkeyPatch, call: str, code: int
) -> None:
    """What fails are the calls for one record: EIO, EACCES, ESTALE, ETIMEDOUT."""
    (root / "riders" / "odd.toml").write_text('name = "x"\n')
    files = GarageFiles(root)
    files.listing("rider")

    def fail(*_: object) -> None:
        raise OSError(code, os.strerror(code))

    with monkeypatch.context() as patch:
        patch.setattr(system_calls, call, fail)
        said = said_of(files)

    assert said
    assert "Errno" not in said
    assert files.data(PLAIN)["name"] == "Plain"


def test_a_garage_without_permission_is_not_done_and_no_crash(
    root: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    real = Path.stat

    def closed(path: Path, **more: bool) -> os.stat_result:
        if path == root:
            raise PermissionError(13, "Permission denied")
        return real(path, **more)

    monkeypatch.setattr(Path, "stat", closed)

    ran = Runner(capsys)("check", root)

    assert ran.status == 3
    assert "no permission" in ran.err
