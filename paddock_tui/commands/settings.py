"""`settings`: what is in force and what is refused; --edit opens the file in the editor, from a template."""

import os
import shlex
import subprocess
from collections.abc import Sequence

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, complain, say, sentences
from paddock_tui.store.errors import in_plain_words
from paddock_tui.store.key_names import printed_key
from paddock_tui.store.settings import KeyedAction, Settings, load_settings, settings_file, template
from paddock_tui.text import printable


def settings(actions: Sequence[KeyedAction], *, edit: bool) -> int:
    """Print where the settings stand and what they say; status 3 where some of it is refused."""
    file = settings_file()
    if edit:
        try:
            if not file.exists():
                file.parent.mkdir(parents=True, exist_ok=True)
                file.write_text(template(actions), encoding="utf-8")
            words = shlex.split(os.environ.get("VISUAL") or os.environ.get("EDITOR") or "vi") or ["vi"]
            subprocess.run([*words, str(file)], check=False)
        except OSError as error:
            raise CommandStopped(NOT_DONE, printable(f"{file}: {in_plain_words(error)}")) from error
        except ValueError as error:
            raise CommandStopped(NOT_DONE, f"EDITOR cannot be read: {error}") from error
    found, wrong = load_settings(actions)
    say(_lines(found, file.exists()))
    for one in wrong:
        complain(sentences(one))
    return NOT_DONE if wrong else OK


def _lines(found: Settings, is_there: bool) -> list[str]:
    lines = [printable(str(settings_file())) + ("" if is_there else ": not there; --edit makes it")]
    lines += [f"theme: {found.theme}"] if found.theme else []
    lines += [printable(f"garage: {found.garage}")] if found.garage else []
    lines += ["copy: on"] if found.copy else []
    lines += [f"step of {name}: {size:g}" for name, size in found.steps.items()]
    lines += [f"{name}: {printed_key(key) or 'no key'}" for name, key in found.keys.items()]
    return lines
