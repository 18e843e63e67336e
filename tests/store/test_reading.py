"""Files that cannot be read are named, with the line and the mend."""

from pathlib import Path

from paddock_tui.records.errors import InputError
from paddock_tui.store.reading import loads, read_text
from paddock_tui.store.tree import Tree
from tests.every import every

REFUSED = {
    "unit outside quotes": ("a = 1\nfront = 2.10 bar\n", 2, "in quotes"),
    "comma": ("a = 2,10\n", 1, "point"),
    "words": ("a = damp\n", 1, "put words in quotes"),
    "no value": ("a = 1\nb =\n", 2, "put a value"),
    "smart quotes": ("a = “x”\n", 1, "straight quotes"),
    "merge marks": ("a = 1\n<<<<<<< ours\nb = 1\n", 2, "merge"),
    "the same key twice": ("a = 1\nb = 1\na = 2\n", 3, "twice"),
    "the same table twice": ("[t]\n[u]\n[t]\n", 3, "twice"),
    "zero byte": ("a = 1\nb = '\x00'\n", 2, "control character"),
    "end of the file": ('a = 1\nb = """x\n\n', 3, ""),
}


@every(("text", "line", "mend"), REFUSED.values(), ids=REFUSED)
def test_refused_text_has_its_line_and_mend(text: str, line: int, mend: str) -> None:
    trouble = loads("\ufeff" + text, "bikes/x.toml")

    assert isinstance(trouble, InputError)
    assert (trouble.line, trouble.file) == (line, "bikes/x.toml")
    assert mend in trouble.mend


def test_brackets_inside_each_other_without_end_are_refused() -> None:
    trouble = loads("a = " + "[" * 5000)

    assert isinstance(trouble, InputError)
    assert "brackets" in trouble.found


def test_a_number_of_thousands_of_digits_is_refused_on_its_line() -> None:
    trouble = loads("a = 1\n\nb = " + "9" * 10_000 + "\n")

    assert isinstance(trouble, InputError)
    assert trouble.line == 3


def test_a_byte_order_mark_is_kept_in_the_text_and_out_of_the_data(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_bytes(b"\xef\xbb\xbfa = 1\r\n")

    text = read_text(Tree(tmp_path), tmp_path / "x.toml")

    assert text == "\ufeffa = 1\r\n"
    assert loads("\ufeffa = 1\r\n") == {"a": 1}


def test_a_byte_that_is_not_utf8_is_named_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_bytes('a = "é"\nb = "'.encode() + b"\xe9" + b'"\n')

    trouble = read_text(Tree(tmp_path), tmp_path / "x.toml")

    assert isinstance(trouble, InputError)
    assert trouble.line == 2
    assert trouble.found == "byte 6 of the line is 0xE9"


def test_a_file_that_is_far_too_large_is_not_read(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_text("# 56789\n" * 2)

    assert isinstance(read_text(Tree(tmp_path), tmp_path / "x.toml", largest=15), InputError)
    assert read_text(Tree(tmp_path), tmp_path / "x.toml", largest=16) == "# 56789\n" * 2


def test_what_is_no_readable_file_is_said(tmp_path: Path) -> None:
    (tmp_path / "loop").symlink_to(tmp_path / "loop")

    missing, folder, loop = (read_text(Tree(tmp_path), tmp_path / name) for name in ("nothing", "", "loop"))

    assert isinstance(missing, InputError)
    assert "not there" in missing.found
    assert isinstance(folder, InputError)
    assert folder.found == "this is a folder"
    assert isinstance(loop, InputError)
    assert "circle" in loop.found


def test_what_is_expected_of_a_file_is_toml() -> None:
    refused = loads("a = = 1\n", "riders/ann.toml")

    assert isinstance(refused, InputError)
    assert (refused.expected, refused.line, refused.file) == ("TOML", 1, "riders/ann.toml")
