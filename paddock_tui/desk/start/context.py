"""What the rows of a start are made from."""

import datetime as dt

import attrs

from paddock_tui.desk.start.about import StartRecords
from paddock_tui.records.common import Units
from paddock_tui.store.garage import GarageFiles


@attrs.frozen
class Context:
    """The files, the records that the start is about, the units of bare numbers, and the time."""

    files: GarageFiles
    about: StartRecords
    units: Units
    now: dt.datetime
