"""Every room and every action of the screen, once, in the order in which help and palette say them.

A room stands for its own action, if it has one. A test compares this with the folders.
"""

import attrs

from paddock_tui.records.paths import Path, Ref
from paddock_tui.screens.action import Action, needs_session, needs_subject
from paddock_tui.screens.actions import (
    editor,
    entry_line,
    findings,
    lap_import,
    profiles,
    program,
    records,
    rows,
    set_ups,
    themes,
    undo,
    unsaved,
)
from paddock_tui.screens.place import Place
from paddock_tui.screens.room import Room
from paddock_tui.screens.rooms import (
    after,
    before,
    bench,
    board,
    briefing,
    checklist,
    compare,
    corners,
    crew,
    dash,
    debrief,
    emergency,
    garage,
    going_out,
    guide,
    key_help,
    last_time,
    ledger,
    limits,
    modes,
    next_change,
    palette,
    paper_slip,
    record,
    review,
    season,
    session,
    setup,
    today,
    why,
)

REGISTRY: tuple[Room | Action, ...] = (
    garage.ROOM,
    setup.ROOM,
    session.ROOM,
    checklist.ROOM,
    dash.ROOM,
    bench.ROOM,
    review.ROOM,
    going_out.ROOM,
    debrief.ROOM,
    next_change.ROOM,
    last_time.ROOM,
    ledger.ROOM,
    ledger.CHANGE,
    record.ROOM,
    record.DAY,
    entry_line.ENTRY,
    records.NEW,
    records.DROP,
    records.INCIDENT,
    findings.ACCEPT,
    findings.REMEDY,
    findings.BEFORE,
    why.ROOM,
    rows.OFFER,
    undo.UNDO,
    undo.REDO,
    rows.FILTER,
    palette.ROOM,
    profiles.TAKE,
    profiles.SAVE,
    last_time.TAKE,
    ledger.TRY_BACK_ACTION,
    ledger.SET_BACK,
    lap_import.LAPS_OF_A_FILE,
    paper_slip.ROOM,
    set_ups.START,
    set_ups.WET,
    profiles.FOR_ANOTHER,
    compare.ROOM,
    modes.ROOM,
    briefing.ROOM,
    limits.ROOM,
    records.DUPLICATE,
    records.RENAME,
    editor.EDITOR,
    records.RETIRED,
    unsaved.AGAIN,
    unsaved.ELSEWHERE,
    guide.ROOM,
    guide.ADD_BIKE,
    guide.ADD_DAY,
    today.ROOM,
    board.ROOM,
    before.ROOM,
    after.ROOM,
    emergency.ROOM,
    crew.ROOM,
    corners.ROOM,
    season.ROOM,
    themes.TERMINAL,
    themes.DAY,
    themes.NIGHT,
    key_help.ROOM,
    program.COPY,
    program.COPY_PAGE,
    program.QUIT,
)

ROOMS = {one.id: one for one in REGISTRY if isinstance(one, Room)}
"""The rooms by their ids."""

ACTIONS: tuple[Action, ...] = tuple(
    action for one in REGISTRY if (action := one.action if isinstance(one, Room) else one) is not None
)
"""The actions."""

ABOUT_SUBJECT = frozenset(
    action.id
    for one in REGISTRY
    if (action := one.action if isinstance(one, Room) else one) is not None
    and (action.off in (needs_session, needs_subject) or (isinstance(one, Room) and one.needs_subject))
)
"""The actions about a session or a profile: on a row that names a session they are about that one."""

_UNJUDGED = frozenset(
    action.id
    for one in REGISTRY
    if one.unjudged and (action := one.action if isinstance(one, Room) else one) is not None
)

_ACTION_OF = {one.id: one for one in ACTIONS}


def room_of(name: str) -> Room:
    """Return a room by its id. Raises KeyError where there is none."""
    return ROOMS[name]


def action_of(name: str) -> Action:
    """Return an action by its id. Raises KeyError where there is none."""
    return _ACTION_OF[name]


def waits_for_verdict(name: str) -> bool:
    """Return whether an action rests on a verdict, or leads to a page that does."""
    return name not in _UNJUDGED


def place_showing(at: Place, ref: Ref, path: Path) -> Place:
    """Return the place, gone to from another, where a value's row stands; without a path its record's."""
    rooms = ROOMS.values()
    own = [room for room in rooms if room.shows(ref, path)] or [room for room in rooms if room.opens(ref)]
    room = own[0]
    if not room.needs_subject:
        return attrs.evolve(at, room=room.id, record=ref)
    # What stands in another record, such as a day's answers, is shown about what is looked at.
    subject = ref if ref.kind in ("session", "profile") else at.subject
    return attrs.evolve(at, room=room.id, subject=subject)
