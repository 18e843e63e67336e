"""Pages about the session or profile that is looked at: its record as it was read, and its units."""

from collections.abc import Callable
from functools import wraps

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.situations import Assembled
from paddock_tui.pages.headings import heading_of
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref
from paddock_tui.screens.room import PageContext
from paddock_tui.store.garage import Loaded


@attrs.frozen
class SubjectContext:
    """What a page about a session or profile is made from, once that is there and can be read."""

    asked: PageContext
    ref: Ref
    assembled: Assembled
    loaded: Loaded
    heading: str

    @property
    def desk(self) -> Desk:
        """The garage in hand."""
        return self.asked.desk

    @property
    def units(self) -> Units:
        """The units of bare numbers."""
        return units_of(self.desk, self.loaded.record)


def of_subject(page: Callable[[SubjectContext], Page]) -> Callable[[PageContext], Page | None]:
    """Make a page of a room of one about a record that can be read; else what is wrong with it is shown."""

    @wraps(page)
    def made(asked: PageContext) -> Page | None:
        ref, assembled = asked.subject, asked.assembled
        if ref is None or assembled is None:
            return None
        loaded = asked.desk.files.read(ref)
        heading = heading_of(asked.desk, ref)
        if loaded is None:
            return gone(ref)
        if loaded.record is None:
            from paddock_tui.pages.record import record_page

            return record_page(loaded)
        return page(SubjectContext(asked, ref, assembled, loaded, heading))

    return made


def session_named(row: Row | None) -> Ref | None:
    """Return the session that a row of a list names; None where it names none."""
    named = row.opens if row is not None and row.kind == "link" else None
    return named if named is not None and named.kind == "session" else None


def gone(ref: Ref) -> Page:
    """Say that a record is not there any more."""
    said = f"{ref} is not in the garage any more; what is shown elsewhere goes on"
    return Page(str(ref), (Section("gone", (Row("", said, kind="text", key="gone"),)),))


def units_of(desk: Desk, record: object) -> Units:
    """Return the units of bare numbers on a record: its rider's, else the garage's."""
    rider = getattr(record, "rider", None)
    return desk.units(rider if isinstance(rider, str) else None)
