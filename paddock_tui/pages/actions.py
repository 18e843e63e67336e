"""The actions as rows: the palette, and the hints of the last line; `pages/help.py` says them all.

Which actions there are is handed in: each is declared with what it does, in `screens`.
"""

from collections.abc import Callable, Iterator, Sequence

import attrs

from paddock_tui.desk.day.what_now import NextThing
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.rules import Finding
from paddock_tui.store.key_names import printed_key
from paddock_tui.text import printable

OF_OTHERS = "steps in the journal without your mark are history to read"
"""Said where undo leaves what this user's program did not write."""


@attrs.frozen
class ActionContext:
    """What an action may look at to tell whether it can act.

    `room` is the page shown; `session` whether a session is looked at; `finding` the one that accept
    and remedy are about; `undo` and `redo` the labels of the steps they would move over; `unkept` whether
    something shows that is not on disk; `undo_of_others` whether the journal holds steps without this
    user's mark; `own` the actions that mean something of the room's own there,
    and can act; `hint` what the last line says of the keys that only this row has; `wet` whether what is
    looked at goes out on a damp or wet track.
    """

    room: str = "garage"
    session: bool = False
    profile: bool = False
    row: Row | None = None
    finding: Finding | None = None
    undo: str | None = None
    redo: str | None = None
    unkept: bool = False
    undo_of_others: bool = False
    own: frozenset[str] = frozenset()
    hint: str = ""
    wet: bool = False


def _always(_: ActionContext) -> str:
    return ""


def _anywhere(_: ActionContext) -> bool:
    return True


@attrs.frozen
class ActionRow:
    """What is said of one action.

    `off` gives the reason why it cannot act now, empty where it can. `hint`: how much it is wanted in the
    last line, where the most wanted stand last so that the first may be dropped; nought: never. `hinted`
    tells where it is wanted there at all. `usual` is the key that it would have without settings of one's
    own; empty where it has that.
    """

    id: str
    key: str
    label: str
    help: str
    off: Callable[[ActionContext], str] = _always
    hint: int = 0
    hinted: Callable[[ActionContext], bool] = attrs.field(default=_anywhere, kw_only=True)
    usual: str = attrs.field(default="", kw_only=True)

    def why_off(self, context: ActionContext) -> str:
        """Say why it cannot act now; empty where it can."""
        return "" if self.id in context.own else self.off(context)


ROW_KEYS: tuple[tuple[str, str], ...] = (
    ("up, down", "move by a row, keeping what is typed and complete; page up, page down, home, end further"),
    ("tab, shift+tab", "jump to the next or the last section"),
    ("enter", "edit the value, open what the row names, or go to the row that a finding is about"),
    (
        "digits",
        "set a one-digit value at once; the first of two stays open (`1_`) until the second or any key",
    ),
    ("letters", "commands; on a row that takes words they type, on yes or no y and n answer"),
    ("alt+letter", "a command on every row: the same as escape, then the letter"),
    (
        "1, 2, 3",
        "on a checklist: ok, to fix, not applicable, and on to the next open item; backspace: open again",
    ),
    ("- and + (or =)", "one down or up in the bike's own numbers"),
    ("left, right", "less or more help where there is a bar, else one down or up"),
    ("space", "yes or no; off, and back to the last level"),
    ("backspace", "clear to not known"),
    ("escape", "leave the editor; the text is offered again, and typing replaces it"),
)


def printed(action: ActionRow) -> str:
    """Write an action's key as it is typed."""
    return printed_key(action.key)


def hints(actions: Sequence[ActionRow], context: ActionContext) -> tuple[str, ...]:
    """List the keys that can act now, most wanted last so that the first may be dropped."""
    wanted = sorted((one for one in actions if one.hint and one.hinted(context)), key=lambda one: one.hint)
    able = [one for one in wanted if not one.why_off(context) and one.id != context.room]
    alt = "alt+" if context.row is not None and context.row.takes_letters else ""
    said = [
        f"{alt if one.key.isalpha() and len(one.key) == 1 else ''}{printed(one)} {one.label}" for one in able
    ]
    if context.hint:
        said.insert(-1, context.hint)
    return tuple(said)


def said_next(found: NextThing | None, actions: Sequence[ActionRow]) -> str:
    """Say the next thing to do with the key that leads there: the palette's where the action has none."""
    if found is None:
        return ""
    leads = next((one for one in actions if one.id == found.action), None)
    palette = next((printed(one) for one in actions if one.id == "actions"), "m")
    key = printed(leads) if leads is not None and leads.key else f"{palette}, {leads.label if leads else ''}"
    return printable(found.words(key))


def actions_page(actions: Sequence[ActionRow], context: ActionContext) -> Page:
    """Make the palette: every action, with the reason where it cannot act."""
    able = [one for one in actions if not one.why_off(context)]
    parts = (
        ("enter does it", [one for one in able if one.key]),
        ("without a key", [one for one in able if not one.key]),
        ("not here, or not now", [one for one in actions if one not in able]),
    )
    return Page(
        "all actions",
        tuple(
            Section(title, tuple(_action_rows(some, context)), summary=", ".join(one.label for one in some))
            for title, some in parts
            if some
        ),
    )


def _action_rows(actions: Sequence[ActionRow], context: ActionContext) -> Iterator[Row]:
    for one in actions:
        off = one.why_off(context)
        yield Row(printed(one), one.label, aside=off or one.help, kind="link", key=one.id)
