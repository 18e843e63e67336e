"""Words that begin an entry of a growing table: a red flag, a restart, a corner, a job, a penalty."""

import datetime as dt
from collections.abc import Callable, Mapping
from typing import Any

from paddock_tui.entry.builtin import CORNER, JOB, PENALTY, RED, RESTART
from paddock_tui.entry.free_text import free_text
from paddock_tui.entry.line import Piece
from paddock_tui.entry.line_state import State
from paddock_tui.entry.numbering import next_number
from paddock_tui.entry.pieces import lookup
from paddock_tui.entry.scanner import Token
from paddock_tui.records.common import CLOCK
from paddock_tui.records.errors import InputError
from paddock_tui.records.ids import id_of
from paddock_tui.records.paths import Path
from paddock_tui.records.race import STOPS


def read_trackside(state: State, word: str, start: int, end: int) -> None:
    """Read what stands behind one of the words."""
    _READ[word](state, start, end)


def _corner(state: State, start: int, end: int) -> None:
    number = _whole(state)
    if number is None:
        state.place = len(state.tokens)
        state.refuse(start, end, "corner waits for its number", 'e.g. corner 4 "late apex"')
        return
    _words(state, start, end, ("corner_words", str(number)), f"corner {number}")


def _penalty(state: State, start: int, end: int) -> None:
    number = str(next_number(state.context.data, "penalties", (one.path for one in state.pieces)))
    _words(state, start, end, ("penalties", number, "what"), f"penalty {number}")


def _red(state: State, start: int, end: int) -> None:
    """Note a red flag now; a number behind it is of the laps ridden by then."""
    number = str(next_number(state.context.data, "events", (one.path for one in state.pieces)))
    stop = _end(state, end)
    now = state.context.now.time().replace(second=0, microsecond=0, tzinfo=None)
    laps = _whole(state)
    state.add(Piece(start, stop, ("events", number, "what"), STOPS[0], f"stop {number}"))
    date = state.context.data.get("date")
    if not isinstance(date, dt.date) or date >= state.context.now.date():
        state.add(Piece(start, stop, ("events", number, "at"), now, f"time of stop {number}"))
    if laps is not None:
        state.add(Piece(start, stop, ("events", number, "laps_ridden"), laps, "laps ridden"))


def _restart(state: State, start: int, end: int) -> None:
    """Say of the last stop when it goes on; a number behind it is of the laps left."""
    number = _last_stop(state)
    token = state.at()
    at = CLOCK.read(token.text) if token is not None else None
    if number is None or token is None or not isinstance(at, dt.time):
        state.past_values()
        why = "nothing stopped this outing" if number is None else "restart waits for a time"
        state.refuse(start, end, why, "red first" if number is None else "e.g. restart 14:40 6")
        return
    state.place += 1
    state.add(Piece(start, token.end, ("events", number, "restart"), at, "restart at"))
    stop, laps = _end(state, token.end), _whole(state)
    if laps is not None:
        state.add(Piece(token.end, stop, ("events", number, "laps_left"), laps, "restart laps"))


def _job(state: State, start: int, end: int) -> None:
    what, who = state.at(), state.at(1)
    name = id_of(what.text) if what is not None else ""
    if not name or who is None:
        state.place = len(state.tokens)
        state.refuse(start, end, "job waits for what and whose", "e.g. job fuel TO")
        return
    state.place += 2
    state.add(Piece(start, who.end, ("jobs", name, "who"), who.text.upper(), f"job {name}"))


def _last_stop(state: State) -> str | None:
    """Return the number of the last stop that is noted, on this line too."""
    held: Any = lookup(state.context.data, ("events",))
    events = held if isinstance(held, Mapping) else {}
    found = [key for key, one in events.items() if isinstance(one, Mapping) and one.get("what") in STOPS]
    found += [one.path[1] for one in state.pieces if one.path[0] == "events" and one.path[-1] == "what"]
    return max((one for one in found if one.isdecimal()), key=int, default=None)


def _whole(state: State) -> int | None:
    """Take a whole number where one stands next."""
    token = state.at()
    if token is None or not token.text.isdecimal() or len(token.text) > 3:
        return None
    state.place += 1
    return int(token.text)


def _end(state: State, end: int) -> int:
    """Return where a whole number ends that stands next, else where the word did."""
    token: Token | None = state.at()
    return token.end if token is not None and token.text.isdecimal() else end


def _words(state: State, start: int, end: int, path: Path, label: str) -> None:
    """Take the rest of the line, or a text in quotes."""
    given = free_text(state)
    if given is None:
        state.refuse(start, end, f"the words about {label} are missing", "write them behind it")
        return
    found, stop = given
    if not isinstance(found, str):
        message = found.found if isinstance(found, InputError) else "an escape in the quotes cannot be read"
        state.refuse(start, stop, message, "write it in plain words")
        return
    state.add(Piece(start, stop, path, found, label))


_READ: dict[str, Callable[[State, int, int], None]] = {
    CORNER: _corner,
    RED: _red,
    RESTART: _restart,
    JOB: _job,
    PENALTY: _penalty,
}
