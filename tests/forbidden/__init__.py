"""Words that mislead users: what none of the texts that they read may say, and what is said instead."""

from tests.forbidden.dangers import DANGERS, Danger
from tests.forbidden.stumbles import STUMBLES

__all__ = ["FORBIDDEN", "Danger"]

FORBIDDEN = {**DANGERS, **STUMBLES}
"""Every danger by its name."""
