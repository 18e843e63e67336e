"""The rows about the tyres: what stands on the sidewall, and the vendor's hot pressures."""

from collections.abc import Iterator

from paddock_tui.desk.start.ask import Ask, AskResult, held, numbered, picked, texts
from paddock_tui.desk.start.context import Context
from paddock_tui.desk.start.people import record_ask
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.tyres import TYRE_KINDS

SECTION = "tyres"
_PAIRS = (
    ("size", "size", "front, rear, as marked; enter takes the bike's own"),
    ("hot_dry", "hot target, dry", "the vendor's hot pressures, front rear: 2.30 2.10"),
    ("hot_wet", "hot target, wet", "the vendor's for the wet, front rear"),
    ("date_code", "date codes", "four digits each, front rear, or one for both: 2325"),
)
"""What is typed for both ends at once: key, label, how."""


def tyre_asks(context: Context) -> Iterator[Ask]:
    """Ask which set, its kind, and for both ends sizes, hot targets, date codes, scrubbed in or not."""
    tyres = context.about.tyres
    yield record_ask(context, "tyres", tyres, SECTION, "what you call the set")
    if tyres is None:
        return
    yield _both(context, tyres, "kind", "kind", numbered(TYRE_KINDS), TYRE_KINDS)
    for key, label, how in _PAIRS:
        yield _pair(context, tyres, key, label, how)
    how = "1 yes  2 no, the skin is still shiny"
    yield _both(context, tyres, "scrubbed", "scrubbed in", how, ("yes", "no"))


def _both(context: Context, tyres: Ref, key: str, label: str, how: str, words: tuple[str, ...]) -> Ask:
    """Ask one thing of both ends alike."""
    files = context.files

    def answer(text: str) -> AskResult | InputError:
        word = picked(text, words)
        pairs = [((end, key), word) for end in ("front", "rear")]
        return texts(files, tyres, pairs, context.units, f"{label}: {word}")

    return Ask(f"tyres {key}", SECTION, label, how, answer, _ends(context, tyres, key), words)


def _pair(context: Context, tyres: Ref, key: str, label: str, how: str) -> Ask:
    """Ask a value of each end in one line, front then rear."""
    files = context.files

    def answer(text: str) -> AskResult | InputError:
        words = text.split()
        if key == "date_code" and len(words) == 1:
            words *= 2
        if len(words) != 2:
            return InputError(f"{len(words)} of them", "two, front then rear", "a space between them")
        pairs = [((end, key), word) for end, word in zip(("front", "rear"), words, strict=True)]
        return texts(files, tyres, pairs, context.units, f"{label}: {' '.join(words)}")

    bike = context.about.bike
    sizes = [held(files, bike, (end, "tyre_size")).replace(" ", "") for end in ("front", "rear")]
    offered = " ".join(sizes) if key == "size" and all(sizes) else ""
    return Ask(f"tyres {key}", SECTION, label, how, answer, _ends(context, tyres, key), (), offered)


def _ends(context: Context, tyres: Ref, key: str) -> str:
    front, rear = (held(context.files, tyres, (end, key)) for end in ("front", "rear"))
    if front == rear:
        return front
    return f"{front or 'not known'}, {rear or 'not known'}"
