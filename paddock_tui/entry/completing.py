"""What may stand in place of the word that is being typed, for the tab key."""

from paddock_tui.entry.line import LONGEST, Context
from paddock_tui.entry.naming import typed_at_once
from paddock_tui.entry.reading import read_line
from paddock_tui.entry.scanning import tokens
from paddock_tui.records.fielding import field_at
from paddock_tui.records.shapes import Reference

_MOST = 50
_MOST_WORDS = 3


def complete(text: str, context: Context) -> tuple[str, ...]:
    """List whole lines that this one may become: its last word completed as a value or as a call."""
    if len(text) > LONGEST:
        return ()
    starts = [token.start for token in tokens(text)]
    places = [len(text)] if not starts or text[-1:].isspace() else []
    for start in (*places, *reversed(starts[-_MOST_WORDS:])):
        typed = text[start:].casefold()
        words = [word for word in _values(text[:start], context) if word.casefold().startswith(typed)]
        if words:
            return tuple(text[:start] + word for word in words[:_MOST])
    start = len(text) if places else starts[-1]
    if not places and _values(text[:start], context):
        return ()
    words = [word for word in _calls(context) if word.startswith(text[start:].casefold())]
    return tuple(text[:start] + word for word in words[:_MOST])


def completed(text: str, context: Context) -> str:
    """Give the line as far as all its completions agree; with a space behind it where there is one only."""
    found = complete(text, context)
    if len(found) == 1:
        return found[0] + " "
    if not found:
        return text
    least, most = min(found), max(found)
    same = next((place for place, char in enumerate(least) if most[place] != char), len(least))
    return least[:same] if same > len(text) else text


def _values(before: str, context: Context) -> tuple[str, ...]:
    """List the words that the value may have for which a line breaks off."""
    awaits = read_line(before, context).awaits
    field = field_at(context.kind, awaits, context.record, context.bike) if awaits is not None else None
    if field is None:
        return ()
    if isinstance(field.shape, Reference):
        return context.ids(field.shape.kind) or ()
    return field.shape.words()


def _calls(context: Context) -> list[str]:
    """List calls and names, sorted."""
    words = context.words
    names = [name for name, targets in words.names.items() if len(targets) == 1 and typed_at_once(name)]
    return sorted({*words.calls, *names})
