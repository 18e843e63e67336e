"""What every command says of itself, being quiet, and output without control characters."""

import argparse
import re
import shlex
from pathlib import Path

from paddock_tui.commands.arguments import parser
from paddock_tui.commands.check import _STATUS
from paddock_tui.commands.usage import USAGES
from tests.commands.running import EARLY, NEXT, Runner

COMMANDS = (
    ("check", "{garage}", "--at", EARLY),
    ("check", "{garage}", "--all"),
    ("check", "{garage}", "--plain"),
    ("show", "{garage}"),
    ("show", "{garage}", NEXT, "--plain"),
    ("show", "{garage}", "ledger", "--plain"),
    ("show", "{garage}", "modes", "--plain"),
    ("show", "{garage}", "setup", "--plain"),
    ("slip", "{garage}"),
    ("help", "keys"),
    ("help",),
    ("doctor", "{garage}"),
    ("schema", "bike"),
    ("settings",),
)


def commands() -> dict[str, argparse.ArgumentParser]:
    made = parser()
    return dict(next(one for one in made._actions if isinstance(one, argparse._SubParsersAction)).choices)


def test_every_command_has_examples_that_can_be_typed_and_says_how_it_ends() -> None:
    assert set(USAGES) == set(commands())
    for name, usage in USAGES.items():
        assert usage.examples
        assert usage.about.endswith(".")
        assert "exit status: " in (commands()[name].epilog or "")
        for example in usage.examples:
            words = shlex.split(example.partition(" > ")[0])
            given = parser().parse_args(words if words[0] in USAGES else ["open", *words])
            assert given.command == name
    for word, status in _STATUS.items():
        said = {int(number) for number in re.findall(rf"(\d) [A-Z or]*{word}", USAGES["check"].statuses)}
        assert said == {status}, word


def test_no_command_argument_or_option_stands_without_words() -> None:
    held = commands()
    git = next(one for one in held["git"]._actions if isinstance(one, argparse._SubParsersAction))
    for name, one in {**held, **{f"git {name}": one for name, one in git.choices.items()}}.items():
        assert (one.description or "").rstrip().endswith("."), name
        bare = [action.dest for action in one._actions if not action.help and action is not git]
        assert bare == [], name


def test_quiet_prints_nothing_and_ends_alike(run: Runner, garage: Path) -> None:
    for words in (("check", garage, "--at", EARLY), ("set", garage, NEXT, "air=18"), ("undo", garage)):
        quiet = run(*words, "--quiet")
        assert (quiet.out, quiet.err) == ("", "")
    assert run("check", garage, "--at", EARLY).status == run("check", garage, "--at", EARLY, "-q").status
    wrong = run("set", garage, NEXT, "air=wet", "-q")
    assert wrong.status == 3
    assert wrong.err


def test_what_is_printed_to_no_terminal_has_no_control_characters(run: Runner, garage: Path) -> None:
    for words in COMMANDS:
        ran = run(*(str(garage) if word == "{garage}" else word for word in words))
        assert ran.out
        assert re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f]", ran.out + ran.err) is None, words


def test_plain_is_sentences_without_columns(run: Runner, garage: Path) -> None:
    for words in COMMANDS:
        if "--plain" not in words:
            continue
        out = run(*(str(garage) if word == "{garage}" else word for word in words)).out
        lines = [line for line in out.splitlines() if line]
        assert lines
        assert all(line[-1] in ".!?:" for line in lines), words
        assert not [line for line in lines if re.search(r"  |--|[│─|·█]|\.\.\.\.", line)], words


def test_plain_says_every_finding_of_the_review(run: Runner, garage: Path) -> None:
    said = run("check", garage, "--plain", "--at", "2026-06-20T12:40").out
    shown = run("check", garage, "--at", "2026-06-20T12:40").out

    for severity in ("serious", "caution", "note"):
        assert said.count(f"{severity.capitalize()}: ") == shown.count(f"  {severity} ")
    assert said.splitlines()[1].startswith("Verdict CARE")
