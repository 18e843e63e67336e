"""The README cannot drift: its table of keys is the one that the registry of actions makes."""

from pathlib import Path

from paddock_tui.pages.actions import key_table
from paddock_tui.screens.registry import ACTIONS

BEGIN, END = "<!-- keys -->\n", "<!-- /keys -->"


def test_the_table_of_keys_is_the_registrys() -> None:
    text = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
    assert BEGIN in text
    assert END in text

    table = text.split(BEGIN)[1].split(END)[0]

    assert table == key_table(ACTIONS), "write the table of key_table(ACTIONS) into it"
