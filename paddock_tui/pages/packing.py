"""What is packed, as rows: how many, where to, by whom, and what earlier days taught of it."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.desk.day.packing import ToPack, to_pack
from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.rows import Row
from paddock_tui.text import printable

_LACKED = ("missing", "borrowed")


def packing_rows(desk: LooksAt, date: dt.date) -> Iterator[Row]:
    """List what is packed for a day, box by box; a caution where it was lacking the last time."""
    for one in sorted(to_pack(desk, date), key=_box):
        lacked = one.served is not None and one.served.last in _LACKED
        said = (one.served.words() if one.served is not None else "", "" if one.listed else "on no list")
        yield Row(
            printable(one.text),
            printable(one.goes),
            aside=" · ".join(filter(None, said)),
            kind="text",
            severity="caution" if lacked else "",
            key=f"pack {one.item}",
        )


def _box(one: ToPack) -> tuple[bool, str]:
    return (not one.box, one.box)
