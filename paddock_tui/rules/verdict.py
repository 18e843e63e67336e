"""The verdict: the one place where its word is made."""

from collections.abc import Iterable

from paddock_tui.matters.severity import CAUTION, HOLD, Severity
from paddock_tui.records.verdict_words import CARE_WORD, HOLD_WORD, NO_FINDINGS_WORD, NOT_YET_WORD


def verdict_word(dangers: Iterable[Severity], missing: int) -> str:
    """Return the word for what was found about danger, and how many essentials are not known.

    What is missing never softens what was found, and nothing found says so only where nothing is missing.
    """
    worst = max(dangers, default=Severity.NOTE)
    if worst >= HOLD:
        return HOLD_WORD
    if worst >= CAUTION:
        return CARE_WORD
    return NOT_YET_WORD if missing else NO_FINDINGS_WORD
