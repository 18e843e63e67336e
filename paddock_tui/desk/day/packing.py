"""The packing lists of a garage with what earlier days taught of each thing on them."""

import datetime as dt
from typing import NamedTuple

from paddock_tui.desk.looking import LooksAt
from paddock_tui.facts.packing import Served, served_before
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.packing import PACKING
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.store.heads import having


class ToPack(NamedTuple):
    """One thing to pack: where it goes in words, its box, and how it served; `listed`: a list asks for it."""

    item: str
    text: str
    goes: str
    box: str
    served: Served | None
    listed: bool = True


def served(desk: LooksAt, date: dt.date | None = None) -> dict[str, Served]:
    """Return how each thing served on the garage's days before a date."""
    days = []
    for ref in having(desk.files, "day", PACKING):
        loaded = desk.files.read(ref)
        if loaded is not None and isinstance(loaded.possible, RidingDay):
            days.append(loaded.possible)
    return dict(served_before(days, date))


def to_pack(desk: LooksAt, date: dt.date | None = None) -> tuple[ToPack, ...]:
    """List what is packed by the garage's lists, and what was noted on a day although no list asks for it."""
    known = served(desk, date)
    found: dict[str, ToPack] = {}
    for ref in desk.files.listing("checklist"):
        loaded = desk.files.read(ref)
        held = loaded.possible if loaded is not None else None
        if not isinstance(held, Checklist) or held.stage != PACKING or held.retired is not None:
            continue
        for name, item in held.items.items():
            text = item.text or label_of(name)
            found.setdefault(name, ToPack(name, text, item.goes, item.box or "", known.get(name)))
    for name in sorted(known.keys() - found.keys()):
        found[name] = ToPack(name, label_of(name), "", "", known[name], listed=False)
    return tuple(found.values())
