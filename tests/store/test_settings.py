"""Settings of one user: what is in force, and what is refused with its line."""

import string
import tomllib

import pytest
from textual.keys import _character_to_key

from paddock_tui.help import topic
from paddock_tui.screens.registry import ACTIONS
from paddock_tui.store.key_names import SIGNS, key_name
from paddock_tui.store.settings import THEMES, Settings, read_settings, template
from tests.every import every


def test_the_template_is_valid_says_every_action_and_changes_nothing() -> None:
    text = template(ACTIONS)

    assert read_settings(text, ACTIONS) == (Settings(), [])
    opened = "\n".join(line.removeprefix("# ") for line in text.splitlines()[1:])
    said = tomllib.loads(opened)
    assert set(said["keys"]) == {one.id for one in ACTIONS}
    _, wrong = read_settings(opened, ACTIONS)
    assert wrong == []


def test_the_help_shows_settings_that_are_taken_and_names_every_theme() -> None:
    rows = {
        entry.label: entry.text for part in topic("settings").parts for entry in part.entries if entry.label
    }
    # A heading and its first line stand in one cell.
    text = "\n".join(label.replace("] ", "]\n") for label in rows)
    found, wrong = read_settings(text, ACTIONS)

    assert wrong == []
    assert found.keys
    assert found.theme in THEMES
    assert all(name in rows[f'theme = "{found.theme}"'] for name in THEMES)


def test_what_it_says_is_in_force() -> None:
    text = """theme = "dark"
garage = "~/garage"
copy = true
[steps]
tyre_pressure = "1 psi"
height = "0.5 mm"
[keys]
undo = "f9"
help = "f1"
filter = "ctrl+f"
wet = ""
"""
    found, wrong = read_settings(text, ACTIONS)

    assert wrong == []
    assert (found.theme, found.garage, found.copy) == ("night", "~/garage", True)
    assert found.keys == {"undo": "f9", "help": "f1", "filter": "ctrl+f", "wet": ""}
    assert found.steps["height"] == 0.5
    assert found.steps["tyre_pressure"] == pytest.approx(0.0689476, rel=1e-5)


@every(
    ("text", "line", "said"),
    [
        ('theme = "neon"', 1, "neon"),
        ("garage = 3", 1, "garage"),
        ("copy = 1", 1, "true or false"),
        ('them = "dark"', 1, "theme"),
        ('[steps]\npressure = "1 bar"', 2, "tyre_pressure"),
        ('[steps]\nheight = "2 bar"', 2, "size with its unit"),
        ('[steps]\nheight = "-1 mm"', 2, "size with its unit"),
        ('[keys]\nundoo = "f9"', 2, "undo"),
        ("[keys]\nundo = 3", 2, "in quotes"),
        ('[keys]\nundo = "ctrl+m"', 2, "is enter"),
        ('[keys]\nundo = "ctrl+i"', 2, "is tab"),
        ('[keys]\nundo = "alt+x"', 2, "no key that every terminal sends"),
        ('[keys]\nundo = "U"', 2, "capital"),
        ('[keys]\nundo = "7"', 2, "value of a row"),
        ('[keys]\nundo = "+"', 2, "value of a row"),
        ('[keys]\nquit = ""', 2, "in quotes"),
        ('[keys]\n# a comment\nundo = "g"', 3, "g is the key of garage"),
        ('[keys]\nundo = "f9"\nredo = "f9"', 3, "f9 is the key of undo"),
        ("theme = ", 1, "Invalid value"),
        ("[keys\n", 1, "Expected"),
    ],
)
def test_what_is_wrong_is_refused_with_its_line_and_the_usual_keys_stay(
    text: str, line: int, said: str
) -> None:
    found, wrong = read_settings(text, ACTIONS)

    assert [one.line for one in wrong] == [line]
    assert said in wrong[0].sentence()
    assert found == Settings()


def test_two_actions_may_exchange_their_keys() -> None:
    found, wrong = read_settings('[keys]\nundo = "y"\nredo = "u"', ACTIONS)

    assert (found.keys, wrong) == ({"undo": "y", "redo": "u"}, [])


def test_signs_are_named_as_the_screen_hears_them() -> None:
    assert set(SIGNS) == set(string.punctuation) - set("-+=")
    for sign, name in SIGNS.items():
        assert _character_to_key(sign) == name == key_name(sign)
