"""Where the screen is."""

from typing import TYPE_CHECKING

import attrs

from paddock_tui.pages.rows import Row
from paddock_tui.records.paths import Path, Ref

if TYPE_CHECKING:
    from paddock_tui.advice.ledger import LedgerFilter

PlaceKey = tuple[str, Ref | None, Ref | None]


@attrs.frozen
class Place:
    """What is on the screen: the room, the session or profile looked at, another record, a row explained.

    `other` is what the session or profile is compared with, `wanted` what the ledger shows,
    `seen` the rows of dash cards that were found as planned, `across` the column of a table that is looked
    at (None: the one in use), `long` whether a briefing is shown in its long form, `came` what its rider
    comes from (None: what they rode last), `years` the earlier years that are listed in the garage.
    """

    room: str = "garage"
    subject: Ref | None = None
    record: Ref | None = None
    row: Row | None = None
    retired: bool = False
    other: str = ""
    wanted: "LedgerFilter | None" = None
    seen: frozenset[Path] = frozenset()
    across: int | None = None
    long: bool = False
    came: Ref | None = None
    years: frozenset[str] = frozenset()

    @property
    def key(self) -> PlaceKey:
        """What tells two places apart, so that each keeps its own cursor."""
        return self.room, self.subject, self.record
