"""The README and the help cannot drift: from each other, from commands, keys, rooms and looks."""

import argparse
import re
from pathlib import Path

import pytest

from paddock_tui import help as texts
from paddock_tui.__main__ import main, parser
from paddock_tui.commands.check import _STATUS
from paddock_tui.pages.actions import ROW_KEYS, printed
from paddock_tui.pages.help import room_help, topic_page
from paddock_tui.screens.registry import ACTIONS, ROOMS
from tests.bench.page_bytes import PAGES
from tests.every import every
from tests.looks.pictures import PICTURES

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
TOPICS = Path(texts.__file__).parent / "topics"
KEYS = {printed(one) for one in ACTIONS if one.key}

PARTS_OF_OTHERS = {"change": "ledger"}
"""Rooms without a topic of their own, and the one in which they are explained."""


def commands() -> set[str]:
    made = parser()
    action = next(one for one in made._actions if isinstance(one, argparse._SubParsersAction))
    return set(action.choices)


def test_the_readme_is_for_somebody_with_two_minutes() -> None:
    lines = README.splitlines()
    tables = re.findall(r"(?:^\|.*\n)+", README, re.MULTILINE)

    assert len(lines) <= 160
    assert max(len(table.splitlines()) for table in tables) <= 25
    for heading in ("Cautions", "Help", "Security"):
        assert f"## {heading}\n" in README


def test_bytes_of_pages_are_the_same_figures_wherever_they_stand() -> None:
    topic = (TOPICS / "measured.md").read_text(encoding="utf-8")
    rows = [row.split(" | ") for row in re.findall(r"^\| (.+?) \|$", topic, re.MULTILINE)]
    told = {row[0].removesuffix(", pictures"): row[:5] for row in rows if len(row) == 7}
    kept = {one.name: [str(one.page), str(one.arrow)] for one in PAGES}

    assert {name: [told[name][1], told[name][3]] for name in kept} == kept
    for name in kept:
        assert f"| {' | '.join(told[name])} |\n" in README, name


def test_what_the_readme_names_is_there() -> None:
    named = set(re.findall(r"paddock-tui help ([a-z-]+)", README))
    about = README.split("| about | topic |")[1].split("\n\n")[0]
    pressed = README.split("| you want to | press | or type |")[1].split("\n\n")[0]
    keys = {key for line in pressed.splitlines()[2:] for key in re.findall(r"`(.)`", line.split("|")[2])}

    assert all(texts.find(word) for word in named)
    assert {*re.findall(r"`([a-z]+)`", about)} <= set(texts.names())
    assert keys
    assert keys <= KEYS
    assert set(re.findall(r"`paddock-tui ([a-z]+)", README)) <= commands()


def test_its_pictures_are_the_committed_looks() -> None:
    assert re.findall(r"\(tests/looks/(.+)-80x24\.svg\)", README) == list(PICTURES[:3])


def test_every_room_has_its_help_and_that_is_two_lines() -> None:
    for room in ROOMS:
        topic = texts.topic(PARTS_OF_OTHERS.get(room, room))
        assert 60 <= len(topic.lead) <= 160, room
        assert topic.parts[1].title == "Its keys", room
        assert room_help(room, ACTIONS).sections[0].rows[0].value


@every("name", texts.names())
def test_a_topic_says_what_it_is_about_and_names_only_words_that_are_explained(name: str) -> None:
    topic = texts.topic(name)

    assert topic.name == name
    assert 10 <= len(topic.about) <= 90
    assert topic.parts
    assert all(part.entries for part in topic.parts)
    assert set(topic.words) <= set(texts.words())


def test_words_are_explained_in_two_sentences_each() -> None:
    for word, said in texts.words().items():
        sentences = re.findall(r"[^.]+\.(?:\s|$)", said)
        assert len(sentences) == 2, word
        assert "".join(sentences) == said, word
    assert list(texts.words()) == sorted(texts.words(), key=lambda word: word.replace("helped", "help"))


def test_the_topic_of_keys_says_every_action_and_every_key_of_a_row() -> None:
    page = topic_page(texts.topic("keys"), ACTIONS)
    keys = {row.key: row for row in page.rows()}

    assert {one.id for one in ACTIONS} <= set(keys)
    assert {name for name, _ in ROW_KEYS} <= set(keys)
    assert keys["undo"].label == "u"


def test_the_topic_of_commands_says_every_command_and_every_status_of_a_check() -> None:
    entries = [entry for part in texts.topic("commands").parts for entry in part.entries]
    said = " ".join(f"{entry.label} {entry.text}" for entry in entries)

    assert commands() - {"open"} <= set(re.findall(r"paddock-tui ([a-z]+)", said))
    for word, status in _STATUS.items():
        assert f"{status} {word}" in said


def test_the_lines_of_the_entry_topic_can_be_typed(garage: Path, capsys: pytest.CaptureFixture[str]) -> None:
    entries = [entry for part in texts.topic("entry").parts if part.title == "More" for entry in part.entries]
    lines = [entry.label for entry in entries if entry.label]

    assert len(lines) > 8
    for line in lines:
        status = main(
            ["enter", str(garage), line, "--session", "2026-06-20-4", "--preview", "--at", "2026-06-20T12:40"]
        )
        assert status == 0, capsys.readouterr().err
