"""Completion: made from the parser, and right in the shells that are installed."""

import shutil
import subprocess
from pathlib import Path

import pytest

from paddock_tui.commands.arguments import parser
from paddock_tui.commands.completion import SHELLS, commands_of
from paddock_tui.help import names
from tests.commands.running import Runner

_BASH = """
source {script}
ask() {{ COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _paddock_tui; echo "${{COMPREPLY[*]}}"; }}
{asks}
"""
ASKED = {
    "paddock-tui ch": {"check"},
    "paddock-tui check g --fo": {"--format"},
    "paddock-tui check g --format ''": {"text", "json"},
    "paddock-tui help sec": {"security"},
    "paddock-tui show g led": {"ledger"},
    "paddock-tui git sp": {"split"},
    "paddock-tui set g r --pre": {"--preview"},
}
"""What is typed, and what completes its last word."""


def missing(shell: str) -> bool:
    return shutil.which(shell) is None


def script(run: Runner, shell: str, folder: Path) -> Path:
    ran = run("completion", shell)
    assert (ran.status, ran.err) == (0, "")
    path = folder / f"paddock.{shell}"
    path.write_text(ran.out, encoding="utf-8")
    return path


def answers(shell: list[str], code: str) -> list[set[str]]:
    done = subprocess.run([*shell, code], capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 0, done.stderr
    return [set(line.split()) for line in done.stdout.split("\n")[:-1]]


def test_every_command_and_option_is_in_every_script(run: Runner) -> None:
    found = list(commands_of(parser(), names()))

    assert {"check", "show", "completion", "doctor"} <= {one.name for one in found}
    for shell in SHELLS:
        text = run("completion", shell).out
        for one in found:
            assert one.name in text
            assert all(option.strip("-") in text for option in one.options)


@pytest.mark.skipif(missing("bash"), reason="bash is not installed")
def test_bash_completes_commands_options_and_words(run: Runner, tmp_path: Path) -> None:
    asks = "\n".join(f"ask {typed}" for typed in ASKED)
    found = answers(["bash", "--norc", "-c"], _BASH.format(script=script(run, "bash", tmp_path), asks=asks))

    assert found == list(ASKED.values())


@pytest.mark.skipif(missing("fish"), reason="fish is not installed")
def test_fish_completes_commands_options_and_words(run: Runner, tmp_path: Path) -> None:
    asking = '(complete -C "{}" | string replace -r "\\t.*" "")'
    asks = "\n".join(f'string join -- " " {asking.format(typed)}' for typed in ASKED)
    code = f"cd {tmp_path}; source {script(run, 'fish', tmp_path)}\n{asks}\ntrue"
    found = answers(["fish", "--no-config", "-c"], code)

    for words, wanted in zip(found, ASKED.values(), strict=True):
        assert wanted <= words


@pytest.mark.skipif(missing("zsh"), reason="zsh is not installed")
def test_zsh_takes_the_script_and_binds_it(run: Runner, tmp_path: Path) -> None:
    path = script(run, "zsh", tmp_path)
    code = f"autoload -U compinit; compinit -u -D; source {path}; echo $_comps[paddock-tui]"

    assert answers(["zsh", "-f", "-c"], code) == [{"_paddock_tui"}]
