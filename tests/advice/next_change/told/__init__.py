"""Situations with a known best answer: what was changed, felt, measured and written, and what comes of it."""

from tests.advice.next_change.told.dangers import DANGERS
from tests.advice.next_change.told.first_right import ACCEPTED, FIRST
from tests.advice.next_change.told.pressures import PRESSURES, UNDO
from tests.advice.next_change.told.sags import CLEAN, SAGS
from tests.advice.next_change.told.stops import STOPS
from tests.advice.next_change.told.symptoms import MEASURED, SYMPTOMS_ALONE
from tests.advice.next_change.told.tables import TABLES

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
]
