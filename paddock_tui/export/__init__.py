"""Tables for analysis elsewhere: one fact a cell, one unit a column, ids that join."""

from paddock_tui.export.registry import TABLES
from paddock_tui.export.table import Column, Table, Wanted

__all__ = ["TABLES", "Column", "Table", "Wanted"]
