"""At, below and above every limit: a rule that has one brings its rows here, or the tests fail."""

from tests.rules.limit_rows import aids, chassis, helping, machine, standing, starting, tyres
from tests.rules.limit_rows.row import LimitRow

ROWS: list[LimitRow] = [
    *aids.ROWS,
    *machine.ROWS,
    *chassis.ROWS,
    *helping.ROWS,
    *standing.ROWS,
    *starting.ROWS,
    *tyres.ROWS,
]
