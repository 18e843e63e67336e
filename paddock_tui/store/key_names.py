"""Keys as a settings file names them: what terminals send, and under which name the screen hears it."""

import re
import string
import unicodedata

_NAMES = {
    "/": "slash",
    "\\": "backslash",
    "@": "at",
    "_": "underscore",
    "!": "exclamation_mark",
    "?": "question_mark",
}
_ROW_KEYS = "-+="
SIGNS: dict[str, str] = {
    sign: _NAMES.get(sign, unicodedata.name(sign).lower().replace("-", "_").replace(" ", "_"))
    for sign in string.punctuation
    if sign not in _ROW_KEYS
}
"""The name of each sign that may be a key; minus, plus and equals step the value of a row."""

PRINTED: dict[str, str] = {name: sign for sign, name in SIGNS.items()}
"""How a key is written where its name is not what is typed."""

_CONTROL = {
    "c": "is how a stuck program is left",
    "h": "is backspace",
    "i": "is tab",
    "j": "is enter on many terminals",
    "m": "is enter",
    "q": "is held back by terminals that stop and go on with it",
    "s": "is held back by terminals that stop and go on with it",
    "z": "leaves for the shell",
}


def key_name(text: str) -> str:
    """Return the name of a key that terminals send: a small letter, a sign, ctrl+ and a letter, f1 to f12.

    Raises ValueError with the reason where it is none.
    """
    typed = text.strip()
    if typed in SIGNS:
        return SIGNS[typed]
    if re.fullmatch(r"[a-z]|f([1-9]|1[0-2])", typed):
        return typed
    if typed in _ROW_KEYS or typed.isdecimal() or typed == "":
        raise ValueError(f'"{typed}" sets or steps the value of a row')
    control = re.fullmatch(r"ctrl\+(.+)", typed)
    if control is not None and control[1] in _CONTROL:
        raise ValueError(f"{typed} {_CONTROL[control[1]]}")
    if control is not None and re.fullmatch(r"[a-z]", control[1]):
        return typed
    if re.fullmatch(r"[A-Z]", typed):
        raise ValueError(f"{typed}: a capital may be a part of an arrow key that a slow link has split")
    raise ValueError(f'"{typed}" is no key that every terminal sends')


def printed_key(name: str) -> str:
    """Write a key as it is typed."""
    return PRINTED.get(name, name)
