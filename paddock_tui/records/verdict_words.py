"""The words of the verdict, as they stand on pages and are kept with a session."""

HOLD_WORD, CARE_WORD, NOT_YET_WORD, NO_FINDINGS_WORD = "HOLD", "CARE", "NOT YET", "NO FINDINGS"
NOT_JUDGED_WORD = "not assessed"
"""Said where there is no session to go out for."""

RIDDEN_TAIL = " · ridden"
"""Said behind the verdict of a session that was ridden: it is of what was, not of going out."""

NONE_SAVED = "no verdict saved"
"""Said of a session that was ridden without having gone through what stood against going out."""

WORDS = (HOLD_WORD, CARE_WORD, NOT_YET_WORD, NO_FINDINGS_WORD)
"""The words of the verdict, worst first."""
