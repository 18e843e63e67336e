"""How bad something is."""

import enum


class Severity(enum.IntEnum):
    """How bad a finding or an open matter is, worst highest."""

    NOTE = 0
    CAUTION = 1
    SERIOUS = 2
    HOLD = 3

    def __str__(self) -> str:
        return self.name.lower()


NOTE, CAUTION, SERIOUS, HOLD = Severity.NOTE, Severity.CAUTION, Severity.SERIOUS, Severity.HOLD
