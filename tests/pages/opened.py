"""Pages of records for one test."""

import functools
from pathlib import Path

from paddock_tui.pages.record import record_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.paths import Ref, spell
from paddock_tui.store.garage import GarageFiles

SAMPLE = Path(__file__).parent.parent.parent / "sample_garage"

FILES = GarageFiles(SAMPLE)
"""The sample as it is, for tests that change nothing."""


@functools.cache
def sample_page(ref: Ref) -> Page:
    """Make the page of a record of the sample, once for all tests that look at it."""
    return page_of(FILES, ref)


def page_of(files: GarageFiles, ref: Ref, units: Units | None = None) -> Page:
    loaded = files.read(ref)
    assert loaded is not None
    named = getattr(loaded.record, "bike", None)
    bike = files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    return record_page(loaded, known, units)


def rows_of(page: Page) -> dict[str, Row]:
    """Give the rows that hold values by their paths as spelled."""
    return {spell(row.path): row for row in page.rows() if row.path and row.kind != "add"}
