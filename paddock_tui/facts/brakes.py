"""The brakes as last felt and measured: the lever, and the pads at each end."""

from collections.abc import Mapping

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.past import ENDS, Along, End, History, PastSession
from paddock_tui.quantities import Quantity
from paddock_tui.records.day import RidingDay
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session


@attrs.frozen
class PadLeft:
    """The thinnest pad of one end as last measured, and where that was entered."""

    end: End
    left: Quantity
    where: str

    def __str__(self) -> str:
        return f"{self.end} pads {self.left} {self.where}"


@attrs.frozen
class LeastPad:
    """The least pad thickness that counts, and who says so; without a posted one the limit's."""

    posted: Quantity | None

    def __str__(self) -> str:
        return f"organiser's least {self.posted}" if self.posted is not None else "no least posted"


@fact("the pads at the {subject}", at="session:{subject}_pads", per="end", show=str)
def pads_left(end: End, session: Session, history: History) -> PadLeft | Absent:
    """Return the thinnest pad as measured for this session, else in the last one where it was."""
    own = _pads(session, end)
    if own is not None:
        return PadLeft(end, own, "now")
    one = _MEASURED.of(history).get(end)
    before = _pads(one.session, end) if one is not None else None
    return PadLeft(end, before, f"in session {one.id}") if one is not None and before is not None else ABSENT


_Measured = Mapping[End, PastSession]


def _measured_again(so_far: _Measured, one: PastSession) -> _Measured:
    new = {end: one for end in ENDS if _pads(one.session, end) is not None}
    return {**so_far, **new} if new else so_far


_MEASURED: Along[_Measured] = Along("pads", {}, _measured_again)
"""In which session the pads of each end were measured last."""


@fact("the organiser's least pad thickness", at="day:limits.pads", show=str)
def least_pad(records: Mapping[str, Record], session: Session) -> LeastPad:
    """Return what the organiser posted, where there is one."""
    day = records.get("day")
    return LeastPad(day.limits.pads if isinstance(day, RidingDay) else None)


def _pads(session: Session, end: End) -> Quantity | None:
    return session.front_pads if end == "front" else session.rear_pads
