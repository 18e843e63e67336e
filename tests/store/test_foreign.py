"""Text from outside the garage is read, or what it is not is said."""

from pathlib import Path

from paddock_tui.records.errors import InputError
from paddock_tui.store.foreign import MOST_BYTES, foreign_text
from tests.every import every


def test_a_path_is_taken_beside_the_folder_unless_it_is_absolute(tmp_path: Path) -> None:
    (tmp_path / "laps.csv").write_bytes(b"\xef\xbb\xbf1:44.3\n")

    assert foreign_text("laps.csv", tmp_path) == "1:44.3\n"
    assert foreign_text(f" {tmp_path / 'laps.csv'} ", Path("/")) == "1:44.3\n"


@every(
    ("name", "content", "said"),
    [
        ("none.csv", None, "there is no file"),
        (".", None, "this is a folder"),
        ("bad.csv", b"\xff\xfe", "is not UTF-8 text"),
        ("big.csv", b"1" * (MOST_BYTES + 1), "more than 1000000 bytes"),
        ("\0", None, "cannot be read"),
        ("~nobody-of-that-name/x", None, "cannot be read"),
    ],
)
def test_what_is_no_text_file_is_said(tmp_path: Path, name: str, content: bytes | None, said: str) -> None:
    if content is not None:
        (tmp_path / name).write_bytes(content)

    found = foreign_text(name, tmp_path)

    assert isinstance(found, InputError)
    assert said in found.found


def test_a_name_that_no_file_can_have_is_no_file_that_can_be_read(tmp_path: Path) -> None:
    refused = foreign_text("a\0b", tmp_path)

    assert isinstance(refused, InputError)
    assert (refused.expected, refused.mend) == ("a file that can be read", "choose another file")
