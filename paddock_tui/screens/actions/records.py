"""Whole records and entries of tables: new, drop, retire, duplicate, rename."""

from paddock_tui.on_demand import Later
from paddock_tui.pages.actions import ActionContext
from paddock_tui.screens.action import Action, needs_session

_DOES = Later("paddock_tui.screens.at_work.records")


def _adds_here(context: ActionContext) -> bool:
    """Return whether something new belongs here: a record, an entry of a table, the next session."""
    row = context.row
    return context.room in ("garage", "record") or (
        (row is not None and row.kind == "add") or (context.session and context.room in ("setup", "session"))
    )


INCIDENT = Action(
    "incident",
    "",
    "incident",
    "note a fall or drop: what happened, who looked",
    needs_session,
    do=_DOES("note_incident"),
)

NEW = Action(
    "new",
    "n",
    "new",
    "new of this section, or the next session",
    hint=14,
    hinted=_adds_here,
    do=_DOES("add_new"),
    unjudged=True,
)

DROP = Action(
    "drop",
    "x",
    "delete",
    "delete; in the garage retire, or bring back",
    do=_DOES("drop"),
    unjudged=True,
)

DUPLICATE = Action(
    "duplicate",
    "",
    "duplicate",
    "copy the record at the cursor, or the one shown",
    do=_DOES("duplicate"),
    unjudged=True,
)

RENAME = Action(
    "rename",
    "",
    "rename",
    "another name; what refers to it follows",
    do=_DOES("rename"),
    unjudged=True,
)

RETIRED = Action(
    "retired",
    "",
    "show retired",
    "show retired records here, or hide them",
    do=_DOES("show_retired"),
    unjudged=True,
)
