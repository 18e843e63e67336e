"""What riding cost as a table: an amount a row, exact, with its currency beside it."""

from collections.abc import Iterator

from paddock_tui.desk.looking import LooksAt
from paddock_tui.desk.season import all_spent
from paddock_tui.export.table import Column, ExportScope, Passed, Row, Table, fixed


def _cost_rows(desk: LooksAt, wanted: ExportScope, _: Passed) -> Iterator[Row]:
    own = desk.files.garage().currency or None
    for one in all_spent(desk):
        if wanted.since is not None and one.on < wanted.since:
            continue
        if (wanted.bike and one.bike != wanted.bike) or (wanted.rider and one.rider != wanted.rider):
            continue
        if one.what == "crash" and "incidents" not in wanted.personal:
            continue
        yield (
            one.kept_in,
            one.record,
            one.on.isoformat(),
            one.rider or None,
            one.bike,
            one.what or None,
            one.amount.amount,
            one.amount.currency or own,
        )


COSTS = Table(
    "costs",
    "one row for each amount of money; what a fall cost only where incidents are asked for",
    fixed(
        Column("kept_in", "day or bike: in which record it stands"),
        Column("record", "id of that record"),
        Column("date", "the date that the season counts it by"),
        Column("rider", "id of the rider; empty: not said"),
        Column("bike", "id of the bike"),
        Column("what", "entry, travel, tyres, fuel, parts or crash"),
        Column("amount", "how much, to the hundredth, in the currency beside it"),
        Column("currency", "its own, else the garage's; empty: not said"),
    ),
    rows=_cost_rows,
)
