"""Half-typed text: what was in an editor when the program had to leave is offered again, once."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.records.paths import Ref
from paddock_tui.store.half_typed import HalfTyped, save, take
from tests.every import every
from tests.examples import examples
from tests.small import snapshot, write

REF = Ref("session", "2026-05-16-1-plain")
TEXTS = [
    "2.3 ba",
    "",
    " leading and trailing ",
    'a "quoted" \\ word',
    "'single'",
    "line\nbreak\r\nand\ttab",
    "é 日本 👩‍🚀",
    "\x1b[2J\x07\x00\x7f\x9b",
    '"""',
    "= # [table]",
    "\u202e\u2028",
]


def kept(root: Path) -> Path:
    return root / ".paddock" / "half-typed"


@every("text", TEXTS)
def test_what_was_saved_is_given_once(tmp_path: Path, text: str) -> None:
    half = HalfTyped(REF, ("pressures", "hot", "front"), text)

    save(tmp_path, half)

    assert take(tmp_path) == half
    assert take(tmp_path) is None
    assert not kept(tmp_path).exists()


KEYS = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=12)


@examples(25)
@given(
    st.lists(KEYS, min_size=1, max_size=4).map(tuple),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=40),
)
def test_any_path_and_any_text_come_back_as_they_were(
    tmp_path_factory: pytest.TempPathFactory, path: tuple[str, ...], text: str
) -> None:
    root = tmp_path_factory.mktemp("half")
    half = HalfTyped(Ref("bike", "a"), path, text)

    save(root, half)

    assert take(root) == half


def test_the_last_text_counts(tmp_path: Path) -> None:
    save(tmp_path, HalfTyped(REF, ("aim",), "one, longer than the other"))
    save(tmp_path, HalfTyped(REF, ("aim",), "two"))

    found = take(tmp_path)

    assert found is not None
    assert found.text == "two"


def test_it_stands_in_the_tools_own_folder_and_touches_no_record(tmp_path: Path) -> None:
    root = write(tmp_path)
    before = snapshot(root)

    save(root, HalfTyped(REF, ("aim",), "x"))

    assert snapshot(root) == before
    assert (root / ".paddock" / ".gitignore").read_text() == "*\n"


@every(
    "damaged",
    [
        b"",
        b"\xff\xfe\x00",
        b'kind = "bike"\n',
        b"kind = = 1",
        b'kind = "bike"\nid = "a"\npath = "name"\ntext = 3\n',
        b'kind = "bike"\nid = "a"\npath = "a..b"\ntext = "x"\n',
        b'kind = "bike"\nid = "a"\npath = ""\ntext = "x"\n',
        b'kind = "bike"\nid = ["a"]\npath = "name"\ntext = "x"\n',
        b'kind = "bike"\nid = "a"\npath = "name"\ntext = "cut of',
        b"\x00" * 40,
    ],
)
def test_a_damaged_file_offers_nothing_and_is_not_read_again(tmp_path: Path, damaged: bytes) -> None:
    save(tmp_path, HalfTyped(REF, ("aim",), "x"))
    kept(tmp_path).write_bytes(damaged)

    assert take(tmp_path) is None
    assert not kept(tmp_path).exists()
    # And it is no hindrance to the next one.
    save(tmp_path, HalfTyped(REF, ("aim",), "y"))
    assert take(tmp_path) == HalfTyped(REF, ("aim",), "y")


def test_nothing_is_there_in_a_garage_that_was_left_in_good_order(tmp_path: Path) -> None:
    assert take(tmp_path) is None
    assert take(tmp_path / "no such folder") is None
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "half",
    [HalfTyped(REF, ("aim",), "lone \ud800 half"), HalfTyped(REF, ("\udfff",), "x")],
    ids=["text", "path"],
)
def test_saving_never_raises_whatever_was_typed(tmp_path: Path, half: HalfTyped) -> None:
    save(tmp_path, half)

    assert take(tmp_path) is None


def test_saving_never_raises_where_nothing_can_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")

    save(tmp_path / "file", HalfTyped(REF, ("aim",), "x"))
    save(tmp_path / "gone", HalfTyped(REF, ("aim",), "x"))

    assert [path.name for path in tmp_path.iterdir()] == ["file"]
    assert take(tmp_path / "file") is None
