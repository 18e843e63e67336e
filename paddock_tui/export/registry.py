"""Every table of an export, in the order in which they are written."""

from paddock_tui.export.costs import COSTS
from paddock_tui.export.others import ACCEPTANCES, CHANGES, CHECKS, FINDINGS, INCIDENTS, TYRES
from paddock_tui.export.race_and_crew import JOBS, PENALTIES, STOPS
from paddock_tui.export.sessions import LAPS, READINGS, SESSIONS, SETTINGS, SYMPTOMS
from paddock_tui.export.table import Table

TABLES: tuple[Table, ...] = (
    SESSIONS,
    LAPS,
    READINGS,
    SETTINGS,
    SYMPTOMS,
    CHANGES,
    FINDINGS,
    CHECKS,
    TYRES,
    COSTS,
    JOBS,
    PENALTIES,
    STOPS,
    INCIDENTS,
    ACCEPTANCES,
)

PERSONAL = ("health", "incidents", "acceptances", "words")
"""What is left out unless it is asked for by name; words: what the rider said, in their own words."""
