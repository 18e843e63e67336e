"""Words that take pieces of their own: lap times, notes, and how long ago the bike was parked."""

import datetime as dt

from paddock_tui.entry.builtin import AGO, LAPS, LATE, NOTED, TRACKSIDE
from paddock_tui.entry.free_text import free_text
from paddock_tui.entry.laps import read_laps
from paddock_tui.entry.line import Piece
from paddock_tui.entry.line_state import State
from paddock_tui.entry.noted_words import read_noted
from paddock_tui.entry.numbering import next_number
from paddock_tui.entry.trackside_words import read_trackside
from paddock_tui.entry.values import to_the_minute
from paddock_tui.entry.vocabulary import SpecialWord
from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.shapes import LapTime

NOTES = "notes"

_LAP = LapTime()
_MINUTES_OF_A_DAY = 24 * 60


def read_special(state: State, special: SpecialWord, start: int, end: int) -> None:
    """Read what stands behind laps, note or ago; the word stands from `start` to `end`."""
    state.equals()
    if special.word == LAPS:
        _laps(state, start, end)
    elif special.word == AGO:
        _ago(state, start, end)
    elif special.word == LATE:
        state.past_values()
        message = "the day runs late: that is a line by itself"
        state.refuse(start, end, message, "late 15 alone shifts what is still to come")
    elif special.word in TRACKSIDE:
        read_trackside(state, special.word, start, end)
    elif special.word in NOTED:
        read_noted(state, special.word, start, end)
    else:
        _note(state, start, end)


def _next(state: State, table: str) -> int:
    return next_number(state.context.data, table, (piece.path for piece in state.pieces))


def _laps(state: State, start: int, end: int) -> None:
    """Add lap times while pieces read as laps or marks; or set a count of laps and the best one."""
    run = read_laps(state.tokens[state.place :], state.context.usual_s)
    state.place += run.used
    if state.context.no_laps:
        state.refuse(start, end, *state.context.no_laps)
    elif run.wrong is not None:
        state.refuse(run.wrong.start, run.wrong.end, run.wrong.message, run.wrong.mend)
    elif run.best is not None and run.count is not None:
        state.add(Piece(start, run.best.end, ("ridden_laps",), run.count, "ridden laps"))
        state.add(Piece(run.best.start, run.best.end, ("best_lap",), _LAP.dump(run.best.lap), "best lap"))
    elif not run.laps:
        mend = "e.g. 1:44.310, with out, in or traffic behind it; or 10x1:43.9, a count and the best"
        state.refuse(start, end, "laps wait for lap times", mend)
    number = _next(state, LAPS)
    for place, timed in enumerate(run.laps if run.wrong is None and not state.context.no_laps else ()):
        path = (LAPS, str(number + place))
        state.add(
            Piece(
                timed.start if place else start,
                timed.end,
                path,
                _LAP.dump(timed.lap),
                f"lap {number + place}",
            )
        )


def _note(state: State, start: int, end: int) -> None:
    """Take the rest of the line, or a text in quotes, as a note of now."""
    given = free_text(state)
    if given is None:
        state.awaits = field_at(state.context.kind, (NOTES, "1", "text"))
        state.refuse(start, end, "the note is empty", "write it behind the word")
        return
    found, stop = given
    if found is None or isinstance(found, InputError):
        message = "an escape in the quotes cannot be read" if found is None else "the note is empty"
        state.refuse(start, stop, message, 'write \\" and \\\\ for " and \\' if found is None else "")
        return
    number = str(_next(state, NOTES))
    now = state.context.now.time().replace(microsecond=0, tzinfo=None)
    state.add(Piece(start, stop, (NOTES, number, "text"), found, f"note {number}"))
    date = state.context.data.get("date")
    if not isinstance(date, dt.date) or date >= state.context.now.date():
        state.add(Piece(start, stop, (NOTES, number, "at"), now, f"time of note {number}"))


def _ago(state: State, start: int, end: int) -> None:
    """Take how many minutes ago the bike was parked."""
    token = state.at()
    if token is None or not token.figure:
        state.refuse(start, end, "ago waits for minutes", "e.g. ago 4: parked four minutes ago")
        return
    state.place += 1
    count = token.folded.removesuffix("min")
    follow = state.at()
    stop = token.end
    if follow is not None and follow.folded in ("min", "minutes"):
        state.place += 1
        stop = follow.end
    minutes = int(count) if count.isascii() and count.isdecimal() and len(count) <= 4 else None
    now, date = state.context.now, state.context.data.get("date")
    if isinstance(date, dt.date) and date < now.date():
        said = "this session is not of today", "write parked and the time, e.g. parked 13:41"
        state.refuse(token.start, stop, *said)
    elif minutes is None:
        state.refuse(token.start, stop, f"{token.text} is no number of minutes", "a whole number, e.g. 4")
    elif minutes >= _MINUTES_OF_A_DAY or (now - dt.timedelta(minutes=minutes)).date() != now.date():
        state.refuse(
            token.start, stop, f"{minutes} minutes ago was before today", "write parked and the time"
        )
    else:
        parked = to_the_minute(now - dt.timedelta(minutes=minutes))
        state.add(Piece(start, stop, ("parked",), parked, "parked"))
