"""Words that note what happened, what the bike did and what was done, in the fixed words of the record."""

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from paddock_tui.entry.builtin import FELT, INCIDENT, WORK
from paddock_tui.entry.line import Piece
from paddock_tui.entry.line_state import State
from paddock_tui.entry.numbering import next_number
from paddock_tui.records.edits import Value
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.session_parts import FLUIDS, INCIDENTS, LAMPS, OFFS, SIGNS, SYMPTOMS, WORK_DONE
from paddock_tui.records.shown_words import shown

_MOST_WORDS = 6
"""So many words has the longest of the fixed phrases at most."""

_ENDS = ("front", "rear")
_TICKED: Mapping[str, tuple[str, ...]] = {
    "torqued": ("torqued",),
    "pumped": ("pumped",),
    "steering_free": ("steering free",),
    "rechecked_hot": ("checked again hot",),
}
_REARMED = "re-armed"


class _Noted(NamedTuple):
    """A table, the fixed words of its entries, and the key that says that something was noted in it."""

    table: str
    words: tuple[str, ...]
    such_as: str
    asked: str = ""
    timed: bool = True


_NOTED: Mapping[str, _Noted] = {
    INCIDENT: _Noted("incidents", INCIDENTS, "e.g. incident leak coolant", "happened"),
    FELT: _Noted("symptoms", SYMPTOMS, "e.g. felt weaves 2", "did", timed=False),
    WORK: _Noted("work", WORK_DONE, "e.g. work axle front torqued pumped"),
}


_SAID_YES = (*(words[0] for words in _TICKED.values()), _REARMED)


def read_noted(state: State, word: str, start: int, end: int) -> None:
    """Read what stands behind one of the words: the fixed phrase, then what is known of it."""
    noted = _NOTED[word]
    found = _phrase(state, noted.words)
    if found is None:
        state.past_values()
        state.place = len(state.tokens)
        state.refuse(start, end, f"{word} waits for one of its fixed words", noted.such_as)
        return
    what, stop = found
    number = str(next_number(state.context.data, noted.table, (one.path for one in state.pieces)))
    state.add(Piece(start, stop, (noted.table, number, "what"), what, f"{word} {number}"))
    _details(state, noted.table, number, what)
    if what == "mend by":
        _due(state, number)
    if noted.table == "work":
        for words, key in (("by", "by"), ("checked by", "checked_by")):
            _initials(state, noted.table, number, words, key)
    date = state.context.data.get("date")
    if noted.timed and (not isinstance(date, dt.date) or date >= state.context.now.date()):
        now = state.context.now.time().replace(second=0, microsecond=0, tzinfo=None)
        state.add(Piece(start, stop, (noted.table, number, "at"), now, f"time of {word} {number}"))
    if noted.asked and not any(one.path == (noted.asked,) for one in state.pieces):
        field = field_at("session", (noted.asked,))
        label = field.label if field is not None else noted.asked
        state.add(Piece(start, stop, (noted.asked,), "noted", label))


def _details(state: State, table: str, number: str, what: str) -> None:
    """Take what stands next and can only be of this entry, each once."""
    open_keys = {key: list(words) for key, words in _asked_of(table, what).items()}
    while open_keys:
        found = next(
            ((key, one) for key, words in open_keys.items() if (one := _phrase(state, words)) is not None),
            None,
        )
        if found is None:
            return
        key, (text, stop) = found
        value: Value = int(text) if text.isdecimal() else True if text in _SAID_YES else text
        if key == "signs":
            more, stop = _more_signs(state, stop, text)
            value = [text, *more]
        label = f"{table} {number}, {key.replace('_', ' ')}"
        before = state.pieces[-1]
        state.add(Piece(before.end, stop, (table, number, key), value, label))
        del open_keys[key]


def _more_signs(state: State, stop: int, first: str) -> tuple[list[str], int]:
    """Take further signs, with the place where the last ends: somebody unwell seldom has one alone."""
    said = [first]
    while (found := _phrase(state, [one for one in SIGNS if one not in said])) is not None:
        said.append(found[0])
        stop = found[1]
    return said[1:], stop


def _due(state: State, number: str) -> None:
    """Take the day by which something has to be put right, where one stands next."""
    token = state.at(0)
    try:
        day = dt.date.fromisoformat(token.folded) if token is not None else None
    except ValueError:
        return
    if token is not None and day is not None:
        state.place += 1
        before = state.pieces[-1]
        state.add(Piece(before.end, token.end, ("incidents", number, "due"), day, f"incidents {number}, due"))


def _initials(state: State, table: str, number: str, words: str, key: str) -> None:
    """Take who did it, or who looked, where that stands next."""
    before = state.place
    if _phrase(state, [words]) is None:
        return
    token = state.at(0)
    if token is None:
        state.place = before
        return
    state.place += 1
    start = state.pieces[-1].end
    state.add(Piece(start, token.end, (table, number, key), token.text, f"{table} {number}, {words}"))


def _asked_of(table: str, what: str) -> Mapping[str, Iterable[str]]:
    """Return what may be said of an entry on the same line: the words of each of its values."""
    if table == "work":
        return {"end": _ENDS, **_TICKED}
    if table == "symptoms":
        return {"end": _ENDS, "grade": ("1", "2", "3")}
    if what == "leak":
        return {"fluid": FLUIDS}
    if what in ("off the track", "contact"):
        return {"where": OFFS}
    if what in ("false neutral", "practice starts", "missed markers"):
        return {"count": tuple(map(str, range(1, 100)))}
    if what == "unwell":
        return {"signs": SIGNS}
    if what == "airbag fired":
        return {"rearmed": (_REARMED,)}
    if what == "warning lamp":
        return {"lamp": LAMPS}
    return {}


def _phrase(state: State, words: Iterable[str]) -> tuple[str, int] | None:
    """Take the longest of these phrases that stands next, with the place where it ends."""
    known = {form.casefold(): one for one in words for form in (one, shown(one))}
    for count in range(_MOST_WORDS, 0, -1):
        tokens = [state.at(ahead) for ahead in range(count)]
        there = [one for one in tokens if one is not None]
        text = " ".join(one.folded for one in there)
        if len(there) == count and text in known:
            state.place += count
            return known[text], there[-1].end
    return None
