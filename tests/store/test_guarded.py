"""Reading a file whole that others may be writing, and where a path leads."""

import os
from pathlib import Path

import pytest

from paddock_tui.store import guarded, system_calls, tree
from paddock_tui.store.errors import LeadsOut
from tests.every import every


@every("times", [0, 1, 2, 3])
def test_a_file_that_comes_to_rest_is_read_and_one_that_never_does_is_not(
    times: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a").write_bytes(b"one")
    real, begun, closed = system_calls.read, [0], list[int]()

    def growing(file: int, most: int) -> bytes:
        found = real(file, most)
        begun[0] += found[:3] == b"one"
        if found[:3] == b"one" and begun[0] <= times:
            with (tmp_path / "a").open("ab") as stream:
                stream.write(b"!")
        return found

    def closing(file: int) -> None:
        closed.append(file)
        os.close(file)

    monkeypatch.setattr(system_calls, "read", growing)
    monkeypatch.setattr(guarded, "release", closing)
    folder = os.open(tmp_path, os.O_RDONLY)
    if times < 3:
        assert guarded.read_at(tree.TreePlace(folder, "a"), 100) == b"one" + b"!" * times
    else:
        with pytest.raises(guarded.NotRead, match=r"^the file changes while it is read$") as found:
            guarded.read_at(tree.TreePlace(folder, "a"), 100)
        assert found.value.expected == "a file that rests"
    assert (begun[0], len(closed)) == (min(times + 1, 3), 1)
    os.close(folder)


def test_a_file_that_grew_is_read_again_though_its_time_stands(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file, real, reads = tmp_path / "a", system_calls.read, [0]
    file.write_bytes(b"one")
    then = file.stat().st_mtime_ns

    def growing(one: int, most: int) -> bytes:
        found = real(one, most)
        reads[0] += 1
        if reads[0] == 1:
            file.write_bytes(b"one!")
            os.utime(file, ns=(then, then))
        return found

    monkeypatch.setattr(system_calls, "read", growing)
    with tree.Tree(tmp_path).place(file) as place:
        assert guarded.read_at(place, 100) == b"one!"


def test_who_reads_may_refuse_by_the_status_of_the_open_file(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"12345")
    seen: list[int] = []
    with tree.Tree(tmp_path).place(tmp_path / "a") as place:
        assert guarded.read_at(place, 5, lambda found: seen.append(found.st_size)) == b"12345"
        with pytest.raises(guarded.NotRead, match="more than 4 bytes"):
            guarded.read_at(place, 4)
    assert seen == [5]


def test_where_a_path_leads_is_inside_or_allowed(tmp_path: Path) -> None:
    inside, outside = tmp_path / "in", tmp_path / "out"
    inside.mkdir()
    outside.write_text("x")
    (inside / "link").symlink_to(outside)
    (inside / "plain").write_text("x")
    strict, open_ = tree.Tree(inside), tree.Tree(inside, lambda place: place == outside)

    assert strict.target(inside / "plain") == inside / "plain"
    assert strict.target(inside / "link", itself=True) == inside / "link"
    assert open_.target(inside / "link") == outside
    with pytest.raises(LeadsOut) as found:
        strict.target(inside / "link")
    assert found.value.target == outside
