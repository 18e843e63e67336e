"""The parser of the command line is made without looking for translations, and says what it always said."""

import argparse
import gettext
from typing import Any

from paddock_tui.commands.arguments import _parser, parser


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
