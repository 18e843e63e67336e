"""Escape told apart from the key typed after it, where a slow link brings both in one piece."""

_BEGINS = "[O]P_^"
"""What follows an escape that begins a sequence: of a key, a paste, a mouse, an answer of the terminal."""


class Escapes:
    """Splits text so that an escape which is a key stands alone.

    The stock parser takes an escape and a letter behind it for one key with alt, and an escape and enter
    for enter alone: what should have been left is then accepted. Nothing here is bound to alt.
    """

    def __init__(self) -> None:
        self._held = ""
        self._pasting = False

    @property
    def waits(self) -> bool:
        """Whether an escape came last, and what follows will tell what it is."""
        return bool(self._held)

    @property
    def pasting(self) -> bool:
        """Return whether what comes is pasted text."""
        return self._pasting

    def split(self, text: str) -> list[str]:
        """Return text as pieces, an escape that is a key alone in its own; the last one may be held."""
        text, self._held = self._held + text, ""
        pieces, start, at = [], 0, 0
        while (at := text.find("\x1b", at)) >= 0:
            after = text[at + 1 : at + 2]
            if self._pasting or (after and after in _BEGINS):
                self._follow(text, at)
                at += 1
            elif not after:
                self._held = "\x1b"
                text = text[:at]
            else:
                pieces += [text[start:at], "\x1b"]
                start = at = at + 1
        return [piece for piece in (*pieces, text[start:]) if piece]

    def release(self) -> str:
        """Return the escape that nothing followed in time."""
        held, self._held = self._held, ""
        return held

    def _follow(self, text: str, at: int) -> None:
        """Notice where pasted text begins and ends: an escape inside it is no key."""
        if text.startswith("\x1b[200~", at):
            self._pasting = True
        elif text.startswith("\x1b[201~", at):
            self._pasting = False
