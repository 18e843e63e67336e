"""The word that begins a piece: a call, a name of one or more words, or a path with dots."""

from collections.abc import Sequence

from paddock_tui.entry.builtin import Absent
from paddock_tui.entry.field_names import said_label
from paddock_tui.entry.line import Choice
from paddock_tui.entry.line_state import State
from paddock_tui.entry.lookup import Found, look_up, nearest
from paddock_tui.entry.own_calls import UNIT_WORDS
from paddock_tui.entry.scanner import Token, split
from paddock_tui.entry.vocabulary import Single, Target
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import parse

_MOST_WORDS = 6
_MOST_CHOICES = 12


def head(state: State) -> Target | None:
    """Take the word that begins a piece; what cannot be one is refused or asked about and passed over."""
    token = state.at()
    if token is None:
        return None
    found = _by_path(state, token)
    several = _by_several_words(state) if found is None else ()
    if len(several) > 1:
        _ask(state, token.start, state.tokens[state.place - 1].end, several)
        state.past_values()
        return None
    if found is not None or several:
        return found or several[0]
    if token.kind in ("quoted", "equals", "stray") or token.figure or token.text == "-":
        state.refuse(token.start, token.end, *_no_call(token))
        state.place += 1
        return None
    meant, name = _by_word(state, token)
    state.place += 1
    if meant.one is None:
        _say(state, name, meant, glued=name is not token)
        state.past_values()
    return meant.one


def _by_path(state: State, token: Token) -> Target | None:
    """Find a value by its path with dots."""
    path = parse(token.text) if token.kind == "path" else None
    if path is None:
        return None
    context = state.context
    field = field_at(context.kind, path, context.record, context.bike)
    if field is None:
        return None
    state.place += 1
    return Single(said_label(context.kind, field), (field,))


def _by_several_words(state: State) -> tuple[Target, ...]:
    """Find a name of several words, the longest first; its last word may have the number behind it."""
    run = []
    for token in state.tokens[state.place : state.place + _MOST_WORDS]:
        if token.kind not in ("word", "path"):
            break
        run.append(token)
    for count in range(len(run), 1, -1):
        first = " ".join(token.folded for token in run[: count - 1])
        last = run[count - 1]
        parts = split(last)
        for word in (last, *(parts[:1] if parts else ())):
            found = state.words.exact(f"{first} {word.folded}")
            if found:
                if parts and word is parts[0]:
                    state.tokens[state.place + count - 1 : state.place + count] = parts
                state.place += count
                return found
    return ()


def _by_word(state: State, token: Token) -> tuple[Found, Token]:
    """Look a word up whole; then without the number behind it, which becomes a piece of its own."""
    parts = split(token)
    if parts is None or state.words.exact(token.folded):
        return look_up(state.words, token.text), token
    state.tokens[state.place : state.place + 1] = parts
    return look_up(state.words, parts[0].text), parts[0]


def _say(state: State, name: Token, meant: Found, *, glued: bool) -> None:
    """Say why a word has no one meaning: not on this bike, several, or none."""
    if meant.absent:
        state.refuse(name.start, name.end, *_absent(state, meant.absent))
        _past_unknown(state)
    elif meant.maybe:
        _ask(state, name.start, name.end, meant.maybe, " " if glued else "")
    else:
        state.refuse(name.start, name.end, *_unknown(state, name))


def _ask(state: State, start: int, end: int, maybe: Sequence[Target], gap: str = "") -> None:
    """Ask which is meant; where labels are the same, the words tell them apart."""
    shown = maybe[:_MOST_CHOICES]
    labels = [one.label for one in shown]
    choices = [
        Choice(one.label if labels.count(one.label) == 1 else word.replace("-", " "), word + gap)
        for one, word in ((one, state.words.word_of(one)) for one in shown)
    ]
    state.ask(start, end, f'"{state.text[start:end]}" may be', choices)


def _absent(state: State, absent: Absent) -> tuple[str, str]:
    """Say that the record or its bike has nothing of this name, or that it is not known to have."""
    bike = state.context.bike
    if absent.holder == "record":
        return f"a {state.context.kind} holds no {absent.label}", ""
    if bike is None:
        return f"{absent.label}: the bike is not known", "enter first which bike it is"
    listed = bike.electronics if absent.holder == "electronics" else bike.suspension
    name = bike.name or "this bike"
    if listed is None:
        return f"{absent.label} is not in the file of {name}", "list it there first"
    return f"{name} has no {absent.label}", ""


def _past_unknown(state: State) -> None:
    """Pass over the words that can only be the value of what was refused."""
    token = state.at()
    while token is not None and token.kind == "word" and not look_up(state.words, token.text).known:
        if split(token) is not None:
            return
        state.place += 1
        token = state.at()


def _no_call(token: Token) -> tuple[str, str]:
    """Say what is wrong with a piece that is no word."""
    if token.kind == "quoted":
        return "a text that no short name asks for", "write the short name before it, e.g. note"
    if token.kind == "equals":
        return "= stands behind a short name", "write the short name before it"
    if token.kind == "stray":
        return "a quote that opens no text", "close it, and write the short name before it"
    if token.text == "-":
        return (
            "- leaves out one of a pair, and no pair stands before it",
            "write the pair's short name before it",
        )
    return f"{token.text}: a number that no short name asks for", "write the short name before it"


def _unknown(state: State, name: Token) -> tuple[str, str]:
    """Say that a word is not known, with what it may have been meant as."""
    if name.folded in UNIT_WORDS:
        return f'"{name.text}" is a unit, and no number waits for it', ""
    for single in state.words.singles.values():
        for word in single.fields[0].shape.words():
            if word.casefold() == name.folded:
                call = state.words.word_of(single)
                return f'"{name.text}" needs its short name', f'write "{call} {word}" if that is meant'
    near = nearest(state.words, name.text)
    shown = name.text if len(name.text) <= 40 else name.text[:39] + "…"
    listed = "tab lists them, and `paddock-tui enter GARAGE --list`"
    return f'there is no short name "{shown}"', f"did you mean {near}?" if near else listed
