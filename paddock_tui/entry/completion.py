"""What may stand in place of the word that is being typed, for the tab key."""

from paddock_tui.entry.field_names import typed_at_once
from paddock_tui.entry.line import LONGEST, LineContext
from paddock_tui.entry.reading import read_line
from paddock_tui.entry.scanner import tokens
from paddock_tui.entry.values import takes_the_rest
from paddock_tui.records.fields_of_record import Field, field_at
from paddock_tui.records.shapes import Reference

_MOST = 50
_MOST_WORDS = 3


def complete(text: str, context: LineContext) -> tuple[str, ...]:
    """List whole lines that this one may become: its last word completed as a value or as a call."""
    if len(text) > LONGEST:
        return ()
    starts = [token.start for token in tokens(text)]
    if not starts or text[-1:].isspace():
        starts.append(len(text))
    if _in_a_text(text, starts[-1], context):
        return ()
    for start in reversed(starts[-_MOST_WORDS:]):
        awaited = read_line(text[:start], context).awaits
        typed = text[start:].casefold()
        words = [word for word in _values(awaited, context) if word.casefold().startswith(typed)]
        if words or (awaited is not None and start == starts[-1]):
            return tuple(text[:start] + word for word in words[:_MOST])
    start = starts[-1]
    calls = [word for word in _calls(context) if word.startswith(text[start:].casefold())]
    return tuple(text[:start] + word for word in calls[:_MOST])


def completed(text: str, context: LineContext) -> str:
    """Return the line as far as all its completions agree; with a space behind it where there is one only."""
    found = complete(text, context)
    if len(found) == 1:
        return found[0] + " "
    if not found:
        return text
    least, most = min(found), max(found)
    same = next((place for place, char in enumerate(least) if most[place] != char), len(least))
    return least[:same] if same > len(text) else text


def _in_a_text(text: str, start: int, context: LineContext) -> bool:
    """Return whether the last word belongs to a note or another text that goes on to the end of the line."""
    for piece in read_line(text, context).pieces:
        field = field_at(context.kind, piece.path, context.record, context.bike)
        if field is not None and takes_the_rest(field.shape) and piece.start < start < piece.end:
            return isinstance(piece.value, str) and text[piece.start : piece.end].endswith(piece.value)
    return False


def _values(awaited: Field | None, context: LineContext) -> tuple[str, ...]:
    """List the words that an awaited value may have."""
    if awaited is None:
        return ()
    if isinstance(awaited.shape, Reference):
        return context.ids(awaited.shape.kind) or ()
    return awaited.shape.words()


def _calls(context: LineContext) -> list[str]:
    """List calls and names, sorted."""
    words = context.words
    names = {
        name: targets[0] for name, targets in words.names.items() if len(targets) == 1 and typed_at_once(name)
    }
    longer = {name for name in names if names.get(name.split("-")[0]) is names[name] and "-" in name}
    return sorted({*words.calls, *names} - longer)
