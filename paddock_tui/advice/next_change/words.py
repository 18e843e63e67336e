"""What a proposal is: one change or none, why, what to expect, and what has to be answered first."""

import enum

import attrs

from paddock_tui.records.paths import Path
from paddock_tui.rules.core import SetValue


class Kind(enum.Enum):
    """What is proposed, the most pressing first."""

    MEND = "do not go out; fix"
    REST = "do not go out; rest"
    LOOK = "look first"
    ASK = "answer first"
    CHANGE = "change"
    OWN = "your own choice"
    SAME = "none: same again"


@attrs.frozen
class Move:
    """One change that can be made: the values it sets, and how it reads.

    `reads` is old -> new in the bike's own numbers. `about` names each thing that is changed as its reason
    is kept, such as ("adjusters", "front-rebound").
    """

    reads: str
    puts: tuple[SetValue, ...]
    about: tuple[tuple[str, str], ...]


@attrs.frozen
class Refusal:
    """Why something cannot be changed here; `own` says that the rider can do something about it by hand."""

    reason: str
    own: bool = False


@attrs.frozen
class CauseQuestion:
    """What tells two causes apart: the question, how to find out, and the answers with what they mean.

    `none` is where it is kept that none of these is meant, and as which word; None where one of them is.
    """

    text: str
    answers: tuple[tuple[str, str], ...]
    none: tuple[Path, str] | None = None


@attrs.frozen
class Proposal:
    """One proposal. `passed_over` says what was left out, and why.

    `answer_at` is where the answer to the question is kept, in the session named by `answer_of`; empty: the
    one that the symptom stands in. `aim` is what to ride for instead of a change. `decides` names what is set
    by this proposal alone: no other that changes it may stand beside.
    """

    kind: Kind
    symptom: str
    text: str
    why: str
    expect: str = ""
    watch: str = ""
    move: Move | None = None
    question: CauseQuestion | None = None
    answer_at: Path = ()
    answer_of: str = ""
    aim: str = ""
    passed_over: tuple[str, ...] = ()
    decides: tuple[tuple[str, str], ...] = ()


@attrs.frozen
class Passed:
    """Why a cause does not speak."""

    reason: str


Spoken = Proposal | Passed
