"""What is left to do to a bike, as rows: each stays until it is done."""

import datetime as dt
from collections.abc import Container, Iterator

from paddock_tui.desk.day.after import TODOS, open_todos
from paddock_tui.desk.looking import LooksAt
from paddock_tui.facts.checklists import TO_FIX, Checked
from paddock_tui.facts.situation import Situation
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Row
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref
from paddock_tui.text import printable

TODO_LABEL = "to do"


def todo_rows(desk: LooksAt, bike: Ref, date: dt.date | None) -> Iterator[Row]:
    """List what is not done yet; a caution where it was due by a date, or by today."""
    loaded = desk.files.read(bike)
    held = loaded.record if loaded is not None else None
    due = date or desk.now().date()
    for number, one in open_todos(held) if isinstance(held, Bike) else ():
        late = one.by is not None and one.by <= due
        said = (
            f"by {one.by}" if one.by is not None else "no date yet",
            f"since {short_date(one.since)}" if one.since is not None else "",
        )
        yield Row(
            TODO_LABEL,
            printable(one.what or f"number {number}"),
            aside=printable(" · ".join(filter(None, said))),
            kind="check",
            ref=bike,
            path=(TODOS, number, "done"),
            known=False,
            severity="caution" if late else "",
        )


def to_fix_rows(situation: Situation, key: str, told: Container[str] = ()) -> Iterator[Row]:
    """List what is to fix by checklists, as a session to come finds it; `key` begins the keys of the rows.

    What stands on the page already is `told`.
    """
    checked = situation.facts().get("checked")
    if not isinstance(checked, Checked):
        return
    items = [item for held in checked.lists for item in held.to_fix]
    items += [item for item in checked.others if item.status == TO_FIX]
    for item in (one for one in items if one.id not in told):
        since = f"since {short_date(item.since_day)}" if item.since_day is not None else ""
        yield Row(
            "to fix",
            printable(item.text),
            aside=" · ".join(filter(None, (since, "c answers it"))),
            kind="text",
            severity=item.to_fix or "caution",
            key=f"{key}item {item.id}",
        )


def add_row(bike: Ref) -> Row:
    """Return the row on which something to do is added to a bike."""
    return Row("add: something to do", kind="add", ref=bike, adds=(TODOS,), key=f"add {bike.id} todo")
