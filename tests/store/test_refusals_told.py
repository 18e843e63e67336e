"""What the store refuses, each refusal provoked once: the whole sentence, with what to do instead.

`REFUSALS=1` writes `refusals.txt` anew; then read what changed.
"""

import os
from collections.abc import Iterator
from pathlib import Path

from paddock_tui.desk.emergency import put
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.store.emergency import NotThisFile, read_text, write_text
from paddock_tui.store.foreign import foreign_text
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.garage_folder import no_garage
from paddock_tui.store.settings import read_settings
from paddock_tui.store.tree import Tree
from tests.small import BIKE, write

TOLD = Path(__file__).parent / "refusals.txt"
Refused = Iterator[tuple[str, str]]

SETTINGS = (
    'theme = "neon"',
    "theme = 3",
    "garage = 3",
    'garage = " "',
    "copy = 1",
    'them = "dark"',
    '[steps]\npressure = "1 bar"',
    '[steps]\nheight = "2 bar"',
    '[steps]\nheight = "-1 mm"',
    '[keys]\nundoo = "f9"',
    "[keys]\nundo = 3",
    '[keys]\nquit = ""',
    '[keys]\nundo = "7"',
    '[keys]\nundo = "ctrl+m"',
    '[keys]\nundo = "U"',
    '[keys]\nundo = "alt+x"',
    '[keys]\nundo = "g"',
    '[keys]\nundo = "f9"\nredo = "f9"',
)
BIKES: dict[str, bytes] = {
    "not TOML": b'name = "Odd\n',
    "not UTF-8": b'name = "Odd"\nnote = "\xff"\n',
    "twice": b'name = "Odd"\nname = "Odd"\n',
    "too deep": b"name = " + b"[" * 60 + b"]" * 60 + b"\n",
    "far too deep": b"name = " + b"[" * 20_000 + b"]" * 20_000 + b"\n",
    "a key of many parts": b"a." * 60 + b"b = 1\n",
    "many digits": b"number = " + b"1" * 5_000 + b"\n",
    "beyond 64 bits": b"number = 99999999999999999999\n",
    "too long": b"# " + b"x" * 1_100_000 + b"\n",
    "an unknown key": b'nmae = "Odd"\n[controls.traction]\nlevel = 3\n',
    "no such value": b'name = 3\n[tank]\ncapacity = "17 bar"\n',
}

PARSER = ("not TOML", "twice")


def sentences(troubles: Iterator[InputError] | tuple[InputError, ...] | list[InputError]) -> str:
    return " // ".join(sorted(one.sentence() for one in troubles)) or "nothing"


def of_settings() -> Refused:
    for text in SETTINGS:
        yield " ".join(text.split("\n")), sentences(read_settings(text, ACTIONS)[1])


def of_records(root: Path) -> Refused:
    file, ref = root / "bikes" / "odd.toml", Ref("bike", "odd")
    for name, content in BIKES.items():
        file.write_bytes(content)
        loaded = GarageFiles(root).read(ref)
        assert loaded is not None
        said = sentences((*loaded.troubles, *loaded.unknown))
        # What the parser says in its own words is left out: they are those of the interpreter's version.
        yield f"a bike: {name}", said.partition("expected ")[2] if name in PARSER else said
    file.unlink()


def of_names(root: Path) -> Refused:
    write(root, bikes__more__plain=BIKE, bikes__heron='was = ["plain"]\n', bikes__stork='was = ["plain"]\n')
    (root / "bikes" / "My Bike.toml").write_text(BIKE)
    (root / "bikes" / "folder.toml").mkdir()
    (root / "bikes" / "nowhere.toml").symlink_to("gone")
    files = GarageFiles(root)
    yield "names", sentences(files.strays())
    yield "former names", sentences(files.former.troubles(files.name_of))


def of_other_files(root: Path) -> Refused:
    (root / "laps.csv").write_bytes(b"\xff\xfe")
    for name in ("nothing.csv", "laps.csv", "bikes"):
        found = foreign_text(name, root)
        assert isinstance(found, InputError)
        yield f"laps from {name!r}", found.sentence()
    for name in ("nowhere", "bikes"):
        wrong = no_garage(Tree(root / name))
        assert wrong is not None
        yield f"garage {name}", wrong.sentence()


def of_an_emergency(root: Path) -> Refused:
    put(root, "ann", "consent", None)
    write_text(root, "ann", None, "consent = 2026-05-16\n")
    page = root / "private" / "ann.toml"
    for name, content in (
        ("not UTF-8", b"\xff"),
        ("not TOML", b"consent = = \n"),
        ("too long", b"#" * 30_000),
    ):
        page.write_bytes(content)
        try:
            put(root, "ann", "name", "Ann")
        except NotThisFile as error:
            yield f"emergency page {name}", str(error)
    page.write_bytes(b"consent = 2026-05-16\n")
    try:
        write_text(root, "ann", "something else", "consent = 2026-05-17\n")
    except NotThisFile as error:
        yield "emergency page of another program", str(error)
    assert read_text(root, "ann") == "consent = 2026-05-16\n"


def test_each_refusal_is_told_whole(tmp_path: Path) -> None:
    root = write(tmp_path / "garage")
    found = [
        *of_settings(),
        *of_records(root),
        *of_names(root),
        *of_other_files(root),
        *of_an_emergency(root),
    ]
    told = "".join(f"{asked}\n  {said}\n" for asked, said in found).replace(str(root), "GARAGE")

    if os.environ.get("REFUSALS"):
        TOLD.write_text(told, encoding="utf-8")
    assert told == TOLD.read_text(encoding="utf-8")
