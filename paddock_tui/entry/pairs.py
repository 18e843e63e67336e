"""Pairs and the moments of feel: figures in a fixed order, `-` for one that is left out."""

import attrs

from paddock_tui.entry.builtin import CLEAR, DOWN, LEFT_OUT, UP
from paddock_tui.entry.line import Choice
from paddock_tui.entry.line_state import State
from paddock_tui.entry.scanner import Token
from paddock_tui.entry.values import NotTaken, Taken, take
from paddock_tui.entry.vocabulary import CallPlace, PlacedCall

_LEFT_OUT = (LEFT_OUT, "−")


@attrs.frozen
class _Given:
    """What stands in one slot: a value, or nothing where it is left out."""

    slot: CallPlace
    start: int
    end: int
    taken: Taken | None

    def text(self, line: str) -> str:
        """Return it as it was typed."""
        return line[self.start : self.end] if self.taken is not None else LEFT_OUT


def read_row(state: State, row: PlacedCall, start: int, end: int) -> None:
    """Read the figures of a row; its call stands from `start` to `end`."""
    sets = state.equals()
    given = _given(state, row, sets=sets)
    if given is None:
        return
    only = _only_end(row, given)
    if only is not None:
        given = only
    if len(given) < len(row.slots):
        _too_few(state, row, given, start, end)
    elif all(one.taken is None for one in given):
        state.refuse(start, given[-1].end, f"{row.label}: nothing is given", f"write {_order(row)}")
    elif not _ambiguous(state, row, given, start):
        _put(state, row, given, start)


def _given(state: State, row: PlacedCall, *, sets: bool) -> list[_Given] | None:
    """Take as many figures as the row has slots, or as there are; None where one cannot be read."""
    given: list[_Given] = []
    for slot in row.slots:
        token = state.at()
        if token is None or not _is_value(state, token):
            break
        if token.text in _LEFT_OUT:
            given.append(_Given(slot, token.start, token.end, None))
            state.place += 1
            continue
        options = slot.options or next(one.options for one in row.slots if one.options)
        taken = take(state.view(), state.place, options[0].fields[0], sets=sets)
        if isinstance(taken, NotTaken):
            state.fail(options[0].fields[0], taken, taken.start, taken.end)
            state.past_values()
            return None
        given.append(_Given(slot, taken.start, taken.end, taken))
        state.place = taken.until
    return given


def _is_value(state: State, token: Token) -> bool:
    if token.figure or token.kind == "quoted" or token.text in _LEFT_OUT or token.folded == CLEAR:
        return True
    if token.folded in (UP, DOWN):
        follow = state.at(1)
        return follow is not None and follow.text.isdecimal()
    counts = [token.folded.removeprefix(word) for word in (UP, DOWN)]
    return any(count != token.folded and count.isdecimal() for count in counts)


def _only_end(row: PlacedCall, given: list[_Given]) -> list[_Given] | None:
    """Take one figure of a pair for the one end that the bike has; None where there are two."""
    there = [place for place, slot in enumerate(row.slots) if slot.options]
    if len(given) != 1 or given[0].taken is None or len(there) != 1:
        return None
    found = [attrs.evolve(given[0], slot=slot, taken=None) for slot in row.slots]
    found[there[0]] = attrs.evolve(given[0], slot=row.slots[there[0]])
    return found


def _too_few(state: State, row: PlacedCall, given: list[_Given], start: int, end: int) -> None:
    if len(row.slots) == 2 and len(given) == 1 and given[0].taken is not None:
        typed, call = given[0].text(state.text), row.call
        choices = [
            Choice("front", f"{call} {typed} {LEFT_OUT}"),
            Choice("rear", f"{call} {LEFT_OUT} {typed}"),
        ]
        state.ask(start, given[0].end, f"{row.label} {typed}: front or rear?", choices)
        return
    stop = given[-1].end if given else end
    message = f"{row.call} waits for {len(row.slots)} figures"
    state.refuse(start, stop, message, f"write {_order(row)}; {LEFT_OUT} leaves one out")
    if state.at() is None:
        options = row.slots[len(given)].options
        state.awaits = options[0].fields[0] if options else None


def _ambiguous(state: State, row: PlacedCall, given: list[_Given], start: int) -> bool:
    """Ask which one is meant where the bike has several of a kind at one end."""
    for one in given:
        if one.taken is None or len(one.slot.options) < 2:
            continue
        rest = [LEFT_OUT if other is one else other.text(state.text) for other in given]
        others = f" {row.call} {' '.join(rest)}" if any(text != LEFT_OUT for text in rest) else ""
        typed = one.text(state.text)
        choices = [
            Choice(option.label, f"{state.words.word_of(option)} {typed}{others}")
            for option in one.slot.options
        ]
        state.ask(start, given[-1].end, f"{one.slot.name} {row.label} {typed}: which?", choices)
        return True
    return False


def _put(state: State, row: PlacedCall, given: list[_Given], start: int) -> None:
    for one in given:
        if one.taken is None:
            continue
        if not one.slot.options:
            bike = state.context.bike.name if state.context.bike is not None else None
            name = f"{one.slot.name} {row.label}"
            state.refuse(
                one.start, one.end, f"{bike or 'this bike'} has no {name}", f"write {LEFT_OUT} for it"
            )
            continue
        for field in one.slot.options[0].fields:
            state.put(field, one.taken, start)
        start = one.end


def _order(row: PlacedCall) -> str:
    return ", ".join(slot.name for slot in row.slots)
