"""What a key does to text being typed: pure, one line, caret counted in characters."""

import re

import attrs

from paddock_tui.pages.layout import Editor
from paddock_tui.text import STAND_IN


def typed(editor: Editor, text: str) -> Editor:
    """Put text in at the caret; line ends become spaces, bytes that were no character are left out."""
    if editor.offered:
        editor = Editor()
    text = re.sub(r"[\r\n\t]+", " ", text.strip("\r\n")).replace(STAND_IN, "")
    before, after = editor.text[: editor.caret], editor.text[editor.caret :]
    return Editor(before + text + after, len(before + text), second=editor.second)


def pressed(editor: Editor, key: str, character: str | None) -> Editor | None:
    """Return the editor after a key; None where the key means nothing to it."""
    if character and character.isprintable():
        return typed(editor, character)
    before, after = editor.text[: editor.caret], editor.text[editor.caret :]
    moved = {
        "left": max(editor.caret - 1, 0),
        "right": min(editor.caret + 1, len(editor.text)),
        "home": 0,
        "end": len(editor.text),
        "ctrl+a": 0,
        "ctrl+e": len(editor.text),
    }
    if key in moved:
        return attrs.evolve(editor, caret=moved[key], offered=False, second=False)
    kept = {
        "backspace": (before[:-1], after),
        "delete": (before, after[1:]),
        "ctrl+u": ("", after),
        "ctrl+w": (re.sub(r"\S*\s*$", "", before), after),
    }
    if key in kept:
        before, after = kept[key]
        return Editor(before + after, len(before), second=editor.second)
    return None


def starting(text: str, *, offered: bool = False, second: bool = False) -> Editor:
    """Open an editor with the caret behind its text; one that is `offered` is replaced by typing."""
    return Editor(text, len(text), offered=offered and bool(text), second=second)
