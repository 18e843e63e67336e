"""A room of the screen, declared once: its page, what it is about, the keys it hears, how it is left."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Literal, TypeAlias

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.situations import Assembled
from paddock_tui.pages.actions import ActionContext, ActionRow
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.paths import Path, Ref
from paddock_tui.rules import Review
from paddock_tui.screens.action import Action, Doing
from paddock_tui.screens.host import Host
from paddock_tui.screens.place import Place
from paddock_tui.screens.run_state import RunState
from paddock_tui.widgets.messages import RowMessage

RoomSubject: TypeAlias = Literal["garage", "whatever", "subject", "session"]
"""What a room is about: the garage, what is looked at if anything is, a session or profile, a session."""


@attrs.frozen
class PageContext:
    """What a room makes its page from. Where something is looked at it is `assembled` and reviewed.

    `now` says the next thing to do, with its key. While the past is still read `assembled` is without it, and
    `is_reading` says so.
    """

    desk: Desk
    place: Place
    subject: Ref | None
    assembled: Assembled | None
    review: Review
    context: ActionContext
    rows: Sequence[ActionRow]
    state: RunState
    now: str = ""
    is_reading: bool = False


def _silent(_: Row) -> str:
    return ""


def _deaf(_: Host, __: RowMessage) -> bool:
    return False


def _nothing_ahead(_: Host) -> Iterator[None]:
    return iter(())


def _letterless(_: Host, __: str) -> bool:
    return False


def _nothing(_: Ref, __: Path) -> bool:
    return False


def _none(_: Ref) -> bool:
    return False


def _nowhere(_: Place) -> bool:
    return False


def _few(_: Desk) -> bool:
    return False


def everywhere(_: Place) -> bool:
    """Return that it is so at each place of a room."""
    return True


@attrs.frozen(kw_only=True, eq=False)
class Room:
    """One room of the screen.

    `page` gives None where what it is about is gone: the garage is shown then. `hears` takes what is asked
    of a row before anything else does, `letters` a letter; both say whether they took it. `hint` says which
    keys of its own a row has. `ahead` works out what its page takes long for, piece by piece, while nobody
    types. `opens` says whether a record is shown here as a whole, `shows` whether the
    row of a value stands here although its record opens elsewhere. `own` are actions that mean something
    else here. `findings`: they stand above the last line. `going_out`: what is not done yet is judged too.
    `stands_alone`: escape leads back, and going anywhere leaves it; `escapes`: escape alone does.
    `folds`: where its page is
    too long, what nothing is open in is folded: longer than two screens, or than so many lines `at_once`.
    `waiting_first`: whether what something waits in stands before the rest of the page there.
    `lists_many`: its rows take a while, so that the verdict is shown before them where a run begins.
    `unjudged`: its page is shown while earlier sessions are still read, without what rests on them.
    `for_anybody`: whoever reads it may not know the program, so that no verdict and no clock stand there.
    `read_by_others`: not the rider alone reads it: it says nothing of anybody's health, and times by rows.
    `answers_in_hand`: although it is about more than one session, it answers for the one in hand.
    `finding_answers`: what its first finding says is the answer, which is not said a second time.
    """

    id: str
    page: Callable[[PageContext], Page | None]
    about: RoomSubject = "garage"
    action: Action | None = None
    hears: Callable[[Host, RowMessage], bool] = _deaf
    letters: Callable[[Host, str], bool] = _letterless
    hint: Callable[[Row], str] = _silent
    ahead: Callable[[Host], Iterator[None]] = _nothing_ahead
    opens: Callable[[Ref], bool] = _none
    shows: Callable[[Ref, Path], bool] = _nothing
    own: Mapping[str, Doing] = attrs.field(factory=dict)
    findings: bool = False
    going_out: bool = False
    stands_alone: bool = False
    escapes: bool = False
    folds: bool = True
    at_once: int = 0
    waiting_first: Callable[[Place], bool] = _nowhere
    for_anybody: bool = False
    unjudged: bool = False
    lists_many: Callable[[Desk], bool] = _few
    read_by_others: bool = False
    answers_in_hand: bool = False
    finding_answers: bool = False

    @property
    def panel(self) -> bool:
        """Whether a wide screen says at its right what stands, or what the row under the cursor does."""
        return not self.for_anybody

    @property
    def needs_subject(self) -> bool:
        """Whether there is no page without a session or profile; its findings are answered here."""
        return self.about in ("subject", "session")

    @property
    def names_subject(self) -> bool:
        """Whether the heading names what is looked at: elsewhere the verdict is of the session in hand."""
        return self.about != "garage"
