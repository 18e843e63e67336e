"""The weather as far as somebody measured it."""

from collections.abc import Mapping

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.quantities import Quantity
from paddock_tui.records.bike import Bike
from paddock_tui.records.kinds import Record
from paddock_tui.records.session import Session


@attrs.frozen
class Coldest:
    """The lower of air and track temperature, and which of them it is."""

    celsius: float
    words: str

    def __str__(self) -> str:
        return self.words


@fact("the temperature", at="session:air", show=str)
def coldest(session: Session) -> Coldest | Absent:
    """Return the lower of the temperatures that were measured; absent where none was."""
    known = [("Air", session.air), ("Track", session.track)]
    measured = [(one.to("C"), f"{name} {one}") for name, one in known if isinstance(one, Quantity)]
    return Coldest(*min(measured)) if measured else ABSENT


@fact("the coolant", show=lambda found: f"coolant {found}")
def coolant(records: Mapping[str, Record]) -> str | None:
    """Return what is in the cooling system, None where nobody wrote it."""
    bike = records.get("bike")
    return bike.drive.coolant if isinstance(bike, Bike) else None
