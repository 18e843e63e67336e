"""Files that no record can come from are listed with the mend, never left out without a word."""

from pathlib import Path

import pytest

from paddock_tui.pages.garage import garage_page
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.index import OTHER, year_of
from tests.commands.running import Runner
from tests.desk.opened import at_desk
from tests.small import session, write


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)


def test_a_name_that_is_no_id_is_listed_with_a_better_one(tmp_path: Path) -> None:
    root = write(tmp_path)
    (root / "bikes" / "My Bike.toml").write_text('name = "x"\n')
    (root / "bikes" / "___.toml").write_text('name = "x"\n')
    (root / "bikes" / ".hidden.toml").write_text("")
    (root / "bikes" / "bike.toml.example").write_text("")

    files = GarageFiles(root)

    assert files.listing("bike") == (Ref("bike", "plain"),)
    assert [(one.file, one.mend) for one in files.strays()] == [
        ("bikes/My Bike.toml", "rename it, e.g. to my-bike.toml"),
        ("bikes/___.toml", "give it such a name"),
    ]


def test_of_two_sessions_of_one_name_the_one_in_its_own_year_is_read_and_the_other_listed(
    tmp_path: Path,
) -> None:
    root = write(tmp_path)
    for year, number in (("2025", 1), ("2026", 2), ("2027", 3)):
        (root / "sessions" / year).mkdir(parents=True)
        (root / "sessions" / year / "2026-05-16-1-plain.toml").write_text(session(number))

    files = GarageFiles(root)

    assert files.data(Ref("session", "2026-05-16-1-plain"))["number"] == 2
    assert [one.file for one in files.strays()] == [
        "sessions/2025/2026-05-16-1-plain.toml",
        "sessions/2027/2026-05-16-1-plain.toml",
    ]
    assert all("sessions/2026/2026-05-16-1-plain.toml is read" in one.found for one in files.strays())


def test_they_stand_on_the_garage_page_and_fail_the_check_of_everything(tmp_path: Path, run: Runner) -> None:
    root = write(tmp_path)
    assert run("check", root, "--all").status == 0
    (root / "bikes" / "My Bike.toml").write_text('name = "x"\n')

    ran = run("check", root, "--all")
    page = garage_page(at_desk(root))

    assert ran.status == 3
    assert "My Bike.toml" in ran.out
    assert "rename it, e.g. to my-bike.toml" in " ".join(row.value for row in page.rows())


@pytest.mark.parametrize("year", [0, 2024, 2025, 2026, 2999, 9999])
def test_sessions_since_a_year_are_those_that_each_name_says(tmp_path: Path, year: int) -> None:
    names = ("2023-05-01-1-a", "2024-05-01-1-a", "2025-05-01-1-a", "202-a", "20255-a", "test-ride", "1", "9")
    for there in (names, names[3:], ()):
        root = tmp_path / f"{len(there)}"
        (root / "sessions").mkdir(parents=True)
        for name in there:
            (root / "sessions" / f"{name}.toml").write_text("")
        said = {name: year_of(name) for name in there}
        latest = max((one for one in said.values() if one != OTHER), default=f"{year:04}")
        first = min(f"{year:04}", latest)

        found = [ref.id for ref in GarageFiles(root).sessions_since(year)]
        assert found == sorted(name for name in there if said[name] == OTHER or said[name] >= first)
