"""Tables for analysis elsewhere: one fact a cell, one unit a column, ids that join."""

from paddock_tui.export.registry import TABLES
from paddock_tui.export.table import Column, ExportScope, Table

__all__ = ["TABLES", "Column", "ExportScope", "Table"]
