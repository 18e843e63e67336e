"""What a briefing is made of."""

import attrs


@attrs.frozen
class BriefingPart:
    """Sentences under one word, the weightiest first; `short` and `long`: lines that each form may take."""

    "may take."

    title: str
    sentences: tuple[str, ...]
    short: int
    long: int


@attrs.frozen
class Briefing:
    """All parts of it, in the order in which they are read."""

    parts: tuple[BriefingPart, ...]
