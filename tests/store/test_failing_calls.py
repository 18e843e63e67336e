"""Every system call of a save fails in turn, in every way: the old file or the new, and the reason said."""

import errno
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from paddock_tui.records.edits import Change, Create, Edit, Rename, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store import system_calls
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.saving import NotSaved, Saved, repair, save
from tests.desk.opened import BEFORE
from tests.small import session, snapshot, write

NAMES = (
    "open_root",
    "open_folder",
    "open_here",
    "names",
    "status",
    "real",
    "allowed",
    "open_file",
    "open_to_write",
    "create",
    "facts",
    "read",
    "seek",
    "lock",
    "truncate",
    "change_owner",
    "change_mode",
    "write",
    "sync",
    "close",
    "replace",
    "link",
    "unlink",
    "make_folder",
)
"""The calls of `paddock_tui.store.system_calls`."""

OFTEN = ("open_root", "open_folder", "status", "facts", "close", "read", "open_file", "seek")
"""Calls of which there are so many that every fourth is made to fail."""

CODES = (errno.ENOSPC, errno.EACCES, errno.EIO, errno.EINTR)

PLAIN, ANN = Ref("bike", "plain"), Ref("rider", "ann")

STEPS: dict[str, Step] = {
    "one value": Step("", (Change(PLAIN, (Edit(("name",), "Plain", "Other"),)),)),
    "a new record": Step("", (Create(Ref("session", "2027-01-01-1-plain"), "number = 1\n"),)),
    "a rename over files": Step(
        "",
        (Change(Ref("session", "one"), (Edit(("rider",), "ann", "zoe"),)), Rename(ANN, "zoe")),
    ),
}


class Faults:
    """Counts the calls of a save, and has one of them fail; `lasting` has all after it fail too."""

    def __init__(self, at: int = -1, code: int = 0, lasting: bool = False) -> None:
        self.at, self.code, self.lasting = at, code, lasting
        self.seen: list[str] = []

    def wrapped(self, name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*given: Any) -> Any:
            place = len(self.seen)
            self.seen.append(name)
            if place == self.at or (self.lasting and 0 <= self.at < place):
                if name == "close":  # which closes, whatever it reports
                    real(*given)
                raise OSError(self.code, os.strerror(self.code))
            return real(*given)

        return call


@contextmanager
def failing(faults: Faults) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        for name in NAMES:
            patch.setattr(system_calls, name, faults.wrapped(name, getattr(system_calls, name)))
        yield


def fresh(root: Path) -> GarageFiles:
    return GarageFiles(write(root, sessions__one=session()))


def of_records(root: Path) -> dict[str, bytes]:
    """Give the files, without what a save that was broken off may leave, which is swept later."""
    return {name: data for name, data in snapshot(root).items() if not name.endswith(".paddock-new")}


def test_every_call_there_is_can_be_made_to_fail() -> None:
    public = {name for name in vars(system_calls) if not name.startswith("_")} - {
        "Path",
        "fcntl",
        "os",
        "stat",
    }

    assert public == set(NAMES)


@pytest.mark.parametrize("name", STEPS)
@pytest.mark.parametrize("lasting", [False, True], ids=["once", "from then on"])
def test_a_save_is_whole_or_has_not_been_whatever_call_fails(
    tmp_path_factory: pytest.TempPathFactory, name: str, lasting: bool
) -> None:
    step = STEPS[name]
    plain = fresh(tmp_path_factory.mktemp("plain"))
    before, count = of_records(plain.root), Faults()
    with failing(count):
        assert isinstance(save(plain, step), Saved)
    after = of_records(plain.root)
    assert len(count.seen) >= 8

    for at, call in enumerate(count.seen):
        if call in OFTEN and at % 4:
            continue
        code = CODES[at % len(CODES)]
        files = fresh(tmp_path_factory.mktemp("garage"))
        with failing(Faults(at, code, lasting)):
            outcome = save(files, step)
        found = of_records(files.root)
        if not isinstance(outcome, Saved) and found != before:
            # Cut short with the disk refusing all: the next start brings it to one end.
            assert lasting
            repair(GarageFiles(files.root), BEFORE)
            found = of_records(files.root)
            assert found in (before, after), (call, code)
            continue
        assert found == (after if isinstance(outcome, Saved) else before), (at, call, code)
        if isinstance(outcome, NotSaved):
            assert outcome.reason
            assert outcome.again
        again = save(GarageFiles(files.root), step)
        assert of_records(files.root) == after
        # Where the disk refuses all, what was declared cannot be withdrawn, and the next step completes it.
        assert isinstance(again, Saved) or found == after or lasting


def test_a_file_that_an_editor_writes_at_the_last_moment_is_read_again(tmp_path: Path) -> None:
    files = fresh(tmp_path)
    path = tmp_path / "bikes" / "plain.toml"
    real = system_calls.sync
    times = [0]

    def meanwhile(file: int) -> None:
        real(file)
        times[0] += 1
        if times[0] == 1:
            path.write_text(path.read_text().replace("most_help = 1\n", "most_help = 6\n"))

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(system_calls, "sync", meanwhile)
        assert isinstance(save(files, STEPS["one value"]), Saved)

    assert 'name = "Other"' in path.read_text()
    assert "most_help = 6\n" in path.read_text()


def test_a_file_that_is_written_without_end_is_given_up_and_untouched(tmp_path: Path) -> None:
    files = fresh(tmp_path)
    path = tmp_path / "bikes" / "plain.toml"
    real = system_calls.sync

    def always(file: int) -> None:
        real(file)
        path.write_text(path.read_text() + "# again\n")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(system_calls, "sync", always)
        outcome = save(files, STEPS["one value"])

    assert isinstance(outcome, NotSaved)
    assert "another program keeps changing the file" in outcome.reason
    assert 'name = "Plain"' in path.read_text()
