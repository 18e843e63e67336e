"""`completion`: static scripts for bash, zsh and fish, made from the parser of the command line."""

import argparse
from collections.abc import Iterator, Sequence

import attrs

from paddock_tui.commands.common import OK, say

NAME = "paddock-tui"
SHELLS = ("bash", "zsh", "fish")
PAGES = ("ledger", "modes", "dash", "brief", "card", "emergency", "season")
"""What `show` takes in place of a record."""

_FOLDERS = ("GARAGE", "FOLDER")


@attrs.frozen
class Completed:
    """What can be typed behind one command: its options, the words of each, and its places in order.

    A place is its words; "folder" and "file" stand for names on the disk, nothing for anything.
    """

    name: str
    about: str
    options: dict[str, tuple[str, ...]]
    places: tuple[tuple[str, ...], ...]


def completion(shell: str, parser: argparse.ArgumentParser, topics: Sequence[str]) -> int:
    """Print the script of one shell."""
    found = tuple(commands_of(parser, topics))
    say({"bash": _bash, "zsh": _zsh, "fish": _fish}[shell](found))
    return OK


def commands_of(parser: argparse.ArgumentParser, topics: Sequence[str]) -> Iterator[Completed]:
    """List every command with what can be typed behind it."""
    sub = next(one for one in parser._actions if isinstance(one, argparse._SubParsersAction))
    abouts = {one.dest: one.help or "" for one in sub._choices_actions}
    for name, command in sub.choices.items():
        options: dict[str, tuple[str, ...]] = {}
        places: list[tuple[str, ...]] = []
        for one in command._actions:
            if isinstance(one, argparse._SubParsersAction):
                places.append(tuple(one.choices))
            elif one.option_strings:
                words = _words(one, ())
                options |= dict.fromkeys(
                    (text for text in one.option_strings if text.startswith("--")), words
                )
            else:
                places.append(_words(one, topics))
        yield Completed(name, abouts.get(name, ""), options, tuple(places))


def _words(one: argparse.Action, topics: Sequence[str]) -> tuple[str, ...]:
    if one.choices:
        return tuple(str(word) for word in one.choices)
    if one.dest == "topic":
        return tuple(topics)
    if one.dest == "record" and one.nargs == "?":
        return PAGES
    if one.metavar in _FOLDERS:
        return ("folder",)
    return ("file",) if one.metavar == "FILE" else ()


def _bash(commands: Sequence[Completed]) -> Iterator[str]:
    names = " ".join(one.name for one in commands)
    yield f"# bash completion of {NAME}; made by: {NAME} completion bash"
    yield "_paddock_tui() {"
    yield '  local cur="${COMP_WORDS[COMP_CWORD]}" prev="${COMP_WORDS[COMP_CWORD-1]}" word n=0 i'
    yield "  COMPREPLY=()"
    yield "  if [[ $COMP_CWORD -eq 1 ]]; then"
    yield f'    COMPREPLY=($(compgen -W "{names} --help --version" -- "$cur") $(compgen -d -- "$cur"))'
    yield "    return"
    yield "  fi"
    yield "  for ((i = 2; i < COMP_CWORD; i++)); do [[ ${COMP_WORDS[i]} == -* ]] || ((++n)); done"
    yield '  case "${COMP_WORDS[1]}" in'
    for one in commands:
        yield f"  {one.name})"
        options = " ".join(one.options)
        yield "    if [[ $cur == -* ]]; then"
        yield f'      COMPREPLY=($(compgen -W "{options}" -- "$cur")); return'
        yield "    fi"
        yield '    case "$prev" in'
        for option, words in one.options.items():
            if words:
                yield f"    {option}) {_bash_words(words)}; return ;;"
        yield "    esac"
        yield "    case $n in"
        for number, words in enumerate(one.places):
            if words:
                yield f"    {number}) {_bash_words(words)} ;;"
        yield "    esac ;;"
    yield "  esac"
    yield "}"
    yield f"complete -o filenames -F _paddock_tui {NAME}"


def _bash_words(words: Sequence[str]) -> str:
    how = {"folder": "-d", "file": "-f"}.get(words[0], f'-W "{" ".join(words)}"')
    return f'COMPREPLY=($(compgen {how} -- "$cur"))'


def _zsh(commands: Sequence[Completed]) -> Iterator[str]:
    yield f"#compdef {NAME}"
    yield f"# zsh completion of {NAME}; made by: {NAME} completion zsh"
    yield "_paddock_tui() {"
    yield "  local -a commands"
    yield "  commands=("
    yield from (f"    '{one.name}:{_quoted(one.about)}'" for one in commands)
    yield "  )"
    yield "  if (( CURRENT == 2 )); then"
    yield "    _describe -t commands command commands"
    yield "    _files -/"
    yield "    return"
    yield "  fi"
    yield "  local name=$words[2]"
    yield "  shift words; (( CURRENT-- ))"
    yield '  case "$name" in'
    for one in commands:
        yield f"  {one.name})"
        parts = [f"'{option}[option]{_zsh_words(words, option)}'" for option, words in one.options.items()]
        parts += [f"'{place}:place:{_zsh_kind(words)}'" for place, words in enumerate(one.places, 1)]
        yield f"    _arguments {' '.join(parts)} ;;"
    yield "  esac"
    yield "}"
    yield 'if [[ "$funcstack[1]" == "_paddock_tui" || "$funcstack[1]" == "_paddock-tui" ]]; then'
    yield '  _paddock_tui "$@"'
    yield "else"
    yield f"  compdef _paddock_tui {NAME}"
    yield "fi"


def _zsh_words(words: Sequence[str], option: str) -> str:
    return f":{option.strip('-')}:{_zsh_kind(words)}" if words else ""


def _zsh_kind(words: Sequence[str]) -> str:
    if not words:
        return " "
    return {"folder": "_files -/", "file": "_files"}.get(words[0], f"({' '.join(words)})")


def _quoted(text: str) -> str:
    return text.replace("'", "'\\''").replace(":", "\\:")


def _fish(commands: Sequence[Completed]) -> Iterator[str]:
    yield f"# fish completion of {NAME}; made by: {NAME} completion fish"
    yield f"complete -c {NAME} -f"
    yield f"complete -c {NAME} -n __fish_use_subcommand -a '(__fish_complete_directories)'"
    for one in commands:
        about = one.about.replace("'", "\\'")
        yield f"complete -c {NAME} -n __fish_use_subcommand -a {one.name} -d '{about}'"
        seen = f"-n '__fish_seen_subcommand_from {one.name}'"
        for option, words in one.options.items():
            takes = f" -x -a '{_fish_words(words)}'" if words else ""
            yield f"complete -c {NAME} {seen} -l {option.strip('-')}{takes}"
        for words in one.places:
            if words:
                yield f"complete -c {NAME} {seen} -a '{_fish_words(words)}'"


def _fish_words(words: Sequence[str]) -> str:
    named = {"folder": "(__fish_complete_directories)", "file": "(__fish_complete_path)"}
    return named.get(words[0], " ".join(words))
