"""Every action once: its key, label, help, and why it cannot act just now.

Keys, last line, help, palette and the README's table of keys are all made from this list.
"""

from collections.abc import Callable, Iterator

import attrs

from paddock_tui.pages.review import CAUTION_WORDS
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.rules import SERIOUS, Finding


@attrs.frozen
class ActionContext:
    """What an action may look at to tell whether it can act.

    `room` is the page shown; `session` whether a session is looked at; `finding` the one that accept
    and remedy are about; `undo` and `redo` the labels of the steps they would move over; `unkept` whether
    something shows that is not on disk.
    """

    room: str = "garage"
    session: bool = False
    profile: bool = False
    row: Row | None = None
    finding: Finding | None = None
    undo: str | None = None
    redo: str | None = None
    unkept: bool = False


def _always(_: ActionContext) -> str:
    return ""


@attrs.frozen
class Action:
    """One action. `off` gives the reason why it cannot act now, empty where it can."""

    id: str
    key: str
    label: str
    help: str
    off: Callable[[ActionContext], str] = _always
    room: bool = False


def _needs_subject(context: ActionContext) -> str:
    return "" if context.session or context.profile else "there is no session and no profile yet: g, then n"


def _needs_session(context: ActionContext) -> str:
    return "" if context.session else "there is no session here"


def _accept_off(context: ActionContext) -> str:
    if context.profile and not context.session:
        return "a profile's findings cannot be accepted: accept them in a session"
    if context.finding is None:
        return "there is no finding to accept"
    if context.finding.severity > SERIOUS:
        return "a hold stands until the fact is mended"
    if context.finding.severity < SERIOUS:
        return "only a serious finding needs an answer"
    return ""


def _remedy_off(context: ActionContext) -> str:
    if context.finding is None:
        return "there is no finding to mend"
    if not context.finding.remedy.puts:
        return f"no key can do this: {context.finding.remedy.text}"
    return ""


def _undo_off(context: ActionContext) -> str:
    return "" if context.undo is not None else "there is nothing to undo"


def _redo_off(context: ActionContext) -> str:
    return "" if context.redo is not None else "nothing to do again"


NOT_KEPT = "all that was entered is kept"


def _kept_off(context: ActionContext) -> str:
    return "" if context.unkept else NOT_KEPT


def _why_off(context: ActionContext) -> str:
    return "" if context.row is not None else "there is no row under the cursor"


def _offer_off(context: ActionContext) -> str:
    if context.room == "next":
        return ""
    if not (context.session or context.profile):
        return "there is no session and no profile to take it over into"
    return "" if context.row is not None and context.row.offer else "this row offers no value to take over"


def _change_off(context: ActionContext) -> str:
    if context.room == "change":
        return ""
    on_change = context.room == "ledger" and context.row is not None and context.row.path[:1] == ("ledger",)
    return "" if on_change else "put the cursor on a change of the ledger: l"


ACTIONS: tuple[Action, ...] = (
    Action("garage", "g", "garage", "days, sessions and all records", room=True),
    Action("setup", "p", "set-up", "the set-up of the session or profile looked at", _needs_subject, True),
    Action("session", "s", "session", "its facts, in the order they become known", _needs_session, True),
    Action(
        "checklist", "c", "checklist", "what to look at now, and how each item stands", _needs_session, True
    ),
    Action(
        "dash",
        "d",
        "dash card",
        "what to read after the last key-on, and what it showed instead",
        _needs_session,
        True,
    ),
    Action("bench", "b", "bench", "the calculators, filled from what is looked at, to be tried", room=True),
    Action("review", "r", "review", "verdict, findings, not judged, to do", _needs_subject, True),
    Action(
        "out", "o", "going out", "what is open, in the order of the clock, then stamps it", _needs_session
    ),
    Action("in", "i", "in", "back from the track: stamps parked, then what is soon lost"),
    Action(
        "next",
        "j",
        "next change",
        "the one next change, or none; v takes it into the next session",
        _needs_session,
    ),
    Action(
        "last", "h", "last time here", "this bike's set-up here before, beside this one", _needs_session, True
    ),
    Action("ledger", "l", "ledger", "every change of a bike, and what it did if that can be told", room=True),
    Action(
        "day", "t", "day and times", "the day of the session: limits, timetable, paperwork", _needs_session
    ),
    Action(
        "entry",
        "e",
        "entry line",
        "many values in one typed line, with preview; tab completes",
        _needs_subject,
    ),
    Action("new", "n", "new", "new of this section; on set-up and session pages the next session"),
    Action("drop", "x", "drop", "drop the entry under the cursor; in the garage retire, or bring back"),
    Action("accept", "a", "accept", "ride with a serious finding, say why; again: take it back", _accept_off),
    Action(
        "remedy", "f", "apply remedy", "set what mends the finding, where values can mend it", _remedy_off
    ),
    Action("why", "w", "why", "what the row is, how it was worked out, which rules use it", _why_off),
    Action("offer", "v", "take over", "set the value that was worked out beside or on this row", _offer_off),
    Action("undo", "u", "undo", "take the last change back, of earlier runs too", _undo_off),
    Action("redo", "y", "redo", "do again what was taken back", _redo_off),
    Action("filter", "slash", "filter", "show only rows with these words"),
    Action("actions", "m", "all actions", "every action with its key, to choose from"),
    Action("take", "", "take profile", "take a profile's set-up over into the session", _needs_session),
    Action("save", "", "save profile", "save the session's set-up as a profile", _needs_session),
    Action("take_last", "", "take last time", "take over the whole set-up of last time here", _needs_session),
    Action(
        "try_back",
        "",
        "try it back",
        "the next session as the check of the change under the cursor",
        _change_off,
    ),
    Action(
        "set_back",
        "",
        "set back",
        "the whole set-up of the session under the cursor, into the next one",
        _needs_session,
    ),
    Action("laps", "", "import laps", "lap times from a column of a file, with preview", _needs_session),
    Action("slip", "", "slip", "the paper slip of the return, to be typed in one pass", _needs_session),
    Action(
        "start",
        "",
        "starting levels",
        "every aid where group, surface and tyre start, previewed",
        _needs_subject,
    ),
    Action(
        "wet",
        "",
        "wet package",
        "aids, mode, damping, preload for damp or wet as one step, previewed",
        _needs_subject,
    ),
    Action(
        "profile_for",
        "",
        "profile for",
        "a profile to start from, for another rider or another bike",
        _needs_subject,
    ),
    Action(
        "compare", "", "compare", "what differs from a profile, a session or a riding mode", _needs_subject
    ),
    Action("limits", "", "limits", "every threshold of the rules; a value of your own, backspace goes back"),
    Action("duplicate", "", "duplicate", "copy the record under the cursor, or the one shown"),
    Action("rename", "", "rename", "give a record another name; what refers to it follows"),
    Action("editor", "", "open in the editor", "open the record's file in $VISUAL or $EDITOR"),
    Action("retired", "", "show retired", "show retired records in the garage, or hide them again"),
    Action("again", "", "try again", "keep what could not be kept, once its reason is mended", _kept_off),
    Action("elsewhere", "", "write elsewhere", "a record that could not be kept, to another file", _kept_off),
    Action("today", "", "changed today", "what was kept and taken back today, newest first"),
    Action("help", "question_mark", "help", "keys and what they do"),
    Action("quit", "q", "quit", "leave; everything is kept already"),
)

PRINTED = {"slash": "/", "question_mark": "?"}
"""How keys are written where their name is not what is typed."""

ROW_KEYS: tuple[tuple[str, str], ...] = (
    ("up, down", "move by a row; page up, page down, home, end further"),
    ("tab, shift+tab", "jump to the next or the last section"),
    ("enter", "edit the value, open what the row names, or go to the row that a finding is about"),
    ("digits", "set a one-digit value at once, else start the editor with it"),
    ("1, 2, 3", "on a checklist: ok, to fix, not applicable; backspace: open again"),
    ("- and + (or =)", "one down or up in the bike's own numbers"),
    ("left, right", "less or more help where there is a bar, else one down or up"),
    ("space", "yes or no; off, and back to the last level"),
    ("backspace", "clear to not known"),
    ("escape", "leave the editor; the text is offered again"),
)


def printed(action: Action) -> str:
    """Write an action's key as it is typed."""
    return PRINTED.get(action.key, action.key)


def by_id(name: str) -> Action:
    """Return an action by its id."""
    return next(action for action in ACTIONS if action.id == name)


def hints(context: ActionContext) -> tuple[str, ...]:
    """List the keys that can act now, most wanted last so that the first may be dropped."""
    wanted = [
        "redo",
        "garage",
        "bench",
        "ledger",
        "last",
        "dash",
        "session",
        "out",
        "in",
        "setup",
        "review",
        "checklist",
        "entry",
        "new",
        "why",
        "remedy",
        "accept",
        "offer",
        "undo",
        "help",
    ]
    able = [by_id(name) for name in wanted if not by_id(name).off(context) and name != context.room]
    said = [f"{printed(action)} {action.label}" for action in able]
    if context.row is not None and context.row.kind == "check":
        said.insert(-1, "1 ok 2 to fix 3 n.a.")
    return tuple(said)


def help_page() -> Page:
    """Make the page of all keys."""
    actions = tuple(
        Row(printed(one) or "in m", f"{one.label}: {one.help}", kind="text", key=one.id) for one in ACTIONS
    )
    rows = tuple(Row(keys, words, kind="text", key=keys) for keys, words in ROW_KEYS)
    caution = (Row("", CAUTION_WORDS, kind="text", key="caution"),)
    return Page(
        "help · keys",
        (Section("actions", actions), Section("on a row", rows), Section("before anything else", caution)),
    )


def actions_page(context: ActionContext) -> Page:
    """Make the palette: every action, with the reason where it cannot act."""
    return Page("all actions", (Section("enter does it", tuple(_action_rows(context))),))


def _action_rows(context: ActionContext) -> Iterator[Row]:
    for one in ACTIONS:
        off = one.off(context)
        yield Row(printed(one), one.label, aside=off or one.help, kind="link", key=one.id)


def key_table() -> str:
    """Write the README's table of keys, in Markdown."""
    lines = ["| key | does |", "| --- | --- |"]
    lines += [
        f"| {f'`{printed(one)}`' if one.key else 'in `m`'} | {one.label}: {one.help} |" for one in ACTIONS
    ]
    lines += [f"| {keys} | {words} |" for keys, words in ROW_KEYS]
    return "\n".join(lines) + "\n"
