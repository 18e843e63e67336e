"""The causes of a next change in the order in which they are asked; the first that speaks is the one."""

from collections.abc import Callable
from typing import Final

import attrs

from paddock_tui.advice.next_change.cause_accepted import accepted
from paddock_tui.advice.next_change.cause_base import back_to_base
from paddock_tui.advice.next_change.cause_first_right import first_right
from paddock_tui.advice.next_change.cause_none import none
from paddock_tui.advice.next_change.cause_pressure import hot_pressure
from paddock_tui.advice.next_change.cause_sag import sag_then_spring
from paddock_tui.advice.next_change.cause_stop import stop
from paddock_tui.advice.next_change.cause_table import of_table
from paddock_tui.advice.next_change.cause_undo import danger, undo
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.own_words import own_words
from paddock_tui.advice.next_change.words import Spoken


@attrs.frozen
class Cause:
    """One cause: its id, what it is in words, and what it says of a session."""

    id: str
    label: str
    says: Callable[[Given], Spoken]


CAUSES: Final = (
    Cause("stop", "rider, fall or part", stop),
    Cause("own-words", "your own words", own_words),
    Cause("danger", "a step that brought a danger", danger),
    Cause("first-right", "tyres, work, what has to be right", first_right),
    Cause("accepted", "a risk that was accepted", accepted),
    Cause("pressure", "hot pressure", hot_pressure),
    Cause("undo", "a step that brought a symptom", undo),
    Cause("base", "changes that nobody felt", back_to_base),
    Cause("sag", "sag, spring", sag_then_spring),
    Cause("table", "the table of symptoms", of_table),
    Cause("none", "none", none),
)
