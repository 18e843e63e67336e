"""The order of a record: date, the session's number, stage, clock. What it does not tell is never later."""

import datetime as dt
from collections.abc import Mapping
from typing import Literal, NamedTuple, Protocol, get_args

from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Symptom

Stage = Literal["morning", "before", "out", "return", "evening"]
"""The stages of a day; the three in the middle are those of one session."""

STAGES: tuple[Stage, ...] = get_args(Stage)
_OF_THE_DAY: tuple[Stage, ...] = ("morning", "evening")


STAGE_OF: Mapping[str, Stage] = {
    "entries": "morning",
    "setup": "before",
    "slept": "before",
    "ice": "before",
    "checks": "before",
    "pressures": "before",
    "answers": "before",
    "front": "before",
    "rear": "before",
    "work": "return",
    "incidents": "return",
    "symptoms": "return",
    "look": "return",
    "lever": "return",
    "fatigue": "return",
    "front_pads": "return",
    "rear_pads": "return",
    "front_tread": "return",
    "rear_tread": "return",
    "chain_length": "return",
    "chain_slack": "return",
    "sag": "return",
}
"""At which stage that is written which opens a matter, by the first key of its path.

What may be written at either end of an outing counts as of the return from it: an opening is the later. What
is answered in a file of its own is shown by the outing to come. Riding is `out`; what has no table of its
own, an answer in the file of a bike, a rider or a tyre set, has a day and a clock and no stage.
"""


class Place(NamedTuple):
    """Where something stands in the order, as far as the record tells."""

    date: dt.date | None
    number: int | None = None
    stage: Stage | None = None
    at: dt.time | None = None


class AnswerBeside(Protocol):
    """What holds the day of its answer."""

    @property
    def on(self) -> dt.date | None: ...


def is_later(one: Place, other: Place) -> bool:
    """Return whether the record tells that one came after the other; a clock counts where both have one."""
    if one.date is None or other.date is None:
        return False
    if one.date != other.date:
        return one.date > other.date
    if one.stage != other.stage and {one.stage, other.stage} & set(_OF_THE_DAY):
        return _stage_is_later(one.stage, other.stage)
    if one.number is not None and other.number is not None:
        if one.number != other.number:
            return one.number > other.number
        if one.stage is not None and other.stage is not None and one.stage != other.stage:
            return _stage_is_later(one.stage, other.stage)
    return one.at is not None and other.at is not None and one.at > other.at


def _stage_is_later(one: Stage | None, other: Stage | None) -> bool:
    """Return whether a stage comes after another; where one is not told, after the morning or not at all."""
    if one is None or other is None:
        return one == "evening" or other == "morning"
    return STAGES.index(one) > STAGES.index(other)


def ridden_at(session: Session) -> Place:
    """Return where the riding of a session stands."""
    return Place(session.date, session.number, "out", session.went_out or session.start)


def done_at(entry: AnswerBeside) -> dt.time | None:
    """Return the clock of an answer: of a symptom it is the only one that its table has."""
    return entry.at if isinstance(entry, Symptom) else getattr(entry, "done_at", None)


def answered_at(entry: AnswerBeside, session: Session) -> Place | None:
    """Return where an answer stands that is written beside what it answers.

    Without a day of its own it is of its session's; None without a clock as well: of the return from it.
    """
    date, clock = entry.on or session.date, done_at(entry)
    if clock is None and date == session.date:
        return None
    return Place(date, at=clock)


def early_words(entry: AnswerBeside, session: Session) -> str:
    """Say when an answer is dated that is from before what it stands beside; empty where it is not."""
    if not is_early(entry, session):
        return ""
    clock = done_at(entry)
    day = f"{entry.on}" if entry.on is not None and entry.on != session.date else ""
    return " ".join((day, f"{clock:%H:%M}" if clock is not None else "")).strip()


def is_early(entry: AnswerBeside, session: Session) -> bool:
    """Return whether an answer is told to be from before what it stands beside: then it answers nothing."""
    date, clock = entry.on or session.date, done_at(entry)
    if date is None or session.date is None:
        return False
    if date != session.date:
        return date < session.date
    felt = isinstance(entry, Symptom)
    since = (session.went_out or session.start) if felt else getattr(entry, "at", None)
    return clock is not None and since is not None and clock < since
