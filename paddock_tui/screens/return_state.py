"""What a run knows of returns, and what that keeps from being taken twice."""

import attrs

from paddock_tui.entry.key_repeat import Held
from paddock_tui.records.edits import MISSING, Change
from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.host import Host, refuse


@attrs.define
class ReturnState:
    """What this run knows of returns: what was typed in them, what was passed over, keys held down.

    What was typed here in this run may be mended here without being asked; `tail` are the letters of a
    word that picked a symptom before it was typed to its end; `sure` is what enter has to confirm.
    """

    typed: set[tuple[Ref, Path]] = attrs.field(factory=set)
    passed: dict[Ref, set[str]] = attrs.field(factory=dict)
    held: Held = attrs.field(factory=Held)
    tail: str = ""
    sure: tuple[str, str] = ("", "")
    warned: Ref | None = None


def swallows(host: Host, key: str) -> bool:
    """Return whether a letter only goes on with the word that has picked a symptom already."""
    state = host.state.of(ReturnState)
    mine = state.tail.startswith(key) and len(key) == 1
    state.tail = state.tail[1:] if mine else ""
    return mine


def may_mend(host: Host, change: Change) -> bool:
    """Return whether a change of a ridden session only mends what its return stamped or took in this run."""
    return all(
        edit.old is MISSING or (change.ref, edit.path) in host.state.of(ReturnState).typed
        for edit in change.edits
    )


def is_held(host: Host, digit: str) -> bool:
    """Return whether a digit comes from a key that is held down; it is said then, and not taken."""
    if not host.state.of(ReturnState).held.again(digit, host.board.pressed_at):
        return False
    refuse(host, f"{digit} again at once: is a key held down? press it again if it is meant")
    return True
