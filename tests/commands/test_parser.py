"""The parser of the command line is made without looking for translations, and says what it always said."""

import argparse
import contextlib
import gettext
from typing import Any

from paddock_tui.commands.arguments import _parser, parser
from paddock_tui.commands.usage import USAGES
from tests.every import every


def test_no_files_of_translations_are_looked_for_while_it_is_made(monkeypatch: Any) -> None:
    looked: list[str] = []
    own = argparse._  # type: ignore[attr-defined]
    monkeypatch.setattr(gettext, "find", lambda domain, *_, **__: looked.append(domain))

    _parser()
    assert looked  # a parser that is made as it comes looks for them
    looked.clear()
    parser.cache_clear()
    made = parser()

    assert looked == []
    assert argparse._ is own  # type: ignore[attr-defined]
    assert made.format_help() == _parser().format_help()


@every("name", [*USAGES])
def test_the_parser_of_one_command_says_of_it_what_that_of_all_says_and_refuses_in_the_same_words(
    name: str, capsys: Any
) -> None:
    said = []
    for made in (parser(), parser(name)):
        for words in ([name, "--help"], [name, "--no-such-thing"], [name, *["one"] * 9]):
            with contextlib.suppress(SystemExit):
                said.append(made.parse_args(words))
        said.append(capsys.readouterr())

    half = len(said) // 2
    assert said[:half] == said[half:]
    assert name in said[half - 1].out
