"""The walk through a record: session by session it closes and opens matters, in the order of their times."""

import datetime as dt
import functools
from collections.abc import Iterable, Mapping
from typing import Any

import attrs

from paddock_tui.matters.core import (
    COMPLETE,
    KINDS,
    TODAY,
    Matter,
    MatterKind,
    Opened,
    Outing,
    Present,
    Said,
    still_missing,
)
from paddock_tui.matters.days import Days
from paddock_tui.matters.order import Place, early_words, is_later
from paddock_tui.matters.remember import remembered
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD
from paddock_tui.matters.walked import Beginning, Keeper, Walks
from paddock_tui.records.answers import MatterAnswer
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session

GivenAnswers = Mapping[str, Mapping[str, MatterAnswer]]
"""The answers of one record, by what they answer and their number."""


@attrs.frozen
class Folded:
    """Where the walk stands after some outings: what is open, and what is remembered beside it."""

    open: tuple[Opened, ...] = ()
    seen: Seen = attrs.field(factory=Seen)


@attrs.frozen
class MatterHistory:
    """What the walk goes through: outings in any order, and answers by the kind and id of their record.

    `days` are further outings, which were put in order before. `unplaced` are outings of which the record
    does not tell where they belong: what they open is open, and they close nothing. `begins` is where an
    earlier walk led, of which no outing is among these; `keeper` is handed a state that a later may begin at.
    """

    outings: tuple[Outing, ...] = ()
    answers: Mapping[tuple[str, str], GivenAnswers] = attrs.field(factory=dict)
    days: Days = attrs.field(factory=Days)
    unplaced: tuple[Outing, ...] = ()
    begins: Beginning[Folded] | None = None
    keeper: Keeper[Folded] | None = None


def matters(history: MatterHistory, now: Present) -> tuple[Matter, ...]:
    """Return what is open for the session looked at, the worst first; the order of the outings given is no
    matter.
    """
    COMPLETE.require()
    course = history.days.with_more(history.outings, now.id)
    folded = WALKS.through(course, history.begins, history.keeper)
    return shown(_with_unplaced(folded, history.unplaced), history.answers, now)


def _with_unplaced(folded: Folded, unplaced: tuple[Outing, ...]) -> Folded:
    """Add what is opened by outings that the record does not place: their openings count as the later."""
    still = list(folded.open)
    for outing in unplaced:
        for kind in KINDS.values():
            still += (_dated(one, outing) for one in kind.opens(outing, Seen()))
    return Folded(tuple(still), folded.seen) if unplaced else folded


def advance(folded: Folded, together: tuple[Outing, ...]) -> Folded:
    """Walk on by outings of one place in the order: all they close, then all they open."""
    still: list[Opened] = list(folded.open)
    for outing in together:
        still = [
            KINDS[one.kind].carried(one, outing) for one in still if not KINDS[one.kind].closes(one, outing)
        ]
    kinds = asked(len(KINDS))
    for outing in together:
        for kind in kinds.of(outing):
            opens = [_dated(one, outing) for one in kind.opens(outing, folded.seen)]
            if opens:
                still += [one for one in opens if not _known(one, still)]
    return Folded(tuple(still), remembered(folded.seen, together, still))


_BESIDE = ("incidents", "symptoms", "work", "look")
"""The tables of a session in which an answer stands beside what it answers."""


def _dated(one: Opened, outing: Outing) -> Opened:
    """Say of a matter when the answer beside it is dated, where that is before it."""
    if one.record != "session" or one.path[0] not in _BESIDE:
        return one
    entry = getattr(outing.session, one.path[0]).get(one.path[1])
    early = early_words(entry, outing.session) if entry is not None else ""
    return attrs.evolve(one, early=early) if early else one


WALKS = Walks(Folded(), advance)
"""The walks of this run: of the same outings only what is new is walked."""


def _known(one: Opened, still: list[Opened]) -> bool:
    """Return whether it is open already: two sessions of a day share the day's entry, and sessions made
    ahead share what they only show by comparison with the last ride.
    """
    if not (one.day or one.derived):
        return False
    return any(
        (one.kind, one.whom, one.day, one.derived) == (other.kind, other.whom, other.day, other.derived)
        and (
            (one.subject, one.what) == (other.subject, other.what) if one.derived else one.path == other.path
        )
        for other in still
    )


def shown(
    folded: Folded, answers: Mapping[tuple[str, str], GivenAnswers], now: Present
) -> tuple[Matter, ...]:
    """Return the open matters of those whom the session names, each subject of a kind once, worst first."""
    found: dict[tuple[str, str], tuple[Matter, int]] = {}
    for one in folded.open:
        said = KINDS[one.kind].says(one, now) if concerns(one, now) else None
        if said is None or answered(one, answers) or _gone_through(one, said, now):
            continue
        matter = _matter(one, said, now)
        before = found.get((one.kind, one.subject))
        count = before[1] + 1 if before is not None else 1
        # Of several of a kind the worst is said, and of these the last.
        kept = matter if before is None or matter.severity >= before[0].severity else before[0]
        found[one.kind, one.subject] = (kept, count)
    every = [_with_more(matter, count) for matter, count in found.values()]
    return tuple(sorted(every, key=lambda one: (-one.severity, one.kind, one.subject)))


def _gone_through(one: Opened, said: Said, now: Present) -> bool:
    """Return whether it is older than what was answered together; a hold never is."""
    return now.before is not None and one.date is not None and one.date <= now.before and said.severity < HOLD


def concerns(one: Opened, now: Present) -> bool:
    """Return whether a matter follows somebody or something that this session names."""
    follows = KINDS[one.kind].follows
    if follows == "bike":
        return one.whom == now.session.bike
    if follows == "tyre":
        # Which tyre is on is not known: it may be that one.
        tyre = now.tyres.get(one.subject)
        return one.bike == now.session.bike if tyre is None or not one.whom else tyre == one.whom
    if follows == "track":
        return one.whom in (now.session.day, now.session.bike)
    # Who rode is not known: on this bike it may have been this rider.
    return one.whom == now.session.rider or (not one.whom and one.bike == now.session.bike)


def answered(one: Opened, answers: Mapping[tuple[str, str], GivenAnswers]) -> bool:
    """Return whether a record answers what stands in no table of its own: whole, and not before it opened.

    An answer names the session that it is about; one that names none counts where its time is told to be
    later.
    """
    record = {"bike": "bike", "tyre": "tyres"}.get(KINDS[one.kind].follows, "rider")
    given = answers.get((record, one.home or one.whom), {}).get(one.kind, {})
    return any(_answers(one, answer) for answer in given.values())


def _answers(one: Opened, answer: MatterAnswer) -> bool:
    if still_missing(answer, *KINDS[one.kind].wants):
        return False
    if answer.of is not None:
        return answer.of == one.of
    return is_later(Place(answer.on, at=answer.at), one.place)


def _matter(one: Opened, said: Said, now: Present) -> Matter:
    return Matter(
        kind=one.kind,
        subject=one.subject,
        severity=said.severity,
        message=_message(one, said),
        why=f"{_since(one, now)}{said.why}{_too_early(one)}",
        remedy=said.remedy,
        facts=said.facts,
        ref=_ref(one, now),
        path=one.path,
        since=one.date,
        quoted=said.quoted,
    )


def _ref(one: Opened, now: Present) -> Ref | None:
    """Return the record that the answer belongs in; None for the session looked at."""
    if one.record == "session":
        return None if now.here(one) else Ref("session", one.of)
    if one.home == TODAY:
        return Ref("day", now.session.day) if now.session.day is not None else None
    return Ref(one.record, one.day if one.record == "day" else one.home or one.whom)


def _since(one: Opened, now: Present) -> str:
    return "" if now.here(one) or one.date is None else f"Still open since {day_words(one.date)}. "


def _message(one: Opened, said: Said) -> str:
    """Return what is said of it: an answer that is too early is there, and nothing says that it is not."""
    what, colon, _ = said.message.partition(": ")
    if not one.early or one.early in said.message:
        return said.message
    return f"{what}: answered {one.early}, before it." if colon else said.message


def _too_early(one: Opened) -> str:
    if not one.early:
        return ""
    return f" The answer beside it is dated {one.early}, before it: enter when it was done."


@functools.lru_cache(maxsize=128)
def day_words(date: dt.date) -> str:
    """Write a day of the week and date."""
    return f"{date:%a} {date.day} {date:%b}"


def _with_more(matter: Matter, count: int) -> Matter:
    if count < 2:
        return matter
    return attrs.evolve(matter, why=f"{matter.why} {count - 1} more of this kind {_be(count - 1)} open.")


def _be(count: int) -> str:
    return "is" if count == 1 else "are"


_BLANK = Outing("", Session())


class Asked:
    """Gives the kinds that an outing may open something of, in their order: of most it opens nothing.

    What a kind reads of an outing in which nothing is written down is watched once. Whether it opens anything
    follows from what it reads, so that it opens nothing either of an outing in which all of that is not
    written down: such a kind need not be asked.
    """

    def __init__(self, kinds: Iterable[MatterKind]) -> None:
        self._kinds = [(kind, _read_of_nothing(kind)) for kind in kinds]
        names = {name for _, read in self._kinds if read is not None for name in read}
        self._of_session = tuple(sorted(name for whose, name in names if whose == "session"))
        self._of_outing = tuple(sorted(name for whose, name in names if whose == "outing"))
        self._known: dict[tuple[bool, ...], tuple[MatterKind, ...]] = {}

    def of(self, outing: Outing) -> tuple[MatterKind, ...]:
        """Return the kinds that may open something; all others open nothing, whatever went before."""
        session = outing.session
        written = (
            *(_is_written(getattr(session, name), _SESSION[name]) for name in self._of_session),
            *(_is_written(getattr(outing, name), _OUTING[name]) for name in self._of_outing),
        )
        found = self._known.get(written)
        if found is None:
            names = (
                *(("session", name) for name in self._of_session),
                *(("outing", name) for name in self._of_outing),
            )
            there = {name for name, is_there in zip(names, written, strict=True) if is_there}
            found = tuple(kind for kind, read in self._kinds if read is None or read & there)
            self._known[written] = found
        return found


class _OfBlank(dict[str, Any]):
    """The values of a session, or of an outing, in which nothing is written down."""

    def __init__(self, blank: object) -> None:
        super().__init__()
        self._blank = blank

    def __missing__(self, name: str) -> Any:
        found = self[name] = getattr(self._blank, name)
        return found


_SESSION, _OUTING = _OfBlank(_BLANK.session), _OfBlank(_BLANK)


def _is_written(value: object, blank: object) -> bool:
    return value is not blank and (type(value) is not type(blank) or value != blank)


class _ReadsBefore(Exception):
    """What went before is read: whether anything is opened does not follow from the outing alone."""


class _Watched:
    """A session or an outing in which nothing is written down; notes what is read of it."""

    def __init__(self, whose: str, blank: object, read: set[tuple[str, str]]) -> None:
        self._whose, self._blank, self._read = whose, blank, read

    def __getattr__(self, name: str) -> Any:
        if name == "session" and self._whose == "outing":
            return _Watched("session", _BLANK.session, self._read)
        if self._whose == "seen":
            raise _ReadsBefore
        self._read.add((self._whose, name))
        return getattr(self._blank, name)


def _read_of_nothing(kind: MatterKind) -> frozenset[tuple[str, str]] | None:
    """Return what a kind reads of an outing in which nothing is written down; None: it is always asked."""
    read: set[tuple[str, str]] = set()
    outing: Any = _Watched("outing", _BLANK, read)
    before: Any = _Watched("seen", Seen(), read)
    try:
        opens = list(kind.opens(outing, before))
    except _ReadsBefore:
        return None
    return None if opens else frozenset(read)


@functools.cache
def asked(_count: int) -> Asked:
    """Return what knows of all kinds, of which there are so many, which are asked."""
    return Asked(KINDS.values())
