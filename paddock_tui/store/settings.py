"""The settings of one user, in the platform's own place: keys, theme, the usual garage, sizes of steps.

What is wrong is refused with its line and leaves the rest in force.
"""

import re
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Protocol

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.store.key_names import key_name, printed_key
from paddock_tui.store.lines import scan

NAME = "settings.toml"
THEMES = ("terminal", "day", "night")
"""The themes of the screens, the terminal's own colours first."""

THEMES_BEFORE: Mapping[str, str] = {"plain": "terminal", "dark": "night", "light": "day"}
"""What themes were called before, understood for ever."""

_ALWAYS = ("actions", "help", "quit")
"""Actions that must stay on a key: everything else can be found from there."""


class KeyedAction(Protocol):
    """What is asked of an action: its name, its usual key, and what it does."""

    @property
    def id(self) -> str:
        """Its name."""

    @property
    def key(self) -> str:
        """Its usual key; empty where it stands in the palette alone."""

    @property
    def help(self) -> str:
        """What it does."""


@attrs.frozen
class Settings:
    """What the settings file says; what it does not say is empty.

    `keys` gives the name of a key by action; `steps` the size of a step, in the unit of its values. `copy`
    allows the terminal to be given what is shown, for its clipboard. `has_keys` says that keys of one's own
    were left out.
    """

    theme: str = ""
    garage: str = ""
    copy: bool = False
    keys: Mapping[str, str] = attrs.field(factory=dict)
    has_keys: bool = False
    steps: Mapping[str, float] = attrs.field(factory=dict)


def settings_file() -> Path:
    """Return where the settings of this user stand, in the platform's own place."""
    from platformdirs import user_config_path

    return user_config_path("paddock-tui", appauthor=False) / NAME


def load_settings(actions: Sequence[KeyedAction] = ()) -> tuple[Settings, list[InputError]]:
    """Read the settings of this user; without `actions` their keys are left out."""
    file = settings_file()
    try:
        text = file.read_text(encoding="utf-8")
    except FileNotFoundError:
        return Settings(), []
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or "it is no UTF-8 text"
        return Settings(), [InputError(f"{why}", "a file that can be read", "fix it", file=NAME)]
    return read_settings(text, actions)


def keep_theme(name: str) -> str:
    """Write the theme into the settings of this user, all else as it stands; gives why not, or nothing."""
    import tomllib

    file = settings_file()
    try:
        text = file.read_text(encoding="utf-8") if file.exists() else ""
        head, bracket, rest = text.partition("\n[") if not text.startswith("[") else ("", "[", text[1:])
        line = f'theme = "{name}"'
        found, count = re.subn(r"(?m)^theme[ \t]*=.*$", line, head, count=1)
        written = (found if count else line + "\n" + head) + bracket + rest
        tomllib.loads(written)
        file.parent.mkdir(parents=True, exist_ok=True)
        with tempfile.NamedTemporaryFile("w", dir=file.parent, delete=False, encoding="utf-8") as made:
            made.write(written if written.endswith("\n") else f"{written}\n")
        Path(made.name).replace(file)
    except (OSError, UnicodeDecodeError) as error:
        return f"not saved: {getattr(error, 'strerror', None) or 'the settings are no UTF-8 text'}"
    except tomllib.TOMLDecodeError as error:
        return f"not saved: fix the settings first, {error}"
    return ""


def read_settings(text: str, actions: Sequence[KeyedAction] = ()) -> tuple[Settings, list[InputError]]:
    """Read settings from a text: what is in force, and everything that is refused, each with its line."""
    import tomllib  # most have no settings of their own

    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = re.search(r"line (\d+)", str(error))
        line = int(found[1]) if found else 1
        return Settings(), [InputError(str(error), "TOML, one value a line", "fix the line", (), line, NAME)]
    wrong: list[InputError] = []
    known = {"theme": _theme, "garage": _garage, "copy": _copy}
    made: dict[str, Any] = {}
    for key, value in data.items():
        if key in known:
            made |= _taken(known[key](value), key, (key,), wrong)
        elif key == "steps" and isinstance(value, dict):
            made["steps"] = dict(_steps(value, wrong))
        elif key != "keys" or not isinstance(value, dict):
            near = _near(key, (*known, "keys", "steps"))
            wrong.append(InputError(f'"{key}"', "theme, garage, copy, [keys] or [steps]", near, (key,)))
    keys = data.get("keys")
    if not actions:
        made["has_keys"] = bool(keys)
    elif isinstance(keys, dict):
        made["keys"] = _keys(keys, actions, wrong)
    layout = scan(text)
    placed = [attrs.evolve(one, line=_line(layout, one), file=NAME) for one in wrong]
    return Settings(**made), sorted(placed, key=lambda one: one.line or 0)


def _near(text: str, choices: Iterable[str]) -> str:
    """Name the choice that is meant most likely; empty where none is near."""
    from difflib import get_close_matches

    found = get_close_matches(text, list(choices), n=1)
    return f"do you mean {found[0]}?" if found else ""


def _line(layout: Any, wrong: InputError) -> int:
    entry = layout.entries.get(wrong.path)
    return int(entry.first) + 1 if entry is not None else 1


def _taken(value: object, key: str, path: tuple[str, ...], wrong: list[InputError]) -> dict[str, object]:
    if isinstance(value, InputError):
        wrong.append(attrs.evolve(value, path=path))
        return {}
    return {key: value}


def _theme(value: object) -> str | InputError:
    named = THEMES_BEFORE.get(value, value) if isinstance(value, str) else value
    if isinstance(named, str) and named in THEMES:
        return named
    return InputError(f'theme "{value}"', " or ".join(THEMES), "write one of them")


def _garage(value: object) -> str | InputError:
    if isinstance(value, str) and value.strip():
        return value
    return InputError(f"garage {value}", "the folder of your garage", 'e.g. "~/garage"')


def _copy(value: object) -> bool | InputError:
    return value if isinstance(value, bool) else InputError(f"copy {value}", "true or false")


def _steps(data: Mapping[str, Any], wrong: list[InputError]) -> Iterator[tuple[str, float]]:
    """Read the sizes of steps, each in the unit of the values that it moves."""
    from paddock_tui.quantities import Quantity, parse
    from paddock_tui.records.step_sizes import STEP_SIZES

    for name, value in data.items():
        amount = STEP_SIZES.get(name)
        found = (
            parse(value, None, amount.dimension) if amount is not None and isinstance(value, str) else None
        )
        if amount is None:
            near = _near(name, STEP_SIZES)
            wrong.append(InputError(f'"{name}"', f"one of {', '.join(STEP_SIZES)}", near, ("steps", name)))
        elif not isinstance(found, Quantity) or found.dimension != amount.dimension or found.number <= 0:
            unit = f'e.g. "{amount.increment:g} {amount.unit}"'
            wrong.append(InputError(f'"{value}"', "a size with its unit", unit, ("steps", name)))
        else:
            yield name, float(found.to(amount.unit))


def _keys(data: Mapping[str, Any], actions: Sequence[KeyedAction], wrong: list[InputError]) -> dict[str, str]:
    """Read the keys of actions; where one is refused all stay as usual: half a change could lose one."""
    usual = {one.id: one.key for one in actions}
    own: dict[str, str] = {}
    refused = len(wrong)
    for name, value in data.items():
        path = ("keys", name)
        if name not in usual:
            said = f'no action is called "{name}"'
            wrong.append(InputError(said, "an action", _near(name, usual), path))
        elif value == "" and name not in _ALWAYS:
            own[name] = ""
        elif not isinstance(value, str) or value == "":
            wrong.append(InputError(f"{name} = {value!r}", "a key in quotes", 'e.g. "u"', path))
        else:
            try:
                own[name] = key_name(value)
            except ValueError as error:
                expected = "a small letter, a sign, ctrl+ and a letter, or f1 to f12"
                wrong.append(InputError(str(error), expected, "choose another key", path))
    wrong += _conflicts(own, usual)
    return own if len(wrong) == refused else {}


def _conflicts(own: Mapping[str, str], usual: Mapping[str, str]) -> Iterator[InputError]:
    """List the keys that two actions would have."""
    holder = {key: name for name, key in usual.items() if key and name not in own}
    for name, key in own.items():
        if key and key in holder:
            said = f"{printed_key(key)} is the key of {holder[key]} already"
            mend = f"give {holder[key]} another one"
            yield InputError(said, "one action for each key", mend, ("keys", name))
        elif key:
            holder[key] = name


def template(actions: Sequence[KeyedAction]) -> str:
    """Write a settings file in which every line is a comment: what can be set, and what it is without."""
    from paddock_tui.records.step_sizes import STEP_SIZES
    from paddock_tui.store.render import render

    lines = [
        "# Settings of paddock-tui: take away the # before what you want otherwise, and keep the [headings].",
        f'# theme = "terminal"     # {", ".join(THEMES)}; terminal sends least over a slow link',
        '# garage = "~/garage"     # opened where no folder is named',
        "# copy = false            # true: copy in the palette gives the terminal what is shown",
        "",
        "[steps]                   # how far minus and plus move a value",
        *(f'# {name} = "{one.increment:g} {one.unit}"' for name, one in STEP_SIZES.items()),
        "",
        '[keys]                    # a small letter, a sign, ctrl+ and a letter, f1 to f12; "" takes it away',
        *(f"{f'# {one.id} = {render(printed_key(one.key))}':<26}# {one.help}" for one in actions),
    ]
    return "\n".join(lines) + "\n"
