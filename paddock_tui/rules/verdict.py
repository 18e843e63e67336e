"""The verdict: its words, and the one place where it is made."""

from collections.abc import Iterable

from paddock_tui.matters.severity import CAUTION, HOLD, Severity

HOLD_WORD, CARE_WORD, NOT_YET_WORD, NO_FINDINGS_WORD = "HOLD", "CARE", "NOT YET", "NO FINDINGS"
NOT_JUDGED_WORD = "not judged"
"""Said where there is no session to go out for."""

WORDS = (HOLD_WORD, CARE_WORD, NOT_YET_WORD, NO_FINDINGS_WORD)
"""The words of the verdict, worst first."""


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
