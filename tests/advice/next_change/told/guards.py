"""The guards of the next change: what keeps something from being proposed, each acting and staying silent."""

from tests.advice.next_change.told.given import Guard
from tests.advice.next_change.told.guards_adjusters import ADJUSTERS
from tests.advice.next_change.told.guards_first import FIRST, SAG
from tests.advice.next_change.told.guards_helps import BASE, SETTLED, TRIED
from tests.advice.next_change.told.guards_levels import LEVELS
from tests.advice.next_change.told.guards_pressures import PRESSURES, READ
from tests.advice.next_change.told.guards_undo_blocks import BLOCKS
from tests.advice.next_change.told.guards_undo_sessions import SESSIONS

GUARDS: list[Guard] = [
    *SESSIONS,
    *BLOCKS,
    *TRIED,
    *BASE,
    *SETTLED,
    *FIRST,
    *SAG,
    *ADJUSTERS,
    *LEVELS,
    *PRESSURES,
    *READ,
]
