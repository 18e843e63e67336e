"""A line in pieces: where words, quotes and numbers begin and end."""

from paddock_tui.entry.scanner import quoted, split, storable, tokens, unquoted
from tests.every import every


@every(
    ("text", "expected"),
    [
        ("t4 hot 2,38 2.05", ["t4", "hot", "2,38", "2.05"]),
        ("t4, w3;sl2", ["t4", "w3", "sl2"]),
        ("t=4", ["t", "=", "4"]),
        ('aim "a, b" t4', ["aim", '"a, b"', "t4"]),
        (r'aim "say \"no\"" t4', ["aim", r'"say \"no\""', "t4"]),
        ('open "quote', ["open", '"', "quote"]),
        ('setup."a b".c=3', ['setup."a b".c', "=", "3"]),
        ("1:42,3, 1:43", ["1:42,3", "1:43"]),
        (" \t\n ", []),
        ("fp 5 1/2 t4", ["fp", "5 1/2", "t4"]),
        ("fp5  1/2 turns", ["fp5  1/2", "turns"]),
        ("t 5 3/2", ["t", "5", "3/2"]),
        ("hot 2.3 1/2", ["hot", "2.3", "1/2"]),
    ],
)
def test_a_comma_parts_pieces_unless_it_stands_between_digits(text: str, expected: list[str]) -> None:
    found = tokens(text)

    assert [token.text for token in found] == expected
    assert [text[token.start : token.end] for token in found] == expected


@every(
    ("text", "expected"),
    [
        ("t4", ("t", "4")),
        ("fr-2", ("fr", "-2")),
        ("front-reb12", ("front-reb", "12")),
        ("hot2.38bar", ("hot", "2.38bar")),
        ("t", None),
        ("4", None),
        ("t-", None),
    ],
)
def test_a_number_behind_a_word_is_parted_from_it(text: str, expected: tuple[str, str] | None) -> None:
    (token,) = tokens(text)

    parts = split(token)
    assert (tuple(part.text for part in parts) if parts else None) == expected


@every("text", ["", "plain", 'say "no"', "back\\slash", "tab\tand\nline", "\u202e\x00é"])
def test_a_text_in_quotes_comes_back(text: str) -> None:
    assert unquoted(quoted(text)) == text


def test_half_a_surrogate_pair_is_no_text_for_a_file() -> None:
    assert unquoted('"\\ud800"') is None
    assert not storable("\ud800")
