"""The index of sessions: never believed against a file, and nothing shows otherwise with it than without."""

import datetime as dt
import json
import os
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.desk import Desk, setting
from paddock_tui.desk.lookup import glances, of_bike, session_in_hand
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import FOLDERS, Ref
from paddock_tui.store.cached import cache_folder
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.guarded import read_file
from paddock_tui.store.tree import Tree
from paddock_tui.store.untroubled_files import UntroubledFile, UntroubledFiles
from tests.examples import examples
from tests.small import session, write
from tests.store.parsed_files import count_parsed

SESSIONS = 24


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return many(tmp_path / "garage")


@pytest.fixture
def parsed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the files that were parsed."""
    names = count_parsed(monkeypatch)
    quickly = UntroubledFiles.read

    def counted_quickly(files: UntroubledFiles, ref: Ref) -> UntroubledFile | None:
        found = quickly(files, ref)
        if found is not None:
            names.append(f"{FOLDERS[ref.kind]}/{ref.id}")
        return found

    monkeypatch.setattr(UntroubledFiles, "read", counted_quickly)
    return names


def many(root: Path, years: tuple[int, ...] = (2025, 2026)) -> Path:
    files = {
        f"sessions__{year}__{year}-05-{number:02}-1-plain": session(date=f"{year}-05-{number:02}")
        for year in years
        for number in range(1, SESSIONS + 1)
    }
    return write(root, **files)


def seen(root: Path) -> list[object]:
    """Give what is seen of every session, in a run of its own."""
    return list(glances(GarageFiles(root)))


def all_of(files: GarageFiles) -> tuple[object, ...]:
    """Give all that may rest on the index: sessions, whose they are, the one in hand, what cannot be read."""
    hand = session_in_hand(files, dt.datetime(2025, 5, 3, 12, 0))
    return list(glances(files)), of_bike(files, "plain"), hand, list(files.soundness.troubles())


def indexes() -> list[Path]:
    return sorted(cache_folder().rglob("*.json"))


def rest(files: list[Path]) -> None:
    """Let the index be as old as if its files had rested before it was written."""
    later = time.time() + 60
    for path in files:
        os.utime(path, (later, later))


def test_a_second_run_parses_no_session_that_is_as_it_was(root: Path, parsed: list[str]) -> None:
    first = seen(root)
    assert len(parsed) == 2 * SESSIONS
    rest(indexes())
    parsed.clear()

    assert seen(root) == first
    assert parsed == []

    changed = root / "sessions/2025/2025-05-07-1-plain.toml"
    changed.write_text(session(7, date="2025-05-07"))
    seen(root)
    assert parsed == ["sessions/2025/2025-05-07-1-plain.toml"]


def test_sessions_known_from_the_index_are_of_the_bike_that_their_name_means_by_now(root: Path) -> None:
    """Their name was another bike's before; once that says so no more they are that bike's no more."""
    seen(root)
    rest(indexes())
    here, new = root / "bikes" / "plain.toml", root / "bikes" / "new.toml"
    text = here.read_text()
    new.write_text(f'was = ["plain"]\n{text}')
    here.unlink()
    files = GarageFiles(root)
    assert files.data(Ref("bike", "new"))["was"] == ["plain"]
    assert (len(of_bike(files, "new")), len(of_bike(files, "plain"))) == (2 * SESSIONS, 0)
    new.write_text(text)
    files.changed()

    assert "was" not in files.data(Ref("bike", "new"))
    assert (len(of_bike(files, "new")), len(of_bike(files, "plain"))) == (0, 2 * SESSIONS)


def test_the_ids_that_sessions_had_are_known_without_reading_them(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A new session's name is looked up among them each time that one is made."""
    path = root / "sessions/2025/2025-05-07-1-plain.toml"
    path.write_text('was = ["the-wet-one"]\n' + session(date="2025-05-07"))
    seen(root)
    rest(indexes())
    read: list[Path] = []

    def counted(tree: Tree, path: Path, most: int) -> bytes:
        read.append(path)
        return read_file(tree, path, most)

    monkeypatch.setattr("paddock_tui.store.garage.read_file", counted)

    former = GarageFiles(root).former
    assert former.current(Ref("session", "the-wet-one")) == Ref("session", path.stem)
    assert former.claims(Ref("session", "the-dry-one")) == []
    assert read == []

    path.write_text('was = ["the-dry-one"]\n' + session(date="2025-05-07"))
    GarageFiles(root).former.claims(Ref("session", "the-dry-one"))
    assert read == [path]


def test_a_file_that_changed_just_before_the_index_was_written_is_read(root: Path, parsed: list[str]) -> None:
    seen(root)
    parsed.clear()

    seen(root)

    assert len(parsed) == 2 * SESSIONS


def test_the_index_is_the_users_alone_one_file_a_year_without_words_of_the_rider(root: Path) -> None:
    path = root / "sessions/2026/2026-05-01-1-plain.toml"
    path.write_text('said = "felt ill"\n' + session(date="2026-05-01"))
    seen(root)

    assert [path.name for path in indexes()] == ["2025.json", "2026.json"]
    assert all(path.stat().st_mode & 0o777 == 0o600 for path in indexes())
    assert not any("felt ill" in path.read_text() for path in indexes())
    assert not (root / ".paddock").exists()
    columns = json.loads(indexes()[1].read_text())["columns"]
    assert columns["ids"][1] == "2026-05-02-1-plain"
    recurring = {name: one["of"] for name, one in columns.items() if isinstance(one, dict)}
    assert [recurring[name] for name in ("start", "bike", "rider")] == [["10:00:00"], ["plain"], ["ann"]]
    assert [recurring[name] for name in ("sound", "tyres", "day", "was")] == [[""], [""], [""], [[]]]


def _edited(path: Path) -> None:
    path.write_text(path.read_text().replace("number = 1", "number = 2"))


def _same_size_old_time(path: Path) -> None:
    before = path.stat()
    path.write_text(path.read_text().replace("2025", "2024").replace("2026", "2023"))
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))


def _replaced(path: Path) -> None:
    beside = path.with_suffix(".new")
    beside.write_text(path.read_text().replace("10:00", "11:00"))
    beside.replace(path)


def _retired(path: Path) -> None:
    path.write_text("retired = 2026-06-01\n" + path.read_text())


def _broken(path: Path) -> None:
    path.write_text("date = \n")


def _ridden(path: Path) -> None:
    path.write_text(path.read_text() + '\n[laps]\n1 = "1:44.310"\n')


def _gone(path: Path) -> None:
    path.unlink(missing_ok=True)


def _in_the_future(path: Path) -> None:
    os.utime(path, (time.time() + 1e6, time.time() + 1e6))


def _long_ago(path: Path) -> None:
    os.utime(path, (time.time() - 1e6, time.time() - 1e6))


def _not_understood(path: Path) -> None:
    path.write_text(path.read_text() + '\n[setup.controls]\nno-such = "5 m"\n\n[sag]\nfront = 5\n')


def _bike_changed(path: Path) -> None:
    bike = path.parents[2] / "bikes" / "plain.toml"
    bike.write_text(bike.read_text() + f"# {time.time_ns()}\n")


def _controls_changed(path: Path) -> None:
    bike = path.parents[2] / "bikes" / "plain.toml"
    bike.write_text(f'{bike.read_text()}\n[controls.x{time.time_ns()}]\ncall = "x"\n')


EDITS: list[Callable[[Path], None]] = [
    _edited, _same_size_old_time, _replaced, _retired, _broken, _ridden, _gone, _in_the_future, _long_ago,
    _not_understood, _bike_changed, _controls_changed,
]  # fmt: skip
_HARM = (
    "none/cut short/no JSON/another form/other column/short column/gone/rested/clock set back/killed writing"
)
HARM = _HARM.split("/")


def _another_column(path: Path, *, too_short: bool) -> None:
    found = json.loads(path.read_text())
    columns = found["columns"]
    if too_short:
        columns["ids"] = columns["ids"][1:]
    else:
        # Places of what is not among them.
        columns["day"]["at"] = columns["size"]
    path.write_text(json.dumps(found))


def _harmed(how: str) -> None:
    """Do to the index what a kill, another program or the passing of time may."""
    for path in indexes():
        text = path.read_text()
        if how == "cut short":
            path.write_text(text[: len(text) // 2])
        elif how == "no JSON":
            path.write_bytes(b"\xff[[[")
        elif how == "other form":
            path.write_text('{"version": 1, "rows": {"2026-05-01-1-plain": [1, 2, 3, 4, "x", [], 0, 1]}}')
        elif how.endswith("column"):
            _another_column(path, too_short=how == "short column")
        elif how == "gone":
            path.unlink()
        elif how == "rested":
            rest([path])
        elif how == "clock back":
            os.utime(path, (time.time() - 1e5, time.time() - 1e5))
        elif how == "killed writing":
            path.with_name(f".{path.name}.{os.getpid()}").write_text(text[: len(text) // 2])


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    folder = tmp_path_factory.mktemp("made")
    yield many(folder / "garage", (2025,))
    shutil.rmtree(folder)


def _own_edit(running: Desk, ref: Ref, number: int) -> None:
    """Set values as keys do, and have them kept; what cannot be read takes none."""
    running.poll()
    loaded = running.files.read(ref)
    if loaded is not None and loaded.record is not None:
        values = [("air", f"{10 + number} C"), ("number", f"{number}")]
        step = setting(running.files, ref, values, running.units())
        assert isinstance(step, Step)
        running.do(step)
        running.settled()


STEPS = st.tuples(st.sampled_from(EDITS), st.integers(1, 4), st.sampled_from(HARM), st.booleans())


@examples(10)
@given(st.lists(STEPS, max_size=5))
def test_any_edits_clock_steps_and_kills_show_the_same_with_the_index_and_without(
    made: Path, steps: list[tuple[Callable[[Path], None], int, str, bool]]
) -> None:
    """One program runs on throughout and edits too, others begin with what the index holds by then."""
    root, cache = made.with_name("here"), made.with_name("cache")
    for left in (root, cache):  # of an example that failed
        shutil.rmtree(left, ignore_errors=True)
    shutil.copytree(made, root)
    with pytest.MonkeyPatch.context() as patched:
        patched.setenv("XDG_CACHE_HOME", str(cache))
        running = Desk(root, lambda: dt.datetime(2025, 5, 3, 12, 0))
        all_of(running.files)
        for edit, number, how, own in [*steps, (_edited, 5, "rested", True)]:
            patched.setenv("XDG_CACHE_HOME", str(cache))
            all_of(GarageFiles(root))
            _harmed(how)
            time.sleep(0.011)  # a file system's clock ticks
            name = f"2025-05-{number:02}-1-plain"
            path = root / f"sessions/2025/{name}.toml"
            if own:
                _own_edit(running, Ref("session", name), number)
            if path.exists():
                edit(path)
            with_it = all_of(GarageFiles(root))
            running.poll()
            goes_on = all_of(running.files)
            patched.setenv("XDG_CACHE_HOME", str(cache / "none"))
            without = all_of(GarageFiles(root))
            shutil.rmtree(cache / "none", ignore_errors=True)
            assert with_it == without
            assert goes_on == without
        running.close()


def test_what_was_read_whole_is_not_read_again_to_say_so_until_its_bikes_controls_change(
    root: Path, parsed: list[str]
) -> None:
    seen(root)
    assert list(GarageFiles(root).soundness.troubles()) == []
    files = GarageFiles(root)
    list(files.soundness.troubles())
    files.rows.write()
    rest(indexes())
    parsed.clear()

    assert list(GarageFiles(root).soundness.troubles()) == []
    assert [name for name in parsed if name.startswith("sessions")] == []

    worse = root / "sessions/2026/2026-05-07-1-plain.toml"
    _not_understood(worse)
    assert {one.file for one in GarageFiles(root).soundness.troubles()} == {str(worse.relative_to(root))}

    _bike_changed(root / "sessions/2025/2025-05-07-1-plain.toml")
    parsed.clear()
    list(GarageFiles(root).soundness.troubles())
    assert [name for name in parsed if name.startswith("sessions")] == [str(worse.relative_to(root))]

    _controls_changed(root / "sessions/2025/2025-05-07-1-plain.toml")
    parsed.clear()
    list(GarageFiles(root).soundness.troubles())
    assert len([name for name in parsed if name.startswith("sessions")]) == 2 * SESSIONS


def test_what_was_noted_as_read_whole_counts_only_while_its_file_is_the_same(root: Path) -> None:
    """The row of a session that is known already is not compared with its file again: the note is."""
    seen(root)
    list(GarageFiles(root).soundness.troubles())
    before = GarageFiles(root)
    list(before.soundness.troubles())
    before.rows.write()
    rest(indexes())
    files = GarageFiles(root)
    list(glances(files))
    worse = root / "sessions/2026/2026-05-07-1-plain.toml"
    _not_understood(worse)

    assert {one.file for one in files.soundness.troubles()} == {str(worse.relative_to(root))}


def test_what_a_bike_cannot_be_set_to_is_a_trouble_of_a_session_that_nobody_read(root: Path) -> None:
    """The control of the bike says how a level is read, whether or not the session is in memory."""
    odd = root / "sessions/2026/2026-05-07-1-plain.toml"
    odd.write_text(odd.read_text().replace("traction = 5", 'traction = "loud"'))
    seen(root)
    rest(indexes())

    assert [one.file for one in GarageFiles(root).soundness.troubles()] == [str(odd.relative_to(root))]


def test_a_session_that_went_since_it_was_listed_is_no_trouble(root: Path) -> None:
    files = GarageFiles(root)
    assert len(files.listing("session")) == 2 * SESSIONS
    (root / "sessions/2026/2026-05-07-1-plain.toml").unlink()

    assert list(files.soundness.troubles()) == []


def test_one_run_sees_what_others_change_of_a_session_it_never_read(root: Path) -> None:
    seen(root)
    rest(indexes())
    files = GarageFiles(root)
    list(glances(files))
    _ridden(root / "sessions/2025/2025-05-07-1-plain.toml")

    assert files.changed() == (Ref("session", "2025-05-07-1-plain"),)
    assert [one.ref.id for one in glances(files) if one.ridden] == ["2025-05-07-1-plain"]
