"""A tyre set as a picture: the tread that is left, and its pressures over the sessions."""

from collections.abc import Iterator

from paddock_tui.facts.past import ENDS, History, tyre_of
from paddock_tui.pages.pictured import picture_row
from paddock_tui.pages.pictures.readings import LEGEND as OF_PRESSURES
from paddock_tui.pages.pictures.tyre import LEGEND, TreadDepth, tread_lanes
from paddock_tui.pages.rows import Section
from paddock_tui.pages.session_pictures import tyre_pressures_row
from paddock_tui.records.tyres import TyreSet

_PLACES = (("left", "tread_left"), ("middle", "tread_middle"), ("right", "tread_right"))


def tyre_sections(name: str, tyres: TyreSet, history: History, within: float) -> Iterator[Section]:
    """Return what is left of both tyres, and the readings of each over the sessions of the set."""
    lanes = tread_lanes(list(_depths(tyres)))
    if lanes is not None:
        yield Section("tread left", (picture_row("tread left", lanes),), LEGEND)
    for end in ENDS:
        row = tyre_pressures_row(name, tyres, history, end, within)
        if row is not None:
            yield Section(row.label, (row,), OF_PRESSURES)


def _depths(tyres: TyreSet) -> Iterator[TreadDepth]:
    for end in ENDS:
        tyre = tyre_of(tyres, end)
        for word, key in _PLACES:
            depth = getattr(tyre, key)
            if depth is not None:
                worn = tyre.worn_at.to("mm") if tyre.worn_at is not None else None
                yield TreadDepth(f"{end} {word}", depth.to("mm"), worn)
