"""What can be known of a situation: each fact is a function of other facts, known, not known or absent."""

from typing import TYPE_CHECKING

from paddock_tui.on_demand import on_demand

if TYPE_CHECKING:
    from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, MissingFact, NotKnown
    from paddock_tui.facts.registered import FACTS, Facts
    from paddock_tui.facts.situation import Situation

__all__ = ["ABSENT", "FACTS", "UNKNOWN", "Absent", "Facts", "MissingFact", "NotKnown", "Situation"]

if not TYPE_CHECKING:
    __getattr__ = on_demand(
        __name__,
        {
            "ABSENT": "core",
            "FACTS": "registered",
            "UNKNOWN": "core",
            "Absent": "core",
            "Facts": "registered",
            "MissingFact": "core",
            "NotKnown": "core",
            "Situation": "situation",
        },
    )
