"""The history that a journal tells: what can be taken back now, and what can be done again."""

from collections.abc import Iterable

import attrs

from paddock_tui.store.journal import JournalEntry


@attrs.frozen
class UndoHistory:
    """Steps that stand and can be undone, and steps undone that can be done again; the next one is last.

    Of each the last line about it: its `undo` is what the next move over it does.
    """

    done: tuple[JournalEntry, ...] = ()
    undone: tuple[JournalEntry, ...] = ()


def undo_history(entries: Iterable[JournalEntry]) -> UndoHistory:
    """Follow the lines of a journal, oldest first.

    A line about a step that is not known, since its own was lost, is passed over.
    """
    done: dict[str, JournalEntry] = {}
    undone: dict[str, JournalEntry] = {}
    for one in entries:
        if one.what == "do":
            done[one.id] = one
            undone.clear()
        elif one.what == "undo":
            if done.pop(one.id, None) is not None:
                undone[one.id] = one
        elif one.what == "redo":
            if undone.pop(one.id, None) is not None:
                done[one.id] = one
        else:
            done.pop(one.id, None)
            undone.pop(one.id, None)
    return UndoHistory(tuple(done.values()), tuple(undone.values()))
