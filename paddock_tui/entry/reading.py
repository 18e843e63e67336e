"""One typed line, read whole: every piece, every question, every error."""

from paddock_tui.entry.builtin import LEFT_OUT
from paddock_tui.entry.heads import head
from paddock_tui.entry.line import LONGEST, LineContext, Piece, TypedLine, Unread
from paddock_tui.entry.line_checks import check_line
from paddock_tui.entry.line_state import State
from paddock_tui.entry.pairs import read_row
from paddock_tui.entry.scanner import storable, tokens
from paddock_tui.entry.special_words import read_special
from paddock_tui.entry.values import NotTaken, Taken, take
from paddock_tui.entry.vocabulary import LoneWord, PlacedCall, Single, SpecialWord
from paddock_tui.records.shapes import Flag

_MOST_WRONG = 20
"""A line with so many wrong pieces is no line: the rest of it is not read."""


def read_line(text: str, context: LineContext) -> TypedLine:
    """Read a line against the record in hand. Nothing of it may be applied unless it is clear."""
    if len(text) > LONGEST:
        message = f"a line of {len(text)} characters; at most {LONGEST} are read"
        return TypedLine(text, errors=(Unread(LONGEST, len(text), message, "enter it in two"),))
    if not storable(text):
        message = "a character that cannot be saved in a file"
        return TypedLine(text, errors=(Unread(0, len(text), message, "type it again without it"),))
    state = State(text, context, tokens(text))
    while state.at() is not None and len(state.errors) + len(state.questions) < _MOST_WRONG:
        _piece(state)
    check_line(state)
    return TypedLine(text, tuple(state.pieces), tuple(state.questions), tuple(state.errors), state.awaits)


def _piece(state: State) -> None:
    """Read the next piece."""
    token = state.at()
    start = token.start if token is not None else 0
    target = head(state)
    if target is None:
        return
    end = state.tokens[state.place - 1].end
    if isinstance(target, Single):
        _single(state, target, start, end)
    elif isinstance(target, PlacedCall):
        read_row(state, target, start, end)
    elif isinstance(target, SpecialWord):
        read_special(state, target, start, end)
    else:
        _lone(state, target, start, end)


def _single(state: State, single: Single, start: int, end: int) -> None:
    field = single.fields[0]
    sets = state.equals()
    token = state.at()
    found: Taken | NotTaken
    if token is not None and token.text == LEFT_OUT:
        message = f"- leaves out one of a pair, and {single.label} is not one"
        found = NotTaken(token.start, token.end, state.place + 1, message, "clear makes it not known")
    else:
        found = take(state.view(), state.place, field, sets=sets)
    if isinstance(found, NotTaken) and isinstance(field.shape, Flag) and not sets:
        # The call of a yes-or-no alone means yes; what follows is read as the next piece.
        found = Taken(start, end, state.place, True)
    if isinstance(found, NotTaken):
        state.fail(field, found, start, end)
        return
    state.place = found.until
    for one in single.fields:
        state.put(one, found, start)


def _lone(state: State, lone: LoneWord, start: int, end: int) -> None:
    """Set the surface; 'standing' may be followed by its 'water'."""
    rest = lone.value.partition(" ")[2]
    token = state.at()
    if rest and token is not None and token.folded == rest:
        state.place += 1
        end = token.end
    state.add(Piece(start, end, lone.field.path, lone.value, lone.field.label))
