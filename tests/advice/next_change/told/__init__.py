"""Situations with a known best answer: what was changed, felt, measured and written, and what comes of it."""

from tests.advice.next_change.told.dangers import DANGERS
from tests.advice.next_change.told.first_right import ACCEPTED, FIRST
from tests.advice.next_change.told.given import Expected
from tests.advice.next_change.told.guards import GUARDS
from tests.advice.next_change.told.pressures import PRESSURES, UNDO
from tests.advice.next_change.told.sags import CLEAN, SAGS
from tests.advice.next_change.told.stops import STOPS
from tests.advice.next_change.told.symptoms import MEASURED, SYMPTOMS_ALONE
from tests.advice.next_change.told.tables import TABLES

_OF_GUARDS: dict[int, Expected] = {id(one): one for each in GUARDS for one in (each.acts, each.silent)}
"""Each once, though it may be the other side of several guards."""

SITUATIONS = [
    *STOPS,
    *DANGERS,
    *FIRST,
    *ACCEPTED,
    *PRESSURES,
    *UNDO,
    *SAGS,
    *TABLES,
    *SYMPTOMS_ALONE,
    *MEASURED,
    *CLEAN,
    *_OF_GUARDS.values(),
]
